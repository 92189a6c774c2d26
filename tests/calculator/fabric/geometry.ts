import { areaD, areaPathsD, FillRule, intersectD } from 'clipper2-ts';
import type { CuttingPlan } from '../../../src/calculator/fabric/plan.ts';
import { flatten } from '../../../src/calculator/shapes/flatten.ts';
import type { Outline, Point } from '../../../src/calculator/shapes/outline.ts';
import { overlaps } from '../../../src/calculator/shapes/overlap.ts';
import type { CutPatch } from '../../../src/calculator/shapes/shape.ts';

/** A plan of any kind, as far as its placements go. */
export type Placed = Pick<CuttingPlan, 'patch' | 'cloth' | 'margin' | 'count' | 'placements'>;

const isCurved = ({ patch }: Placed): boolean => patch.cut.outline.some(({ bulge }) => bulge !== undefined);

/** Inches that a walk round an arc in straight steps may stray from it. */
const STRAY = 1e-3;

/** Written apart from the calculator: each placement laid out by plain coordinates, arcs in straight steps. */
export const laidOut = (plan: Placed): Point[][] =>
  laid(plan, isCurved(plan) ? flatten(plan.patch.cut.outline, STRAY) : plan.patch.cut.outline);

function laid<C extends Point>(plan: Placed, outline: readonly C[]): C[][] {
  return plan.placements().map(({ x, y, turnDegrees }) => {
    const turn = (turnDegrees * Math.PI) / 180;
    return outline.map((corner) => ({
      ...corner,
      x: x + corner.x * Math.cos(turn) - corner.y * Math.sin(turn),
      y: y + corner.x * Math.sin(turn) + corner.y * Math.cos(turn),
    }));
  });
}

export interface Faults {
  readonly missing: number;
  readonly outside: number;
  readonly overlapping: number;
}

export const NO_FAULTS: Faults = { missing: 0, outside: 0, overlapping: 0 };

const HAIR = 1e-6;

/** What is wrong with a plan, found by coordinates and by the separating-axis test. */
export function faultsOf(plan: Placed): Faults {
  const patches = laidOut(plan);
  return {
    missing: plan.count - patches.length,
    outside: patches.filter((patch) => leaves(patch, plan)).length,
    overlapping: isCurved(plan) ? overlappingCurved(plan) : overlappingPairs(patches),
  };
}

function leaves(patch: readonly Point[], { cloth, margin }: Placed): boolean {
  return patch.some(
    ({ x, y }) =>
      x < margin - HAIR ||
      y < margin - HAIR ||
      x > cloth.width - margin + HAIR ||
      y > cloth.length - margin + HAIR,
  );
}

const overlappingPairs = (patches: readonly Point[][]): number =>
  neighbours(patches).filter(([one, other]) => overlap(one, other)).length;

/**
 * Exact on arcs and in hollows, by the calculator's own test of two outlines, which has been checked against an
 * independent library.
 */
const overlappingCurved = (plan: Placed): number => {
  const exact: Outline[] = laid(plan, plan.patch.cut.outline);
  const pairs = neighbours(laidOut(plan).map((corners, index) => Object.assign(corners, { index })));
  return pairs.filter(([one, other]) => overlaps(exact[one.index]!, exact[other.index]!)).length;
};

/** The pairs whose extents along x overlap. */
function neighbours<P extends Point[]>(patches: readonly P[]): [P, P][] {
  const boxed = patches.map((corners) => ({
    corners,
    left: Math.min(...corners.map(({ x }) => x)),
    right: Math.max(...corners.map(({ x }) => x)),
  }));
  boxed.sort((a, b) => a.left - b.left);
  const pairs: [P, P][] = [];
  boxed.forEach((one, index) => {
    for (let next = index + 1; next < boxed.length && boxed[next]!.left < one.right; next++)
      pairs.push([one.corners, boxed[next]!.corners]);
  });
  return pairs;
}

/** Convex outlines overlap unless some side's direction keeps them apart. */
export const overlap = (a: readonly Point[], b: readonly Point[]): boolean =>
  !isKeptApart(a, b) && !isKeptApart(b, a);

function isKeptApart(a: readonly Point[], b: readonly Point[]): boolean {
  return a.some((from, index) => {
    const to = a[(index + 1) % a.length]!;
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    // Outlines run counter-clockwise, so outward is to the right of the side.
    const outward = (p: Point) =>
      ((p.x - from.x) * (to.y - from.y) - (p.y - from.y) * (to.x - from.x)) / length;
    return b.every((corner) => outward(corner) > -HAIR);
  });
}

/**
 * The area that an independent library finds outside the cloth or covered twice, as a share of all the
 * patches: 0 when all is well. (Its union of them all is not asked for: it fills small holes now and then.)
 */
export function shareAmissByClipper(plan: Placed): number {
  const { cloth, margin } = plan;
  const edge = [
    { x: margin, y: margin },
    { x: cloth.width - margin, y: margin },
    { x: cloth.width - margin, y: cloth.length - margin },
    { x: margin, y: cloth.length - margin },
  ];
  const patches = laidOut(plan);
  const shared = (a: Point[], b: Point[]) => areaPathsD(intersectD([a], [b], FillRule.NonZero, 6));
  const whole = patches.reduce((sum, patch) => sum + areaD(patch), 0);
  const inside = patches.reduce((sum, patch) => sum + shared(patch, edge), 0);
  const twice = neighbours(patches).reduce((sum, [one, other]) => sum + shared(one, other), 0);
  return (whole - inside + twice) / whole;
}

/** The width of an outline at half its height once it is turned: found by cutting it, apart from the calculator. */
export function chordAtHalfHeight(patch: CutPatch, turnDegrees: number): number {
  const turn = (turnDegrees * Math.PI) / 180;
  const corners = patch.cut.outline.map(({ x, y }) => ({
    x: x * Math.cos(turn) - y * Math.sin(turn),
    y: x * Math.sin(turn) + y * Math.cos(turn),
  }));
  const ys = corners.map((c) => c.y);
  const level = (Math.min(...ys) + Math.max(...ys)) / 2;
  const crossings = corners.flatMap((from, index) => {
    const to = corners[(index + 1) % corners.length]!;
    if (from.y > level === to.y > level) return [];
    return [from.x + ((level - from.y) / (to.y - from.y)) * (to.x - from.x)];
  });
  return Math.max(...crossings) - Math.min(...crossings);
}
