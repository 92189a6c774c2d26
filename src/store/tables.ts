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
];
