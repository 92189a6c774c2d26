import { setTimeout as wait } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import type { Problem } from '../../src/measure/result.ts';
import { tablesOf } from '../../src/store/connection.ts';
import { factsIn } from '../../src/store/facts.ts';
import { takeSteps } from '../../src/store/steps.ts';
import { newFile, opened, troubleOf } from './places.ts';

const answer = { member: 'ada', command: 'cut', reply: { title: 'Hexagon', figures: { cutFlats: 3.0981 } } };

describe.each([
  ['in memory', () => ':memory:'],
  ['in a file', newFile],
])('facts kept %s', (_where, place) => {
  it('nothing set is an empty object', async () => {
    const store = await opened(place());
    expect(await store.defaults.read('guild', 'ada')).toEqual({});
  });

  it('defaults are laid over those kept, and null takes one away', async () => {
    const store = await opened(place());
    expect(await store.defaults.set('guild', 'ada', { seam: 0.375, unit: 'cm' })).toEqual({
      seam: 0.375,
      unit: 'cm',
    });
    expect(await store.defaults.set('guild', 'ada', { unit: null, hours: 5 })).toEqual({
      seam: 0.375,
      hours: 5,
    });
    expect(await store.defaults.read('guild', 'ada')).toEqual({ seam: 0.375, hours: 5 });
  });

  it("members, guilds and a guild's own defaults are kept apart", async () => {
    const store = await opened(place());
    await store.defaults.set('guild', 'ada', { seam: 0.375 });
    await store.defaults.set('guild', '', { seam: 0.25 });
    await store.defaults.set('other', 'ada', { seam: 0.5 });
    await store.defaults.clear('other', 'ada');
    expect(await store.defaults.read('guild', 'ada')).toEqual({ seam: 0.375 });
    expect(await store.defaults.read('guild', '')).toEqual({ seam: 0.25 });
    expect(await store.defaults.read('other', 'ada')).toEqual({});
    expect(await store.defaults.both('guild', 'ada')).toEqual({
      own: { seam: 0.375 },
      guild: { seam: 0.25 },
    });
    expect(await store.defaults.both('guild', 'bea')).toEqual({ own: {}, guild: { seam: 0.25 } });
    expect(await store.defaults.both('other', 'ada')).toEqual({ own: {}, guild: {} });
  });

  it('an event is answered once: the first answer stays', async () => {
    const store = await opened(place());
    expect(await store.answered.find('guild', 'e1')).toBeUndefined();
    expect(await store.answered.keep('guild', 'e1', answer)).toBe(true);
    expect(await store.answered.keep('guild', 'e1', { ...answer, command: 'count' })).toBe(false);
    expect(await store.answered.find('guild', 'e1')).toEqual(answer);
    expect(await store.answered.find('other', 'e1')).toBeUndefined();
  });

  it('effect and answer are kept together', async () => {
    const store = await opened(place());
    const told = await store.together(async (facts) => {
      await facts.defaults.set('guild', 'ada', { seam: 0.375 });
      await facts.answered.keep('guild', 'e1', answer);
      expect(await facts.defaults.read('guild', 'ada')).toEqual({ seam: 0.375 });
      return 'done';
    });
    expect(told).toBe('done');
    expect(await store.defaults.read('guild', 'ada')).toEqual({ seam: 0.375 });
    expect(await store.answered.find('guild', 'e1')).toEqual(answer);
  });

  it('a throw in the middle leaves nothing, passes as it is, and the store goes on', async () => {
    const store = await opened(place());
    await store.defaults.set('guild', 'ada', { seam: 0.25 });
    const slip = new Error('dropped a stitch');
    const work = store.together(async (facts) => {
      await facts.defaults.set('guild', 'ada', { seam: 0.375 });
      await facts.answered.keep('guild', 'e1', answer);
      throw slip;
    });
    await expect(work).rejects.toBe(slip);
    expect(await store.defaults.read('guild', 'ada')).toEqual({ seam: 0.25 });
    expect(await store.answered.find('guild', 'e1')).toBeUndefined();
    await store.together((facts) => facts.defaults.set('guild', 'ada', { seam: 0.5 }));
    expect(await store.defaults.read('guild', 'ada')).toEqual({ seam: 0.5 });
  });

  it('works at the same time run one after another, none lost', async () => {
    const store = await opened(place());
    let inside = 0;
    const addOne = () =>
      store.together(async (facts) => {
        expect(++inside).toBe(1);
        const { hours = 0 } = await facts.defaults.read('guild', 'ada');
        await wait(1);
        await facts.defaults.set('guild', 'ada', { hours: hours + 1 });
        inside--;
      });
    await Promise.all(Array.from({ length: 20 }, addOne));
    expect(await store.defaults.read('guild', 'ada')).toEqual({ hours: 20 });
  });

  it('a call from outside waits for the work, and is not undone with it', async () => {
    const store = await opened(place());
    const work = store.together(async (facts) => {
      await facts.defaults.set('guild', 'ada', { seam: 0.375 });
      await wait(20);
      throw new Error('undone');
    });
    const outside = store.defaults.set('guild', 'bea', { seam: 0.5 });
    await expect(work).rejects.toThrow('undone');
    await outside;
    expect(await store.defaults.read('guild', 'bea')).toEqual({ seam: 0.5 });
    expect(await store.defaults.read('guild', 'ada')).toEqual({});
  });

  it('changes at the same time to different defaults all stay', async () => {
    const store = await opened(place());
    await Promise.all([
      store.defaults.set('guild', 'ada', { seam: 0.375 }),
      store.defaults.set('guild', 'ada', { width: 40 }),
      store.defaults.set('guild', 'ada', { pace: 2 }),
    ]);
    expect(await store.defaults.read('guild', 'ada')).toEqual({ seam: 0.375, width: 40, pace: 2 });
  });

  it('a together inside joins the work', async () => {
    const store = await opened(place());
    const work = store.together(async (facts) => {
      await facts.together((same) => same.defaults.set('guild', 'ada', { seam: 0.375 }));
      throw new Error('undone');
    });
    await expect(work).rejects.toThrow('undone');
    expect(await store.defaults.read('guild', 'ada')).toEqual({});
  });

  it('the outer facts inside a work are an error at once, not a wait for ever', async () => {
    const store = await opened(place());
    await expect(store.together(() => store.defaults.read('guild', 'ada'))).rejects.toThrow('handed in');
    await expect(store.together(() => store.together(async () => 1))).rejects.toThrow('handed in');
    expect(await store.defaults.read('guild', 'ada')).toEqual({});
  });

  it('closing waits for the work that is going on', async () => {
    const store = await opened(place());
    const work = store.together(async (facts) => {
      await wait(20);
      return facts.defaults.set('guild', 'ada', { seam: 0.375 });
    });
    await store.close();
    expect(await work).toEqual({ seam: 0.375 });
  });

  it('any text is kept as it is', async () => {
    const store = await opened(place());
    const odd = { member: "'; drop table answered; --", command: 'häxa 六', reply: ['\u0000', '🐝', null] };
    await store.answered.keep('guild"', "e'1", odd);
    expect(await store.answered.find('guild"', "e'1")).toEqual(odd);
  });
});

describe('a row that makes no sense', () => {
  it.each([
    ['no JSON', '{"seam":', {}, ['*']],
    ['no object', '[1,2]', {}, ['*']],
    ['null', 'null', {}, ['*']],
    ['one bad value', '{"seam":"wide","width":40}', { width: 40 }, ['seam']],
    [
      'values out of bounds',
      '{"seam":-1,"hours":0,"pace":1e999,"unit":"ell"}',
      {},
      ['seam', 'hours', 'pace', 'unit'],
    ],
    [
      'unknown names',
      '{"colour":"red","toString":1,"zone":"Europe/Vienna"}',
      { zone: 'Europe/Vienna' },
      ['colour', 'toString'],
    ],
  ])('%s is reported and left out', async (_name, text, left, names) => {
    const file = newFile();
    const reports: Problem[] = [];
    const store = await opened(file, { report: (problem) => reports.push(problem) });
    await store.defaults.set('guild', 'ada', { seam: 0.25 });
    const database = new Database(file);
    database.prepare('UPDATE defaults SET settings = ?').run(text);
    database.close();
    expect(await store.defaults.read('guild', 'ada')).toEqual(left);
    expect(reports).toEqual([
      { code: 'store-bad-row', table: 'defaults', guild: 'guild', member: 'ada', names },
    ]);
    expect(await store.defaults.set('guild', 'ada', { seam: 0.5 })).toEqual({ ...left, seam: 0.5 });
    expect(await store.defaults.read('guild', 'ada')).toEqual({ ...left, seam: 0.5 });
  });

  it('an answer that cannot be read is still an answer', async () => {
    const file = newFile();
    const reports: Problem[] = [];
    const store = await opened(file, { report: (problem) => reports.push(problem) });
    await store.answered.keep('guild', 'e1', answer);
    const database = new Database(file);
    database.prepare("UPDATE answered SET reply = '{'").run();
    database.close();
    expect(await store.answered.find('guild', 'e1')).toEqual({ ...answer, reply: null });
    expect(reports).toEqual([{ code: 'store-bad-row', table: 'answered', guild: 'guild', event: 'e1' }]);
  });
});

describe('trouble while the store is in use', () => {
  it('a full database is told as full, in one call and in a work, and nothing is half kept', async () => {
    const database = new Database(':memory:');
    const tables = tablesOf(database);
    const now = () => new Date();
    await takeSteps(tables, now);
    database.pragma(`max_page_count = ${database.pragma('page_count', { simple: true })}`);
    const facts = factsIn(tables, 'guild.sqlite', { now, report: () => {} });
    const long = { ...answer, reply: 'x'.repeat(100_000) };
    const full = { code: 'store-full', path: 'guild.sqlite' };
    expect(await troubleOf(facts.answered.keep('guild', 'e1', long))).toEqual(full);
    const work = facts.together(async (inside) => {
      await inside.defaults.set('guild', 'ada', { seam: 0.375 });
      await inside.answered.keep('guild', 'e1', long);
    });
    expect(await troubleOf(work)).toEqual(full);
    expect(await facts.defaults.read('guild', 'ada')).toEqual({});
    expect(await facts.defaults.set('guild', 'ada', { seam: 0.25 })).toEqual({ seam: 0.25 });
    database.close();
  });

  it('a writer elsewhere that does not let go is told as busy', async () => {
    const file = newFile();
    await (await opened(file)).close();
    const impatient = new Database(file, { timeout: 20 });
    const facts = factsIn(tablesOf(impatient), file, { now: () => new Date(), report: () => {} });
    const other = new Database(file);
    other.exec('BEGIN IMMEDIATE');
    expect(await troubleOf(facts.defaults.set('guild', 'ada', { seam: 1 }))).toEqual({
      code: 'store-busy',
      path: file,
    });
    expect(await facts.defaults.read('guild', 'ada')).toEqual({});
    other.exec('ROLLBACK');
    expect(await facts.defaults.set('guild', 'ada', { seam: 1 })).toEqual({ seam: 1 });
    other.close();
    impatient.close();
  });

  it('a step that fails takes the others back with it', async () => {
    const database = new Database(':memory:');
    const tables = tablesOf(database);
    const failing = [
      {
        name: 'one',
        take: (t: typeof tables) => t.schema.createTable('one').addColumn('a', 'text').execute(),
      },
      { name: 'two', take: async () => Promise.reject(new Error('step two')) },
    ];
    const migrate = tables.transaction().execute((inside) => takeSteps(inside, () => new Date(), failing));
    await expect(migrate).rejects.toThrow('step two');
    expect(database.prepare('SELECT name FROM sqlite_schema').all()).toEqual([]);
    database.close();
  });

  it('only the steps still to come are taken', async () => {
    const database = new Database(':memory:');
    const tables = tablesOf(database);
    const taken: string[] = [];
    const step = (name: string) => ({ name, take: async () => void taken.push(name) });
    await takeSteps(tables, () => new Date(), [step('one')]);
    await takeSteps(tables, () => new Date(), [step('one'), step('two'), step('three')]);
    expect(taken).toEqual(['one', 'two', 'three']);
    expect(database.prepare('SELECT step, name FROM steps ORDER BY step').all()).toEqual([
      { step: 1, name: 'one' },
      { step: 2, name: 'two' },
      { step: 3, name: 'three' },
    ]);
    database.close();
  });
});
