import { bestPlan } from '../calculator/fabric/best-plan.ts';
import type { CuttingMethod } from '../calculator/fabric/lay.ts';
import { motifYield, type Repeat } from '../calculator/fabric/motif.ts';
import type { ClothSize, Direction, LaidPlan } from '../calculator/fabric/plan.ts';
import { wasteOf } from '../calculator/fabric/waste.ts';
import { yieldFrom } from '../calculator/fabric/yield.ts';
import { CATALOGUE } from '../calculator/shapes/catalogue.ts';
import { cutPatch } from '../calculator/shapes/cut.ts';
import type { CornerStyle, CutPatch, Dimensions, ShapeName } from '../calculator/shapes/shape.ts';
import { many, type Reading, type Speech, speech } from '../measure/speech.ts';
import {
  CLOTH_TILES,
  cloth,
  type LaidCloth,
  PATCH,
  REPEAT,
  SEWN_LINE,
  type Selvage,
  SPARE,
  STRAIGHT,
  sewnShows,
} from './cloth.ts';
import { blockLines, type CutLines, repeatLines, stripLines } from './cut-lines.ts';
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
  /** One of the trade's ways, the best that the search finds, or one patch round each motif. */
  readonly method: CuttingMethod | 'best' | 'motif';
  /** Of the trade's ways. */
  readonly direction?: Direction;
  readonly rowHeight?: number;
  /** How the print repeats, where a patch is cut round each motif. */
  readonly motif?: Repeat;
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
  const { plan, lines } = planAgain(recipe);
  const say = speech(reading);
  const laid = { plan, lines, pieces: pieces ?? plan.count, spare, selvage };
  return page(
    [heading(title), cloth(laid, say), legend(entries(recipe, laid, say)), footing(words)],
    CLOTH_TILES,
  );
}

interface Again {
  readonly plan: LaidPlan;
  readonly lines: CutLines;
}

/** The plan that the reply spoke of, made again. */
function planAgain(recipe: CuttingRecipe): Again {
  const { shape, dimensions, seam, cornerStyle, cloth: size, margin, method, motif, count, pieces } = recipe;
  const patch = cutPatch(shape, dimensions, seam, cornerStyle);
  const made = madeBy[method === 'best' || method === 'motif' ? method : 'trade'](patch, recipe, {
    size,
    margin,
    motif: motif ?? { width: size.width, height: size.length },
    pieces: pieces ?? count,
  });
  if (!made || made.plan.count !== count) throw new Error(`no plan of ${count} ${method} any more`);
  return made;
}

interface Sized {
  readonly size: ClothSize;
  readonly margin: number;
  readonly motif: Repeat;
  readonly pieces: number;
}

type Maker = (patch: CutPatch, recipe: CuttingRecipe, sized: Sized) => Again | undefined;

const madeBy: Readonly<Record<'best' | 'motif' | 'trade', Maker>> = {
  best: (patch, _, { size, margin }) => {
    const plan = bestPlan(patch, size, { margin });
    return plan && { plan, lines: blockLines(plan) };
  },
  motif: (patch, _, { size, margin, motif }) => ({
    plan: motifYield(patch, size, motif, { margin }),
    lines: repeatLines(motif, size),
  }),
  trade: (patch, { method, direction, count, rowHeight }, { size, margin, pieces }) => {
    const plan = yieldFrom(patch, size, { margin }).plans.find(
      (one) =>
        one.method === method &&
        one.direction === direction &&
        one.count === count &&
        one.rowHeight === rowHeight,
    );
    return plan && { plan, lines: stripLines(plan, pieces) };
  },
};

function entries({ shape, seam }: CuttingRecipe, laid: LaidCloth, say: Speech): Entry[] {
  const { plan, lines, pieces, spare, selvage } = laid;
  const { title, titles } = CATALOGUE[shape];
  const told: Entry[] = [
    { sample: swatch(PATCH, INK), words: many(pieces, title, titles) },
    { sample: swatch('url(#waste)', INK), words: `waste: ${Math.round(wasteOf(plan, pieces) * 100)} %` },
  ];
  if (lines.straight.length > 0) told.push({ sample: lineSample(STRAIGHT), words: 'straight cuts' });
  if (lines.repeat.length > 0) told.push({ sample: lineSample(REPEAT), words: 'the print repeats' });
  if (sewnShows(laid, say))
    told.push({ sample: lineSample(SEWN_LINE), words: `sew ${say.plain(seam)} inside` });
  if (spare > 0.05)
    told.push({ sample: swatch(SPARE, INK), words: `to spare: ${say.side(Math.floor(spare * 100) / 100)}` });
  if (selvage !== 'none') told.push({ sample: swatch('url(#selvage)', INK), words: 'selvage' });
  return told;
}
