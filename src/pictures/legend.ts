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

/** Entries in two columns; one whose words need the room has a row of its own. */
export function legend(entries: readonly Entry[]): Block {
  const half = (ROOM - COLUMN_GAP) / 2;
  let [row, column] = [0, 0];
  const drawn = entries.map(({ sample, words }) => {
    const long = wrapped(words, SIZE.text, half - TEXT_AT).length > 1;
    if (long && column === 1) [row, column] = [row + 1, 0];
    const [line = ''] = wrapped(words, SIZE.text, (long ? ROOM : half) - TEXT_AT, { most: 1 });
    const placed = moved(
      column * (half + COLUMN_GAP),
      row * ROW,
      sample,
      lettered(line, TEXT_AT, SAMPLE.height / 2),
    );
    [row, column] = long || column === 1 ? [row + 1, 0] : [row, 1];
    return placed;
  });
  const rows = row + column;
  return { height: rows === 0 ? 0 : rows * ROW - (ROW - SAMPLE.height), drawn: drawn.join('') };
}

/** A sample of a filled patch; on it may stand the letter or number that patches of its role carry. */
export const swatch = (fill: string, ink: string, mark = ''): string =>
  element('rect', { ...SAMPLE, rx: 8, fill, stroke: ink, 'stroke-width': 2 }) + mark;

/** A sample of a line. */
export const lineSample = (look: Attributes): string =>
  element('path', { d: `M0 ${SAMPLE.height / 2}h${SAMPLE.width}`, fill: 'none', ...look });

/** The middle of a sample. */
export const MIDDLE = { x: SAMPLE.width / 2, y: SAMPLE.height / 2 } as const;
