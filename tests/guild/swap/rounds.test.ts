import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evenSwap, roundsLeft, swapRounds } from '../../../src/guild/swap-rounds.ts';

describe('an even swap', () => {
  // g(n − 1) to make, g·n(n − 1) exchanged: counted here pair by pair.
  test.each([
    [12, 10, 110, 1320],
    [2, 1, 1, 2],
    [3, 4, 8, 24],
    [30, 6, 174, 5220],
  ])('%i members, %i to each', (members, each, makePerMember, exchanged) => {
    expect(evenSwap(members, each)).toEqual({ makePerMember, exchanged });
    expect(swapRounds(members).flat().length * each).toBe(exchanged);
  });

  test('in each round everyone sends once and receives once, and in all of them meets everyone once', () => {
    for (let members = 2; members <= 40; members++) {
      const rounds = swapRounds(members);
      expect(rounds).toHaveLength(members - 1);
      for (const round of rounds) {
        expect(new Set(round.map(({ from }) => from)).size).toBe(members);
        expect(new Set(round.map(({ to }) => to)).size).toBe(members);
      }
      const met = rounds.flat().map(({ from, to }) => `${from} ${to}`);
      expect(new Set(met).size).toBe(members * (members - 1));
      for (const { from, to } of rounds.flat()) expect(from).not.toBe(to);
    }
  });

  test('round k sends to the one k places on', () => {
    expect(swapRounds(5)[1]).toEqual([
      { from: 0, to: 2 },
      { from: 1, to: 3 },
      { from: 2, to: 4 },
      { from: 3, to: 0 },
      { from: 4, to: 1 },
    ]);
  });
});

describe('rounds that are left', () => {
  const names = ['Ada', 'Bea', 'Cora', 'Dora', 'Eva', 'Fay'];

  test('have every sending that is not done, once, and none twice in a round', () => {
    const pairs = fc
      .constantFrom(...names)
      .chain((from) => fc.tuple(fc.constant(from), fc.constantFrom(...names)));
    fc.assert(
      fc.property(fc.subarray(names, { minLength: 2 }), fc.array(pairs), (members, sent) => {
        const done = new Set(sent.map((pair) => pair.join(' ')));
        const rounds = roundsLeft(members, (from, to) => done.has(`${from} ${to}`));
        const left = rounds.flat().map(({ from, to }) => `${from} ${to}`);
        const all = members.flatMap((from) =>
          members.filter((to) => to !== from).map((to) => `${from} ${to}`),
        );
        expect(left.toSorted()).toEqual(all.filter((pair) => !done.has(pair)).toSorted());
        for (const round of rounds) {
          expect(round.length).toBeGreaterThan(0);
          expect(new Set(round.map(({ from }) => from)).size).toBe(round.length);
          expect(new Set(round.map(({ to }) => to)).size).toBe(round.length);
        }
      }),
    );
  });
});
