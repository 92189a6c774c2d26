import { expect, test } from 'vitest';
import { Few } from '../../../src/platforms/matrix/few.ts';

/** Works that end when they are told to, and what has begun. */
function works(few: Few) {
  const begun: string[] = [];
  const open = new Map<string, PromiseWithResolvers<string>>();
  const take = (name: string) => {
    const end = Promise.withResolvers<string>();
    open.set(name, end);
    return few.take(() => {
      begun.push(name);
      return end.promise;
    });
  };
  return {
    begun,
    take,
    end: (name: string) => open.get(name)?.resolve(name),
    fail: (name: string) => open.get(name)?.reject(new Error(name)),
  };
}

const settled = () => new Promise((done) => setImmediate(done));

test('no more than so many are going on, and who came first begins first', async () => {
  const { begun, take, end } = works(new Few(2));
  const all = ['a', 'b', 'c', 'd'].map(take);
  await settled();
  expect(begun).toEqual(['a', 'b']);
  end('b');
  await settled();
  expect(begun).toEqual(['a', 'b', 'c']);
  for (const name of ['a', 'c', 'd']) end(name);
  expect(await Promise.all(all)).toEqual(['a', 'b', 'c', 'd']);
});

test('one that fails gives its place to the next, and tells its own asker alone', async () => {
  const { begun, take, end, fail } = works(new Few(1));
  const [first, second] = [take('a'), take('b')];
  await settled();
  fail('a');
  await expect(first).rejects.toThrow('a');
  await settled();
  expect(begun).toEqual(['a', 'b']);
  end('b');
  expect(await second).toBe('b');
  const third = take('c');
  end('c');
  expect(await third).toBe('c');
});
