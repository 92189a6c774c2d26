import { type Attributes, element, escaped } from './svg.ts';

/** The letters of every picture: one font, brought along, so that a picture is the same on every machine. */
export const FONT = 'DejaVu Sans Condensed';

/** The sizes in use, in pixels of a picture 1200 wide. On a phone 400 wide the smallest is 13 high. */
export const SIZE = { title: 46, text: 42, small: 40 } as const;

/** Advance widths of the signs from blank to tilde, in thousandths of the size, read from the font files. */
const PLAIN = widths(
  '286 360 414 754 572 855 702 247 351 351 450 754 286 325 286 303 572 572 572 572 572 572 572 572 572 572 303 303 754 754 754 478 900 615 617 628 693 568 518 697 677 265 265 590 501 776 673 708 542 708 625 571 549 659 615 890 616 549 616 351 303 351 754 450 450 551 571 495 571 554 316 571 570 250 250 521 250 876 570 550 571 571 370 469 353 570 532 736 532 532 472 572 303 572 754',
);
const BOLD = widths(
  '313 410 469 754 626 901 785 275 411 411 470 754 342 374 342 329 626 626 626 626 626 626 626 626 626 626 360 360 754 754 754 522 900 696 686 660 747 615 615 738 753 334 334 697 573 896 753 765 659 765 693 648 614 730 696 993 694 651 652 411 329 411 754 450 450 607 644 533 644 610 391 644 641 308 308 598 308 938 641 618 644 644 444 536 430 641 586 831 580 586 523 641 329 641 754',
);

function widths(list: string): readonly number[] {
  return list.split(' ').map(Number);
}

const FIRST = 32;
/** A sign beyond the plain ones is taken as wide as the widest of the common ones. */
const OTHER = 900;

/**
 * How wide a line of text is, in pixels.
 *
 * @example
 * widthOf('1 1/2 in', 40) // 136.44
 */
export function widthOf(text: string, size: number, bold = false): number {
  const table = bold ? BOLD : PLAIN;
  let total = 0;
  for (const sign of text.replaceAll(KEPT, ' ')) total += table[(sign.codePointAt(0) ?? 0) - FIRST] ?? OTHER;
  return (total * size) / 1000;
}

/**
 * Breaks a text at blanks into lines that are no wider than `room` pixels. A word that is wider by itself is
 * cut short; past `most` lines the rest is, too.
 *
 * @example
 * wrapped('one two three', 40, 180) // ["one two","three"]
 */
export function wrapped(text: string, size: number, room: number, { bold = false, most = 9 } = {}): string[] {
  const lines: string[] = [];
  for (const word of text.replace(TOGETHER, KEPT).split(/ +/)) {
    const line = lines.at(-1);
    const longer = line === undefined ? word : `${line} ${word}`;
    if (line !== undefined && widthOf(longer, size, bold) <= room) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  const kept = lines.slice(0, most);
  if (lines.length > most) kept[most - 1] += ' …';
  return kept.map((line) => shortened(line.replaceAll(KEPT, ' '), size, room, bold));
}

/** A blank at which a line is not broken: within a mixed number, a size, and before a unit. */
const KEPT = '\u00a0';
const TOGETHER = /(?<=\d) (?=\d+\/\d|x \d|in\b|cm\b|mm\b|yd\b|m\b|%)|(?<=\d x) (?=\d)/g;

function shortened(line: string, size: number, room: number, bold: boolean): string {
  if (widthOf(line, size, bold) <= room) return line;
  const signs = [...line.replace(/ ?…$/, '')];
  while (signs.length > 0 && widthOf(`${signs.join('')}…`, size, bold) > room) signs.pop();
  return `${signs.join('').trimEnd()}…`;
}

export interface TextLook {
  readonly size?: number;
  readonly bold?: boolean;
  readonly fill?: string;
  readonly anchor?: 'start' | 'middle' | 'end';
  /** Degrees about the text's own place. */
  readonly turned?: number;
}

/** From the middle of a line of capitals and figures down to its foot, in parts of the size. */
const HALF_CAPITAL = 0.365;

/** A line of text whose middle line is at y. */
export function lettered(
  text: string,
  x: number,
  y: number,
  { size = SIZE.text, bold = false, fill, anchor = 'start', turned }: TextLook = {},
): string {
  const look: Attributes = {
    x,
    y: y + size * HALF_CAPITAL,
    'font-family': FONT,
    'font-size': size,
    'font-weight': bold ? 'bold' : undefined,
    'text-anchor': anchor === 'start' ? undefined : anchor,
    fill,
    transform: turned ? `rotate(${turned} ${x.toFixed(2)} ${y.toFixed(2)})` : undefined,
  };
  return element('text', look, escaped(text));
}
