import type { ChallengeTables } from './challenge-tables.ts';
import type { MonthTables } from './month-tables.ts';
import type { SwapTables } from './swap-tables.ts';

/*
 * The tables as they are now, and for each what it holds of a member: what an export gives her
 * and what forgetting her removes are read from here.
 */

export interface Tables extends ChallengeTables, MonthTables, SwapTables {
  steps: { step: number; name: string; done_at: string };
  defaults: { guild: string; member: string; settings: string; changed_at: string };
  answered: {
    guild: string;
    event: string;
    member: string;
    command: string;
    reply: string;
    answered_at: string;
  };
  plans: {
    guild: string;
    key: string;
    name: string;
    owner: string;
    owner_name: string;
    wish: string;
    kept_on: string;
    changed_on: string;
  };
  notes: {
    platform: string;
    key: string;
    guild: string;
    member: string;
    value: string;
    kept_at: string;
  };
}

export type TableName = keyof Tables;

/** Whose a table's rows are, a member's own or nobody's, and what becomes of them when she is forgotten. */
export interface Held<Table extends TableName = TableName> {
  readonly table: Table;
  readonly of: 'member' | 'nobody';
  /** The columns that say whose a row is, where it is a member's. */
  readonly guild?: keyof Tables[Table];
  readonly member?: keyof Tables[Table];
  /** Other columns that may name a member. */
  readonly others?: readonly (keyof Tables[Table])[];
  /** Forgetting her removes her rows; or leaves them as nobody's, so that totals stay true. */
  readonly forget?: 'remove' | 'disown';
  /** What she wrote herself: emptied where her rows are left as nobody's. */
  readonly words?: readonly (keyof Tables[Table])[];
  /** Columns that may repeat a member's name or words in anybody's row of her guild: emptied there too. */
  readonly quotes?: readonly (keyof Tables[Table])[];
  /** Columns whose text is JSON. */
  readonly json?: readonly (keyof Tables[Table])[];
  /** Every column and what it holds, in words a member can read. */
  readonly columns: Readonly<Record<keyof Tables[Table], string>>;
}

const held = <Table extends TableName>(of: Held<Table>): Held => of as unknown as Held;

export const heldTables: readonly Held[] = [
  held<'steps'>({
    table: 'steps',
    of: 'nobody',
    columns: { step: 'which change of the tables', name: 'what it changed', done_at: 'when' },
  }),
  held<'defaults'>({
    table: 'defaults',
    of: 'member',
    guild: 'guild',
    member: 'member',
    json: ['settings'],
    columns: {
      guild: 'the guild',
      member: 'who set them; empty for what the guild set for all',
      settings: 'units, seam, usable width, stitches, pace, hours, time zone, reminders',
      changed_at: 'when they were last set',
    },
  }),
  held<'answered'>({
    table: 'answered',
    of: 'member',
    guild: 'guild',
    member: 'member',
    // That an event was answered stays, or it would have its effect again; others' replies may name her.
    forget: 'disown',
    words: ['reply'],
    quotes: ['reply'],
    json: ['reply'],
    columns: {
      guild: 'the guild',
      event: 'the message that was answered',
      member: 'who asked',
      command: 'what was asked for',
      reply: 'the reply that was given',
      answered_at: 'when',
    },
  }),
  held<'plans'>({
    table: 'plans',
    of: 'member',
    guild: 'guild',
    member: 'owner',
    json: ['wish'],
    columns: {
      guild: 'the guild',
      key: 'the plan’s name as it is compared',
      name: 'the plan’s name',
      owner: 'who keeps it',
      owner_name: 'her name, as it was then',
      wish: 'layout, size, cloths, seam, width, spare, method, hours',
      kept_on: 'the day it was kept',
      changed_on: 'the day it was last changed',
    },
  }),
  held<'notes'>({
    table: 'notes',
    of: 'member',
    guild: 'guild',
    member: 'member',
    columns: {
      platform: 'which platform it is for',
      key: 'what it is about',
      guild: 'the guild; empty where no member’s',
      member: 'whose ask it came from; empty where nobody’s',
      value: 'what a button stands for, which message stands where',
      kept_at: 'when',
    },
  }),
  held<'challenges'>({
    table: 'challenges',
    of: 'nobody',
    columns: {
      guild: 'the guild',
      number: 'which challenge',
      name: 'what it is called',
      counting: 'what is counted',
      rounds: 'its rounds, or how many a side',
      size: 'the side of a patch, in inches',
      goal: 'the goal together',
      each: 'the goal for each',
      first: 'its first day',
      last: 'its last day',
      place: 'where it is held',
      who: 'who may log',
      open: 'whether it is open',
      opened_at: 'when it was opened',
      total: 'how many so far',
      lines: 'how many lines its book has',
      plan: 'which plan is sewn',
    },
  }),
  held<'challenge_lines'>({
    table: 'challenge_lines',
    of: 'member',
    guild: 'guild',
    member: 'member',
    others: ['by'],
    forget: 'disown',
    words: ['note', 'picture'],
    columns: {
      guild: 'the guild',
      challenge: 'which challenge',
      number: 'which line of its book',
      kind: 'what the line does',
      member: 'whose it is',
      by: 'who wrote it',
      day: 'the day it was sewn',
      pieces: 'how many',
      minutes: 'how long it took',
      note: 'what was noted',
      picture: 'where a picture of it is',
      of: 'the line it takes back or stands in place of',
      at: 'when it was written',
    },
  }),
  held<'challenge_parts'>({
    table: 'challenge_parts',
    of: 'member',
    guild: 'guild',
    member: 'member',
    forget: 'disown',
    words: ['name'],
    columns: {
      guild: 'the guild',
      challenge: 'which challenge',
      member: 'who takes part',
      since: 'from which line of the book on',
      name: 'by what name',
      joined: 'whether she has joined',
      pieces: 'how many so far',
      logs: 'in how many logs',
    },
  }),
  held<'challenge_days'>({
    table: 'challenge_days',
    of: 'nobody',
    columns: {
      guild: 'the guild',
      challenge: 'which challenge',
      day: 'the day',
      pieces: 'how many that day',
    },
  }),
  held<'months'>({
    table: 'months',
    of: 'nobody',
    columns: {
      guild: 'the guild',
      number: 'which block of the month',
      name: 'what it is called',
      of: 'what is shared out',
      size: 'the side of a patch, in inches',
      first: 'its first day',
      every: 'how far apart its blocks are',
      place: 'where it is held',
      open: 'whether it is open',
      opened_at: 'when it was opened',
    },
  }),
  held<'month_blocks'>({
    table: 'month_blocks',
    of: 'nobody',
    columns: {
      guild: 'the guild',
      month: 'which block of the month',
      slot: 'its place in the order',
      opens: 'the day it opens',
      block: 'the block’s number',
      words: 'which part it is',
      pieces: 'what is to be cut',
      inside: 'seams within it',
      joining: 'seams that join it',
      width: 'how wide it is by then, in inches',
      height: 'how high it is by then, in inches',
    },
  }),
  held<'month_finished'>({
    table: 'month_finished',
    of: 'member',
    guild: 'guild',
    member: 'member',
    forget: 'disown',
    words: ['name'],
    columns: {
      guild: 'the guild',
      month: 'which block of the month',
      block: 'the block’s number',
      member: 'who has finished it',
      name: 'by what name',
      at: 'when she said so',
      until: 'when she took it back',
    },
  }),
  held<'swaps'>({
    table: 'swaps',
    of: 'nobody',
    guild: 'guild',
    columns: {
      guild: 'the guild',
      number: 'which swap',
      name: 'what it is called',
      place: 'where it is held',
      rules: 'its rules',
      first: 'its first day',
      last: 'its last day',
      share: 'how much less than she sends somebody may receive',
      each: 'pieces from each to every other, in an even swap',
      good: 'what is swapped, in an even swap',
      state: 'whether it is open',
    },
  }),
  held<'swap_people'>({
    table: 'swap_people',
    of: 'member',
    guild: 'guild',
    member: 'member',
    columns: {
      guild: 'the guild',
      swap: 'which swap',
      member: 'who takes part',
      name: 'by what name',
      order: 'in which place',
      state: 'whether she is in it',
    },
  }),
  held<'swap_entries'>({
    table: 'swap_entries',
    of: 'member',
    guild: 'guild',
    member: 'member',
    json: ['words'],
    columns: {
      guild: 'the guild',
      swap: 'which swap',
      number: 'which line of it',
      member: 'whose it is',
      side: 'whether it is offered or wished for',
      count: 'how many',
      good: 'of what',
      typed: 'as it was typed',
      words: 'what tells colour and print',
    },
  }),
  held<'swap_parcels'>({
    table: 'swap_parcels',
    of: 'member',
    guild: 'guild',
    member: 'member',
    others: ['to'],
    forget: 'disown',
    words: ['typed'],
    columns: {
      guild: 'the guild',
      swap: 'which swap',
      number: 'which parcel of it',
      member: 'who sends it',
      to: 'who receives it',
      entry: 'the line that it is of',
      wish: 'the line that it meets',
      good: 'of what',
      count: 'how many',
      typed: 'as it was offered',
      sent_at: 'when it was sent',
      received_at: 'when it came',
    },
  }),
];
