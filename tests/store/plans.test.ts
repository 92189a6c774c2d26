import Database from 'better-sqlite3';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { KeptPlan, PlanWish } from '../../src/guild/plan-facts.ts';
import { LONGEST_PLAN_NAME, mayChange, planKey } from '../../src/guild/plan-rules.ts';
import type { Problem } from '../../src/measure/result.ts';
import { memoryFacts } from '../standin/memory-facts.ts';
import { newFile, opened } from './places.ts';

const wish: PlanWish = {
  layout: 'garden',
  edge: 1,
  rosettes: { kind: 'rings', rings: 1 },
  rounds: 2,
  path: 'one',
  outer: true,
  cloths: [{ role: 'centre', cloth: 'yellow' }],
  ...{ seam: 0.25, width: 42, spare: 0.05, shrink: 0, method: 'whip', stitches: 14, hours: 5 },
  start: '2026-12-01',
};

const plan = (name: string, change: Partial<KeptPlan> = {}): KeptPlan => ({
  ...{ name, owner: 'ada', ownerName: 'Ada', wish, keptOn: '2026-12-01', changedOn: '2026-12-01' },
  ...change,
});

describe.each([
  ['in memory', async () => memoryFacts()],
  ['in a store', async () => opened(':memory:')],
  ['in a file', async () => opened(newFile())],
])('plans kept %s', (_where, open) => {
  it('come back as they were kept, by guild', async () => {
    const { plans } = await open();
    expect(await plans.find('guild', 'Spring')).toBeUndefined();
    expect(await plans.keep('guild', plan('Spring'))).toBe(true);
    expect(await plans.find('guild', 'Spring')).toEqual(plan('Spring'));
    expect(await plans.find('other', 'Spring')).toBeUndefined();
    expect(await plans.list('other')).toEqual([]);
  });

  it('the first of a name stays, however its letters are written', async () => {
    const { plans } = await open();
    await plans.keep('guild', plan('Spring Garden'));
    expect(await plans.keep('guild', plan('SPRING  garden', { owner: 'bea' }))).toBe(false);
    expect((await plans.find('guild', 'ｓｐｒｉｎｇ garden'))?.owner).toBe('ada');
  });

  it('are changed and removed by name', async () => {
    const { plans } = await open();
    await plans.keep('guild', plan('Spring'));
    expect(await plans.change('guild', 'spring', { ...wish, spare: 0.1 }, '2026-12-09')).toBe(true);
    expect(await plans.find('guild', 'Spring')).toEqual(
      plan('Spring', { wish: { ...wish, spare: 0.1 }, changedOn: '2026-12-09' }),
    );
    expect(await plans.change('guild', 'autumn', wish, '2026-12-09')).toBe(false);
    expect(await plans.remove('other', 'Spring')).toBe(false);
    expect(await plans.remove('guild', 'SPRING')).toBe(true);
    expect(await plans.remove('guild', 'SPRING')).toBe(false);
    expect(await plans.list('guild')).toEqual([]);
  });

  it('any name is kept as it is', async () => {
    const { plans } = await open();
    const names = ["'; drop table plans; --", '六角形 🐝', '=1+1', '__proto__', 'a%_b', '"quoted"', 'Zoë’s'];
    for (const name of names) expect(await plans.keep('guild', plan(name))).toBe(true);
    for (const name of names) expect((await plans.find('guild', name))?.name).toBe(name);
    expect((await plans.list('guild')).map(({ name }) => name).sort()).toEqual([...names].sort());
  });
});

it('a plan and what else is kept with it are kept together or not at all', async () => {
  const store = await opened(':memory:');
  const work = store.together(async ({ plans, defaults }) => {
    await plans.keep('guild', plan('Spring'));
    await defaults.set('guild', 'ada', { seam: 0.375 });
    throw new Error('dropped a stitch');
  });
  await expect(work).rejects.toThrow('dropped');
  expect(await store.plans.list('guild')).toEqual([]);
});

describe('a row that makes no sense', () => {
  it.each([
    ['no JSON', '{'],
    ['not a wish', '[]'],
    ['an unknown layout', JSON.stringify({ ...wish, layout: 'spiral' })],
    ['an unknown shape', JSON.stringify({ ...wish, layout: 'pieces', shape: 'toString', number: 3 })],
    ['a size of nothing', JSON.stringify({ ...wish, edge: 0 })],
    ['a size that is no number', '{"layout":"field","edge":"1e999"}'],
    ['no day', JSON.stringify({ ...wish, start: 'soon' })],
  ])('%s is reported and left out', async (_name, text) => {
    const file = newFile();
    const reports: Problem[] = [];
    const store = await opened(file, { report: (problem) => reports.push(problem) });
    await store.plans.keep('guild', plan('Spring'));
    await store.plans.keep('guild', plan('Summer'));
    const database = new Database(file);
    database.prepare('UPDATE plans SET wish = ? WHERE key = ?').run(text, 'spring');
    database.close();
    expect(await store.plans.find('guild', 'Spring')).toBeUndefined();
    expect((await store.plans.list('guild')).map(({ name }) => name)).toEqual(['Summer']);
    expect(reports[0]).toEqual({ code: 'store-bad-row', table: 'plans', guild: 'guild', names: 'Spring' });
  });

  it('what a later version adds to a wish is left out, and the rest read', async () => {
    const file = newFile();
    const store = await opened(file);
    await store.plans.keep('guild', plan('Spring', { wish: { ...wish, glitter: 3 } as PlanWish }));
    expect((await store.plans.find('guild', 'Spring'))?.wish).toEqual(wish);
  });
});

describe('rules', () => {
  it('her own plan, and an organiser every plan', () => {
    expect(mayChange({ id: 'ada', organiser: false }, plan('x'))).toBe(true);
    expect(mayChange({ id: 'bea', organiser: false }, plan('x'))).toBe(false);
    expect(mayChange({ id: 'bea', organiser: true }, plan('x'))).toBe(true);
    expect(mayChange({ id: '', organiser: false }, plan('x', { owner: '' }))).toBe(false);
  });

  it('a name’s key is the same for its key', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: LONGEST_PLAN_NAME }), (name) => {
        expect(planKey(planKey(name))).toBe(planKey(name));
      }),
    );
  });
});
