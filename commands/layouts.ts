import { BLOCK_SEAMS, type Blocks, blocks, blocksApart } from '../src/calculator/layouts/blocks.ts';
import { type Counted, countedFrom } from '../src/calculator/layouts/counted.ts';
import { type DiamondField, diamonds, type Middle } from '../src/calculator/layouts/diamonds.ts';
import { type Field, type FieldAsk, field, type Sides } from '../src/calculator/layouts/field.ts';
import { rosette } from '../src/calculator/layouts/rosette.ts';
import { star } from '../src/calculator/layouts/star.ts';
import type { Result } from '../src/measure/result.ts';

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

export { BLOCK_SEAMS, type Counted, countedFrom };
