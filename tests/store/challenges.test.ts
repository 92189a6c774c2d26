import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Challenge, ChallengeTerms, Line, NewLine } from '../../src/guild/challenge-facts.ts';
import { newFile, opened } from './places.ts';

const terms: ChallengeTerms = {
  ...{ name: 'Spring', counting: 'rosette', rounds: 2, size: 1, goal: 200, each: null },
  ...{ first: '2026-12-01', last: '2026-12-31', place: 'home', who: 'everyone', plan: null },
};
const at = new Date('2026-12-08T10:00:00Z');
const person = (id: string) => ({ id, name: id.toUpperCase() });

const log = (id: string, pieces: number, day = '2026-12-08', more: Partial<NewLine> = {}): NewLine => ({
  ...{ kind: 'log', member: person(id), by: person(id), day, pieces, at },
  ...more,
});

/** What the totals must be, by adding up the lines of the book anew. */
function recount(lines: readonly Line[]) {
  const sums = (of: (line: Line) => string) => {
    const totals = new Map<string, number>();
    for (const line of lines)
      if (line.pieces !== 0) totals.set(of(line), (totals.get(of(line)) ?? 0) + line.pieces);
    return new Map([...totals].filter(([, pieces]) => pieces !== 0));
  };
  return {
    total: lines.reduce((sum, { pieces }) => sum + pieces, 0),
    members: sums(({ member }) => member),
    days: sums(({ day }) => day),
  };
}

describe('a challenge and its book', () => {
  test('has the next number of its guild, and stands open', async () => {
    const { challenges } = await opened(':memory:');
    expect((await challenges.add('guild', terms)).number).toBe(1);
    expect((await challenges.add('guild', { ...terms, name: 'Autumn' })).number).toBe(2);
    expect((await challenges.add('other', terms)).number).toBe(1);
    const all = await challenges.all('guild');
    expect(all.map(({ name, open, total }) => [name, open, total])).toEqual([
      ['Autumn', true, 0],
      ['Spring', true, 0],
    ]);
  });

  test('a line is numbered, and carried into every total', async () => {
    const { challenges } = await opened(':memory:');
    const of = await challenges.add('guild', terms);
    expect(await challenges.write(of, log('ada', 3))).toEqual({ number: 1, total: 3, mine: 3 });
    expect(await challenges.write(of, log('bea', 2))).toEqual({ number: 2, total: 5, mine: 2 });
    expect(await challenges.write(of, log('ada', 1, '2026-12-07'))).toEqual({ number: 3, total: 6, mine: 4 });
    expect(await challenges.days(of)).toEqual([
      { day: '2026-12-07', pieces: 1 },
      { day: '2026-12-08', pieces: 5 },
    ]);
    expect(await challenges.heads(of, 3)).toEqual({ joined: 2, sewing: 2, reached: 1 });
  });

  test('a line that was taken back is there with the line that did it', async () => {
    const { challenges } = await opened(':memory:');
    const of = await challenges.add('guild', terms);
    await challenges.write(of, log('ada', 3, undefined, { note: 'blue', minutes: 95 }));
    await challenges.write(of, log('ada', -3, undefined, { kind: 'back', of: 1, minutes: -95 }));
    expect(await challenges.line(of, 1)).toMatchObject({ pieces: 3, note: 'blue', takenBackBy: 2 });
    expect(await challenges.lastLogs('guild', 'ada', 5)).toEqual([]);
    expect(await challenges.timedLogs('guild', 'ada', 6)).toEqual([]);
    expect(await challenges.lines(of, 0, 10)).toHaveLength(2);
  });

  test('totals are what a recount of the book gives, whatever is logged, taken back and put right', async () => {
    const act = fc.record({
      who: fc.constantFrom('ada', 'bea', 'cea', 'o\'dd "name" 🧵'),
      day: fc.constantFrom('2026-12-01', '2026-12-05', '2026-12-08'),
      pieces: fc.integer({ min: 1, max: 40 }),
      after: fc.constantFrom('nothing', 'undo', 'fix'),
      which: fc.nat(),
    });
    await fc.assert(
      fc.asyncProperty(fc.array(act, { minLength: 1, maxLength: 40 }), async (acts) => {
        const { challenges, close } = await opened(':memory:');
        const of = await challenges.add('guild', terms);
        const standing: { number: number; who: string; day: string; pieces: number }[] = [];
        for (const { who, day, pieces, after, which } of acts) {
          const { number } = await challenges.write(of, log(who, pieces, day));
          standing.push({ number, who, day, pieces });
          if (after === 'nothing') continue;
          const [line] = standing.splice(which % standing.length, 1);
          await challenges.write(
            of,
            log(line!.who, -line!.pieces, line!.day, { kind: 'back', of: line!.number }),
          );
          if (after === 'undo') continue;
          const right = await challenges.write(of, log(line!.who, 7, line!.day, { of: line!.number }));
          standing.push({ ...line!, number: right.number, pieces: 7 });
        }
        await expectRecounted(of, challenges);
        const kept = await challenges.one('guild', of.number);
        expect(kept?.total).toBe(standing.reduce((sum, { pieces }) => sum + pieces, 0));
        await close();
      }),
      { numRuns: 25 },
    );
  });

  test('many at once are all carried', async () => {
    const { challenges } = await opened(newFile());
    const of = await challenges.add('guild', terms);
    const logs = Array.from({ length: 60 }, (_, i) => challenges.write(of, log(`m${i % 7}`, i + 1)));
    const written = await Promise.all(logs);
    expect(new Set(written.map(({ number }) => number)).size).toBe(60);
    expect((await challenges.one('guild', of.number))?.total).toBe((60 * 61) / 2);
    await expectRecounted(of, challenges);
  });

  test('logs count for a pace, patches by themselves do not', async () => {
    const { challenges } = await opened(':memory:');
    const of = await challenges.add('guild', terms);
    const patches = await challenges.add('guild', { ...terms, counting: 'patch', rounds: 0 });
    await challenges.write(of, log('ada', 2, undefined, { minutes: 90 }));
    await challenges.write(of, log('ada', 1));
    await challenges.write(patches, log('ada', 30, undefined, { minutes: 60 }));
    expect(await challenges.timedLogs('guild', 'ada', 6)).toEqual([
      { pieces: 2, minutes: 90, counting: 'rosette', rounds: 2, size: 1 },
    ]);
  });
});

async function expectRecounted(
  of: Challenge,
  challenges: Awaited<ReturnType<typeof opened>>['challenges'],
): Promise<void> {
  const book = recount(await challenges.lines(of, 0, 1000));
  expect((await challenges.one(of.guild, of.number))?.total).toBe(book.total);
  const parts = await challenges.parts(of, 'name', 100);
  expect(new Map(parts.map(({ member, pieces }) => [member, pieces]))).toEqual(book.members);
  const days = await challenges.days(of);
  expect(new Map(days.map(({ day, pieces }) => [day, pieces]))).toEqual(book.days);
}
