import { INK, SOFT_INK } from './palette.ts';
import { BOLD, type Paper, PLAIN } from './paper.ts';
import type { SheetColumn, SheetSection } from './plan-sheet-recipe.ts';

/** Where a table stands on the page, points. */
export interface TablePlace {
  readonly left: number;
  readonly width: number;
}

const SIZE = 10;
const HEAD_SIZE = 8;
/** Between the words of one column and the next. */
const GAP = 8;
/** Above and below the words of a row. */
const AIR = 4;
const BOX = 9;
/** The room that a box before the row takes. */
const BOX_ROOM = 18;

/** Between rows: lighter than the letters. */
const RULE = '#C9C4B8';

export const HEAD_HEIGHT = HEAD_SIZE + 9;

interface Cell {
  readonly column: SheetColumn;
  readonly words: string;
  readonly x: number;
  readonly width: number;
}

/** The cells of a row, each with its place. */
function cellsOf(
  { columns, boxes }: SheetSection,
  row: readonly string[],
  { left, width }: TablePlace,
): Cell[] {
  const before = boxes ? BOX_ROOM : 0;
  const shares = columns.reduce((sum, { share }) => sum + share, 0);
  let x = left + before;
  return columns.map((column, i) => {
    const room = ((width - before) * column.share) / shares;
    const cell = { column, words: row[i] ?? '', x, width: room - GAP };
    x += room;
    return cell;
  });
}

/** No sign that is written here is wider, in sizes; measured ones are all narrower. */
const WIDEST = 1.1;

/** How high a text is, its lines broken to a width. The font and size are set already. */
export function wordsHeight(paper: Paper, words: string, size: number, width: number): number {
  // Measuring a text takes long; one that fits on a line whatever its signs are need not be.
  const oneLine = words.length * size * WIDEST <= width && !words.includes('\n');
  return words === '' || oneLine ? paper.currentLineHeight(true) : paper.heightOfString(words, { width });
}

/** How high a row is with its words broken to their columns. */
export function rowHeight(
  paper: Paper,
  section: SheetSection,
  row: readonly string[],
  place: TablePlace,
): number {
  paper.font(PLAIN).fontSize(SIZE);
  const heights = cellsOf(section, row, place).map(({ words, width }) =>
    wordsHeight(paper, words, SIZE, width),
  );
  return Math.max(BOX, ...heights) + 2 * AIR;
}

/** The columns' titles. */
export function headRow(paper: Paper, section: SheetSection, place: TablePlace, y: number): void {
  paper.font(PLAIN).fontSize(HEAD_SIZE).fillColor(SOFT_INK);
  for (const { column, x, width } of cellsOf(section, [], place))
    paper.text(column.title, x, y, { width, align: alignOf(column), lineBreak: false });
  rule(paper, place, y + HEAD_HEIGHT - 3, INK, 0.8);
}

const alignOf = ({ right, box }: SheetColumn) => (right ? 'right' : box ? 'center' : 'left');

/** Where a row stands on the page. */
export interface RowPlace {
  readonly y: number;
  readonly height: number;
}

/** One row: its box to tick, its words, boxes and lines to write on. */
export function tableRow(
  paper: Paper,
  section: SheetSection,
  row: readonly string[],
  place: TablePlace,
  { y, height }: RowPlace,
): void {
  if (section.boxes) box(paper, place.left + 1, y + AIR + 1);
  for (const { column, words, x, width } of cellsOf(section, row, place)) {
    if (column.box) box(paper, x + (width - BOX) / 2, y + AIR + 1);
    else if (column.line) rule(paper, { left: x, width }, y + height - AIR, SOFT_INK, 0.5);
    else write(paper, words, { x, y: y + AIR, width, align: alignOf(column), font: PLAIN });
  }
  rule(paper, place, y + height, RULE, 0.4);
}

/** The last row, which adds the others up. */
export function totalRow(
  paper: Paper,
  section: SheetSection,
  row: readonly string[],
  place: TablePlace,
  { y }: RowPlace,
): void {
  rule(paper, place, y, INK, 0.8);
  for (const { column, words, x, width } of cellsOf(section, row, place))
    write(paper, words, { x, y: y + AIR, width, align: alignOf(column), font: BOLD });
}

interface Writing {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly align: 'left' | 'right' | 'center';
  readonly font: string;
}

function write(paper: Paper, words: string, { x, y, width, align, font }: Writing): void {
  if (words === '') return;
  paper.font(font).fontSize(SIZE).fillColor(INK).text(words, x, y, { width, align });
}

function box(paper: Paper, x: number, y: number): void {
  paper.lineWidth(0.8).strokeColor(INK).rect(x, y, BOX, BOX).stroke();
}

function rule(paper: Paper, { left, width }: TablePlace, y: number, colour: string, thick: number): void {
  paper
    .lineWidth(thick)
    .strokeColor(colour)
    .moveTo(left, y)
    .lineTo(left + width, y)
    .stroke();
}
