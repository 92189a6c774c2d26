import type { Problem } from '../measure/result.ts';
import type { KeptDefaults } from './defaults.ts';

/*
 * What a guild has kept, as the rooms that use it see it. How it is kept is another room's business.
 * Every call rejects with a `FactsTrouble` when the facts are out of reach.
 */

export type { KeptDefaults };

/** The member's name under which a guild's own defaults are kept. */
export const GUILD_ITSELF = '';

/** New values for some defaults; null takes one away. */
export type DefaultChanges = { readonly [Name in keyof KeptDefaults]?: KeptDefaults[Name] | null };

/** A member's defaults and her guild's. */
export interface BothDefaults {
  readonly own: KeptDefaults;
  readonly guild: KeptDefaults;
}

export interface DefaultsKept {
  /** What the member has set, or with '' the guild itself; nothing set is an empty object. */
  read(guild: string, member: string): Promise<KeptDefaults>;
  /** What the member has set, and what her guild has, in one look: every ask wants both. */
  both(guild: string, member: string): Promise<BothDefaults>;
  /** Lays the changes over what is kept, and tells what is kept now. */
  set(guild: string, member: string, changes: DefaultChanges): Promise<KeptDefaults>;
  /** Forgets all that the member (or with '' the guild itself) has set. */
  clear(guild: string, member: string): Promise<void>;
}

/** The answer that was given to one event from outside. */
export interface Answer {
  /** Who asked. */
  readonly member: string;
  readonly command: string;
  /** The reply, as far as JSON can carry it. */
  readonly reply: unknown;
}

export interface AnswersKept {
  /** The answer already given to this event, or undefined when it is new. */
  find(guild: string, event: string): Promise<Answer | undefined>;
  /** Keeps the answer. The first answer to an event stays: false when there is one already. */
  keep(guild: string, event: string, answer: Answer): Promise<boolean>;
}

/**
 * The guild of what a member says to the bot alone: hers, all of it.
 *
 * @example
 * guildAlone('@bea:example.org') // "alone:@bea:example.org"
 */
export const guildAlone = (member: string): string => `alone:${member}`;

/** A member of a guild, by the ids of the platform. */
export interface Whose {
  readonly guild: string;
  readonly member: string;
}

/**
 * What a platform must remember across a restart: which message is the standing one, what a button's short key
 * stands for, how far it has read. Values are plain JSON and checked by the platform when they are read.
 */
export interface NotesKept {
  find(platform: string, key: string): Promise<unknown>;
  /** Keeps a note in place of an earlier one of that key. `whose` says whose words are in it, if anybody's. */
  keep(platform: string, key: string, value: unknown, whose?: Whose): Promise<void>;
  remove(platform: string, key: string): Promise<void>;
  /** The keys that begin so and were kept before a moment. */
  before(platform: string, keyBegins: string, moment: Date): Promise<readonly string[]>;
  /** Forgets the notes whose key begins so and that were kept before a moment; tells how many. */
  prune(platform: string, keyBegins: string, before: Date): Promise<number>;
}

export interface Facts {
  readonly defaults: DefaultsKept;
  readonly answered: AnswersKept;
  readonly notes: NotesKept;
  /** Removes all that is kept for a guild; nothing of any other. */
  forgetGuild(guild: string): Promise<void>;
  /**
   * Does the work as one: either all that it keeps is kept, or, when it throws, nothing. Resolves after the
   * facts are safely kept. Works run one after another, so inside use only the facts that are handed in:
   * the outer ones would wait for this very work to end. A `together` of the facts handed in joins the work.
   */
  together<T>(work: (facts: Facts) => Promise<T>): Promise<T>;
}

/** The facts are out of reach: what was wrong, as data, with the cause kept for the operator's log. */
export class FactsTrouble extends Error {
  override readonly name = 'FactsTrouble';
  readonly problem: Problem;

  constructor(problem: Problem, cause?: unknown) {
    super(problem.code, { cause });
    this.problem = problem;
  }
}
