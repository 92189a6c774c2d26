import type { Layout } from '../src/calculator/layouts/layout.ts';
import { tally } from '../src/calculator/layouts/tally.ts';
import type { Here } from '../src/chat/command.ts';
import { bare, type Option } from '../src/chat/option.ts';
import { size } from '../src/chat/option-kinds.ts';
import { type Figure, inches } from '../src/chat/reply.ts';
import { isInfantBed, type Size } from '../src/measure/size.ts';
import { capital } from '../src/measure/speech.ts';
import { cribCaution } from './cautions.ts';
import type { Counted } from './layouts.ts';

/** In place of a number: as many as make a quilt of this size. */
export const quiltOption: Option<Size, false> = bare(
  size('In place of a number: as many as make a quilt of this size'),
);

/** What a wish's words need beside the layouts. */
export interface Wished {
  readonly quilt: Size;
  readonly edge: number;
  readonly here: Here;
}

export interface Noun {
  readonly one: string;
  readonly more: string;
}

/** A layout of a wish, counted. */
export const counted = <L extends Layout>(
  layout: L,
  { width, height }: { readonly width: number; readonly height: number },
  edge: number,
): Counted<L> => ({
  layout,
  counted: tally(layout.patches),
  width: width * edge,
  height: height * edge,
  edge,
});

/** How much is over, or short, on each side: inches. */
export interface Margins {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

interface Wide {
  readonly width: number;
  readonly height: number;
}

/** How much of the larger there is on each side of the smaller, which lies in its middle. */
export function margins(larger: Wide, smaller: Wide): Margins {
  const [sides, ends] = [(larger.width - smaller.width) / 2, (larger.height - smaller.height) / 2];
  return { left: sides, right: sides, top: ends, bottom: ends };
}

/** Under this, in inches, nothing needs to be done. */
const NOTHING = 1 / 100;

/** "Trim 1 1/4 in left and right, 2 in top and bottom.", or that it just fits. */
export function beside(what: string, { left, right, top, bottom }: Margins, { say }: Here): string {
  const pair = (one: number, other: number, names: readonly [string, string]): string[] => {
    if (Math.abs(one - other) < NOTHING)
      return one > NOTHING ? [`${say.plain(round(one))} ${names.join(' and ')}`] : [];
    return [one, other].flatMap((side, i) =>
      side > NOTHING ? [`${say.plain(round(side))} ${names[i]}`] : [],
    );
  };
  const parts = [...pair(left, right, ['left', 'right']), ...pair(top, bottom, ['top', 'bottom'])];
  return parts.length === 0 ? 'It just fits.' : `${what} ${parts.join(', ')}.`;
}

/** The margins as figures: `overLeft` and so on. */
export const marginFigures = (over: 'over' | 'short', of: Margins): Record<string, Figure> =>
  Object.fromEntries(Object.entries(of).map(([side, length]) => [`${over}${capital(side)}`, inches(length)]));

/** A hair that comes of reckoning is none. */
export const round = (value: number): number => Math.max(0, Math.round(value * 100) / 100);

/** A bed's name is taken at a size; an infant's calls for care. */
export const bedNote = ({ quilt: { bed, width, height }, here }: Wished): string[] =>
  bed ? [`${bed} as ${here.say.size(width, height)}`] : [];

export const bedCaution = ({ quilt }: Wished): string[] => (isInfantBed(quilt.bed) ? cribCaution() : []);
