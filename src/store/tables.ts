/*
 * The tables as they are now, and for each what it holds of a member: what an export gives her
 * and what forgetting her removes are read from here.
 */

export interface Tables {
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

/** Whose a table's rows are: a member's own, or nobody's. */
export interface Held<Table extends TableName = TableName> {
  readonly table: Table;
  readonly of: 'member' | 'nobody';
  /** The columns that say whose a row is, where it is a member's. */
  readonly guild?: keyof Tables[Table];
  readonly member?: keyof Tables[Table];
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
];
