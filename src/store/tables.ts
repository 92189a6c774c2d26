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

type ColumnOf<Table extends TableName> = keyof Tables[Table];
type Emptied<Table extends TableName> = Readonly<Partial<Record<ColumnOf<Table>, string | number | null>>>;

/** Whose a table's rows are, a member's own or nobody's, and what becomes of them when she is forgotten. */
export interface Held<Table extends TableName = TableName> {
  readonly table: Table;
  readonly of: 'member' | 'nobody';
  /** The columns that say whose a row is, where it is a member's. */
  readonly guild?: ColumnOf<Table>;
  readonly member?: ColumnOf<Table>;
  /** Columns that may name a member in somebody else's row: there she becomes nobody. */
  readonly also?: readonly ColumnOf<Table>[];
  /**
   * Her rows stay as nobody's when she is forgotten, so that what they add up to stays true; what stands from
   * then on in the columns that hold her name or words. Without it her rows go.
   */
  readonly stays?: Emptied<Table>;
  /** Columns that may repeat her name or words in anybody's row, and what stands there once she is forgotten. */
  readonly quotes?: Emptied<Table>;
  /** Columns whose text is JSON. */
  readonly json?: readonly ColumnOf<Table>[];
  /** Every column and what it holds, in words a member can read. */
  readonly columns: Readonly<Record<ColumnOf<Table>, string>>;
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
    stays: { reply: 'null' },
    quotes: { reply: 'null' },
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
