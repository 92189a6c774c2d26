import { describe, expect, it } from 'vitest';
import { blocks } from '../../../src/calculator/layouts/blocks.ts';
import { garden } from '../../../src/calculator/layouts/garden.ts';
import { NEXT_HEXAGON, turned } from '../../../src/calculator/layouts/lattice.ts';
import { looseSides } from '../../../src/calculator/layouts/marks.ts';
import { outsideOf, patchedIn, reachesInto, valleysOf } from '../../../src/calculator/layouts/outside.ts';
import type { PatchList } from '../../../src/calculator/layouts/patches.ts';
import { rosette } from '../../../src/calculator/layouts/rosette.ts';
import { stars } from '../../../src/calculator/layouts/stars.ts';
import { tally } from '../../../src/calculator/layouts/tally.ts';
import { given, outlines } from './by-eye.ts';

const rows = (n: number, perRow: number) => ({ kind: 'rows', rows: n, perRow }) as const;

const LAYOUTS: Record<string, PatchList> = {
  'one hexagon': given(rosette(0)).patches,
  rosette: given(rosette(3)).patches,
  blocks: given(blocks(4)).patches,
  'garden with a path': given(garden({ arrangement: rows(3, 4), rounds: 1, path: 'one', outer: false }))
    .patches,
  'a garden with holes': given(
    garden({ arrangement: { kind: 'rings', rings: 1 }, rounds: 0, path: 'none', outer: true }),
  ).patches,
  stars: given(stars({ arrangement: rows(3, 3), set: 'hexagons', edge: 'open' })).patches,
};

describe('the outside of a layout', () => {
  it.each(Object.entries(LAYOUTS))('%s: as many loose sides as its outline is long', (_, list) => {
    const loose = looseSides(list);
    expect(loose).toHaveLength(tally(list).outline);
    for (const { from, to } of loose) {
      const [u, v] = [to.u - from.u, to.v - from.v];
      expect(u * u + u * v + v * v).toBe(1);
    }
  });

  it.each(Object.entries(LAYOUTS))('%s: each corner of the outside is one that a patch has', (_, list) => {
    const corner = ({ x, y }: { x: number; y: number }) => `${Math.round(x * 1e4)} ${Math.round(y * 1e4)}`;
    const corners = new Set(outlines(list).flat().map(corner));
    const level = list.rows === 'across' ? NEXT_HEXAGON : { u: 0, v: 1 };
    const { sides, box } = outsideOf(list, level);
    for (const end of sides.flat()) expect(corners.has(corner(end))).toBe(true);
    expect(box.width).toBeCloseTo(tally(list).width, 9);
    expect(box.height).toBeCloseTo(tally(list).height, 9);
  });

  it('turned, has its box about the turned corners', () => {
    const list = given(garden({ arrangement: rows(3, 3), rounds: 1, path: 'none', outer: false })).patches;
    const step = { u: 5, v: -1 };
    const { box } = outsideOf(list, turned(step));
    const angle = Math.atan2((1 * Math.sqrt(3)) / 2, 1 / 2 + 4);
    const across = outlines(list)
      .flat()
      .map(({ x, y }) => x * Math.cos(angle) + y * Math.sin(angle));
    expect(box.width).toBeCloseTo(Math.max(...across) - Math.min(...across), 9);
  });

  it('reaches into a rectangle that is not all patches, and not into one that is', () => {
    const outside = outsideOf(LAYOUTS.blocks!, NEXT_HEXAGON);
    const at = (width: number, height: number) => ({ left: -width / 2, top: -height / 2, width, height });
    // A hexagon of side 4, its points up: 2 · 4 · cos 30° wide; a square inside may reach 4(3 − √3).
    const side = 4 * (3 - Math.sqrt(3));
    expect(reachesInto(outside, at(side, side))).toBe(false);
    expect(reachesInto(outside, at(side + 1e-6, side + 1e-6))).toBe(true);
    expect(reachesInto(outside, at(8 * Math.cos(Math.PI / 6), 4))).toBe(false);
    expect(reachesInto(outside, at(8 * Math.cos(Math.PI / 6), 4.001))).toBe(true);
  });

  it('has valleys: a rosette of hexagons is two of its points less high between them', () => {
    const outside = outsideOf(LAYOUTS.rosette!, NEXT_HEXAGON);
    expect(valleysOf(outside, Math.sqrt(3)).height).toBeCloseTo(11 - 1, 9);
  });

  it('a rectangle may lie against a side where it would not lie in the middle', () => {
    const outside = outsideOf(LAYOUTS.blocks!, NEXT_HEXAGON);
    const around = { left: -2, top: -4, width: 4, height: 6 };
    const found = patchedIn(outside, around, 4, 4)!;
    expect(found).toEqual({ left: -2, top: -2, width: 4, height: 4 });
    expect(patchedIn(outside, around, 4.1, 4)).toBeNull();
  });
});
