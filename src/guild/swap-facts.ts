/*
 * What is kept of a guild's swaps, as the rules and the commands see it. A swap is of one of two ways: matched,
 * where offers meet wishes, or even, where each gives so many pieces to every other.
 */

/** Open for offers; closed to them; done with. Once it was matched there are parcels. */
export type SwapState = 'open' | 'closed' | 'settled';

/** What an organiser says of a swap. */
export interface SwapTerms {
  readonly name: string;
  /** The room or channel it is held in. */
  readonly place: string;
  readonly rules: string;
  /** Days of the calendar, YYYY-MM-DD, on which offers are taken; both belong to it. */
  readonly first: string;
  readonly last: string | null;
  /** By how much less area than she sends somebody may receive, as a part of one. */
  readonly share: number;
  /** Of an even swap: pieces from each to every other, and the good's key; null where offers are matched. */
  readonly each: number | null;
  readonly good: string | null;
}

export interface Swap extends SwapTerms {
  readonly guild: string;
  /** Counted in each guild from 1. */
  readonly number: number;
  readonly state: SwapState;
}

/** Whether a member takes part: she does, she took herself out, or she did not keep to it. */
export type PartState = 'in' | 'out' | 'no-show';

export interface Swapper {
  readonly member: string;
  readonly name: string;
  /** In the order in which they came, from 1. */
  readonly order: number;
  readonly state: PartState;
}

export type Side = 'offer' | 'want';

/** What a member offers or would like: one line as she typed it. */
export interface NewSwapEntry {
  readonly side: Side;
  readonly count: number;
  readonly good: string;
  /** Her words, with what tells colour and print in them. */
  readonly typed: string;
  readonly words: readonly string[];
}

export interface SwapEntry extends NewSwapEntry {
  readonly member: string;
  /** Counted in each swap from 1. */
  readonly number: number;
}

/** So many pieces that go from one to another. */
export interface NewSwapParcel {
  readonly from: string;
  readonly to: string;
  /** The offer that they are of and the wish that they meet; null in an even swap. */
  readonly entry: number | null;
  readonly wish: number | null;
  readonly good: string;
  readonly count: number;
  /** What they were offered as. */
  readonly typed: string;
}

export interface SwapParcel extends NewSwapParcel {
  readonly number: number;
  /** When it was said to be sent, and to have come, ISO in UTC. */
  readonly sentAt: string | null;
  readonly receivedAt: string | null;
}

type Which = Pick<Swap, 'guild' | 'number'>;

export interface SwapsKept {
  /** Keeps a new swap, open, with the next number of its guild. */
  add(guild: string, terms: SwapTerms): Promise<Swap>;
  change(of: Which, changes: Partial<SwapTerms & { readonly state: SwapState }>): Promise<void>;
  /** The guild's swaps, the newest first. */
  all(guild: string): Promise<Swap[]>;
  people(of: Which): Promise<Swapper[]>;
  /** Says whether a member takes part, and by what name; she keeps the place that she had. */
  take(of: Which, member: { readonly id: string; readonly name: string }, state: PartState): Promise<void>;
  entries(of: Which): Promise<SwapEntry[]>;
  addEntry(of: Which, member: string, entry: NewSwapEntry): Promise<SwapEntry>;
  changeEntry(of: Which, number: number, entry: NewSwapEntry): Promise<void>;
  /** Takes lines out, and what was planned of them or for them and is not sent yet. */
  removeEntries(of: Which, numbers: readonly number[]): Promise<void>;
  parcels(of: Which): Promise<SwapParcel[]>;
  /** Puts these in the place of all parcels that were not sent yet. */
  replan(of: Which, parcels: readonly NewSwapParcel[]): Promise<void>;
  mark(of: Which, numbers: readonly number[], as: 'sent' | 'received', at: Date | null): Promise<void>;
}

declare module '../chat/facts.ts' {
  interface Facts {
    readonly swaps: SwapsKept;
  }
}
