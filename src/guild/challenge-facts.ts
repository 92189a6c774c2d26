import type { Counted } from './counted.ts';

/*
 * What is kept of a guild's challenges, as the rules and the commands see it. A challenge has a book: lines
 * are appended to it and never changed or taken out. What was wrong is taken back by a later line. Totals are
 * kept beside the book as its lines are written.
 */

/** Who may write in a challenge's book. */
export type MayLog = 'everyone' | 'joined' | 'organisers';

/** What an organiser says of a challenge. */
export interface ChallengeTerms extends Counted {
  readonly name: string;
  /** The finished side of a patch, inches: one seam's length. */
  readonly size: number;
  /** Together, and for each member; null where there is none. */
  readonly goal: number | null;
  readonly each: number | null;
  /** Days of the calendar, YYYY-MM-DD; both belong to it. */
  readonly first: string;
  readonly last: string | null;
  /** The room or channel it is held in. */
  readonly place: string;
  readonly who: MayLog;
  /** The name of the kept plan that is sewn; null where there is none. */
  readonly plan: string | null;
}

export interface Challenge extends ChallengeTerms {
  readonly guild: string;
  /** Counted in each guild from 1. */
  readonly number: number;
  readonly open: boolean;
  /** Pieces that stand. */
  readonly total: number;
  /** How many lines its book has. */
  readonly lines: number;
}

/** Who a line is about, or who wrote it. */
export interface Person {
  readonly id: string;
  readonly name: string;
}

export type LineKind = 'log' | 'back' | 'open' | 'edit' | 'close' | 'reopen' | 'join' | 'leave';

/** One line of a challenge's book. Pieces and minutes of a line that takes back are below zero. */
export interface Line {
  readonly number: number;
  readonly kind: LineKind;
  /** Whose pieces they are, and who wrote the line; '' where she has been forgotten. */
  readonly member: string;
  readonly by: string;
  readonly day: string;
  readonly pieces: number;
  readonly minutes: number | null;
  readonly note: string;
  /** Where a picture of it can be seen, as she gave it. */
  readonly picture: string;
  /** The line that this one takes back, or stands in place of. */
  readonly of: number | null;
  /** When it was written, ISO in UTC. */
  readonly at: string;
}

/** A line to be written; what is left out is nothing. */
export interface NewLine {
  readonly kind: LineKind;
  readonly member: Person;
  readonly by: Person;
  readonly day: string;
  readonly pieces?: number;
  readonly minutes?: number | null;
  readonly note?: string;
  readonly picture?: string;
  readonly of?: number | null;
  readonly at: Date;
}

/** What a line made of the totals. */
export interface Written {
  readonly number: number;
  /** Of the whole challenge, and of the member it is about. */
  readonly total: number;
  readonly mine: number;
}

/** A line with what became of it. */
export interface LineInBook extends Line {
  readonly challenge: number;
  /** The line that took it back, if one did. */
  readonly takenBackBy: number | null;
}

/** A line with the name by which she whose it is is known; '' where she has been forgotten. */
export interface NamedLine extends Line {
  readonly name: string;
}

/** A member's part in a challenge. */
export interface Part {
  readonly member: string;
  readonly name: string;
  readonly joined: boolean;
  readonly pieces: number;
  readonly logs: number;
}

/** Which of a member's logs are looked at; all where neither is named. */
export interface LogsOf {
  readonly challenge?: number | undefined;
  readonly day?: string | undefined;
}

export interface DayCount {
  readonly day: string;
  readonly pieces: number;
}

/** How many have joined, have pieces that stand, and have reached the goal for each. */
export interface Heads {
  readonly joined: number;
  readonly sewing: number;
  readonly reached: number;
}

/** A log with its minutes, and what it held: what her pace is reckoned from. */
export interface TimedLog extends Counted {
  readonly pieces: number;
  readonly minutes: number;
  readonly size: number;
}

type Which = Pick<Challenge, 'guild' | 'number'>;

export interface ChallengesKept {
  /** Keeps a new challenge, open, with the next number of its guild. */
  add(guild: string, terms: ChallengeTerms): Promise<Challenge>;
  change(of: Which, terms: Partial<ChallengeTerms & { readonly open: boolean }>): Promise<Challenge>;
  /** The guild's challenges, open ones first, then the newest first; `most` of them. */
  all(guild: string, most?: number): Promise<Challenge[]>;
  one(guild: string, number: number): Promise<Challenge | undefined>;
  /** Appends a line, and carries it into the totals. */
  write(of: Which, line: NewLine): Promise<Written>;
  /** Says whether a member takes part, and by what name. */
  take(of: Which, person: Person, joined: boolean): Promise<void>;
  line(of: Which, number: number): Promise<LineInBook | undefined>;
  /** A member's last logs that still stand, the latest first: in the guild, or of one challenge or day alone. */
  lastLogs(guild: string, member: string, most: number, of?: LogsOf): Promise<LineInBook[]>;
  /** Lines after a number, in order, each with the name of her whose it is. */
  lines(of: Which, after: number, most: number): Promise<NamedLine[]>;
  part(of: Which, member: string): Promise<Part | undefined>;
  /** Members with pieces: the most first, or by name. */
  parts(of: Which, by: 'pieces' | 'name', most: number): Promise<Part[]>;
  /** The names of those who take part, in order; `most` of them. */
  joined(of: Which, most: number): Promise<string[]>;
  heads(of: Which, each: number | null): Promise<Heads>;
  days(of: Which): Promise<DayCount[]>;
  /** Her last logs with minutes that still stand, the latest first. */
  timedLogs(guild: string, member: string, most: number): Promise<TimedLog[]>;
  /** Names by which members are known in a challenge. */
  names(of: Which, members: readonly string[]): Promise<ReadonlyMap<string, string>>;
}

declare module '../chat/facts.ts' {
  interface Facts {
    readonly challenges: ChallengesKept;
  }
}
