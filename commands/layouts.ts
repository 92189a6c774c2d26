import { BLOCK_SEAMS, type Blocks, blocks, blocksApart } from '../src/calculator/layouts/blocks.ts';
import { type DiamondField, diamonds, type Middle } from '../src/calculator/layouts/diamonds.ts';
import { type Field, type FieldAsk, field, type Sides } from '../src/calculator/layouts/field.ts';
import { finishedSize, type Layout } from '../src/calculator/layouts/layout.ts';
import { rosette } from '../src/calculator/layouts/rosette.ts';
import { star } from '../src/calculator/layouts/star.ts';
import { type Tally, tally } from '../src/calculator/layouts/tally.ts';
import { ok, type Result } from '../src/measure/result.ts';

/** A layout with what was counted from it, and its finished size in inches. */
export interface Counted<L extends Layout = Layout> {
  readonly layout: L;
  readonly counted: Tally;
  readonly width: number;
  readonly height: number;
  readonly edge: number;
}

/** Counts a layout once: everything a reply says of it is read from here. */
export function countedFrom<L extends Layout>(made: Result<L>, edge: number): Result<Counted<L>> {
  if (!made.ok) return made;
  const counted = tally(made.value.patches);
  const { width, height } = finishedSize(made.value, counted, edge);
  return ok({ layout: made.value, counted, width, height, edge });
}

export const countField = (ask: FieldAsk & { readonly sides: Sides }): Result<Counted<Field>> =>
  countedFrom(field(ask), ask.edge);
export const countRosette = (rounds: number, edge: number) => countedFrom(rosette(rounds), edge);
export const countStar = (side: number, edge: number) => countedFrom(star(side), edge);
export const countDiamonds = (from: Middle, rounds: number, edge: number): Result<Counted<DiamondField>> =>
  countedFrom(diamonds(from, rounds), edge);
export const countBlocks = (side: number, edge: number): Result<Counted<Blocks>> =>
  countedFrom(blocks(side), edge);
export const countBlocksApart = (many: number, edge: number): Result<Counted<Blocks>> =>
  countedFrom(blocksApart(many), edge);

export { BLOCK_SEAMS };
