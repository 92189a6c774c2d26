import type { Kind } from '../calculator/layouts/forms.ts';
import type { Person } from './challenge-facts.ts';

/*
 * What is kept of a block of the month: a quilt, or a number of blocks, shared out over weeks or months so that
 * each share is the same length of seam, and who has finished which share.
 */

/** How far one block's day is from the next one's. */
export type Every = 'day' | 'week' | 'two-weeks' | 'month';

export interface MonthTerms {
  readonly name: string;
  /** What is shared out, as it was asked for. */
  readonly of: string;
  /** The finished side of a patch, inches. */
  readonly size: number;
  readonly first: string;
  readonly every: Every;
  readonly place: string;
}

export interface Month extends MonthTerms {
  readonly guild: string;
  /** Counted in each guild from 1. */
  readonly number: number;
  readonly open: boolean;
}

/** Patches to cut for a block: what they are for, their shape, how many. */
export interface BlockPieces {
  readonly role: string;
  readonly kind: Kind;
  readonly count: number;
}

/** One share, and the day it opens; a catch-up has nothing to sew. */
export interface MonthBlock {
  /** In order from 1; catch-ups are counted too. */
  readonly slot: number;
  readonly opens: string;
  /** The block's number; null for a catch-up. */
  readonly block: number | null;
  /** Which part of the whole it is, in words. */
  readonly words: string;
  readonly pieces: readonly BlockPieces[];
  /** Seams within it, and those that join it to what is sewn already. */
  readonly inside: number;
  readonly joining: number;
  /** Inches, when all until then is sewn; 0 where blocks are not joined yet. */
  readonly width: number;
  readonly height: number;
}

/** A block that a member has finished. */
export interface Finished {
  readonly block: number;
  readonly member: string;
  readonly name: string;
}

type Which = Pick<Month, 'guild' | 'number'>;

export interface MonthsKept {
  add(guild: string, terms: MonthTerms, blocks: readonly MonthBlock[]): Promise<Month>;
  /** The guild's, open ones first, then the newest first. */
  all(guild: string): Promise<Month[]>;
  one(guild: string, number: number): Promise<Month | undefined>;
  turn(of: Which, open: boolean): Promise<Month>;
  blocks(of: Which): Promise<MonthBlock[]>;
  /** Says that a member has finished a block; false when she had said so before. */
  finish(of: Which, block: number, who: Person, at: Date): Promise<boolean>;
  /** Takes that back, which is kept too; false when she had not said so. */
  unfinish(of: Which, block: number, member: string, at: Date): Promise<boolean>;
  /** Who has finished what, by block and then in the order it was said. */
  finished(of: Which): Promise<Finished[]>;
}

declare module '../chat/facts.ts' {
  interface Facts {
    readonly months: MonthsKept;
  }
}
