import { lettered, SIZE, wrapped } from './lettering.ts';
import { type Block, ROOM } from './page.ts';
import { type Attributes, element, moved } from './svg.ts';

/** One line of a legend: a sample, so many pixels wide and 56 high from (0, 0), and what it stands for. */
export interface Entry {
  readonly sample: string;
  readonly words: string;
}

export const SAMPLE = { width: 84, height: 56 } as const;
const ROW = 74;
const COLUMN_GAP = 32;
const TEXT_AT = SAMPLE.width + 22;

/** Entries in two columns; in one where the words need the room. */
export function legend(entries: readonly Entry[]): Block {
  const half = (ROOM - COLUMN_GAP) / 2;
  const fits = entries.every(({ words }) => wrapped(words, SIZE.text, half - TEXT_AT).length === 1);
  const columns = fits ? 2 : 1;
  const room = (fits ? half : ROOM) - TEXT_AT;
  const drawn = entries.map(({ sample, words }, i) => {
    const [line = ''] = wrapped(words, SIZE.text, room, { most: 1 });
    const [x, y] = [(i % columns) * (half + COLUMN_GAP), Math.floor(i / columns) * ROW];
    return moved(x, y, sample, lettered(line, TEXT_AT, SAMPLE.height / 2));
  });
  return { height: Math.ceil(entries.length / columns) * ROW - (ROW - SAMPLE.height), drawn: drawn.join('') };
}

/** A sample of a filled patch; on it may stand the letter or number that patches of its role carry. */
export const swatch = (fill: string, ink: string, mark = ''): string =>
  element('rect', { ...SAMPLE, rx: 8, fill, stroke: ink, 'stroke-width': 2 }) + mark;

/** A sample of a line. */
export const lineSample = (look: Attributes): string =>
  element('path', { d: `M0 ${SAMPLE.height / 2}h${SAMPLE.width}`, fill: 'none', ...look });

/** The middle of a sample. */
export const MIDDLE = { x: SAMPLE.width / 2, y: SAMPLE.height / 2 } as const;
