import type { SwapTables } from './swap-tables.ts';

/*
 * The tables as they are now, and for each what it holds of a member: what an export gives her
 * and what forgetting her removes are read from here.
 */

export interface Tables extends SwapTables {
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
      settings: 'units, seam, usable width, stitches, pace, hours, time zone',
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
