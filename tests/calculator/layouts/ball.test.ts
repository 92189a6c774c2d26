import { describe, expect, it } from 'vitest';
import { type Ball, ball, type SpacePoint } from '../../../src/calculator/layouts/ball.ts';
import { cutPatch } from '../../../src/calculator/shapes/cut.ts';

const minus = (a: SpacePoint, b: SpacePoint): SpacePoint => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: SpacePoint, b: SpacePoint) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: SpacePoint, b: SpacePoint): SpacePoint => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const length = (a: SpacePoint) => Math.sqrt(dot(a, a));
const middle = (piece: readonly SpacePoint[]): SpacePoint =>
  [0, 1, 2].map(
    (k) => piece.reduce((sum, corner) => sum + corner[k]!, 0) / piece.length,
  ) as unknown as SpacePoint;

/** Counted a second way, from the points in space alone. */
function seen({ pieces }: Ball) {
  const key = (points: readonly SpacePoint[]) =>
    points
      .map((p) => p.map((x) => x.toFixed(6)).join(' '))
      .sort()
      .join(' | ');
  const sides = new Map<string, number>();
  const corners = new Map<string, number>();
  for (const piece of pieces)
    piece.forEach((corner, i) => {
      const side = key([corner, piece[(i + 1) % piece.length]!]);
      sides.set(side, (sides.get(side) ?? 0) + 1);
      corners.set(key([corner]), (corners.get(key([corner])) ?? 0) + 1);
    });
  return { sides: [...sides.values()], corners: [...corners.values()] };
}

describe('a ball of twelve pentagons', () => {
  it('has 12 pieces, 30 seams, 20 corners, three pieces at each', () => {
    const made = ball(1);
    expect(made).toMatchObject({ total: 12, seams: 30, corners: 20, setIns: 20, seamLength: 30 });
    const { sides, corners } = seen(made);
    expect(sides).toEqual(new Array(30).fill(2));
    expect(corners).toEqual(new Array(20).fill(3));
    // Euler: corners − sides + pieces is 2 on a ball.
    expect(made.corners - made.seams + made.total).toBe(2);
  });

  it.each([0.5, 1, 1.75])('of edge %d: every piece a flat regular pentagon facing outward', (edge) => {
    const { finished } = cutPatch('pentagon', { edge }, 0.25, 'pointed');
    for (const piece of ball(edge).pieces) {
      expect(piece).toHaveLength(5);
      const outward = middle(piece);
      let area = 0;
      piece.forEach((corner, i) => {
        const next = piece[(i + 1) % 5]!;
        expect(length(minus(next, corner))).toBeCloseTo(edge, 10);
        // All in one plane, and the same way round.
        expect(dot(minus(corner, outward), outward)).toBeCloseTo(0, 10);
        const turn = cross(minus(corner, outward), minus(next, outward));
        expect(dot(turn, outward)).toBeGreaterThan(0);
        area += length(turn) / 2;
      });
      expect(area).toBeCloseTo(finished.area, 10);
    }
  });

  it.each([0.5, 1, 1.75])(
    'of edge %d has the two sizes of a regular dodecahedron (closed forms, from memory)',
    (edge) => {
      const golden = (1 + Math.sqrt(5)) / 2;
      const { cornerToCorner, flatToFlat, pieces, seamLength } = ball(edge);
      expect(cornerToCorner).toBeCloseTo(Math.sqrt(3) * golden * edge, 10);
      expect(flatToFlat).toBeCloseTo((edge * Math.sqrt(250 + 110 * Math.sqrt(5))) / 10, 10);
      expect(seamLength).toBeCloseTo(30 * edge, 10);
      for (const piece of pieces) {
        expect(2 * length(middle(piece))).toBeCloseTo(flatToFlat, 10);
        for (const corner of piece) expect(2 * length(corner)).toBeCloseTo(cornerToCorner, 10);
      }
    },
  );
});
