import { type ClothUse, type PlanCloth, totalBought } from '../src/calculator/plan/cloths.ts';
import type { PlanFinishing } from '../src/calculator/plan/finishing.ts';
import { PLAN_STRIP } from '../src/calculator/plan/finishing.ts';
import type { SheetName } from '../src/calculator/plan/papers.ts';
import type { Plan } from '../src/calculator/plan/plan.ts';
import { threadToCut, WORKING_LENGTH } from '../src/calculator/stitching/needlefuls.ts';
import { wholeAbove } from '../src/measure/result.ts';
import { decimal, grouped } from '../src/measure/ruler.ts';
import { many, type Speech } from '../src/measure/speech.ts';
import { bought } from './bought.ts';
import { packageWords } from './finish-batting.ts';
import { shapeWords, usedFor } from './plan-roles.ts';

/** One line of a shopping list. */
export interface ToBuy {
  readonly what: string;
  /** How much, as it is said; a dash where it is not bought. */
  readonly much: string;
  readonly purpose: string;
  /** Inches of cloth that it takes; null of what is not cloth. */
  readonly length: number | null;
  readonly pieces: number | null;
  /** A cloth of scraps is cut, not bought. */
  readonly scraps: boolean;
}

/** Everything to buy for a plan, cloth first. */
export function toBuy(plan: Plan, say: Speech, sheet: SheetName): ToBuy[] {
  return [...plan.cloths.map((cloth) => clothLine(cloth, plan, say)), ...otherLines(plan, say, sheet)];
}

/** Cloth in all: what each purchase rounds up to, added. */
export const allCloth = (cloths: readonly PlanCloth[], say: Speech): string =>
  say.purchase(totalBought(cloths, 'yard'), totalBought(cloths, 'metric'));

/** Cloths that nobody named are called as what they are for. */
const CALLED: Readonly<Record<string, string>> = {
  centre: 'centres',
  petal: 'petals',
  field: 'hexagons',
  half: 'halves',
  pieces: 'patches',
  star: 'stars',
  diamond: 'diamonds',
  triangle: 'triangles',
};

/** What a cloth is called: as it was named, or as what it is for. */
export const called = (name: string): string => CALLED[name] ?? name;

function clothLine({ name, scraps, uses, length }: PlanCloth, plan: Plan, say: Speech): ToBuy {
  const pieces = uses.reduce((sum, use) => sum + (use.pieces ?? 0), 0);
  return {
    what: called(name),
    much: scraps ? `${bought(length, say)} of scraps` : bought(length, say),
    purpose: uses.map((use) => useWords(use, plan, say)).join(', '),
    length,
    pieces: pieces === 0 ? null : pieces,
    scraps,
  };
}

function useWords({ roles, pieces }: ClothUse, { roles: needs, finishing }: Plan, say: Speech): string {
  if (pieces !== null) {
    const needed = needs.reduce((sum, one) => (roles.includes(one.role) ? sum + one.pieces : sum), 0);
    const spare = pieces > needed ? `, ${grouped(pieces - needed)} to spare` : '';
    return `${usedFor(roles, needs)}${spare}`;
  }
  return finishing ? (FINISHING[roles[0] ?? '']?.(finishing, say) ?? '') : '';
}

const FINISHING: Readonly<Record<string, (finishing: PlanFinishing, say: Speech) => string>> = {
  backing: ({ backing: { best } }, say) =>
    `${many(best.panels, 'panel', 'panels')} of ${say.plain(best.panelLength)}`,
  binding: ({ binding }, say) => `${many(binding.strips, 'strip', 'strips')} of ${say.plain(PLAN_STRIP)}`,
  border: ({ border }, say) =>
    border ? `${many(border.strips, 'strip', 'strips')} of ${say.plain(border.cutStrip)}` : '',
};

function otherLines({ finishing, sewing, papers }: Plan, say: Speech, sheet: SheetName): ToBuy[] {
  const lines: ToBuy[] = [];
  const add = (what: string, much: string, purpose: string) =>
    lines.push({ what, much, purpose, length: null, pieces: null, scraps: false });
  if (finishing) {
    const { batting, size } = finishing;
    add('batting', packageWords(batting, say), `quilt ${say.size(size.width, size.height)}`);
  }
  if (sewing)
    add(
      'thread',
      threadWords(threadToCut(sewing.threadLengths), say),
      `${many(sewing.threadLengths, 'needleful', 'needlefuls')} of ${say.run(WORKING_LENGTH)}`,
    );
  for (const one of papers) {
    const number = papers.length > 1 ? shapeWords(one.shape, one.papers) : grouped(one.papers);
    add(
      'papers',
      one.sheets === 0
        ? 'by hand'
        : `${many(one.sheets, 'sheet', 'sheets')}, ${sheet === 'a4' ? 'A4' : sheet}`,
      one.sheets === 0
        ? `${number}, each larger than the sheet`
        : `${number}, ${grouped(one.perSheet)} a sheet`,
    );
  }
  return lines;
}

/** Thread is sold by the yard or the metre: a part of one is bought whole. */
function threadWords(length: number, say: Speech): string {
  const whole = (long: number, unit: string) => `${decimal(wholeAbove(long), 0)} ${unit}`;
  const [yards, metres] = [whole(length / 36, 'yd'), whole(length * 0.0254, 'm')];
  return { ruler: yards, metric: metres, both: `${yards}, ${metres}` }[say.reading];
}
