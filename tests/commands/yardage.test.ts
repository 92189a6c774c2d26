import { describe, expect, test } from 'vitest';
import { answered, expectFigures, numberOf, openAsking } from './asking.ts';

const ask = openAsking();
const R3 = Math.sqrt(3);

/** Worked beforehand; lengths in inches, purchases in eighths of a yard. */
const WORKED = [
  // pieces, shape, size, width, figures of lengths, figures of purchases
  [
    240,
    'hexagon',
    '1in',
    42,
    { strips: 15 * (R3 + 0.5), nested: 26.7847, squares: 37.5 },
    { strips: 1, nested: 0.75, squares: 1.125 },
  ],
  [240, 'hexagon', '1in', 40, { strips: 16 * (R3 + 0.5), nested: 27.9 }, { strips: 1, nested: 0.875 }],
  [
    500,
    'hexagon',
    '3/4in',
    42,
    { strips: 25 * (0.75 * R3 + 0.5), nested: 35.98 },
    { strips: 1.25, nested: 1 },
  ],
  [
    100,
    'hexagon',
    '1 1/2in',
    40,
    { strips: 10 * (1.5 * R3 + 0.5), nested: 24.79 },
    { strips: 0.875, nested: 0.75 },
  ],
  [300, 'diamond', '2in', 40, { strips: 20 * (R3 + 0.5) }, { strips: 1.25 }],
  [96, 'diamond', '1in', 42, { strips: 4 * (R3 / 2 + 0.5) }, { strips: 0.25 }],
  [100, 'triangle', '3in', 42, { strips: 5 * ((3 * R3) / 2 + 0.75) }, { strips: 0.5 }],
  [49, 'half-hexagon', '1 1/4in', 42, { strips: 4 * ((1.25 * R3) / 2 + 0.5) }, { strips: 0.25 }],
] as const;

describe('/yardage, as it is asked by the contract', () => {
  test.each(WORKED)(
    'pieces:%d shape:%s size:%s width:%din',
    async (pieces, shape, size, width, lengths, purchases) => {
      const reply = await answered(
        ask,
        `/yardage pieces:${pieces} shape:${shape} size:${size} seam:1/4in width:${width}in spare:0% shrink:0%`,
      );
      expectFigures(reply, '', { pieces });
      for (const [way, length] of Object.entries(lengths)) {
        expect(reply.figures[`${way}Length`]?.unit).toBe('in');
        expect(numberOf(reply, `${way}Length`), way).toBeCloseTo(length, 1);
      }
      expectFigures(
        reply,
        'yd',
        Object.fromEntries(Object.entries(purchases).map(([way, yards]) => [`${way}Yards`, yards])),
      );
      expect(numberOf(reply, 'bestLength')).toBeLessThanOrEqual(numberOf(reply, 'stripsLength'));
      expect(numberOf(reply, 'bestYards')).toBeCloseTo(
        Math.ceil(numberOf(reply, 'bestLength') / 4.5 - 1e-9) / 8,
        9,
      );
    },
  );

  test('strips are so many times the strip’s height, from the number in each', async () => {
    const reply = await answered(ask, '/yardage pieces:300 shape:diamond size:2in seam:1/4in width:40in');
    // ⌊40/k − ½⌋ = 15 from each strip, k = 2 + 1/√3, so 20 strips of √3 + ½.
    expect(Math.floor(40 / (2 + 1 / R3) - 0.5)).toBe(15);
    expect(reply.lines.join(' ')).toMatch(/20 strips of .*15 from each/);
  });

  test('nested by hand: columns every 1½ k across the width, each second one half a flat lower', async () => {
    const k = 1 + 0.5 / R3;
    const columns = Math.floor((40 - 2 * k) / (1.5 * k)) + 1;
    expect(columns).toBe(20); // so 12 in each, and 12½ flats deep
    const reply = await answered(ask, '/yardage pieces:240 shape:hexagon size:1in seam:1/4in width:40in');
    expectFigures(reply, 'in', { nestedLength: 12.5 * (R3 + 0.5) });
  });

  test('under half an inch to spare is said, with the next step up', async () => {
    const tight = await answered(
      ask,
      '/yardage pieces:500 shape:hexagon size:3/4in seam:1/4in width:42in method:strips',
    );
    expectFigures(tight, 'in', { stripsSpare: 45 - 25 * (0.75 * R3 + 0.5) });
    expect(tight.lines.join(' ')).toMatch(/1 1\/4 yd.*Under 1\/2 in to spare.*1 3\/8 yd/);
    const roomy = await answered(
      ask,
      '/yardage pieces:240 shape:hexagon size:1in seam:1/4in width:42in method:strips',
    );
    expect(roomy.lines.join(' ')).not.toContain('Under');
  });

  test('spare patches and shrinkage are added: needed / (1 − shrink)', async () => {
    const plain = await answered(
      ask,
      '/yardage pieces:240 shape:square size:2in seam:1/4in width:42in spare:0% shrink:0%',
    );
    const spare = await answered(
      ask,
      '/yardage pieces:240 shape:square size:2in seam:1/4in width:42in spare:5% shrink:0%',
    );
    const shrunk = await answered(
      ask,
      '/yardage pieces:240 shape:square size:2in seam:1/4in width:42in spare:0% shrink:3%',
    );
    expectFigures(plain, 'in', { stripsLength: 15 * 2.5 });
    expectFigures(spare, '', { pieces: 252 });
    expectFigures(spare, 'in', { stripsLength: 16 * 2.5 });
    expectFigures(shrunk, 'in', { stripsLength: (15 * 2.5) / 0.97 });
  });

  test.each([
    ['rosette:2', 'hexagon', 19],
    ['field:60x72in', 'hexagon', 1739],
    ['star:4', 'diamond', 96],
    ['blocks:100', 'diamond', 300],
  ])('for %s in place of pieces', async (layout, shape, pieces) => {
    const reply = await answered(ask, `/yardage ${layout} size:1in seam:1/4in width:42in`);
    expectFigures(reply, '', { pieces });
    const same = await answered(
      ask,
      `/yardage pieces:${pieces} shape:${shape} size:1in seam:1/4in width:42in`,
    );
    expect(numberOf(reply, 'bestLength')).toBe(numberOf(same, 'bestLength'));
  });

  test('a layout’s patches are of its own shape, and one layout at a time', async () => {
    expect((await ask('/yardage star:4 shape:hexagon size:1in')).error?.code).toBe('layout-shape');
    expect((await ask('/yardage rosette:2 star:4 size:1in')).error?.code).toBe('one-of-these');
    expect((await ask('/yardage rosette:2 pieces:19 size:1in')).error?.code).toBe('one-of-these');
    expect((await ask('/yardage size:1in')).error?.code).toBe('what-to-cut');
  });

  test('the best length yields the pieces, a unit less does not (by asking /yield)', async () => {
    const yardage = await answered(
      ask,
      '/yardage pieces:240 shape:hexagon size:1in seam:1/4in width:42in method:nested',
    );
    const length = numberOf(yardage, 'nestedLength');
    const from = async (long: number) =>
      numberOf(
        await answered(ask, `/yield shape:hexagon size:1in seam:1/4in cloth:42x${long.toFixed(6)}in`),
        'nested',
      );
    expect(await from(length + 1e-5)).toBeGreaterThanOrEqual(240);
    expect(await from(length - 1e-5)).toBeLessThan(240);
  });

  test('each method that can be asked for leads with its own number', async () => {
    for (const [method, figure] of [
      ['strips', 'stripsYards'],
      ['nested', 'nestedYards'],
      ['squares', 'squaresYards'],
    ] as const) {
      const reply = await answered(
        ask,
        `/yardage pieces:240 shape:hexagon size:1in seam:1/4in width:42in method:${method}`,
      );
      const yards = { 0.75: '3/4', 1: '1', 1.125: '1 1/8' }[numberOf(reply, figure)];
      expect(reply.lines[0]).toContain(`Buy ${yards} yd`);
    }
    expect((await ask('/yardage pieces:9 shape:diamond size:1in method:nested')).error?.code).toBe(
      'method-not-for-shape',
    );
  });

  test('cloth too narrow for one patch, a seam wider than the cloth', async () => {
    const narrow = await ask('/yardage pieces:10 shape:hexagon size:20in measure:edge seam:1/4in width:30in');
    expect(narrow.error?.code).toBe('patch-wider-than-cloth');
    expect(narrow.error?.message).toContain('30 in');
    const seam = await ask('/yardage pieces:10 shape:hexagon size:1in seam:6in width:5in');
    expect(seam.error?.code).toBe('patch-wider-than-cloth');
  });

  test('a size that may be flat to flat is asked back, with the cloth for each reading', async () => {
    const reply = await ask('/yardage 240 hexagon 4in');
    expect(reply.asks).toMatch(/\?$/);
    expect(reply.choices).toHaveLength(3);
    for (const [i, choice] of reply.choices.entries()) {
      const then = await answered(ask, choice.ask);
      const buy = /[\d /]+ yd/.exec(reply.table?.rows[i]?.[1] ?? '')?.[0].trim();
      expect(then.lines[0]).toContain(`Buy ${buy}`);
    }
  });
});

describe('what is told first of the ways to cut', () => {
  test.each([
    ['/yardage 350 diamond 2in', /^Strips lengthwise: 18 strips/],
    ['/yardage 300 hexagon 1in', /^Nested: 21 rows/],
  ])('%s: a way of the trade, where it is no dearer', async (words, how) => {
    const reply = await answered(ask, words);
    expect(reply.lines[1]).toMatch(how);
    const [choice] = reply.choices;
    expect(choice?.label).toMatch(/^With the least cloth, /);
    const least = await answered(ask, choice!.ask);
    const needed = ({ lines }: typeof least) => Number(/([\d.]+) in needed/.exec(lines[0] ?? '')?.[1]);
    const bought = ({ lines }: typeof least) => /^Buy ([^:]+):/.exec(lines[0] ?? '')?.[1];
    expect(needed(least)).toBeLessThan(needed(reply));
    expect(bought(least)).toBe(bought(reply));
    expect(least.figures).toMatchObject({ bestLength: reply.figures.bestLength });
  });

  test('what is dearer, or leaves nothing to spare, does not stand first', async () => {
    const dearer = await answered(ask, '/yardage 36 hexagon 1in');
    expect(dearer.lines[0]).toMatch(/^Buy 1\/8 yd/);
    expect(dearer.choices.map(({ label }) => label).join()).not.toContain('least cloth');
  });
});

test('a length drawn in by a hair too much is let out again', async () => {
  const reply = await answered(ask, '/yardage 7 octagon 6in measure:edge');
  expect(numberOf(reply, 'bestLength')).toBeLessThan(45);
});
