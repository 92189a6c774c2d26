import type { Reply, Table } from '../../chat/reply.ts';
import { escaped } from './escape.ts';
import { cutTo, LIMITS } from './limits.ts';

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
  let page: Page = { title, text: first, fields: [] };
  for (const field of fields) {
    if (!fits(page, field)) {
      pages.push(page);
      page = { title, text: '', fields: [] };
    }
    page = { ...page, fields: [...page.fields, field] };
  }
  return [...pages, page, ...more.map((text) => ({ title, text, fields: [] }))];
}

const sizeOf = ({ title, text, fields }: Page): number =>
  title.length + text.length + fields.reduce((sum, { name, value }) => sum + name.length + value.length, 0);

const fits = (page: Page, { name, value }: Field): boolean =>
  page.fields.length < LIMITS.fields &&
  sizeOf(page) + name.length + value.length <= LIMITS.embedsTogether - SPARE;

/** The sentences, the question, the cautions and, small, the notes; in pieces that each fit one embed. */
function textsOf(reply: Reply): string[] {
  const lines = [
    ...reply.lines.map(escaped),
    ...(reply.asks ? [`**${escaped(reply.asks)}**`] : []),
    ...reply.cautions.map((caution) => `Take care: ${escaped(caution)}`),
    ...reply.notes.map((note) => `-# ${escaped(note)}`),
  ];
  return inPieces(lines, LIMITS.embedText);
}

/** Lines put together as long as they fit; a line longer than a piece is broken at a blank. */
function inPieces(lines: readonly string[], most: number): string[] {
  const pieces: string[] = [];
  let piece = '';
  for (const line of lines.flatMap((one) => broken(one, most))) {
    const longer = piece === '' ? line : `${piece}\n${line}`;
    if (longer.length > most) {
      pieces.push(piece);
      piece = line;
    } else piece = longer;
  }
  return [...pieces, piece];
}

function broken(line: string, most: number): string[] {
  if (line.length <= most) return [line];
  const at = line.lastIndexOf(' ', most);
  const end = at > 0 ? at : most;
  return [line.slice(0, end), ...broken(line.slice(end).trimStart(), most)];
}

/** A row is a field: its first cell the name, the others under it; short ones stand side by side. */
function fieldsOf({ columns, rows }: Table): Field[] {
  return rows.map((row) => {
    const [name = '', ...cells] = row;
    const value = cells.map((cell, i) => cellWords(cell, columns[i + 1] ?? '', cells.length)).join('\n');
    return {
      name: cutTo(escaped(name) || NOTHING, LIMITS.fieldName),
      value: cutTo(value || NOTHING, LIMITS.fieldValue),
      inline: cells.every((cell) => cell.length <= SHORT),
    };
  });
}

const SHORT = 28;

/** With several cells under one name each says which it is. */
const cellWords = (cell: string, column: string, cells: number): string =>
  cells > 1 && column ? `${escaped(column)}: ${escaped(cell)}` : escaped(cell);
