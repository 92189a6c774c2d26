import type { Challenge, ChallengesKept } from './challenge-facts.ts';

export type ExportFormat = 'csv' | 'json';

/** Lines are read so many at a time, so that a book of any length takes the same room. */
const PAGE = 250;

const COLUMNS = [
  'number',
  'day',
  'kind',
  'member',
  'name',
  'by',
  'pieces',
  'minutes',
  'note',
  'picture',
  'of',
  'at',
] as const;

type Cell = string | number | null;
type Row = Readonly<Record<(typeof COLUMNS)[number], Cell>>;

/** One format: what stands before the lines, what each becomes, what stands between them and after. */
interface Writing {
  head(of: Challenge): string;
  row(row: Row): string;
  readonly between: string;
  readonly tail: string;
}

const WRITINGS: Readonly<Record<ExportFormat, Writing>> = {
  csv: {
    head: () => `${COLUMNS.join(',')}\r\n`,
    row: (row) => `${COLUMNS.map((column) => csvCell(row[column])).join(',')}\r\n`,
    between: '',
    tail: '',
  },
  json: {
    head: (of) => `{"challenge":${JSON.stringify(termsOf(of))},"lines":[\n`,
    row: (row) => JSON.stringify(row),
    between: ',\n',
    tail: '\n]}\n',
  },
};

const termsOf = ({ guild: _, lines: __, ...terms }: Challenge): object => terms;

/**
 * One cell as spreadsheets read it. A text that would be taken for a formula is marked as text: nothing that a
 * member typed is worked out.
 *
 * @example
 * csvCell('blue, with "stars"') // "\"blue, with \"\"stars\"\"\""
 * csvCell('=1+1') // "'=1+1"
 * csvCell(-3) // "-3"
 */
export function csvCell(value: Cell): string {
  if (value === null) return '';
  if (typeof value === 'number') return String(value);
  const text = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** A challenge's whole book as text, piece by piece, in the order of its lines. */
export async function* exported(
  format: ExportFormat,
  of: Challenge,
  kept: ChallengesKept,
): AsyncGenerator<string> {
  const writing = WRITINGS[format];
  yield writing.head(of);
  let before = '';
  for (let after = 0; ; ) {
    const lines = await kept.lines(of, after, PAGE);
    if (lines.length === 0) break;
    let text = '';
    for (const line of lines) {
      text += before + writing.row(line);
      before = writing.between;
    }
    yield text;
    after = lines.at(-1)!.number;
  }
  yield writing.tail;
}
