/** One figure of a reply. Lengths are inches, areas square inches, times minutes, counts plain numbers. */
export interface Figure {
  readonly value: number | string | readonly number[];
  readonly unit: string;
}

export interface Table {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** What a button or a numbered reaction stands for: the ask that pressing it is. */
export interface ReplyChoice {
  readonly label: string;
  readonly ask: string;
  /** Anybody may press it, not only the one who asked. */
  readonly open?: boolean;
  /**
   * Options of the ask to be filled in first, where the platform has forms: their names. What is filled in takes
   * the place of what the ask says; the ask stands by itself where there are no forms.
   */
  readonly fillIn?: readonly string[];
}

/**
 * What a picture or file is made from: which drawing, and plain data for it. It can be kept with a reply, and
 * the same picture is drawn from it again.
 */
export interface Recipe {
  readonly draw: string;
  readonly [ingredient: string]: unknown;
}

/** A picture or file of a reply: made only where somebody will look at it. The name's ending tells its kind. */
export interface Picture {
  readonly name: string;
  readonly alt: string;
  readonly of: Recipe;
}

export interface ReplyError {
  readonly code: string;
  readonly message: string;
}

/** An ask whose answer stands in a place, and no longer says how things are. */
export interface Renewal {
  readonly ask: string;
  readonly place: string;
}

/** The answer to one ask, before a platform gives it its own look. */
export interface Reply {
  /** The command that answered; empty where none did. */
  readonly command: string;
  readonly title: string;
  /** The sentences, the number first. */
  readonly lines: readonly string[];
  readonly figures: Readonly<Record<string, Figure>>;
  readonly table: Table | null;
  /** What was assumed, and what else to know. */
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
  /** The one question that must be answered first. */
  readonly asks: string | null;
  readonly choices: readonly ReplyChoice[];
  readonly pictures: readonly Picture[];
  readonly error: ReplyError | null;
  /** Who is meant to read it. */
  readonly audience: 'everyone' | 'asker';
  /** Where the platform can: one standing message by this name in the place, changed and not repeated. */
  readonly standing?: string;
  /** What stands in a place may be out of date now: the platform asks this as `NOBODY` and puts its answer there. */
  readonly renews?: Renewal;
}

const EMPTY: Reply = {
  command: '',
  title: '',
  lines: [],
  figures: {},
  table: null,
  notes: [],
  cautions: [],
  asks: null,
  choices: [],
  pictures: [],
  error: null,
  audience: 'everyone',
};

/** A reply from the parts that it has. */
export const reply = (parts: Partial<Reply>): Reply => ({ ...EMPTY, ...parts });

export const inches = (value: number): Figure => ({ value, unit: 'in' });
export const squareInches = (value: number): Figure => ({ value, unit: 'sq in' });
export const minutes = (value: number): Figure => ({ value, unit: 'min' });
export const count = (value: number | readonly number[]): Figure => ({ value, unit: '' });
export const yards = (value: number): Figure => ({ value, unit: 'yd' });
export const day = (value: string): Figure => ({ value, unit: 'date' });

/** The reply document that other programs read. */
export interface ReplyDocument {
  readonly command: string;
  readonly title: string;
  readonly text: string;
  readonly figures: Readonly<Record<string, Figure>>;
  readonly table: Table | null;
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
  readonly asks: string | null;
  readonly choices: readonly ReplyChoice[];
  readonly pictures: readonly { readonly name: string; readonly alt: string; readonly file: string | null }[];
  readonly error: ReplyError | null;
}

/** The reply as a document; `files` names where each picture was written, if it was. */
export function document(of: Reply, files: ReadonlyMap<string, string> = new Map()): ReplyDocument {
  return {
    command: of.command,
    title: of.title,
    text: of.lines.join('\n'),
    figures: of.figures,
    table: of.table,
    notes: of.notes,
    cautions: of.cautions,
    asks: of.asks,
    choices: of.choices.map(({ label, ask }) => ({ label, ask })),
    pictures: of.pictures.map(({ name, alt }) => ({ name, alt, file: files.get(name) ?? null })),
    error: of.error,
  };
}
