import { commands } from '../../commands/index.ts';
import { yardage } from '../../src/calculator/fabric/yardage.ts';
import { yieldFrom } from '../../src/calculator/fabric/yield.ts';
import { cutPatch } from '../../src/calculator/shapes/cut.ts';
import { openRoom } from '../../src/chat/dispatch.ts';
import { line, median } from './measure.ts';

const nothingKept = {
  defaults: { both: async () => ({ own: {}, guild: {} }) },
  answered: { find: async () => undefined, keep: async () => true },
  together: async (work: (facts: never) => Promise<unknown>) => work(nothingKept as never),
};

/** Whole asks in process: read, settled, worked out and put into words. */
export async function benchAsks(): Promise<void> {
  const room = openRoom({
    commands,
    facts: nothingKept as never,
    onFault: (error) => {
      throw error;
    },
  });
  const ask = (words: string) => () =>
    room.answer({
      ...{
        who: { id: 'ada', name: 'Ada', organiser: false },
        guild: 'bench',
        place: 'home',
        event: null,
        words,
      },
      now: new Date('2026-12-01T10:00:00Z'),
    });
  const patch = cutPatch('hexagon', { edge: 1 }, 0.25, 'pointed');
  console.log('Asks in process, median');
  line(
    '/cut hexagon 1in, words to reply',
    await median(ask('/cut hexagon 1in'), { runs: 4001, warm: 2000 }),
    0.05,
  );
  line(
    '/yield hexagon 1in 1yd, words to reply',
    await median(ask('/yield hexagon 1in 1yd'), { runs: 401, warm: 200 }),
    50,
  );
  line(
    '  the trade’s yield of a yard alone',
    await median(() => yieldFrom(patch, { width: 42, length: 36 }), { runs: 801, warm: 400 }),
    2,
  );
  line(
    '/yardage 4000 hexagon 1in, words to reply',
    await median(ask('/yardage 4000 hexagon 1in'), { runs: 401, warm: 200 }),
    20,
  );
  line(
    '  the trade’s yardage of 4,000 alone',
    await median(() => yardage(patch, 4000, 42), { runs: 401, warm: 200 }),
    20,
  );
  const field = '/count field 362x362in 1in';
  line('/count field of 50,000 patches, with seams', await median(ask(field), { runs: 31, warm: 10 }), 60);
}
