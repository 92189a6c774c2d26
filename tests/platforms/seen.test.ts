import { expect, test } from 'vitest';
import { Seen } from '../../src/platforms/seen.ts';

test('the last ids are remembered, so many and not for ever', () => {
  const seen = new Seen(3);
  const ids = Array.from({ length: 10 }, (_, i) => `e${i}`);
  for (const [i, id] of ids.entries()) {
    expect(seen.first(id)).toBe(true);
    for (const last of ids.slice(Math.max(0, i - 2), i + 1)) expect(seen.first(last)).toBe(false);
  }
  expect(ids.map((id) => seen.has(id))).toEqual(ids.map((_, i) => i >= 7));
  expect(seen.first('e0')).toBe(true);
});
