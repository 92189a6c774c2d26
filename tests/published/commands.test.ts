import { describe, expect, test } from 'vitest';
import { answered, expectFigures, numberOf, openAsking } from '../commands/asking.ts';

const ask = openAsking();

/** Integer sequences as the On-Line Encyclopedia of Integer Sequences lists them. */
const SEQUENCES: readonly (readonly [
  source: string,
  form: (n: number) => string,
  figure: string,
  from: number,
  listed: readonly number[],
])[] = [
  [
    'A003215, hex numbers',
    (n) => `rosette rounds:${n}`,
    'total',
    0,
    [1, 7, 19, 37, 61, 91, 127, 169, 217, 271],
  ],
  [
    'A045945, hexagonal matchstick numbers',
    (n) => `rosette rounds:${n}`,
    'seams',
    0,
    [0, 12, 42, 90, 156, 240, 342],
  ],
  ['A033581, 6n²', (n) => `rosette rounds:${n}`, 'setIns', 0, [0, 6, 24, 54, 96, 150, 216]],
  ['A033581, 6n²', (n) => `star side:${n}`, 'total', 1, [6, 24, 54, 96, 150, 216, 294]],
  ['A152746, six times hexagonal numbers', (n) => `star side:${n}`, 'seams', 1, [6, 36, 90, 168, 270, 396]],
  [
    'A094159, three times hexagonal numbers',
    (n) => `blocks side:${n}`,
    'seams',
    1,
    [3, 18, 45, 84, 135, 198],
  ],
  ['A033428, 3n² (from memory)', (n) => `blocks side:${n}`, 'total', 1, [3, 12, 27, 48, 75, 108]],
  [
    'A016742, even squares (from memory)',
    (n) => `diamonds from:4 rounds:${n}`,
    'total',
    0,
    [4, 16, 36, 64, 100],
  ],
  [
    'A016754, odd squares (from memory)',
    (n) => `diamonds from:1 rounds:${n}`,
    'total',
    0,
    [1, 9, 25, 49, 81],
  ],
];

describe('what /count answers, against published sequences', () => {
  const cases = SEQUENCES.flatMap(([source, form, figure, from, listed]) =>
    listed.map((value, i) => [source, `/count ${form(from + i)} size:1in`, figure, value] as const),
  );

  test.each(cases)('%s: %s, %s', async (_, words, figure, value) => {
    expect(numberOf(await answered(ask, words), figure)).toBe(value);
  });

  test('A135711, the least outline of n hexagons, and A135708, the least sticks: a rosette has both', async () => {
    // A135708: 6, 11, 15, 19, 23, 27, 30 …: 3n + ⌈√(12n − 3)⌉ sticks; A135711: 2⌈√(12n − 3)⌉ outline.
    for (let rounds = 0; rounds <= 8; rounds++) {
      const reply = await answered(ask, `/count rosette rounds:${rounds} size:1in`);
      const [n, seams] = [numberOf(reply, 'total'), numberOf(reply, 'seams')];
      const outline = 6 * n - 2 * seams;
      expect(outline).toBe(2 * Math.ceil(Math.sqrt(12 * n - 3) - 1e-9));
      expect(seams + outline).toBe(3 * n + Math.ceil(Math.sqrt(12 * n - 3) - 1e-9));
    }
  });
});

describe('measures of 1 July 1959: an inch is 25.4 mm, a yard 0.9144 m, exactly (National Bureau of Standards)', () => {
  test('a patch in millimetres is the patch in inches', async () => {
    const inches = await answered(ask, '/cut shape:hexagon size:1in seam:1/4in');
    const metric = await answered(ask, '/cut shape:hexagon size:25.4mm seam:6.35mm');
    for (const [name, { value }] of Object.entries(inches.figures))
      if (typeof value === 'number') expect(numberOf(metric, name), name).toBeCloseTo(value, 12);
  });

  test('0.9144 m of cloth is a yard', async () => {
    const metre = await answered(ask, '/yield shape:hexagon size:1in cloth:0.9144m width:42in');
    expectFigures(metre, 'in', { clothLength: 36 });
  });
});

describe('sheets: A4 is 210 × 297 mm (ISO 216)', () => {
  test('so many papers of 30 mm squares, no margin', async () => {
    const reply = await answered(ask, '/yield shape:square size:30mm cloth:a4 margin:0in');
    expectFigures(reply, '', { best: 7 * 9 });
    expectFigures(reply, 'in', { clothWidth: 210 / 25.4, clothLength: 297 / 25.4 });
  });
});

describe('beds: a queen mattress is 60 × 80 in, a king 76 × 80 (trade tables)', () => {
  test.each([
    ['twin', 38, 75],
    ['full', 54, 75],
    ['queen', 60, 80],
    ['king', 76, 80],
  ])('a %s quilt is larger than its mattress', async (bed, width, length) => {
    const reply = await answered(ask, `/count field quilt:${bed} size:1in`);
    expect(numberOf(reply, 'width')).toBeGreaterThan(width);
    expect(numberOf(reply, 'height')).toBeGreaterThan(length);
  });
});

describe('the time study of 1861 (reprinted in a US National Museum bulletin): 23 to 30 stitches a minute', () => {
  test('the range that is told is longer than stitching alone, two or three times', async () => {
    const reply = await answered(ask, '/time seams:42 size:1in method:whip stitches:14');
    const stitches = numberOf(reply, 'stitches');
    expect(numberOf(reply, 'minutesLow')).toBeGreaterThan(stitches / 23);
    expect(numberOf(reply, 'minutesHigh')).toBeLessThan((stitches / 23) * 6);
    expect(numberOf(reply, 'minutes') / (stitches / 26)).toBeGreaterThan(2);
  });
});
