import { expect, test } from 'vitest';
import { Seen } from '../../../src/platforms/discord/seen.ts';

test('the last ids are remembered, at least so many, and not for ever', () => {
  const seen = new Seen(3);
  const ids = Array.from({ length: 10 }, (_, i) => `e${i}`);
  for (const [i, id] of ids.entries()) {
    expect(seen.first(id)).toBe(true);
    for (const last of ids.slice(Math.max(0, i - 2), i + 1)) expect(seen.first(last)).toBe(false);
  }
  expect(seen.first('e0')).toBe(true);
});
