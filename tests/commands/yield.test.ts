import { describe, expect, test } from 'vitest';
import { answered, expectFigures, numberOf, openAsking } from './asking.ts';

const ask = openAsking();

/** Worked beforehand: strips and nested each the better of both directions, the turned grid by separating axes. */
const HEXAGONS = [
  // size, seam, cloth, strips, nested, turned, squares, ceiling
  ['1', '1/4', '1yd width:40in', 240, 310, 255, 224, 333],
  ['1', '1/4', '1yd width:42in', 256, 326, 270, 224, 350],
  ['3/4', '1/4', '1/4yd width:42in', 100, 117, 88, 84, 134],
  ['1 1/2', '1/4', '1yd width:40in', 121, 156, 132, 110, 173],
  ['1', '1/4', '1yd width:108in', 656, 855, 690, 602, 901],
  ['1', '1/4', '1m width:110cm', 285, 374, 288, 255, 395],
  ['1', '1/4', 'fat-quarter', 64, 75, 63, 56, 87],
  ['1', '1/4', '18x21in', 64, 75, 63, 56, 87],
  ['1', '1/4', '10in-square', 12, 14, 16, 16, 23],
  ['1', '1/4', '5in-square', 2, 3, 4, 4, 5],
  ['1', '1/4', 'strip width:42in', 16, 11, 18, 16, 24],
  ['1', '3/8', '1yd width:42in', 196, 266, 208, 195, 283],
] as const;

const OTHERS = [
  // shape, size, cloth, strips, ceiling
  ['diamond', '1', '1yd width:42in', 676, 701],
  ['diamond', '2', 'fat-quarter', 56, 65],
  ['diamond', '1 1/2', 'strip width:42in', 19, 28],
  ['diamond', '1', '10in-square', 35, 46],
  ['triangle', '2', '1yd width:42in', 392, 425],
  ['triangle', '1 1/2', 'fat-quarter', 140, 155],
  ['square', '2', '1yd width:42in', 224, 241],
  ['half-hexagon', '1 1/2', '1yd width:42in', 280, 297],
  ['square', '1 1/2', '10in-square', 25, 25],
] as const;

describe('/yield, as it is asked by the contract', () => {
  test.each(HEXAGONS)(
    'hexagons %s in, seam %s in, cloth:%s',
    async (size, seam, cloth, strips, nested, turned, squares, ceiling) => {
      const reply = await answered(ask, `/yield shape:hexagon size:${size}in seam:${seam}in cloth:${cloth}`);
      expectFigures(reply, '', { strips, nested, turned, squares, ceiling });
      // Squares are for blunt patches only, so a pointed one is at its best another way.
      expect(numberOf(reply, 'best')).toBeGreaterThanOrEqual(Math.max(strips, nested, turned));
      expect(numberOf(reply, 'best')).toBeLessThanOrEqual(ceiling);
    },
  );

  test.each(OTHERS)('%s %s in, cloth:%s', async (shape, size, cloth, strips, ceiling) => {
    const reply = await answered(ask, `/yield shape:${shape} size:${size}in seam:1/4in cloth:${cloth}`);
    expectFigures(reply, '', { strips, ceiling });
    expect(numberOf(reply, 'best')).toBeGreaterThanOrEqual(strips);
    expect(numberOf(reply, 'best')).toBeLessThanOrEqual(ceiling);
  });

  test('the ceiling is the cloth’s area over the cut patch’s, rounded down', async () => {
    for (const [shape, cutArea] of [
      [
        'kite',
        (Math.sqrt(3) / 4) * 4 +
          (Math.sqrt(3) + 1) * 2 * 0.25 +
          0.0625 * (Math.sqrt(3) + 2 + 1 / Math.sqrt(3)),
      ],
      ['square', 6.25],
    ] as const) {
      const reply = await answered(ask, `/yield shape:${shape} size:2in seam:1/4in cloth:18x21in`);
      expectFigures(reply, '', { ceiling: Math.floor((18 * 21) / cutArea) });
      expect(numberOf(reply, 'best')).toBeLessThanOrEqual(numberOf(reply, 'ceiling'));
    }
  });

  test('in rosettes: 77 hexagons make 11 of one round and 4 of two', async () => {
    const one = await answered(ask, '/yield hexagon 1in fat-quarter rounds:1');
    expectFigures(one, '', { best: 77, rosettes: 11, perRosette: 7 });
    expect(one.lines[0]).toBe('At least 11 rosettes of 1 round, 7 hexagons each.');
    expectFigures(await answered(ask, '/yield hexagon 1in fat-quarter rounds:2'), '', { rosettes: 4 });
    const all = await answered(ask, '/yield hexagon 1in have:40 5in squares rounds:2');
    expectFigures(all, '', { total: 160, rosettes: 8, perRosette: 19 });
    const none = await answered(ask, '/yield hexagon 1in 5in-square rounds:1');
    expect(none.lines[0]).toBe('Not one rosette of 1 round: it takes 7 hexagons.');
    expect((await ask('/yield diamond 1in fat-quarter rounds:1')).error?.code).toBe('layout-shape');
    expect((await ask('/yield hexagon 1in fat-quarter rounds:1 motif:4x4in')).error?.code).toBe(
      'one-of-these',
    );
  });

  /*
   * The largest regular hexagon in a square of side s has the side s / (2 cos 15°): it lies turned by 15° (a known
   * result of elementary geometry, the square's angle bisected between two diagonals of the hexagon). The seam takes
   * 2/√3 of itself off the side.
   */
  test.each([3, 4, 5, 6.5, 8, 10])('the largest hexagon from a square of %s in', async (side) => {
    const most = side / (2 * Math.cos(Math.PI / 12)) - (2 / Math.sqrt(3)) * 0.25;
    const reply = await answered(ask, `/yield shape:hexagon cloth:${side}x${side}in pieces:1`);
    expectFigures(reply, 'in', { finishedEdge: Math.floor(most * 8) / 8 });
  });

  test('the largest square from a square, and four of them: all of it, less the seams', async () => {
    expectFigures(await answered(ask, '/yield shape:square cloth:10in-square pieces:1'), 'in', {
      finishedEdge: 9.5,
    });
    expectFigures(await answered(ask, '/yield shape:square cloth:10in-square pieces:4'), 'in', {
      finishedEdge: 4.5,
    });
  });

  test.each([
    ['hexagon', 'cloth:fat-quarter', 50],
    ['hexagon', 'cloth:1yd', 300],
    ['diamond', 'have:3 fat quarters, 1yd', 200],
    ['triangle', 'cloth:fat-eighth', 12],
    ['clamshell', 'cloth:10in-square', 4],
    ['hexagon', 'cloth:letter', 12],
  ])(
    'so many %s of %s: they come out at the size that is said, and not an eighth above',
    async (shape, from, pieces) => {
      const reply = await answered(ask, `/yield shape:${shape} ${from} pieces:${pieces}`);
      const edge = numberOf(reply, 'finishedEdge');
      const figure = from.startsWith('have') ? 'total' : 'best';
      const at = async (size: number) =>
        numberOf(await answered(ask, `/yield shape:${shape} size:${size}in measure:edge ${from}`), figure);
      expect(await at(edge)).toBe(numberOf(reply, 'best'));
      expect(await at(edge)).toBeGreaterThanOrEqual(pieces);
      expect(await at(edge + 1 / 8)).toBe(numberOf(reply, 'nextBest'));
      expect(await at(edge + 1 / 8)).toBeLessThan(pieces);
      const [choice] = reply.choices;
      expect((await answered(ask, choice!.ask)).lines.join(' ')).toContain('Enough for');
    },
  );

  test('the largest is told by its side, whatever was said of measuring', async () => {
    const plain = await answered(ask, '/yield hexagon cloth:10in-square pieces:1');
    for (const said of ['measure:flats', 'given:cut'])
      expect(
        numberOf(await answered(ask, `/yield hexagon ${said} cloth:10in-square pieces:1`), 'finishedEdge'),
      ).toBe(numberOf(plain, 'finishedEdge'));
  });

  test('a patch that a seam closes up below some size is found above it', async () => {
    expectFigures(await answered(ask, '/yield clamshell cloth:fat-quarter pieces:300'), 'in', {
      finishedEdge: 5 / 8,
    });
    const reply = await answered(ask, '/yield tumbler narrow:2in cloth:fat-quarter pieces:40');
    expect(numberOf(reply, 'finishedEdge')).toBeGreaterThan(2);
  });

  test('a print or a way of cutting is not sought for: a size is asked', async () => {
    for (const said of ['motif:4x4in', 'method:strips', 'rounds:1'])
      expect((await ask(`/yield hexagon cloth:fat-quarter pieces:12 ${said}`)).error?.code).toBe(
        'size-missing',
      );
  });

  test('the largest in millimetres for who reads them', async () => {
    const metric = openAsking();
    await answered(metric, '/me set reading:metric');
    const reply = await answered(metric, '/yield shape:hexagon cloth:100x100mm pieces:1');
    // 100 mm / (2 cos 15°) less 2/√3 of 6.35 mm is 44.43 mm.
    expect(reply.lines[0]).toContain('44 mm');
  });

  test('no size that serves, two measures, two cloths', async () => {
    expect((await ask('/yield hexagon cloth:5in-square pieces:100000')).error?.code).toBe(
      'too-many-for-cloth',
    );
    expect((await ask('/yield rectangle cloth:5in-square pieces:2')).error?.code).toBe('needs-two-measures');
    expect((await ask('/yield hexagon cloth:5in-square pieces:2 have:2 fat quarters')).error?.code).toBe(
      'one-of-these',
    );
    expect((await ask('/yield hexagon cloth:5in-square')).error?.code).toBe('size-missing');
  });

  test('blunt corners let squares serve: sixteen from a 10-inch square', async () => {
    const reply = await answered(
      ask,
      '/yield shape:hexagon size:1in seam:1/4in cloth:10in-square corners:blunt',
    );
    expectFigures(reply, '', { squares: 16, fewest: 16 });
    expect(numberOf(reply, 'best')).toBeGreaterThanOrEqual(16);
  });

  test('a margin is left free along every edge', async () => {
    const withMargin = await answered(
      ask,
      '/yield shape:square size:2in seam:1/4in cloth:10x10in margin:1/4in',
    );
    const inside = await answered(ask, '/yield shape:square size:2in seam:1/4in cloth:9 1/2x9 1/2in');
    expect(numberOf(withMargin, 'best')).toBe(9);
    expect(numberOf(withMargin, 'best')).toBe(numberOf(inside, 'best'));
    expectFigures(await answered(ask, '/yield shape:square size:2in seam:1/4in cloth:10x10in'), '', {
      best: 16,
    });
  });

  test('papers from a sheet are of the finished size, with a margin of 1/4 in, and it says so', async () => {
    const reply = await answered(ask, '/yield shape:square size:1in cloth:letter');
    expectFigures(reply, '', { best: 8 * 10 }); // letter is 8½ × 11 in: 8 × 10½ inside the margin
    expect(reply.notes.join()).toContain('finished size');
    expect(reply.notes.join()).toContain('1/4 in free');
    const a4 = await answered(ask, '/yield shape:square size:25mm cloth:a4 margin:5mm');
    expectFigures(a4, '', { best: 8 * 11 }); // ISO 216: A4 is 210 × 297 mm, so 200 × 287 inside
    const seamed = await answered(ask, '/yield shape:square size:1in seam:1/4in cloth:letter');
    expectFigures(seamed, '', { best: 5 * 7 });
  });

  test('turning the cloth changes nothing', async () => {
    const one = await answered(ask, '/yield shape:hexagon size:1in seam:1/4in cloth:18x21in');
    const other = await answered(ask, '/yield shape:hexagon size:1in seam:1/4in cloth:21x18in');
    for (const name of ['strips', 'nested', 'turned', 'squares', 'best', 'ceiling'])
      expect(numberOf(one, name), name).toBe(numberOf(other, name));
  });

  test('the width of cloth on the bolt is what was said, the usual 42 in or what is kept', async () => {
    const usual = await answered(ask, '/yield shape:hexagon size:1in seam:1/4in cloth:1yd');
    expectFigures(usual, '', { nested: 326 });
    expectFigures(usual, 'in', { clothWidth: 42, clothLength: 36 });
    expect(usual.notes.join()).toContain('42 in usable width');
    const said = await answered(ask, '/yield shape:hexagon size:1in seam:1/4in cloth:1yd width:40in');
    expect(said.notes.join()).not.toContain('usable width');
  });

  test('a patch that the cloth cannot hold is refused in words, with both sizes', async () => {
    const reply = await ask('/yield shape:hexagon size:3in measure:edge seam:1/4in cloth:5in-square');
    expect(reply.error?.code).toBe('patch-wider-than-cloth');
    expect(reply.error?.message).toMatch(/6\.58 x 5\.7.*5 x 5 in/); // 2·3 + 1/√3 by 3√3 + ½
  });

  test('a size that may be flat to flat is asked back with what each reading gives', async () => {
    const reply = await ask('/yield hexagon 4in 1yd');
    expect(reply.asks).toMatch(/\?$/);
    const given = reply.table?.rows.map(([, words]) => Number(/\d+/.exec(words ?? '')?.[0]));
    const best: number[] = [];
    for (const choice of reply.choices) best.push(numberOf(await answered(ask, choice.ask), 'best'));
    expect(given).toEqual(best);
    expect(new Set(best).size).toBe(3);
  });
});

test('a reading that the cloth or the sheet has no room for is told so, not as none at least', async () => {
  const charm = await ask('/yield hexagon 4in charm');
  expect(charm.table?.rows).toEqual([
    ['side', 'too large for it'],
    ['flat to flat', 'too large for it'],
    ['point to point', 'at least 1 of them'],
  ]);
  expect((await ask('/template hexagon 6in')).table?.rows[0]).toEqual(['side', 'too large for the sheet']);
});
