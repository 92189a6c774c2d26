import { describe, expect, it } from 'vitest';
import { commands } from '../../commands/index.ts';
import { inFigures } from '../../src/chat/number-words.ts';
import { readQuestion } from '../../src/chat/question.ts';
import { takeCloth } from '../../src/measure/cloth.ts';
import { takeLength } from '../../src/measure/length.ts';
import { takeSize } from '../../src/measure/size.ts';
import { CONTROL, tidy } from '../../src/measure/tidy.ts';
import { ask, roomOf } from './fakes.ts';

/** Texts that a pattern with a choice too many would try over and over: repeated, with an end that fits nothing. */
const PATTERNS: readonly string[] = [
  '1',
  '1 ',
  '1 1/2 ',
  '1-',
  '1 - ',
  '- ',
  '1,000',
  '1,',
  '.1',
  '1/',
  '1 / ',
  '1x',
  '1 x ',
  '1 in ',
  '1" ',
  "1' ",
  '½',
  "'",
  '(1',
  'a',
  'a-',
  'a ',
  'a:',
  'seam ',
  'seam of ',
  'seam: ',
  '1in seam ',
  '3 rounds ',
  'rounds 3 ',
  'hexagon ',
  'half hexagon',
  'hexgon ',
  'fat ',
  'fat quater ',
  'queen size ',
  'baby ',
  'quarter ',
  'half a ',
  'one and a ',
  'how long ',
  'how many ',
  'how many rosettes ',
  'rosettes path ',
  'in a ',
  'from a ',
  'cut size ',
  'please so ',
  'i made just ',
  'i made 2 more ',
  'sorry ',
  'undo a',
  "undo the one's ",
  'close Aa ',
  'join the a ',
  'leave the challenge, ',
  'withdraw my aa ',
  'if we do 10 a week when ',
  'finished block 1 of a',
  'my time zone is a ',
  'open a challenge called a',
  'what is the ',
  'flat to flat ',
  'point ',
  '60 degree ',
  '4 a side ',
  'with and in at ',
  ',;.!?&+',
  '!',
  '/',
  '🐝',
  'é',
];

const LONG = 2000;
const SHORT = LONG / 4;
/** Four times the text, sixteen times the work where it is quadratic; a pattern that backtracks takes thousands. */
const MOST_GROWTH = 40;
/** Below so many milliseconds a clock says nothing of growth. */
const TOO_QUICK = 0.5;

const text = (pattern: string, length: number): string =>
  `${pattern.repeat(Math.ceil(length / pattern.length)).slice(0, length - 1)}\u00a1`;

const least = async (runs: number, work: () => unknown): Promise<number> => {
  let best = Number.POSITIVE_INFINITY;
  for (let run = 0; run < runs; run++) {
    const from = performance.now();
    await work();
    best = Math.min(best, performance.now() - from);
  }
  return best;
};

const once = async (work: (of: string) => unknown, pattern: string): Promise<number> => {
  const [short, long] = [text(pattern, SHORT), text(pattern, LONG)];
  await work(short);
  const quick = await least(2, () => work(short));
  const slow = await least(2, () => work(long));
  return slow / Math.max(quick, TOO_QUICK);
};

/** A busy machine may be slow by chance; a bad pattern is slow every time. */
const growth = async (work: (of: string) => unknown, pattern: string): Promise<number> => {
  let best = Number.POSITIVE_INFINITY;
  for (let tries = 0; tries < 4 && best >= MOST_GROWTH; tries++)
    best = Math.min(best, await once(work, pattern));
  return best;
};

it('work that grows by the cube of the length would be noticed', async () => {
  let spent = 0;
  const cubic = (of: string) => {
    for (let i = 0; i < of.length ** 3 / 300; i++) spent += i % 7;
  };
  expect(await once(cubic, 'a')).toBeGreaterThan(MOST_GROWTH);
  expect(spent).toBeGreaterThan(0);
});

describe('no text takes much longer than one of its length should', () => {
  it.each(PATTERNS)('%j read as a measure', async (pattern) => {
    const read = (of: string) => {
      const tidied = tidy(of);
      CONTROL.test(of);
      takeLength(tidied, 'in');
      takeSize(tidied, 'in');
      takeCloth(tidied, 'in');
    };
    expect(await growth(read, pattern)).toBeLessThan(MOST_GROWTH);
  });

  it.each(PATTERNS)('%j read as a question', async (pattern) => {
    const read = (of: string) => {
      inFigures(of);
      readQuestion(of);
      for (const about of ['cut 1in ', 'how much fabric for ', 'how long for ', 'quilt ', 'how many from '])
        readQuestion(about + of);
    };
    expect(await growth(read, pattern)).toBeLessThan(MOST_GROWTH);
  });

  it.each(PATTERNS)('%j asked of a room', async (pattern) => {
    const { room } = roomOf(commands);
    const asked = async (of: string) => {
      for (const begin of ['how much fabric for ', '/cut hexagon 1in ', '/yield '])
        await room.answer(ask((begin + of).slice(0, LONG)));
    };
    expect(await growth(asked, pattern)).toBeLessThan(MOST_GROWTH);
  });
});
