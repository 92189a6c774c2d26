import { describe, expect, test } from 'vitest';
import { readCloths, writeCloths } from '../../commands/plan-cloths.ts';
import { fileName } from '../../commands/plan-files.ts';
import type { Reply } from '../../src/chat/reply.ts';
import { openAsking, valuesOf } from './asking.ts';

const BEA = { as: 'Bea' };
const ORGANISER = { as: 'Cleo', organiser: true };

const fresh = openAsking;

const textOf = (reply: Reply, ending: string): string => {
  const picture = reply.pictures.find(({ name }) => name.endsWith(ending));
  return String(picture?.of.text ?? '');
};

describe('a name that is taken', () => {
  test('is met with the same ask under the next free name, which keeps it', async () => {
    const ask = fresh();
    for (const name of ['Field queen', 'field Queen 2'])
      await ask(`/plan keep name:${name} quilt:queen`, BEA);
    const taken = await ask('/plan keep name:Field queen quilt:queen size:3/4in', ORGANISER);
    expect(taken.error?.message).toContain('/plan keep name:Field queen 3 ');
    const [, instead = ''] = /`(\/plan keep [^`]*)`/.exec(taken.error?.message ?? '') ?? [];
    expect((await ask(instead, ORGANISER)).title).toMatch(/^Field queen 3/);
  });
});

describe('/plan make', () => {
  test('a garden by part, with its shopping list', async () => {
    const reply = await fresh()(
      '/plan garden rosettes:7 rounds:2 outer:yes size:1in cloths:centre yellow, petal scraps, path white',
    );
    expect(valuesOf(reply)).toMatchObject({
      ...{ total: 217, rosettes: 7, centres: 7, petals: 126, path: 84, seams: 594 },
      ...{ centrePieces: 7, petalPieces: 126, pathPieces: 84, papers: 217 },
      ...{ centreCloth: 'yellow', petalCloth: 'scraps', pathCloth: 'white', battingPackage: 'crib' },
    });
    expect(reply.lines[0]).toBe('217 hexagons: 7 centres, 126 petals, 84 for the path.');
    expect(reply.lines.length).toBeLessThanOrEqual(7);
    expect(reply.table?.columns).toHaveLength(3);
  });

  test.each([
    ['/plan rounds:2', 'Rosette of 2 rounds'],
    ['/plan rounds:2 60x72in', 'rosettes of 2 rounds'],
    ['/plan rosettes:7 rounds:1', '7 rosettes'],
    ['/plan rosette 2 rounds 1in', 'Rosette of 2 rounds'],
    ['/plan stars:7', '7 stars set with diamonds'],
    ['/plan blocks:100', '100 blocks of three'],
    ['/plan 60x72 1in', 'Field of hexagons'],
    ['/plan 60x72 1in straight', 'straight sides'],
    ['/plan number:240 shape:kite size:2in', '240 kites'],
    ['/plan star side:4', 'Star, 4 a side'],
    ['/plan diamonds side:8', 'Large diamond, 8 a side'],
  ])('%s is taken for %s', async (words, title) => {
    expect((await fresh()(words)).title).toContain(title);
  });

  test('a doubtful size is asked back, and its choices answer', async () => {
    const ask = fresh();
    const reply = await ask('/plan queen 4in');
    expect(reply.asks).not.toBeNull();
    const across = await ask(reply.choices[1]?.ask ?? '');
    expect(across.title).toContain('2.31 in side');
  });

  test('finishing by the quilt that a rosette is sewn on', async () => {
    expect(valuesOf(await fresh()('/plan rosette rounds:8 size:1in quilt:60x72in'))).toMatchObject({
      ...{ quiltWidth: 60, quiltHeight: 72, backingYards: 3.875 },
    });
  });

  test('no size, no finishing', async () => {
    const figures = valuesOf(await fresh()('/plan rosette rounds:2 number:12'));
    expect(figures).not.toHaveProperty('backingYards');
    expect(figures).not.toHaveProperty('quiltWidth');
  });

  test.each([
    ['/plan', 'plan-what'],
    ['/plan garden', 'plan-needs'],
    ['/plan diamonds', 'plan-needs'],
    ['/plan garden shape:kite rosettes:7', 'layout-shape'],
    ['/plan number:9 shape:rectangle', 'plan-one-size'],
    ['/plan number:9 shape:kite measure:flats size:1in', 'measure-not-of-shape'],
    ['/plan 1x1in size:2in sides:whole', 'no-patch-fits'],
    ['/plan 480x480in size:1/8in', 'too-many-patches'],
    ['/plan number:9 size:44in measure:flats', 'patch-wider-than-cloth'],
    ['/plan 60x72 border:40in width:40in', 'plan-cloth-narrow'],
    ['/plan garden rosettes:8', 'arrangement-unknown'],
    ['/plan garden rosettes:7 cloths:leaf green', 'cloth-part-unknown'],
    ['/plan garden rosettes:7 cloths:petal red, petal blue', 'cloth-part-twice'],
    ['/plan show Nothing', 'plans-none'],
    ['/plan show', 'option-missing'],
    ['/kit rosette rounds:2', 'option-missing'],
    ['/kit members:3', 'plan-what'],
  ])('%s is met with %s', async (words, code) => {
    const { error } = await fresh()(words);
    expect(error?.code).toBe(code);
    expect(error?.message).not.toContain('undefined');
    expect(error?.message).not.toContain('NaN');
  });

  test('a bed for an infant brings the caution', async () => {
    expect((await fresh()('/plan field crib 1in')).cautions.join(' ')).toContain('no quilt in a crib');
  });

  test('in metric, the metre and A4', async () => {
    const ask = fresh();
    await ask('/me set unit:cm');
    const reply = await ask('/plan field 140x200 size:25mm');
    expect(reply.table?.rows.at(-1)?.[1]).toMatch(/^\d+(\.\d)? m$/);
    expect(reply.table?.rows.find(([what]) => what === 'papers')?.[1]).toContain('A4');
  });
});

describe('a wish', () => {
  test('a bed, a size and scraps: weeks as /time has them, scraps that are not bought, another layout to choose', async () => {
    const ask = fresh();
    const wish = await ask('queen size, 1-inch, out of my scraps');
    const time = await ask('/time field:queen size:1in');
    const weeks = /\d+ to \d+ weeks/.exec(time.lines.join(' '))?.[0];
    expect(weeks).toBeDefined();
    expect(wish.lines.join(' ')).toContain(`Sewn in ${weeks}, done `);
    expect(valuesOf(wish)).toMatchObject({ total: 3832, fieldCloth: 'scraps' });
    expect(wish.table?.rows[0]).toEqual([
      'scraps',
      expect.stringMatching(/ yd of scraps$/),
      '3,832 hexagons',
    ]);
    expect(wish.notes.join(' ')).toContain('hexagons all over');
    const other = wish.choices.find(({ ask: words }) => words.includes('layout:garden'));
    const garden = await ask(other?.ask ?? '');
    expect(valuesOf(garden)).toMatchObject({ rosettes: 165 });
    expect(garden.choices.some(({ label }) => label === other?.label)).toBe(false);
  });

  test('one cloth alone is for every part', async () => {
    const ask = fresh();
    const all = await ask('/plan garden rosettes:7 cloths:all scraps');
    expect(valuesOf(await ask('/plan garden rosettes:7 cloths:scraps'))).toEqual(valuesOf(all));
    expect((await ask('/plan garden rosettes:7 cloths:scraps, path white')).error?.code).toBe(
      'cloth-part-unknown',
    );
  });
});

describe('what a plan says', () => {
  test('one star, rosette or diamond on a quilt is the largest that lies inside it, as /count has it', async () => {
    const ask = fresh();
    const star = await ask('/plan star quilt:king size:2in');
    const counted = await ask('/count star quilt:king size:2in');
    expect(valuesOf(star).total).toBe(valuesOf(counted).insideTotal);
    expect(star.notes.join(' ')).toContain('the largest that lies inside, 15 a side');
    expect(star.notes).toContain('Not in the list: the ground that it is sewn on, 108 x 108 in.');
    expect(valuesOf(await ask('/plan rosette quilt:throw size:1in')).total).toBe(
      valuesOf(await ask('/count rosette quilt:throw size:1in')).insideTotal,
    );
    // 17 a side: 34 in wide and 58.89 in high; one more would be 62.35 in.
    expect(valuesOf(await ask('/plan diamonds quilt:throw size:2in')).total).toBe(17 * 17);
    expect(valuesOf(await ask('/plan star side:3 quilt:king size:2in')).total).toBe(54);
  });

  test('where it is not told how much, her own ask comes back with an example', async () => {
    const ask = fresh();
    for (const words of [
      '/plan garden',
      '/plan stars size:1in',
      '/plan blocks',
      '/plan diamonds',
      '/plan pieces',
    ]) {
      const { error, lines } = await ask(words);
      expect(error?.code, words).toBe('plan-needs');
      const instead = /^`(.*)`$/.exec(lines.at(-1) ?? '')?.[1] ?? '';
      expect(instead, words).toContain(/layout:\w+/.exec(instead)?.[0] ?? '?');
      expect((await ask(instead)).error, instead).toBeNull();
    }
  });

  test('rosettes are not offered where the quilt has no room for one', async () => {
    const ask = fresh();
    const offered = async (words: string) => (await ask(words)).choices.map(({ label }) => label).join();
    expect(await offered('/plan quilt:60x72in')).toMatch(/rosettes of 2 rounds/);
    expect(await offered('/plan quilt:0.5x1000in')).not.toMatch(/rosettes/);
  });

  test('thread to buy is as many needlefuls as are cut, and no less', async () => {
    const ask = fresh();
    const plan = await ask('/plan rosette rounds:2 size:1in');
    // 7 lengths of 18 in are 126 in, 3 1/2 yd; what is in the seams alone is 88 in.
    expect(plan.table?.rows).toContainEqual(['thread', '4 yd', '7 needlefuls of 18 in']);
    expect((await ask('/time rosette:2')).lines.join(' ')).toContain(
      'cut 7 needlefuls of 18 in, 126 in (3.5 yd)',
    );
    const kit = await ask('/kit rosette rounds:2 size:1in members:12');
    expect(kit.table?.rows).toContainEqual(['thread, 126 in (3.5 yd)', '42 yd', '']);
  });

  test('two shapes are told apart, and no angle stands behind a number', async () => {
    const ask = fresh();
    const { lines, table } = await ask('/plan stars:7 set:hexagons size:1in');
    expect(lines.slice(0, 2)).toEqual([
      '48 patches: 42 diamonds and 6 hexagons.',
      'Cut 60° diamonds from strips 1 3/8 in (1.366) high, hexagons 2 1/4 in (2.232) flat to flat.',
    ]);
    expect(table?.rows.filter(([what]) => what === 'papers').map(([, , purpose]) => purpose)).toEqual([
      '42 diamonds, 82 a sheet',
      '6 hexagons, 25 a sheet',
    ]);
    expect((await ask('/plan shape:diamond45 number:24 size:2in')).lines[0]).toBe('24 diamonds of 45°.');
  });

  test('an edge that goes in and out is not told as if it were straight', async () => {
    const ask = fresh();
    const bound = /Bound as if its edge were straight/;
    for (const words of [
      '/plan garden rosettes:7 rounds:1',
      '/plan blocks side:4',
      '/plan quilt:40x50in sides:whole',
    ])
      expect((await ask(words)).notes.join(' '), words).toMatch(bound);
    for (const words of [
      '/plan quilt:40x50in',
      '/plan garden rounds:1 quilt:40x50in',
      '/plan star side:3 quilt:40x50in',
    ])
      expect((await ask(words)).notes.join(' '), words).not.toMatch(bound);
  });
});

describe('a plan kept under a name', () => {
  test('is listed, shown as it was, changed and removed', async () => {
    const ask = fresh();
    const kept = await ask('/plan keep name:Spring garden rosettes:7 rounds:2 size:1in');
    expect(kept.title).toMatch(/^Spring garden: 7 rosettes/);
    expect((await ask('/plan list')).table?.rows).toEqual([
      ['Spring garden', '7 rosettes of 2 rounds, shared path, 1 in side', 'Ada'],
    ]);
    const shown = await ask('/plan show spring GARDEN', BEA);
    expect(valuesOf(shown)).toEqual(valuesOf(kept));
    const changed = await ask('/plan change name:Spring garden spare:10% size:3/4in');
    expect(valuesOf(changed)).toMatchObject({ total: 169, centreYards: 0.125 });
    expect(valuesOf(await ask('/plan show Spring garden'))).toEqual(valuesOf(changed));
    const removed = await ask('/plan remove Spring garden');
    expect((await ask('/plan list')).table).toBeNull();
    expect((await ask(removed.choices[0]?.ask ?? '')).error).toBeNull();
    expect(valuesOf(await ask('/plan show Spring garden'))).toEqual(valuesOf(changed));
  });

  test('stays the same when its keeper’s and its reader’s own settings differ', async () => {
    const ask = fresh();
    const kept = await ask('/plan keep name:Field quilt:40x50in size:1in');
    await ask('/me set width:40in seam:3/8in hours:2 stitches:20 pace:9', BEA);
    expect(valuesOf(await ask('/plan show Field', BEA))).toEqual(valuesOf(kept));
    await ask('/plan change name:Field border:2in', ORGANISER);
    expect(valuesOf(await ask('/plan show Field'))).toMatchObject({
      total: valuesOf(kept).total,
      quiltWidth: 44,
    });
  });

  test('only she or an organiser may change or remove it', async () => {
    const ask = fresh();
    await ask('/plan keep name:Mine quilt:40x50in');
    expect((await ask('/plan remove Mine', BEA)).error?.code).toBe('plan-not-yours');
    expect((await ask('/plan change name:Mine spare:5%', BEA)).error?.code).toBe('plan-not-yours');
    expect((await ask('/plan change name:Mine spare:5%', ORGANISER)).error).toBeNull();
    expect((await ask('/plan remove Mine', ORGANISER)).error).toBeNull();
  });

  test('a name is taken once, and one that is only near is asked about', async () => {
    const ask = fresh();
    await ask('/plan keep name:Spring quilt:40x50in');
    expect((await ask('/plan keep name:SPRING quilt:20x20in', BEA)).error?.code).toBe('plan-name-taken');
    expect((await ask('/plan show Sprng')).error?.message).toContain('Did you mean Spring?');
    expect((await ask('/plan change name:Spring')).error?.code).toBe('plan-unchanged');
    expect((await ask('/plan keep name:Autumn field 20x20')).error?.code).toBe('plan-all-name');
  });

  test('the beginning of its name will do where only one begins so', async () => {
    const ask = fresh();
    const spring = await ask('/plan keep name:Spring garden rosettes:7 rounds:2');
    const sprint = await ask('/plan keep name:Sprint quilt:20x20in');
    expect(valuesOf(await ask('/plan show SPRING'))).toEqual(valuesOf(spring));
    expect((await ask('/kit plan:spring members:3')).title).toBe('3 kits: Spring garden');
    expect((await ask('/plan change name:spring spare:10%')).title).toMatch(/^Spring garden: /);
    const which = await ask('/plan show spr');
    expect(which.asks).toContain('‘spr’');
    expect(which.choices.map(({ ask }) => ask)).toEqual([
      '/plan show name:Spring garden',
      '/plan show name:Sprint',
    ]);
    expect(valuesOf(await ask(which.choices[1]?.ask ?? ''))).toEqual(valuesOf(sprint));
    expect((await ask('/kit plan:spr members:3')).choices[0]?.ask).toBe('/kit members:3 plan:Spring garden');
    expect((await ask('/plan remove spring', BEA)).error?.code).toBe('plan-not-yours');
    expect((await ask('/plan remove spring')).title).toBe('‘Spring garden’ is removed');
    expect((await ask('/plan show garden')).error?.code).toBe('plan-unknown');
  });

  test('a whole name goes before longer ones that begin with it', async () => {
    const ask = fresh();
    await ask('/plan keep name:Spring quilt:20x20in');
    await ask('/plan keep name:Spring 2 quilt:40x40in');
    expect(valuesOf(await ask('/plan show spring'))).toMatchObject({ width: 20 });
  });

  test('a plan that is only looked at with a name is not kept, and leads to keeping it', async () => {
    const ask = fresh();
    const made = await ask('/plan garden rosettes:7 rounds:2 cloths:centre gold name:Spring');
    expect(made.notes.join(' ')).toContain('Not kept yet');
    expect((await ask('/plan list')).table).toBeNull();
    const kept = await ask(made.choices[0]?.ask ?? '');
    expect(valuesOf(kept)).toEqual(valuesOf(made));
    expect(kept.title).toMatch(/^Spring: /);
    expect((await ask('/plan field quilt:20x20in name:a size:1in')).error).toBeNull();
  });

  test('what cannot be worked out is not kept', async () => {
    const ask = fresh();
    expect((await ask('/plan keep name:Big quilt:480x480in size:1/8in')).error).not.toBeNull();
    await ask('/plan keep name:Small quilt:20x20in size:1in');
    expect((await ask('/plan change name:Small size:1/8in quilt:480x480in')).error).not.toBeNull();
    expect((await ask('/plan list')).table?.rows).toEqual([
      ['Small', 'field of hexagons for 20 x 20 in, 1 in side', 'Ada'],
    ]);
    expect(valuesOf(await ask('/plan show Small'))).toMatchObject({ width: 20 });
  });

  test('a number takes the place of the size to fill, and the other way round', async () => {
    const ask = fresh();
    await ask('/plan keep name:Garden quilt:40x50in rounds:1');
    expect(valuesOf(await ask('/plan change name:Garden rosettes:7'))).toMatchObject({ rosettes: 7 });
    const { rosettes, width } = valuesOf(await ask('/plan change name:Garden quilt:60x60in'));
    expect(rosettes).toBeGreaterThan(7);
    expect(width).toBeGreaterThanOrEqual(60);
  });

  test('the same event delivered again keeps one plan and gives the same reply', async () => {
    const ask = fresh();
    const first = await ask('/plan keep name:Once quilt:20x20in', { event: 'e1' });
    expect(await ask('/plan keep name:Once quilt:20x20in', { event: 'e1' })).toEqual(first);
    expect((await ask('/plan list')).figures.plans?.value).toBe(1);
  });

  test.each([
    '=HYPERLINK("x")',
    "Ada's: garden",
    '六角形',
    '🐝',
    '__proto__',
    'constructor',
    '@everyone',
    '"; drop',
  ])('the odd name %s', async (name) => {
    const ask = fresh();
    const kept = await ask(`/plan keep name:${name} quilt:20x20in size:1in`);
    expect(kept.error).toBeNull();
    const shown = await ask(`/plan show ${name}`);
    expect(shown.title).toContain(`${name}: field`);
    for (const { name: file } of shown.pictures) expect(file).toMatch(/^[a-z0-9.-]+\.(csv|pdf|png)$/);
    for (const line of textOf(shown, '.csv')
      .replace(/^\ufeff/, '')
      .split('\r\n'))
      expect(line).not.toMatch(/(^|,)"?[=+@-]/);
    expect((await ask(`/plan remove ${name}`)).error).toBeNull();
  });

  test('a name too long, or that would be read as an option', async () => {
    const ask = fresh();
    expect((await ask(`/plan keep name:${'x'.repeat(61)} quilt:20x20in`)).error?.code).toBe('text-too-long');
  });
});

describe('the table for a spreadsheet', () => {
  test('has every part and every purchase, with the totals of the reply', async () => {
    const reply = await fresh()(
      '/plan garden rosettes:7 rounds:2 outer:yes size:1in cloths:centre @yellow, petal scraps, path "white", binding blue',
    );
    const lines = textOf(reply, '.csv').trimEnd().split('\r\n');
    const figures = valuesOf(reply);
    expect(lines[0]).toBe('list,what,for,note,pieces,amount,unit,inches needed');
    expect(lines).toContain('patches,hexagon,petal,scraps,126,,,');
    expect(lines).toContain("patches,hexagon,centre,'@yellow,7,,,");
    expect(lines.some((line) => line.startsWith('cloth,"""white""",84 for the path,,84,0.375,yd,'))).toBe(
      true,
    );
    expect(lines.at(-1)).toBe(`total,cloth in all,each cloth rounded up,,,${figures.totalYards},yd,`);
    const bought = lines
      .filter((line) => line.startsWith('cloth,'))
      .map((line) => Number(line.split(',').at(-3)));
    expect(bought.reduce((sum, one) => sum + one, 0)).toBeCloseTo(figures.totalYards as number, 9);
  });
});

describe('cloths by part', () => {
  const roles = ['centre', 'petal', 'path'];

  test.each([
    ['centre yellow, petal scraps, path white', 'centre yellow, petal scraps, path white'],
    ['centers: sunny yellow; the path = white', 'centre sunny yellow, path white'],
    ['yellow centres, white path', 'centre yellow, path white'],
    ['petals in red', 'petal red'],
    ['backing cream, everything blue', 'backing cream, all blue'],
  ])('%s', (text, read) => {
    const cloths = readCloths(text, roles);
    expect(cloths.ok && writeCloths(cloths.value)).toBe(read);
    const again = cloths.ok ? readCloths(writeCloths(cloths.value), roles) : null;
    expect(again).toEqual(cloths);
  });

  test('rounds by number', () => {
    const cloths = readCloths('round 1 red, round 10 blue, centre round gold', [
      'centre',
      'round 1',
      'round 10',
    ]);
    expect(cloths.ok && cloths.value).toEqual([
      { role: 'round 1', cloth: 'red' },
      { role: 'round 10', cloth: 'blue' },
      { role: 'centre', cloth: 'round gold' },
    ]);
  });
});

describe('/kit', () => {
  test('of a kept plan, with its packing list', async () => {
    const ask = fresh();
    await ask('/plan keep name:Rosette rounds:2 size:1in cloths:centre gold, round 1 blue');
    const reply = await ask('/kit plan:Rosette members:12 spare:10%', BEA);
    expect(reply.title).toBe('12 kits: Rosette');
    expect(valuesOf(reply)).toMatchObject({
      perKit: 19,
      total: 228,
      pieces: 253,
      spare: 25,
      centreCloth: 'gold',
    });
    expect(reply.table?.rows.at(-1)).toEqual(['label and this list', '12', '']);
    expect(textOf(reply, '.csv')).toContain('centre,hexagon,gold,1,12,2,0.125,yd\r\n');
    expect((await ask('/kit plan:Rosete members:12')).error?.message).toContain('Did you mean Rosette?');
  });

  test('what is said beside a kept plan is laid over it for this once', async () => {
    const ask = fresh();
    await ask('/plan keep name:Rosette rounds:2 size:1in');
    expect(valuesOf(await ask('/kit plan:Rosette members:2 rounds:3'))).toMatchObject({ perKit: 37 });
    expect(valuesOf(await ask('/plan show Rosette'))).toMatchObject({ total: 19 });
  });
});

test.each([
  ['Spring garden', 'spring-garden'],
  ['Zoë’s ½', 'zoe-s-1-2'],
  ['../../etc/passwd', 'etc-passwd'],
  ['六角形', 'plan'],
  ['CON', 'plan'],
  ['x'.repeat(60), 'x'.repeat(40)],
])('the file of %s is called %s', (name, file) => {
  expect(fileName(name)).toBe(file);
});
