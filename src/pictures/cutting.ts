import type { CuttingMethod } from '../calculator/fabric/lay.ts';
import type { ClothSize, CuttingPlan, Direction } from '../calculator/fabric/plan.ts';
import { wasteOf } from '../calculator/fabric/waste.ts';
import { yieldFrom } from '../calculator/fabric/yield.ts';
import { CATALOGUE } from '../calculator/shapes/catalogue.ts';
import { cutPatch } from '../calculator/shapes/cut.ts';
import type { CornerStyle, Dimensions, ShapeName } from '../calculator/shapes/shape.ts';
import { many, type Reading, type Speech, speech } from '../measure/speech.ts';
import {
  CLOTH_TILES,
  cloth,
  type LaidCloth,
  PATCH,
  SEWN_LINE,
  type Selvage,
  SPARE,
  STRAIGHT,
  sewnShows,
} from './cloth.ts';
import { type Entry, legend, lineSample, swatch } from './legend.ts';
import { footing, heading, page } from './page.ts';
import { INK } from './palette.ts';
import { toPng } from './png.ts';

/** Patches on a piece of cloth or a sheet. The plan is made again from what it was made of. Lengths in inches. */
export interface CuttingRecipe {
  readonly draw: 'cutting';
  readonly title: string;
  readonly shape: ShapeName;
  readonly dimensions: Dimensions;
  readonly seam: number;
  readonly cornerStyle: CornerStyle;
  readonly cloth: ClothSize;
  readonly margin: number;
  readonly method: CuttingMethod;
  readonly direction: Direction;
  readonly rowHeight: number;
  readonly count: number;
  /** Only so many of them are cut, the first ones. */
  readonly pieces?: number;
  /** Cloth beyond the plan, as bought. */
  readonly spare?: number;
  readonly selvage: Selvage;
  readonly reading: Reading;
  /** How it is cut, as the reply says it. */
  readonly words: readonly string[];
}

export const drawCutting = (recipe: CuttingRecipe): Promise<Uint8Array> => toPng(cuttingPicture(recipe));

/** The picture of a cutting plan as SVG: the cloth, its selvage, the patches, what is wasted, a legend. */
export function cuttingPicture(recipe: CuttingRecipe): string {
  const { title, words, reading, pieces, spare = 0, selvage } = recipe;
  const plan = planAgain(recipe);
  const say = speech(reading);
  const laid = { plan, pieces: pieces ?? plan.count, spare, selvage };
  return page(
    [heading(title), cloth(laid, say), legend(entries(recipe, laid, say)), footing(words)],
    CLOTH_TILES,
  );
}

/** The plan that the reply spoke of, made again. */
function planAgain(recipe: CuttingRecipe): CuttingPlan {
  const { shape, dimensions, seam, cornerStyle, margin, method, direction, rowHeight, count } = recipe;
  const patch = cutPatch(shape, dimensions, seam, cornerStyle);
  const plan = yieldFrom(patch, recipe.cloth, { margin }).plans.find(
    (one) =>
      one.method === method &&
      one.direction === direction &&
      one.count === count &&
      one.rowHeight === rowHeight,
  );
  if (!plan) throw new Error(`no plan of ${count} ${method} ${direction} any more`);
  return plan;
}

function entries({ shape, seam }: CuttingRecipe, laid: LaidCloth, say: Speech): Entry[] {
  const { plan, pieces, spare, selvage } = laid;
  const { title, titles } = CATALOGUE[shape];
  const told: Entry[] = [
    { sample: swatch(PATCH, INK), words: many(pieces, title, titles) },
    { sample: swatch('url(#waste)', INK), words: `waste: ${Math.round(wasteOf(plan, pieces) * 100)} %` },
  ];
  if (plan.method === 'strips' || plan.method === 'squares')
    told.push({ sample: lineSample(STRAIGHT), words: 'straight cuts' });
  if (sewnShows(laid, say))
    told.push({ sample: lineSample(SEWN_LINE), words: `sew ${say.plain(seam)} inside` });
  if (spare > 0.05)
    told.push({ sample: swatch(SPARE, INK), words: `to spare: ${say.side(Math.floor(spare * 100) / 100)}` });
  if (selvage !== 'none') told.push({ sample: swatch('url(#selvage)', INK), words: 'selvage' });
  return told;
}
