import { describe, expect, test } from 'vitest';
import { bestPlan } from '../../../src/calculator/fabric/best-plan.ts';
import { HEXAGONS_IN_SQUARES } from '../../../src/calculator/fabric/known/hexagons-in-squares.ts';
import { faultsOf, NO_FAULTS, shareAmissByClipper } from './geometry.ts';
import { patch } from './patches.ts';

/** Edge 1 as cut. */
const unit = patch('hexagon', 1, 0);

describe('hexagons in small squares, as a long search found them', () => {
  test.each(HEXAGONS_IN_SQUARES.map(({ side, places }, i) => [i + 1, side, places.length] as const))(
    '%i in a square of %d',
    (n, side, many) => {
      expect(many).toBe(n);
      const plan = bestPlan(unit, { width: side, length: side })!;
      // Where a square holds one more already, or rows give as many, that is as good.
      expect(plan.count).toBeGreaterThanOrEqual(n);
      expect(faultsOf(plan)).toEqual(NO_FAULTS);
      expect(shareAmissByClipper(plan)).toBeCloseTo(0, 5);
    },
  );

  test.each(HEXAGONS_IN_SQUARES.map(({ side, places }) => [places.length, side, places] as const))(
    'the places themselves: %i',
    (n, side, places) => {
      const middle = { x: 0.5, y: Math.sqrt(3) / 2 };
      const placements = () =>
        places.map(([x, y, turnDegrees]) => {
          const turn = (turnDegrees * Math.PI) / 180;
          const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
          return {
            x: x - middle.x * cos + middle.y * sin,
            y: y - middle.x * sin - middle.y * cos,
            turnDegrees,
          };
        });
      const plan = { patch: unit, cloth: { width: side, length: side }, margin: 0, count: n, placements };
      expect(faultsOf(plan)).toEqual(NO_FAULTS);
      expect(shareAmissByClipper(plan)).toBeCloseTo(0, 5);
    },
  );

  test('serve any size, pointed or blunt, on a square that is cut into an oblong too', () => {
    for (const corners of ['pointed', 'blunt'] as const) {
      const plan = bestPlan(patch('hexagon', 0.5, 0.25, corners), { width: 5, length: 5.3 })!;
      expect(plan.count).toBeGreaterThanOrEqual(11);
      expect(faultsOf(plan)).toEqual(NO_FAULTS);
    }
  });
});
