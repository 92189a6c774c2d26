import { cutPatch } from '../../shapes/cut.ts';
import { box } from '../../shapes/extent.ts';
import type { Outline } from '../../shapes/outline.ts';
import type { CutPatch } from '../../shapes/shape.ts';
import { type KnownSquares, knownFor } from '../known/known.ts';
import type { Lay } from '../lay.ts';
import { laysOf } from '../lays.ts';
import { type Loose, looseOf, widestPattern } from './loose.ts';
import type { Pattern } from './pattern.ts';
import { FAR, patternsAt, patternWith, stacksOf } from './patterns.ts';
import { allOneWay, type Turned, turnedTo } from './row-kinds.ts';
import { halfRound, touchOf } from './touch.ts';
import { turnsOf } from './turns.ts';

/** All the ways of laying one patch that the search knows, none of them made for a certain cloth. */
export interface Ways {
  readonly patch: CutPatch;
  /** The lays of the trade, fewest cuts first. */
  readonly lays: readonly Lay[];
  /** Rows at every turn, the densest first. */
  readonly patterns: readonly Pattern[];
  readonly loose: readonly Loose[];
  readonly known: KnownSquares | undefined;
  /** A remainder of cloth no wider than this is searched for everything. */
  readonly narrow: number;
  /** Cloth longer than this, either way, is not searched for cuts through its midst. */
  readonly far: number;
}

/** How many patches a remainder may be wide. */
const NARROW = 3;
/** Into how many parts a row's step is divided for leads that are less than the best. */
const LEADS = 24;

/** So many patches' ways are remembered: a guild asks again and again for the same few. */
const REMEMBERED = 24;

const remembered = new Map<string, Ways>();

/** The ways of a patch. Worked out once, as long as not too many others are asked for. */
export function waysOf(patch: CutPatch): Ways {
  const { shape, dimensions, seam, cornerStyle } = patch;
  const key = JSON.stringify([shape, dimensions, seam, cornerStyle]);
  const known = remembered.get(key);
  if (known) return known;
  const ways = workedOut(patch);
  const [oldest] = remembered.keys();
  if (remembered.size >= REMEMBERED && oldest !== undefined) remembered.delete(oldest);
  remembered.set(key, ways);
  return ways;
}

function workedOut(patch: CutPatch): Ways {
  const pointed =
    patch.cornerStyle === 'pointed' ? patch : cutPatch(patch.shape, patch.dimensions, patch.seam, 'pointed');
  // Wherever a pointed patch fits, the blunt one does.
  const outlines = patch === pointed ? [patch.cut.outline] : [patch.cut.outline, pointed.cut.outline];
  const parts = outlines.filter(isConvex).map(looseAndPatterns);
  const patterns = parts.flatMap((part) => part.patterns);
  const { width, height } = box(pointed.cut.outline);
  return {
    patch,
    lays: laysOf(patch).filter((lay) => lay.patch.cornerStyle === patch.cornerStyle),
    patterns: patterns.sort((a, b) => roomOf(a) - roomOf(b)),
    loose: parts.flatMap((part) => part.loose),
    known: knownFor(pointed),
    narrow: NARROW * Math.max(width, height),
    far: FAR * Math.max(width, height),
  };
}

function looseAndPatterns(outline: Outline): { patterns: Pattern[]; loose: Loose[] } {
  const behind = halfRound(outline);
  const touches = { alike: touchOf(outline, outline), opposed: touchOf(outline, behind) };
  const turns = turnsOf(outline, touches);
  const isSame = isSameHalfRound(outline);
  const turnedBy = (turn: number) => turnedTo(outline, touches, turn);
  const stacks = onceAlike(turns.upright.map(turnedBy)).flatMap((turned) => {
    const heads = allOneWay(turned);
    const one = stacksOf(turned, heads, heads);
    return isSame ? [one] : [one, stacksOf(turned, heads, allOneWay(turned, true))];
  });
  const loose = stacks.flatMap((one) => looseOf(one) ?? []);
  const led = stacks.flatMap((one) =>
    Array.from({ length: LEADS }, (_, i) => patternWith(one, (i / LEADS) * one.low.period, 0)),
  );
  const close = onceAlike(turns.all.map(turnedBy)).flatMap((turned) => patternsAt(turned, isSame));
  return { patterns: [...close, ...led, ...loose.map(widestPattern)], loose };
}

/** Turns that come to the same, in a mirror or by a symmetry of the patch, are taken once: they share box and steps. */
function onceAlike(turned: readonly Turned[]): Turned[] {
  const seen = new Set<string>();
  return turned.filter(({ width, height, steps, roofs }) => {
    const lengths = [width, height, steps[0][0], steps[0][1] + steps[1][0], ...roofs[0][0].high.toSorted()];
    const likeness = lengths.map((length) => Math.round(length * 1e7)).join();
    return seen.size < seen.add(likeness).size;
  });
}

/** Whether a patch turned half round is the patch itself. */
function isSameHalfRound(outline: Outline): boolean {
  const middle = outline.length / 2;
  return outline.every((corner, i) => {
    const across = outline[(i + middle) % outline.length];
    const [first, opposite] = [outline[0]!, outline[middle]];
    return (
      across !== undefined &&
      opposite !== undefined &&
      Math.abs(corner.x + across.x - first.x - opposite.x) < 1e-9 &&
      Math.abs(corner.y + across.y - first.y - opposite.y) < 1e-9
    );
  });
}

/** The cloth that one patch takes in a pattern without end. */
const roomOf = ({ rows, period, rises }: Pattern): number =>
  (period * (rises[0] + rises[1])) / (rows[0].length + rows[1].length);

/** Whether an outline is straight-sided and turns left at every corner. */
export const isConvex = (outline: Outline): boolean =>
  outline.every((corner, i) => {
    const next = outline[(i + 1) % outline.length]!;
    const after = outline[(i + 2) % outline.length]!;
    const turn = (next.x - corner.x) * (after.y - next.y) - (next.y - corner.y) * (after.x - next.x);
    return (corner.bulge ?? 0) === 0 && turn > 0;
  });
