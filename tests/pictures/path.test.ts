import { describe, expect, test } from 'vitest';
import { CATALOGUE, shapeNames } from '../../src/calculator/shapes/catalogue.ts';
import { area, box } from '../../src/calculator/shapes/extent.ts';
import { FINISHED, laidOut } from '../../src/calculator/shapes/face.ts';
import { offset } from '../../src/calculator/shapes/offset.ts';
import type { Outline } from '../../src/calculator/shapes/outline.ts';
import { type Measured, read } from '../../src/calculator/shapes/readings.ts';
import { pathOf } from '../../src/pictures/path.ts';
import { takenAt } from '../../src/pictures/taken.ts';
import { appleCore, clamshell } from '../calculator/shapes/outlines.ts';
import { pixelsFilled } from './drawn.ts';

const PER_INCH = 120;

/** The area of an outline's path as the renderer fills it, in square inches. */
function areaDrawn(outline: Outline, down: 1 | -1): number {
  const { left, bottom, width, height } = box(outline);
  const y = down === 1 ? -bottom * PER_INCH : (bottom + height) * PER_INCH;
  const d = pathOf(outline, { perInch: PER_INCH, x: -left * PER_INCH + 10, y: y + 10, down });
  return pixelsFilled(d, Math.ceil(width * PER_INCH) + 20, Math.ceil(height * PER_INCH) + 20) / PER_INCH ** 2;
}

const dimensions = { edge: 1.5, side: 2 };

const outlines: readonly (readonly [string, Outline])[] = [
  ...shapeNames.map((name) => [name, CATALOGUE[name].outline(dimensions)] as const),
  ['clamshell of our own', clamshell(2)],
  ['clamshell with its allowance', offset(clamshell(2), 0.25, 'rounded')],
  ['apple core of our own', appleCore(2, 90)],
  ['apple core with its allowance', offset(appleCore(2, 90), 0.25, 'rounded')],
  [
    'more than half a circle',
    [
      { x: 0, y: 0, bulge: 2 },
      { x: 1, y: 0 },
      { x: 0.5, y: 0.4 },
    ],
  ],
];

// The renderer (resvg) knows nothing of the calculator: it fills the path, and the pixels are counted.
describe.each(outlines)('the path of a %s', (_, outline) => {
  test.each([1, -1] as const)('fills the area that the calculator gives (y %i)', (down) => {
    expect(areaDrawn(outline, down) / area(outline)).toBeCloseTo(1, 2.5);
  });
});

test('the same pixels would show an arc that turns the wrong way', () => {
  const hollow = clamshell(2).map((corner) => ({ ...corner, bulge: Math.abs(corner.bulge ?? 0) }));
  expect(areaDrawn(hollow, -1) / area(clamshell(2))).toBeGreaterThan(1.2);
});

describe.each(shapeNames)('the measures of a %s', (name) => {
  const faces: readonly (readonly [string, Measured])[] = [
    ['finished', laidOut(CATALOGUE[name], dimensions, FINISHED)],
    ['cut pointed', laidOut(CATALOGUE[name], dimensions, { seam: 0.25, cornerStyle: 'pointed' })],
    ['cut blunt', laidOut(CATALOGUE[name], dimensions, { seam: 0.25, cornerStyle: 'blunt' })],
  ];

  test.each(faces)('are drawn as long as they are told, %s', (_, face) => {
    for (const measure of CATALOGUE[name].told) {
      const reading = CATALOGUE[name].measures[measure]!;
      const taken = takenAt(reading, face);
      if (!taken) continue;
      const { from, to, beside } = taken;
      // Beside the patch only the length along the dimension line counts: the ends are led out to it.
      const [dx, dy] = [to.x - from.x, to.y - from.y];
      const length = beside ? Math.abs(dx * beside.y - dy * beside.x) : Math.hypot(dx, dy);
      expect(length, measure).toBeCloseTo(read(reading, face), 9);
    }
  });
});
