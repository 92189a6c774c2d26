/** Swaps, who takes part, what is offered and wished, and the parcels that go round. */
export interface SwapTables {
  swaps: {
    guild: string;
    number: number;
    name: string;
    place: string;
    rules: string;
    first: string;
    last: string | null;
    share: number;
    each: number | null;
    good: string | null;
    state: string;
  };
  swap_people: { guild: string; swap: number; member: string; name: string; order: number; state: string };
  swap_entries: {
    guild: string;
    swap: number;
    number: number;
    member: string;
    side: string;
    count: number;
    good: string;
    typed: string;
    words: string;
  };
  swap_parcels: {
    guild: string;
    swap: number;
    number: number;
    member: string;
    to: string;
    entry: number | null;
    wish: number | null;
    good: string;
    count: number;
    typed: string;
    sent_at: string | null;
    received_at: string | null;
  };
}
