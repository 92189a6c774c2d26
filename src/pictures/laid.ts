import { blocks, blocksApart, blocksOver } from '../calculator/layouts/blocks.ts';
import { diamonds, type Middle } from '../calculator/layouts/diamonds.ts';
import { type FieldAsk, field, type Sides } from '../calculator/layouts/field.ts';
import { type GardenAsk, garden } from '../calculator/layouts/garden.ts';
import { type DiamondGardenAsk, gardenWithDiamonds } from '../calculator/layouts/garden-with-diamonds.ts';
import { inCloths } from '../calculator/layouts/in-cloths.ts';
import type { Layout, Rectangle } from '../calculator/layouts/layout.ts';
import { rosette } from '../calculator/layouts/rosette.ts';
import { star } from '../calculator/layouts/star.ts';
import { type StarsAsk, stars } from '../calculator/layouts/stars.ts';
import type { Result } from '../measure/result.ts';

/** What each layout is asked for with: so much a recipe carries, and the patches are placed again from it. */
interface Asks {
  readonly field: FieldAsk & { readonly sides: Sides };
  readonly rosette: { readonly rounds: number };
  readonly garden: GardenAsk;
  readonly 'garden with diamonds': DiamondGardenAsk;
  readonly star: { readonly side: number };
  readonly stars: StarsAsk;
  readonly diamonds: { readonly from: Middle; readonly rounds: number };
  readonly blocks: { readonly side: number };
  readonly 'blocks apart': { readonly count: number };
  readonly 'blocks over': { readonly width: number; readonly height: number; readonly edge: number };
}

/** What may be said besides, of any layout. */
interface Besides {
  /** The cloths that its rounds or rows take in turn. */
  readonly cloths?: readonly string[];
  /** What it is trimmed to for a quilt, where it is not trimmed by itself. Inches, in the layout's frame. */
  readonly trimTo?: Rectangle;
}

export type LayoutAsk = {
  readonly [Name in keyof Asks]: { readonly layout: Name } & Asks[Name];
}[keyof Asks] &
  Besides;

const LAYOUTS: { readonly [Name in keyof Asks]: (ask: Asks[Name]) => Result<Layout> } = {
  field,
  rosette: ({ rounds }) => rosette(rounds),
  garden,
  'garden with diamonds': gardenWithDiamonds,
  star: ({ side }) => star(side),
  stars,
  diamonds: ({ from, rounds }) => diamonds(from, rounds),
  blocks: ({ side }) => blocks(side),
  'blocks apart': ({ count }) => blocksApart(count),
  'blocks over': ({ width, height, edge }) => blocksOver(width, height, edge),
};

/** The layout that was counted, placed again. The ask was answered once, so it cannot be refused now. */
export function laid(ask: LayoutAsk): Layout {
  const made = LAYOUTS[ask.layout](ask as never);
  if (!made.ok) throw new Error(`the layout of a picture was refused: ${made.problem.code}`);
  const { cloths, trimTo } = ask;
  const coloured = cloths ? inCloths(made.value, cloths) : made.value;
  return trimTo ? { ...coloured, trim: trimTo } : coloured;
}
