import type { Key } from './library.ts';

/**
 * One writing for keys that the standard holds to be equal: 0 and -0, bytes in whichever array they lie, and a
 * number however the engine happens to hold it.
 *
 * @example
 * written(0) === written(-0) // true
 * written('1') === written(1) // false
 */
export const written = (key: Key): string => JSON.stringify(plain(key));

function plain(key: Key): unknown {
  if (typeof key === 'number') return ['n', String(key)];
  if (typeof key === 'string') return ['s', key];
  if (key instanceof Date) return ['d', key.getTime()];
  if (key instanceof ArrayBuffer) return ['b', Buffer.from(key).toString('base64')];
  if (ArrayBuffer.isView(key))
    return ['b', Buffer.from(key.buffer, key.byteOffset, key.byteLength).toString('base64')];
  return ['a', ...key.map(plain)];
}

/** Puts an automatic key into a value, where the store's path says. */
export function inject(value: unknown, path: string, key: Key): void {
  const steps = path.split('.');
  const last = steps.pop() ?? path;
  let at = value as Record<string, unknown>;
  for (const step of steps) {
    if (!Object.hasOwn(at, step)) at[step] = {};
    at = at[step] as Record<string, unknown>;
  }
  at[last] = key;
}
