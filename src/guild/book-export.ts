import { type Cell, csvRow } from '../chat/csv.ts';
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
    head: () => csvRow(COLUMNS),
    row: (row) => csvRow(COLUMNS.map((column) => row[column])),
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
