import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { area, box, perimeter } from '../../../src/calculator/shapes/extent.ts';
import { flatten } from '../../../src/calculator/shapes/flatten.ts';
import { offset } from '../../../src/calculator/shapes/offset.ts';
import type { Outline } from '../../../src/calculator/shapes/outline.ts';
import { placeOutline } from '../../../src/calculator/shapes/place.ts';
import { smallestSquare } from '../../../src/calculator/shapes/turned-square.ts';
import {
  appleCore,
  clamshell,
  convex,
  halfDisc,
  longHexagon,
  regular,
  rhombus,
  tumbler,
} from './outlines.ts';

/** Two swelling sides face each other askew: the square is least between the turns at which a corner bears. */
const barrel: Outline = [
  { x: 0, y: 0 },
  { x: 4, y: 0.3, bulge: 0.12 },
  { x: 4.1, y: 4 },
  { x: -0.1, y: 3.8, bulge: 0.2 },
];

const ARCS: [string, Outline][] = [
  ['clamshell', clamshell(3)],
  ['clamshell, cut', offset(clamshell(3), 0.25, 'rounded')],
  ['apple-core', appleCore(4, 90)],
  ['apple-core, cut', offset(appleCore(4, 90), 0.25, 'rounded')],
  ['half disc', halfDisc(1.5)],
  ['barrel', barrel],
  ['barrel on its side', placeOutline(barrel, { x: 0, y: 0, turnDegrees: 60 })],
  [
    'more than half a circle',
    [
      { x: 0, y: 0 },
      { x: 1, y: 0, bulge: 2.5 },
    ],
  ],
];

const turned = (outline: Outline, degrees: number): Outline =>
  placeOutline(outline, { x: 0.3, y: -2, turnDegrees: degrees });

describe('against the same outline walked in short straight steps', () => {
  test.each(ARCS)('%s', (_, outline) => {
    for (const degrees of [0, 17, 45, 111, 200, 301]) {
      const exact = turned(outline, degrees);
      const steps = flatten(exact, 1e-7);
      expect(area(exact)).toBeCloseTo(area(steps), 5);
      expect(perimeter(exact)).toBeCloseTo(perimeter(steps), 5);
      expect(box(exact).left).toBeCloseTo(box(steps).left, 6);
      expect(box(exact).bottom).toBeCloseTo(box(steps).bottom, 6);
      expect(box(exact).width).toBeCloseTo(box(steps).width, 6);
      expect(box(exact).height).toBeCloseTo(box(steps).height, 6);
    }
  });

  test('no step strays from its arc by more than the tolerance', () => {
    for (const tolerance of [0.1, 0.01, 0.001]) {
      const steps = flatten(halfDisc(1), tolerance).slice(1);
      for (const [i, p] of steps.slice(0, -1).entries()) {
        const q = steps[i + 1]!;
        expect(Math.hypot(p.x, p.y)).toBeCloseTo(1, 10);
        expect(1 - Math.hypot((p.x + q.x) / 2, (p.y + q.y) / 2)).toBeLessThanOrEqual(tolerance);
      }
    }
  });
});

/** The upright square that holds an outline after turning it: what the smallest square is the least of. */
const squareAt = (outline: Outline, degrees: number): number => {
  const { width, height } = box(turned(outline, degrees));
  return Math.max(width, height);
};

/** The least square by looking at every hundredth of a degree and closing in on the best one. */
const searched = (outline: Outline): number => {
  const start = Array.from({ length: 9000 }, (_, i) => i / 100).reduce((best, degrees) =>
    squareAt(outline, degrees) < squareAt(outline, best) ? degrees : best,
  );
  let [low, high] = [start - 0.01, start + 0.01];
  for (let i = 0; i < 60; i++) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
    if (squareAt(outline, a) < squareAt(outline, b)) high = b;
    else low = a;
  }
  return squareAt(outline, (low + high) / 2);
};

describe('the smallest square', () => {
  const STRAIGHT: [string, Outline][] = [
    ['pentagon', regular(5, 1)],
    ['octagon', regular(8, 1)],
    ['45° diamond', rhombus(2, 45)],
    ['elongated hexagon', longHexagon(1, 2, 90)],
    ['tumbler', tumbler(3, 2, 2.5)],
    ['triangle, blunt', offset(regular(3, 1), 0.25, 'blunt')],
  ];

  test.each([...STRAIGHT, ...ARCS])('is what a search finds, at the turn that is said: %s', (_, outline) => {
    const { side, degrees } = smallestSquare(outline);
    expect(squareAt(outline, degrees)).toBeCloseTo(side, 9);
    expect(Math.abs(searched(outline) - side)).toBeLessThan(1e-9);
    expect(degrees).toBeGreaterThanOrEqual(0);
    expect(degrees).toBeLessThan(90);
  });

  test('is beaten by no other turn, and the same however the outline lies', () => {
    const angle = fc.double({ min: 0, max: 360, noNaN: true });
    fc.assert(
      fc.property(convex, angle, angle, (outline, any, other) => {
        const { side, degrees } = smallestSquare(outline);
        expect(squareAt(outline, degrees)).toBeCloseTo(side, 9);
        expect(squareAt(outline, any)).toBeGreaterThan(side - 1e-9);
        expect(smallestSquare(turned(outline, other)).side).toBeCloseTo(side, 9);
      }),
    );
  });
});
