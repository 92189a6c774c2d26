import { describe, expect, test } from 'vitest';
import { answered, expectFigures, numberOf, openAsking } from './asking.ts';

const ask = openAsking();
const STASH = '3 fat quarters, 12 5in-squares, 1 1/2yd';

describe('/yield have:', () => {
  test.each([
    ['hexagon', '1in', [3, 12, 1]],
    ['diamond', '1 1/2in', [3, 12, 1]],
    ['triangle', '2in seam:3/8in', [3, 12, 1]],
    ['clamshell', '2in width:40in', [3, 12, 1]],
  ] as const)(
    '%s %s: each piece gives what it gives alone, and all of them the sum',
    async (shape, rest, pieces) => {
      const all = await answered(ask, `/yield shape:${shape} size:${rest} have:${STASH}`);
      const alone: number[] = [];
      for (const cloth of ['fat-quarter', '5in-square', '1 1/2yd'])
        alone.push(
          numberOf(await answered(ask, `/yield shape:${shape} size:${rest} cloth:${cloth}`), 'best'),
        );
      expect(all.figures.perPiece?.value).toEqual(alone);
      expect(all.figures.fromEach?.value).toEqual(alone.map((gives, i) => gives * pieces[i]!));
      const total = alone.reduce((sum, gives, i) => sum + gives * pieces[i]!, 0);
      expectFigures(all, '', { total, pieces: total });
      expect(all.table?.rows.map(([from]) => from)).toEqual(['3 fat quarters', '12 5in-squares', '1 1/2yd']);
    },
  );

  // The trade's own figures: 64 by strips from a fat quarter, 4 by blunt squares from a 5-inch square.
  test('a way of cutting may be named', async () => {
    const strips = await answered(ask, '/yield shape:hexagon size:1in have:2 fat quarters method:strips');
    expectFigures(strips, '', { total: 128 });
    const squares = await answered(ask, '/yield hexagon 1in corners:blunt have:5 charms method:squares');
    expectFigures(squares, '', { total: 20 });
    const motifs = await answered(ask, '/yield hexagon 1 1/2in have:2 x 1yd motif:4x5in');
    const one = await answered(ask, '/yield hexagon 1 1/2in 1yd motif:4x5in');
    expectFigures(motifs, '', { total: 2 * numberOf(one, 'best') });
  });

  test('its choices tell how each piece is cut', async () => {
    const { choices } = await answered(ask, `/yield hexagon 1in have:${STASH}`);
    expect(choices.map((one) => one.label)).toEqual([
      'How to cut a fat quarter',
      'How to cut a 5-inch square',
      'How to cut 1 1/2yd',
    ]);
    for (const choice of choices) expect((await ask(choice.ask)).error).toBeNull();
  });

  test('a doubtful size is asked back, with what each reading gives in all', async () => {
    const reply = await ask('/yield hexagon 4in have:3 fat quarters, 1 charm');
    expect(reply.asks).toContain('flat to flat');
    const flats = await answered(ask, '/yield hexagon flats:4in have:3 fat quarters, 1 charm');
    expect(reply.table?.rows[1]?.[1]).toBe(`at least ${numberOf(flats, 'total')} of them`);
    expectFigures(await answered(ask, reply.choices[1]!.ask), '', { total: numberOf(flats, 'total') });
  });

  test('other words may follow the list, and a piece that is too small is named', async () => {
    const reply = await answered(ask, '/yield have:3 fat quarters, 2 charms hexagon edge:3in');
    expect(reply.figures.perPiece?.value).toEqual([expect.any(Number), 0]);
    expect(reply.lines.join(' ')).toContain('Too small for even one: charms');
  });

  test.each([
    ['have:3 fish', 'cloth-unread'],
    ['have:3 fat quarters, 2 fish, 1yd', 'cloth-unread'],
    ['have:2 letter', 'cloth-unread'],
    ['have:1yd cloth:1yd', 'one-of-these'],
    ['', 'option-missing'],
  ])('%s is met with a sentence', async (words, code) => {
    expect((await ask(`/yield hexagon 1in ${words}`)).error?.code).toBe(code);
  });

  test('none that gives a patch', async () => {
    expect((await ask('/yield hexagon edge:8in have:2 charms')).error?.code).toBe('patch-wider-than-cloth');
  });
});

describe('/yield pieces:', () => {
  // 64 hexagons by strips from a fat quarter, so that 240 take 4; 75 nested and more at best, so that 75 take one.
  test.each([
    ['fat-quarter method:strips', 240, 4, '240 take 4'],
    ['fat-quarter method:strips', 64, 1, 'Enough for 64.'],
    ['fat-quarter', 75, 1, 'Enough for 75.'],
    ['5in-square corners:blunt', 41, 11, '41 take 11'],
  ])('%s for %i', async (cloth, pieces, clothPieces, words) => {
    const reply = await answered(ask, `/yield hexagon 1in cloth:${cloth} pieces:${pieces}`);
    expectFigures(reply, '', { pieces, clothPieces });
    expect(reply.lines[1]).toContain(words);
  });

  test('from all that one has', async () => {
    const reply = await answered(ask, '/yield hexagon 1in have:2 fat quarters method:strips pieces:130');
    expect(reply.lines[1]).toBe('2 short of 130.');
  });
});

describe('/yardage need:', () => {
  // The counts of trade: 19 in a rosette of two rounds, 96 in a star of four, 7 + 126 + 36 in seven rosettes.
  test.each([
    ['rosette 2 rounds', 'rosette:2', 19],
    ['a rosette of 2 rounds', 'rosette:2', 19],
    ['star 4 a side', 'star:4', 96],
    ['7 rosettes of 2 rounds', 'garden:7 of 2 rounds', 169],
    ['garden of 7 rosettes, 2 rounds, own path', 'garden:7 of 2 rounds, own path', 259],
    ['100 tumbling blocks', 'blocks:100', 300],
    ['7 stars', 'stars:7', 54],
    ['field 60x72in', 'field:60x72in', 1739],
    ['queen', 'field:queen', 3832],
  ])('of a layout: %s', async (need, option, pieces) => {
    const needed = await answered(ask, `/yardage size:1in have:2 fat quarters, 1yd need:${need}`);
    expectFigures(needed, '', { pieces });
    const named = await answered(ask, `/yardage size:1in have:2 fat quarters, 1yd ${option}`);
    expect(needed.figures).toEqual(named.figures);
    expect(needed.table).toEqual(named.table);
  });

  test('the parts of a layout are told without cloth too', async () => {
    const { table } = await answered(ask, '/yardage size:1in need:7 rosettes of 2 rounds');
    expect(table?.rows.map(([, pieces]) => pieces)).toEqual(['7', '126', '36']);
  });

  test('cloth of the colour that a part is to be of is kept for it', async () => {
    const reply = await answered(
      ask,
      '/yardage hexagon 1in need:centre 19 yellow, path 84 white have:1yd white, 2 yellow fat quarters',
    );
    expect(reply.table?.rows).toEqual([
      [expect.stringContaining('yellow fat quarters'), '77', 'centre, yellow'],
      [expect.stringContaining('of 1yd white'), '84', 'path, white'],
    ]);
    expect(reply.lines.join(' ')).toContain('1 yellow fat quarter.');
    const kept = await answered(
      ask,
      '/yardage hexagon 1in need:centre 19 yellow, 84 path have:1 charm for the paths',
    );
    expect(kept.table?.rows[0]).toEqual(['1 charm', '4', 'path']);
  });

  test('a layout beside a number, or another layout, is one too many', async () => {
    expect((await ask('/yardage 1in pieces:3 need:rosette 2 rounds')).error?.code).toBe('one-of-these');
    expect((await ask('/yardage 1in rosette:1 need:star 4 a side')).error?.code).toBe('one-of-these');
  });

  test('one that cannot be read says how it is said', async () => {
    const { error } = await ask('/yardage 1in need:yellow centres');
    expect(error?.code).toBe('role-unread');
    expect(error?.message).toContain('need:19 centres, path 84 white');
  });

  test('cloth with nothing to cut leads to what it gives', async () => {
    const { lines } = await ask('/yardage hexagon 1in have:3 fat quarters spare:5%');
    expect(lines.at(-1)).toBe('`/yield shape:hexagon size:1in have:3 fat quarters`');
  });
});
