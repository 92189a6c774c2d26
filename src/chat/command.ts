import type { Wrong } from '../measure/result.ts';
import type { Speech } from '../measure/speech.ts';
import type { Defaults } from './defaults.ts';
import type { Facts } from './facts.ts';
import type { Options, Values } from './option.ts';
import type { Reply } from './reply.ts';

/** Who asked. `organiser` is the platform's word for her rights, settled before the ask came in. */
export interface Member {
  readonly id: string;
  readonly name: string;
  readonly organiser: boolean;
}

/** Who asks for what a whole place reads, such as its standing message: nobody's own figures are in the answer. */
export const NOBODY: Member = { id: '', name: '', organiser: false };

/** One ask, whichever platform it came from. */
export interface Ask {
  readonly who: Member;
  readonly guild: string;
  readonly place: string;
  /** The outside event's id: the same id again is the same event delivered again. */
  readonly event: string | null;
  /**
   * The platform itself answers no event twice while it runs, so only what changes something need be kept with
   * its event; an answer that changes nothing would be the same again.
   */
  readonly onlyEffects?: boolean;
  /** What was typed; or a command with each option's words, where the platform has typed options. */
  readonly words: string | AskedOptions | FilledIn;
  readonly now: Date;
}

/** An ask with some options filled in on a form; their words are only theirs, whatever stands in them. */
export interface FilledIn {
  readonly ask: string;
  readonly filled: Readonly<Record<string, string>>;
}

export interface AskedOptions {
  readonly command: string;
  readonly form: string;
  readonly options: Readonly<Record<string, string>>;
}

/** What a command's run is handed: only what it needs to answer, nothing to send with. */
export interface Here {
  readonly who: Member;
  readonly guild: string;
  readonly place: string;
  readonly now: Date;
  /** The asker's date, YYYY-MM-DD, in her zone. */
  readonly today: string;
  readonly say: Speech;
  readonly defaults: Defaults;
  /** The ask as it was typed, before its signs were made alike: for words that are kept as they are. */
  readonly typed: Ask['words'];
  /** The names of the options that were given, and of those the ones given without their name. */
  readonly given: ReadonlySet<string>;
  readonly bare: ReadonlySet<string>;
  /** The ask written out in full, with other values for some options: what a choice stands for. */
  again(changes: Readonly<Record<string, unknown>>): string;
  /** True the first time today that this member is shown this caution. */
  firstToday(caution: string): boolean;
  /** What is kept; in a command that keeps something, bound to its transaction. */
  readonly facts: Facts;
  /** Every command there is, for the one that explains them. */
  readonly commands: CommandList;
}

/** The commands by name, each loaded when it is first asked for. */
export type CommandList = Readonly<Record<string, () => Promise<Command>>>;

/** A reply, or what was wrong with the ask; its sentence is made where all the others are. */
export type Answer = Reply | Wrong;

/** One thing a command does: declared once, and from that registered, read, completed and explained. */
export interface Form<O extends Options = Options> {
  /** The word after the command; empty for a command that does one thing. */
  readonly name: string;
  readonly summary: string;
  readonly options: O;
  /** Asks as a member would type them. The first is the one shown in mistakes. */
  readonly examples: readonly string[];
  readonly organisers?: boolean;
  readonly keeps?: boolean;
  /** How the answer to an event is kept: as the asker's, as nobody's (for it outlives her), or not at all. */
  readonly answerKept?: 'hers' | 'nobodys' | 'not';
  readonly audience?: 'everyone' | 'asker';
  run(values: Values<O>, here: Here): Answer | Promise<Answer>;
}

/** What it keeps is seen by others than the asker. */
export const keepsForAll = ({ keeps, audience }: Form): boolean => keeps === true && audience !== 'asker';

export interface Command {
  readonly name: string;
  readonly summary: string;
  readonly forms: readonly Form[];
  /** The form meant when none is named, where that is allowed. */
  readonly standing?: string;
}

/** Declares a form; its run sees the values in their own types. */
export const form = <const O extends Options>(declared: Form<O>): Form => declared as unknown as Form;
