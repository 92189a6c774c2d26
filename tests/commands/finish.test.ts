import { describe, expect, test } from 'vitest';
import { openAsking, valuesOf } from './asking.ts';

const ask = openAsking();

/** The trade's worked examples, asked as a member would. */
describe('/finish', () => {
  test.each([
    [
      '/finish backing quilt:60x72in width:40in over:4in',
      { needWidth: 68, needLength: 80, panels: 2, length: 160, yards: 4.5, direction: 'lengthwise' },
    ],
    ['/finish backing quilt:60x72in width:42in', { panels: 2, yards: 3.875, direction: 'crosswise' }],
    ['/finish backing quilt:60x72in width:42in grain:lengthwise', { yards: 4.5, direction: 'lengthwise' }],
    ['/finish backing quilt:90x108in width:106in', { panels: 1, yards: 3.25 }],
    [
      '/finish binding quilt:60x72in strip:2 1/2in width:40in',
      { needLength: 274, strips: 8, length: 20, yards: 0.625 },
    ],
    ['/finish binding quilt:70x90in strip:2 1/2in width:40in', { strips: 9, yards: 0.625 }],
    ['/finish batting quilt:62x76in', { needWidth: 70, needLength: 84, package: 'twin' }],
    ['/finish batting quilt:90x108in', { needWidth: 98, needLength: 116, package: 'king' }],
    [
      '/finish border quilt:50x60in border:3in width:40in',
      {
        cutStrip: 3.5,
        sides: 60.5,
        topBottom: 56.5,
        strips: 6,
        length: 21,
        yards: 0.625,
        newWidth: 56,
        newLength: 66,
      },
    ],
    // The second goes round a top of 56 x 66 in: strips of 1 1/2 in, 66 1/2 and 58 1/2 in long, 250 in in all.
    [
      '/finish border quilt:50x60in border:3in outer:1in width:40in',
      {
        ...{ sides: 60.5, topBottom: 56.5, strips: 6 },
        ...{ outerCutStrip: 1.5, outerSides: 66.5, outerTopBottom: 58.5, outerTotal: 250, outerStrips: 7 },
        ...{ newWidth: 58, newLength: 68 },
      },
    ],
    ['/finish bed bed:queen drop:12in tuck:0in', { width: 84, length: 92 }],
    ['/finish bed mattress:60x80in drop:12in tuck:0in', { width: 84, length: 92 }],
  ])('%s', async (words, expected) => {
    expect(valuesOf(await ask(words))).toMatchObject(expected);
  });

  test('bias from a square, with its seams and by area alone', async () => {
    const { square, squarePlain, squareCut, needLength } = valuesOf(
      await ask('/finish binding quilt:60x72in strip:2 1/4in cut:bias'),
    );
    expect(needLength).toBe(274);
    expect(square).toBeCloseTo(25.33, 2);
    expect(squarePlain).toBeCloseTo(24.83, 2);
    expect(squareCut).toBe(26);
  });

  test('a hexagon edge and a rosette edge are longer, and bound on the bias', async () => {
    const hexagons = await ask('/finish binding quilt:60x72in edge:hexagons');
    expect(valuesOf(hexagons).needLength).toBeCloseTo(2 * (60 * 1.1547 + 72 * 1.3333) + 10, 1);
    expect(valuesOf(hexagons)).toHaveProperty('square');
    expect(valuesOf(await ask('/finish binding edge:rosette rounds:3 size:1in')).needLength).toBe(52);
  });

  test('two borders are those of one round the other, each by itself', async () => {
    for (const join of ['butted', 'mitred']) {
      const both = valuesOf(await ask(`/finish border 60x70in border:2in outer:6in join:${join}`));
      const inner = valuesOf(await ask(`/finish border 60x70in border:2in join:${join}`));
      const outer = valuesOf(await ask(`/finish border 64x74in border:6in join:${join}`));
      for (const name of ['cutStrip', 'sides', 'topBottom', 'total', 'strips', 'length', 'yards', 'metres']) {
        expect(both[name], name).toBe(inner[name]);
        expect(both[`outer${name.charAt(0).toUpperCase()}${name.slice(1)}`], name).toBe(outer[name]);
      }
      expect([both.newWidth, both.newLength]).toEqual([76, 86]);
    }
    expect((await ask('/finish border 50x60in border:3in outer:40in width:40in')).error?.code).toBe(
      'wider-than-cloth',
    );
  });

  test('cloth is bought by the asker’s reading', async () => {
    const metric = openAsking();
    await metric('/me set unit:cm');
    const reply = await metric('/finish backing 140x200cm width:106cm');
    expect(reply.lines[0]).toMatch(/^Buy \d+(\.\d)? m:/);
    const { length, metres } = valuesOf(reply);
    expect(metres).toBeCloseTo(Math.ceil(((length as number) * 2.54) / 10 - 1e-9) / 10, 9);
  });

  test.each([
    '/finish backing crib',
    '/finish batting baby',
    '/finish bed crib',
    '/finish bed mattress:28x52in',
  ])('the caution on infants goes with %s', async (words) => {
    expect((await ask(words)).cautions.join(' ')).toContain('no quilt in a crib');
  });

  test('and not with every quilt', async () => {
    expect((await ask('/finish backing queen')).cautions.join(' ')).not.toContain('crib');
  });

  test.each([
    ['/finish bed', 'bed-or-mattress'],
    ['/finish bed queen mattress:60x80in', 'one-of-these'],
    ['/finish binding strip:2in', 'option-missing'],
    ['/finish binding edge:rosette', 'option-missing'],
    ['/finish border 50x60in border:40in width:40in', 'wider-than-cloth'],
    ['/finish binding 60x72in strip:6in width:5in', 'wider-than-cloth'],
    ['/finish border 50x60in', 'option-missing'],
    ['/finish backing 60x72in grain:sideways', 'option-unread'],
  ])('%s is met with %s', async (words, code) => {
    expect((await ask(words)).error?.code).toBe(code);
  });

  test('each choice can be asked', async () => {
    for (const words of ['/finish binding 60x72in', '/finish border 50x60in border:3in', '/finish bed king'])
      for (const choice of (await ask(words)).choices) expect((await ask(choice.ask)).error).toBeNull();
  });
});

describe('/finish border, by the strips that are cut', () => {
  test('the border is as much narrower as its two seams', async () => {
    const strips = await ask('/finish border quilt:36x45in strip:2 1/2in seam:1/4in');
    const border = await ask('/finish border quilt:36x45in border:2in seam:1/4in');
    expect(valuesOf(strips)).toEqual(valuesOf(border));
  });

  test.each([
    ['/finish border quilt:36x45in strip:2 1/2in border:2in', 'one-of-these'],
    ['/finish border quilt:36x45in strip:1/2in seam:1/4in', 'nothing-left'],
    ['/finish border quilt:36x45in', 'option-missing'],
  ])('%s is met with %s', async (words, code) => {
    expect((await ask(words)).error?.code).toBe(code);
  });
});

describe('/check', () => {
  test('a mark that is just right is said without more: 12 an inch came 25/32 in short, 1/32 in a seam', async () => {
    const reply = await ask('/check row:12 measured:20in size:1in');
    expect(reply.lines).toContain('Sew 1/32 in shallower: your 1/4 in seam comes out at 0.283 in.');
  });

  test('twenty in a row that came out 33 3/4, as a command and in plain words', async () => {
    const command = await ask('/check row:20 measured:33 3/4in size:1in shape:hexagon along:flats');
    expect(valuesOf(command).expected).toBeCloseTo(34.641, 3);
    expect(valuesOf(command).perPatch).toBeCloseTo(-0.0446, 4);
    expect(command.lines.join(' ')).toContain('shallower');
    for (const words of [
      '20 in a row came out 33 3/4',
      'my 20 hexagons in a row came out 33¾ in',
      'a row of 20 1 inch hexagons measures 33 3/4 in',
    ]) {
      const plain = await ask(words);
      expect(plain.command).toBe('check');
      expect(valuesOf(plain)).toEqual(valuesOf(command));
    }
  });

  test('a row that is not measured yet: what it should be, in plain words too', async () => {
    const reply = await ask('/check row:20 size:1in');
    expect(reply.lines).toEqual(['It should be 34 5/8 in (34.641).']);
    expect(Object.keys(reply.figures).sort()).toEqual(['expected', 'tenPatches']);
    for (const words of ['how long should a row of 20 1in hexies be', '20 hexagons 1in across how wide?'])
      expect(valuesOf(await ask(words))).toEqual(valuesOf(reply));
  });

  test('by how much it is short or over, in place of what it measures', async () => {
    expect(valuesOf(await ask('/check row:20 short:1in')).error).toBeCloseTo(-1, 9);
    expect(valuesOf(await ask('/check row:20 over:1/2in')).error).toBeCloseTo(0.5, 9);
    expect(valuesOf(await ask('row of twenty 1in hexies came out an inch short')).error).toBeCloseTo(-1, 9);
  });

  test('point to point', async () => {
    expect(valuesOf(await ask('/check row:10 measured:15 1/2in size:1in along:corners'))).toMatchObject({
      expected: 15.5,
      error: 0,
    });
  });

  test.each([
    ['/check row:20 measured:33in shape:kite', 'row-not-of-shape'],
    ['/check row:20 measured:33in shape:square along:corners', 'row-not-that-way'],
    ['/check row:1 measured:33in', 'too-small'],
    ['/check measured:33in', 'option-missing'],
    ['/check row:20 measured:33in short:1in', 'one-of-these'],
    ['/check row:2 short:5in', 'row-all-short'],
  ])('%s is met with %s', async (words, code) => {
    expect((await ask(words)).error?.code).toBe(code);
  });
});

describe('plain questions', () => {
  test.each([
    ['how much backing for 60x72', 'finish', 'panels'],
    ['binding for a queen quilt', 'finish', 'strips'],
    ['what batting do I need for a 62 x 76 quilt', 'finish', 'package'],
    ['quilt for a queen mattress with a 12 in drop', 'finish', 'mattressWidth'],
    ['3 inch border for 50x60', 'finish', 'cutStrip'],
    ['plan a queen quilt of 1 1/2 inch hexagons', 'plan', 'totalYards'],
    ['12 kits of a 2 round rosette', 'kit', 'perKit'],
  ])('%s', async (words, command, figure) => {
    const reply = await ask(words);
    expect(reply.error).toBeNull();
    expect(reply.command).toBe(command);
    expect(reply.figures).toHaveProperty(figure);
  });
});
