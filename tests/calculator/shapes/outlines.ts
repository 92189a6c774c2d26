import fc from 'fast-check';
import type { Outline, Point } from '../../../src/calculator/shapes/outline.ts';

/** Outlines that the tests draw for themselves, corner by corner, apart from the catalogue. */

const degrees = (angle: number): number => (angle * Math.PI) / 180;

export const regular = (n: number, edge: number): Outline => {
  const radius = edge / 2 / Math.sin(Math.PI / n);
  return Array.from({ length: n }, (_, i) => {
    const angle = (2 * Math.PI * i) / n;
    return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
  });
};

export const rhombus = (edge: number, sharp: number): Outline => {
  const [x, y] = [edge * Math.cos(degrees(sharp)), edge * Math.sin(degrees(sharp))];
  return [
    { x: 0, y: 0 },
    { x: edge, y: 0 },
    { x: edge + x, y },
    { x, y },
  ];
};

/** A point of the given angle at the left and right, slants a, long sides b below and above. */
export const longHexagon = (a: number, b: number, point: number): Outline => {
  const [x, y] = [a * Math.cos(degrees(point / 2)), a * Math.sin(degrees(point / 2))];
  return [
    { x: 0, y: 0 },
    { x: b, y: 0 },
    { x: b + x, y },
    { x: b, y: 2 * y },
    { x: 0, y: 2 * y },
    { x: -x, y },
  ];
};

export const tumbler = (wide: number, narrow: number, height: number): Outline => [
  { x: 0, y: 0 },
  { x: wide, y: 0 },
  { x: (wide + narrow) / 2, y: height },
  { x: (wide - narrow) / 2, y: height },
];

/** A half circle above two hollow quarter circles that come together in a cusp. */
export const clamshell = (width: number): Outline => {
  const r = width / 2;
  const hollow = -Math.tan(Math.PI / 8);
  return [
    { x: -r, y: 0, bulge: hollow },
    { x: 0, y: -r, bulge: hollow },
    { x: r, y: 0, bulge: 1 },
  ];
};

/** A square of the chord whose left and right sides swell and whose other two are hollow, by arcs of an angle. */
export const appleCore = (chord: number, arc: number): Outline => {
  const bulge = Math.tan(degrees(arc) / 4);
  return [
    { x: 0, y: 0, bulge: -bulge },
    { x: chord, y: 0, bulge },
    { x: chord, y: chord, bulge: -bulge },
    { x: 0, y: chord, bulge },
  ];
};

export const halfDisc = (radius: number): Outline => [
  { x: -radius, y: 0 },
  { x: radius, y: 0, bulge: 1 },
];

const gap = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);

export const sideLength = (outline: Outline, side: number): number =>
  gap(outline[side]!, outline[(side + 1) % outline.length]!);

export const cornerToCorner = (outline: Outline, a: number, b: number): number =>
  gap(outline[a]!, outline[b]!);

/** The direction of each side where it leaves its corner and where it arrives at the next, radians. */
const directions = (outline: Outline): { leaving: number; arriving: number }[] =>
  outline.map((corner, i) => {
    const next = outline[(i + 1) % outline.length]!;
    const chord = Math.atan2(next.y - corner.y, next.x - corner.x);
    // An arc leaves its chord by half its own angle: twice the angle whose tangent is the bulge.
    const half = 2 * Math.atan(corner.bulge ?? 0);
    return { leaving: chord - half, arriving: chord + half };
  });

/** The exterior angle at each corner of an outline, radians, -π excluded. */
export const exteriorAngles = (outline: Outline): number[] => {
  const sides = directions(outline);
  return sides.map(({ leaving }, i) => {
    const turn = leaving - sides.at(i - 1)!.arriving;
    const angle = Math.atan2(Math.sin(turn), Math.cos(turn));
    return angle < 1e-9 - Math.PI ? angle + 2 * Math.PI : angle;
  });
};

/** Convex outlines: corners in order round an ellipse, none too near its neighbour. */
export const convex: fc.Arbitrary<Outline> = fc
  .record({
    gaps: fc.array(fc.double({ min: 0.3, max: 1, noNaN: true }), { minLength: 3, maxLength: 9 }),
    rx: fc.double({ min: 0.5, max: 6, noNaN: true }),
    ry: fc.double({ min: 0.5, max: 6, noNaN: true }),
    turn: fc.double({ min: 0, max: 360, noNaN: true }),
  })
  .map(({ gaps, rx, ry, turn }) => {
    const total = gaps.reduce((sum, g) => sum + g, 0);
    let angle = 0;
    return gaps.map((g) => {
      angle += (g / total) * 2 * Math.PI;
      const [x, y] = [rx * Math.cos(angle), ry * Math.sin(angle)];
      const [cos, sin] = [Math.cos(degrees(turn)), Math.sin(degrees(turn))];
      return { x: x * cos - y * sin, y: x * sin + y * cos };
    });
  });

export const seams: fc.Arbitrary<number> = fc.double({ min: 0.01, max: 1, noNaN: true });
