/** A cell of a table for a spreadsheet: words, a number, or nothing. */
export type Cell = string | number | null;

/**
 * A table as comma-separated values, RFC 4180: lines end in CR LF, a cell with a comma, a quote or a line break
 * is quoted, a quote doubled. Words that a spreadsheet would take for a formula get an apostrophe before them;
 * numbers are left as they are. Where a sign beyond plain ASCII is in it, a byte order mark leads, without which
 * some spreadsheets read such signs wrongly.
 *
 * @example
 * csv([['cloth', 'yards'], ['white, "soft"', 0.375]]) // "cloth,yards\r\n\"white, \"\"soft\"\"\",0.375\r\n"
 * csv([['=1+1']]) // "'=1+1\r\n"
 */
export function csv(rows: readonly (readonly Cell[])[]): string {
  return marked(rows.map(csvRow).join(''));
}

/**
 * A text that is made row by row, with the mark that it needs.
 *
 * @example
 * marked('Zoë,3\r\n') // "\ufeffZoë,3\r\n"
 */
export const marked = (text: string): string => (PLAIN.test(text) ? text : `\ufeff${text}`);

/**
 * One row, with its line's end.
 *
 * @example
 * csvRow(['blue, with "stars"', null, -3]) // "\"blue, with \"\"stars\"\"\",,-3\r\n"
 */
export const csvRow = (row: readonly Cell[]): string => `${row.map(written).join(',')}\r\n`;

const PLAIN = /^[\r\n -~]*$/;

/** What begins a formula in one spreadsheet or another, wide signs and leading blanks included. */
const FORMULA = /^[\s\u00a0\u3000]*[=+\-@|%\uff1d\uff0b\uff0d\uff20]|^[\t\r\n]/u;

function written(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(cell) : '';
  const safe = FORMULA.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]|^\s|\s$/u.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
