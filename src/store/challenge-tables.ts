/** Challenges, the lines of their books, and the totals kept as lines are written. */
export interface ChallengeTables {
  challenges: {
    guild: string;
    number: number;
    name: string;
    counting: string;
    rounds: number;
    size: number;
    goal: number | null;
    each: number | null;
    first: string;
    last: string | null;
    place: string;
    who: string;
    open: number;
    opened_at: string;
    total: number;
    lines: number;
    plan: string | null;
  };
  challenge_lines: {
    guild: string;
    challenge: number;
    number: number;
    kind: string;
    member: string;
    by: string;
    day: string;
    pieces: number;
    minutes: number | null;
    note: string;
    picture: string;
    of: number | null;
    at: string;
  };
  challenge_parts: {
    guild: string;
    challenge: number;
    member: string;
    since: number;
    name: string;
    joined: number;
    pieces: number;
    logs: number;
  };
  challenge_days: { guild: string; challenge: number; day: string; pieces: number };
}
