import type { KeptDefaults } from '../chat/defaults.ts';
import type { Challenge } from './challenge-facts.ts';
import type { Month, MonthBlock } from './month-facts.ts';

/** Something that is open, and since when: what came before then is no news. */
export interface OpenSince<T> {
  readonly of: T;
  /** ISO in UTC. */
  readonly since: string;
}

/** A member who has asked to be reminded of her own. */
export interface Nudged {
  readonly member: string;
  readonly settings: KeptDefaults;
  /** When she last set anything, ISO in UTC. */
  readonly since: string;
}

/** What is going on in one guild that may be worth a reminder. */
export interface GuildStanding {
  readonly guild: string;
  readonly settings: KeptDefaults;
  readonly challenges: readonly OpenSince<Challenge>[];
  readonly months: readonly (OpenSince<Month> & { readonly blocks: readonly MonthBlock[] })[];
  readonly nudged: readonly Nudged[];
}

export interface RemindersKept {
  /** All guilds in which something is open. */
  standing(): Promise<GuildStanding[]>;
}

declare module '../chat/facts.ts' {
  interface Facts {
    readonly reminders: RemindersKept;
  }
}
