import type { Reply, Table } from '../../chat/reply.ts';
import { escaped } from './escape.ts';
import { cutTo, inPieces, LIMITS } from './limits.ts';

/** A field of an embed. */
export interface Field {
  readonly name: string;
  readonly value: string;
  readonly inline: boolean;
}

/** One page of a reply: what fits into one message. */
export interface Page {
  readonly title: string;
  readonly text: string;
  readonly fields: readonly Field[];
}

/** A zero-width space: the platform takes no empty field. */
const NOTHING = '\u200b';

/** Kept free for the page's number and the marks of a cut. */
const SPARE = 64;

/** A reply cut into pages; nothing is dropped, what does not fit one message goes on the next. */
export function pagesOf(reply: Reply): Page[] {
  const title = cutTo(escaped(reply.title), LIMITS.embedTitle);
  const texts = textsOf(reply);
  const fields = reply.table ? fieldsOf(reply.table) : [];
  const [first = '', ...more] = texts;
  const pages: Page[] = [];
  let here: Field[] = [];
  let size = title.length + first.length;
  for (const field of fields) {
    const longer = field.name.length + field.value.length;
    if (here.length === LIMITS.fields || size + longer > MOST_ON_PAGE) {
      pages.push({ title, text: pages.length === 0 ? first : '', fields: here });
      here = [];
      size = title.length;
    }
    here.push(field);
    size += longer;
  }
  pages.push({ title, text: pages.length === 0 ? first : '', fields: here });
  return [...pages, ...more.map((text) => ({ title, text, fields: [] }))];
}

const MOST_ON_PAGE = LIMITS.embedsTogether - SPARE;

/** The sentences, the question, the cautions and, small, the notes; in pieces that each fit one embed. */
function textsOf(reply: Reply): string[] {
  const whole = escaped(reply.title);
  const lines = [
    // A title that has to be cut is read whole here.
    ...(whole.length > LIMITS.embedTitle ? [`**${whole}**`] : []),
    ...reply.lines.map(escaped),
    ...(reply.asks ? [`**${escaped(reply.asks)}**`] : []),
    ...reply.cautions.map((caution) => `Take care: ${escaped(caution)}`),
    ...reply.notes.map((note) => `-# ${escaped(note)}`),
  ];
  return puttingTogether(lines, LIMITS.embedText);
}

/** Lines put together as long as they fit; a line longer than a piece is broken. */
function puttingTogether(lines: readonly string[], most: number): string[] {
  const pieces: string[] = [];
  let piece = '';
  for (const line of lines.flatMap((one) => inPieces(one, most))) {
    const longer = piece === '' ? line : `${piece}\n${line}`;
    if (longer.length > most) {
      pieces.push(piece);
      piece = line;
    } else piece = longer;
  }
  return [...pieces, piece];
}

/**
 * A row is a field: its first cell the name, the others under it; where all are short they stand side by side. A
 * row that is too long for one field goes on in the next.
 */
function fieldsOf({ columns, rows }: Table): Field[] {
  const inline = rows.every(([, ...cells]) => cells.every((cell) => cell.length <= SHORT));
  return rows.flatMap((row) => {
    const [first = '', ...cells] = row;
    const name = escaped(first) || NOTHING;
    const said = cells.map((cell, i) => cellWords(cell, columns[i + 1] ?? '', cells.length));
    const values = inPieces(
      [...(name.length > LIMITS.fieldName ? [name] : []), ...said].join('\n'),
      LIMITS.fieldValue,
    );
    return values.map((value) => ({
      name: cutTo(name, LIMITS.fieldName),
      value: value || NOTHING,
      inline,
    }));
  });
}

const SHORT = 28;

/** With several cells under one name each says which it is. */
const cellWords = (cell: string, column: string, cells: number): string =>
  cells > 1 && column ? `${escaped(column)}: ${escaped(cell)}` : escaped(cell);
