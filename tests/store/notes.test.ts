import { describe, expect, it } from 'vitest';
import { opened } from './places.ts';

describe('notes of the platforms', () => {
  it('are found again, replaced, and kept apart by platform', async () => {
    const store = await opened(':memory:');
    await store.notes.keep('one', 'a', { b: [1, 'two'] });
    await store.notes.keep('one', 'a', { b: 3 }, { guild: 'g', member: 'ada' });
    expect(await store.notes.find('one', 'a')).toEqual({ b: 3 });
    expect(await store.notes.find('two', 'a')).toBeUndefined();
    await store.notes.remove('one', 'a');
    expect(await store.notes.find('one', 'a')).toBeUndefined();
  });

  it('are pruned by age and by how their key begins', async () => {
    let now = new Date('2026-12-01T00:00:00Z');
    const store = await opened(':memory:', { now: () => now });
    await store.notes.keep('one', 'choice:old', 1);
    await store.notes.keep('one', 'sync', 2);
    now = new Date('2026-12-08T00:00:00Z');
    await store.notes.keep('one', 'choice:new', 3);
    expect(await store.notes.prune('one', 'choice:', new Date('2026-12-05T00:00:00Z'))).toBe(1);
    expect(await store.notes.find('one', 'choice:old')).toBeUndefined();
    expect(await store.notes.find('one', 'choice:new')).toBe(3);
    expect(await store.notes.find('one', 'sync')).toBe(2);
  });

  it('are kept or not with the work they are part of', async () => {
    const store = await opened(':memory:');
    const failing = store.together(async (facts) => {
      await facts.notes.keep('one', 'a', 1);
      throw new Error('half way');
    });
    await expect(failing).rejects.toThrow('half way');
    expect(await store.notes.find('one', 'a')).toBeUndefined();
  });
});
