import { expect, test } from 'vitest';
import { answered, numberOf, openAsking } from './asking.ts';

const ask = openAsking();

/** Counts of a whole quilt, and the plan that each leads on to. */
const COUNTS: readonly (readonly [count: string, plan: string])[] = [
  ['/count field queen 1in', '/plan layout:field size:1in quilt:queen'],
  [
    '/count field 40x50in 1 1/2in sides:straight rows:down',
    '/plan layout:field size:1 1/2in quilt:40x50in sides:straight rows:down',
  ],
  ['/count field quilt:crib size:25mm', '/plan layout:field size:25mm quilt:crib'],
  ['/count garden quilt:50x60in rounds:2', '/plan layout:garden quilt:50x60in rounds:2'],
  [
    '/count garden throw rounds:1 path:diamonds 1in',
    '/plan layout:garden size:1in quilt:throw rounds:1 path:diamonds',
  ],
  [
    '/count garden quilt:40x40in rounds:1 path:own outer:yes flats:2in',
    '/plan layout:garden size:2in measure:flats quilt:40x40in rounds:1 path:own outer:yes',
  ],
  [
    '/count stars quilt:40x50in set:hexagons outer:yes edge:2in',
    '/plan layout:stars size:2in quilt:40x50in outer:yes set:hexagons',
  ],
  ['/count star quilt:30x30in size:3in', '/plan layout:star size:3in measure:edge side:4'],
  [
    '/count rosette quilt:16x16in colours:red,blue',
    '/plan layout:rosette rounds:5 cloths:centre red, round 1 blue, round 2 red, round 3 blue, round 4 red, round 5 blue',
  ],
  ['/count diamonds quilt:20x30in from:4', '/plan layout:diamonds side:20'],
  ['/count diamonds quilt:20x30in', '/plan layout:diamonds side:21'],
  ['/count blocks quilt:30x40in size:2in', '/plan layout:blocks size:2in quilt:30x40in'],
];

test.each(COUNTS)('%s leads on to the whole plan, with the same patches', async (words, plan) => {
  const counted = await answered(ask, words);
  const leads = counted.choices.at(-1);
  expect(leads?.label).toContain('whole plan');
  expect(leads?.ask).toBe(plan);
  const planned = await answered(ask, leads?.ask ?? '');
  expect(numberOf(planned, 'total')).toBe(numberOf(counted, 'total'));
  expect(numberOf(planned, 'seams')).toBe(numberOf(counted, 'seams'));
});

test('a count of no quilt leads to no plan, nor one of a layout that a plan does not have', async () => {
  for (const words of ['/count rosette rounds:2', '/count stars quilt:40x50in outer:straight'])
    expect((await answered(ask, words)).choices.filter((one) => one.ask.startsWith('/plan'))).toEqual([]);
});
