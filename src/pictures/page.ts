import { lettered, SIZE, wrapped } from './lettering.ts';
import { INK, PAPER, SOFT_INK } from './palette.ts';
import { element, moved, svg } from './svg.ts';

/** The width of every picture, in pixels; the height follows from what is on it. */
export const WIDTH = 1200;
export const MARGIN = 48;
/** What a block may take of the width. */
export const ROOM = WIDTH - 2 * MARGIN;

/** A part of a picture, drawn from its own (0, 0). */
export interface Block {
  readonly height: number;
  readonly drawn: string;
}

const GAP = 36;

/** Blocks below one another on the page, with definitions that they use. */
export function page(blocks: readonly Block[], definitions = ''): string {
  const placed: string[] = [];
  let y = MARGIN;
  for (const { height, drawn } of blocks.filter((block) => block.height > 0)) {
    placed.push(moved(MARGIN, y, drawn));
    y += height + GAP;
  }
  const height = Math.ceil(y - GAP + MARGIN);
  const defs = definitions === '' ? '' : element('defs', {}, definitions);
  return svg(
    WIDTH,
    height,
    defs,
    element('rect', { width: WIDTH, height, fill: PAPER }),
    element('g', { fill: INK }, ...placed),
  );
}

const LEADING = 1.25;

interface LinesLook {
  readonly size?: number;
  readonly bold?: boolean;
  readonly fill?: string;
  readonly most?: number;
}

/** Lines of text, broken to the page's width. */
export function words(
  lines: readonly string[],
  { size = SIZE.text, bold = false, fill = INK, most = 4 }: LinesLook = {},
): Block {
  const broken = lines.flatMap((line) => wrapped(line, size, ROOM, { bold, most }));
  const step = size * LEADING;
  return {
    height: broken.length * step,
    drawn: broken.map((line, i) => lettered(line, 0, (i + 0.5) * step, { size, bold, fill })).join(''),
  };
}

export const heading = (title: string): Block => words([title], { size: SIZE.title, bold: true, most: 3 });

export const footing = (lines: readonly string[]): Block =>
  words(lines, { size: SIZE.small, fill: SOFT_INK, most: 3 });
