/**
 * A second, slow way to count a layout, which knows nothing of lattices: it looks at the outlines in inches
 * alone, measures their angles, and says which corners and sides fall together.
 */
import { finishedSize, type Layout, type Rectangle } from '../../../src/calculator/layouts/layout.ts';
import { outlineOf, type PatchList } from '../../../src/calculator/layouts/patches.ts';
import { type Tally, tally } from '../../../src/calculator/layouts/tally.ts';
import type { Point } from '../../../src/calculator/shapes/outline.ts';
import type { Result } from '../../../src/measure/result.ts';

export function given<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  return result.value;
}

export const outlines = (list: PatchList, edge = 1): Point[][] =>
  Array.from({ length: list.count }, (_, i) => outlineOf(list, i, edge));

/** Positive when the corners go round clockwise on a page whose y runs down. */
export const areaOf = (outline: readonly Point[]): number =>
  outline.reduce((sum, a, i) => {
    const b = outline[(i + 1) % outline.length]!;
    return sum + (a.x * b.y - b.x * a.y) / 2;
  }, 0);

const key = ({ x, y }: Point): string => `${Math.round(x * 1e4)},${Math.round(y * 1e4)}`;

const between = (a: Point, b: Point, part: number): Point => ({
  x: a.x + (b.x - a.x) * part,
  y: a.y + (b.y - a.y) * part,
});

/** The outline with a corner put in at every unit along its sides. */
const inUnits = (outline: readonly Point[]): Point[] =>
  outline.flatMap((a, i) => {
    const b = outline[(i + 1) % outline.length]!;
    const units = Math.round(Math.hypot(b.x - a.x, b.y - a.y));
    return Array.from({ length: units }, (_, k) => between(a, b, k / units));
  });

function angleAt(outline: readonly Point[], i: number): number {
  const [before, here, after] = [-1, 0, 1].map((d) => outline[(i + d + outline.length) % outline.length]!);
  const turn =
    Math.atan2(before!.y - here!.y, before!.x - here!.x) - Math.atan2(after!.y - here!.y, after!.x - here!.x);
  return ((turn * 180) / Math.PI + 360) % 360;
}

export interface Look {
  readonly seams: number;
  readonly outline: number;
  readonly corners: number;
  readonly closedBy: readonly number[];
  readonly width: number;
  readonly height: number;
}

export function lookAt(list: PatchList): Look {
  const sides = new Map<string, number>();
  const corners = new Map<string, { angle: number; patches: number }>();
  const all = outlines(list).map(inUnits);
  for (const outline of all) {
    outline.forEach((here, i) => {
      const side = key(between(here, outline[(i + 1) % outline.length]!, 1 / 2));
      sides.set(side, (sides.get(side) ?? 0) + 1);
      const met = corners.get(key(here)) ?? { angle: 0, patches: 0 };
      corners.set(key(here), { angle: met.angle + angleAt(outline, i), patches: met.patches + 1 });
    });
  }
  const carried = [...sides.values()];
  const closedBy = [0, 1, 2, 3, 4, 5, 6].map(
    (n) => [...corners.values()].filter((c) => c.patches === n && Math.abs(c.angle - 360) < 1e-6).length,
  );
  const spread = (values: number[]) => (values.length === 0 ? 0 : Math.max(...values) - Math.min(...values));
  return {
    seams: carried.filter((n) => n === 2).length,
    outline: carried.filter((n) => n === 1).length,
    corners: corners.size,
    closedBy,
    width: spread(all.flat().map((p) => p.x)),
    height: spread(all.flat().map((p) => p.y)),
  };
}

/** What of a convex outline lies inside a rectangle. */
export function clipped(outline: readonly Point[], box: Rectangle): Point[] {
  const inside: ((p: Point) => number)[] = [
    (p) => p.x - box.left,
    (p) => box.left + box.width - p.x,
    (p) => p.y - box.top,
    (p) => box.top + box.height - p.y,
  ];
  return inside.reduce<Point[]>(
    (shape, depth) =>
      shape.flatMap((a, i) => {
        const b = shape[(i + 1) % shape.length]!;
        const [da, db] = [depth(a), depth(b)];
        const kept = da >= 0 ? [a] : [];
        return da * db < 0 ? [...kept, between(a, b, da / (da - db))] : kept;
      }),
    [...outline],
  );
}

const TRIANGLE = Math.sqrt(3) / 4;

/**
 * Whether no two patches lie on each other: cut into unit triangles, no triangle is in two of them. The middles
 * of the triangles are found from the patch's own corners, by the middle of each corner's neighbourhood.
 */
export function liesFlat(list: PatchList): boolean {
  const taken = new Set<string>();
  return outlines(list).every((outline) => {
    const middles = trianglesIn(outline);
    if (Math.abs(middles.length * TRIANGLE - areaOf(outline)) > 1e-6) return false;
    return middles.every((middle) => {
      const fresh = !taken.has(key(middle));
      taken.add(key(middle));
      return fresh;
    });
  });
}

/** The middles of the unit triangles within a patch: tried all round each of its corners, kept when inside. */
function trianglesIn(outline: readonly Point[]): Point[] {
  const first = Math.atan2(outline[1]!.y - outline[0]!.y, outline[1]!.x - outline[0]!.x);
  const reach = 1 / Math.sqrt(3);
  const found = new Map<string, Point>();
  for (const corner of inUnits(outline)) {
    for (let k = 0; k < 6; k++) {
      const angle = first + ((k + 1 / 2) * Math.PI) / 3;
      const middle = { x: corner.x + reach * Math.cos(angle), y: corner.y + reach * Math.sin(angle) };
      if (holds(outline, middle)) found.set(key(middle), middle);
    }
  }
  return [...found.values()];
}

const holds = (outline: readonly Point[], p: Point): boolean =>
  outline.every((a, i) => {
    const b = outline[(i + 1) % outline.length]!;
    return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x) > 0;
  });

const SIDES = { hexagon: 6, diamond: 4, triangle: 3, 'half-hexagon': 5 };

export { SIDES };

export const sizeOf = (layout: Layout, counted: Tally = tally(layout.patches), edge = 1): Rectangle =>
  finishedSize(layout, counted, edge);
