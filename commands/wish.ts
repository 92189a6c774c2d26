import type { Layout } from '../src/calculator/layouts/layout.ts';
import { tally } from '../src/calculator/layouts/tally.ts';
import type { Here } from '../src/chat/command.ts';
import { bare, type Option } from '../src/chat/option.ts';
import { size } from '../src/chat/option-kinds.ts';
import { isInfantBed, type Size } from '../src/measure/size.ts';
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

/** How much a laid size is over (or under, below zero) on each side. */
export interface Margins {
  readonly sides: number;
  readonly ends: number;
}

export const margins = (laid: { width: number; height: number }, quilt: Size): Margins => ({
  sides: (laid.width - quilt.width) / 2,
  ends: (laid.height - quilt.height) / 2,
});

export const beside = ({ sides, ends }: Margins, { say }: Here): string =>
  `${say.plain(round(sides))} left and right, ${say.plain(round(ends))} top and bottom`;

/** A hair that comes of reckoning is none. */
export const round = (value: number): number => Math.max(0, Math.round(value * 100) / 100);

/** A bed's name is taken at a size; an infant's calls for care. */
export const bedNote = ({ quilt: { bed, width, height }, here }: Wished): string[] =>
  bed ? [`${bed} as ${here.say.size(width, height)}`] : [];

export const bedCaution = ({ quilt }: Wished): string[] => (isInfantBed(quilt.bed) ? cribCaution() : []);
