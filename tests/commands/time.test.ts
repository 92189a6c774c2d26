import { describe, expect, test } from 'vitest';
import { answered, expectFigures, numberOf, openAsking } from './asking.ts';

const ask = openAsking();

/** Thread for an inch of whipping: round two folds, bite 0.03 in and twice the cloth’s 0.018 in (from memory). */
const whip = (n: number) => Math.sqrt(1 + (2 * n * (0.03 + 2 * 0.018)) ** 2);
/** Running stitch, the thread going square through the cloth: the most it takes. */
const running = (n: number) => 1 + 2 * n * 0.018;

describe('/time, as it is asked by the contract', () => {
  test('42 seams of an inch, whipped at 14: 588 stitches, 88 in of thread, 7 lengths', async () => {
    const reply = await answered(
      ask,
      '/time seams:42 size:1in method:whip stitches:14 hours:5 start:2026-12-01',
    );
    expectFigures(reply, '', { seams: 42, stitches: 588, threadLengths: 7 });
    expectFigures(reply, 'in', { seamLength: 42, threadLength: 42 * whip(14) });
    expect(Math.round(numberOf(reply, 'threadLength'))).toBe(88);
    // Common practice, no source: a whipped one-inch seam is 1½ to 3 minutes with its handling.
    expectFigures(reply, 'min', { minutesLow: 63, minutesHigh: 126 });
    expect(numberOf(reply, 'minutes')).toBeGreaterThan(63);
    expect(numberOf(reply, 'minutes')).toBeLessThan(126);
    expectFigures(reply, 'weeks', { weeks: numberOf(reply, 'minutes') / 60 / 5 });
    expectFigures(reply, 'date', { finishDate: '2026-12-04' }); // 0.315 weeks are 2.2 days, a started day counting whole
  });

  test.each([
    ['running', 9, 1, 2.5],
    ['running', 12, 1, 2.5],
    ['whip', 10, 1.5, 3],
    ['whip', 18, 1.5, 3],
  ] as const)('method:%s stitches:%d', async (method, stitches, low, high) => {
    const reply = await answered(
      ask,
      `/time seams:100 size:1in method:${method} stitches:${stitches} hours:5 start:2026-12-01`,
    );
    const thread = 100 * (method === 'whip' ? whip(stitches) : running(stitches));
    expectFigures(reply, 'in', { seamLength: 100, threadLength: thread });
    expectFigures(reply, '', { stitches: 100 * stitches, threadLengths: Math.ceil(thread / 13) }); // 18 in less 5 lost
    expectFigures(reply, 'min', { minutesLow: 100 * low, minutesHigh: 100 * high });
  });

  test.each([
    ['rosette:1', 12],
    ['rosette:2', 42],
    ['rosette:3', 90],
    ['star:4', 168],
    ['blocks:100', 300],
  ])('%s in place of seams', async (layout, seams) => {
    const reply = await answered(
      ask,
      `/time ${layout} size:1in method:whip stitches:14 hours:5 start:2026-12-01`,
    );
    expectFigures(reply, '', { seams });
    const same = await answered(
      ask,
      `/time seams:${seams} size:1in method:whip stitches:14 hours:5 start:2026-12-01`,
    );
    expect(numberOf(reply, 'minutes')).toBe(numberOf(same, 'minutes'));
  });

  test('a field’s seams are those of its count', async () => {
    const reply = await answered(ask, '/time field:60x72in size:1in');
    const count = await answered(ask, '/count field quilt:60x72in size:1in sides:cover');
    expect(numberOf(reply, 'seams')).toBe(numberOf(count, 'seams'));
  });

  test('dates: the day, the year’s end, the leap day; earliest, middle and latest in order', async () => {
    const at = async (start: string, hours: string) => {
      const { figures } = await answered(
        ask,
        `/time seams:1000 size:1in method:whip hours:${hours} start:${start}`,
      );
      return ['finishEarliest', 'finishDate', 'finishLatest'].map((name) => String(figures[name]?.value));
    };
    // 2,250 minutes are 37.5 hours: 7.5 weeks at five, 52.5 days, so the 53rd day after.
    expect((await at('2026-12-01', '5'))[1]).toBe('2027-01-23');
    expect((await at('2028-01-08', '5'))[1]).toBe('2028-03-01');
    expect((await at('2027-01-08', '5'))[1]).toBe('2027-03-02');
    const [early, middle, late] = await at('2026-12-01', '2');
    expect(early! < middle! && middle! < late!).toBe(true);
  });

  test('a pace of one’s own: so many minutes a seam, a fifth either way, and it says whose', async () => {
    const reply = await answered(ask, '/time seams:100 size:1in method:whip pace:2 hours:5 start:2026-12-01');
    expectFigures(reply, 'min', { minutesLow: 160, minutes: 200, minutesHigh: 240 });
    expect(reply.lines.join(' ')).toMatch(/pace you gave/i);
  });

  test('the range says where it comes from, and the hands are remembered', async () => {
    const reply = await answered(ask, '/time rosette:2');
    expect(reply.lines.join(' ')).toContain('common practice');
    expect(reply.cautions.join()).toContain('five minutes in each hour');
    expectFigures(reply, '', { seams: 42, stitches: 42 * 14 });
    expect(reply.notes.join()).toMatch(/1 in side.*whipstitch.*14 stitches an inch.*5 hours a week/);
  });

  test('started today, in the member’s own zone, unless another day is said', async () => {
    const late = { now: '2026-12-01T23:30:00Z', as: 'Eastern' };
    const before = await answered(ask, '/time seams:1 size:1in hours:112', late);
    expectFigures(before, 'date', { finishDate: '2026-12-02' });
    await answered(ask, '/me set zone:Pacific/Auckland', late);
    const after = await answered(ask, '/time seams:1 size:1in hours:112', late);
    expectFigures(after, 'date', { finishDate: '2026-12-03' });
  });

  test('so many hexagons are sewn round by round: 19 are a rosette of two rounds', async () => {
    const [loose, rosette] = [await answered(ask, '/time pieces:19'), await answered(ask, '/time rosette:2')];
    expect(loose.figures).toEqual(rosette.figures);
    expect(loose.title).toBe('Sewing 19 hexagons laid round by round');
    expectFigures(await answered(ask, '/time pieces:500'), '', { seams: 1422 });
  });

  test('nothing to sew, nothing said, too far, both said', async () => {
    expect((await ask('/time')).error?.code).toBe('what-to-sew');
    expect((await ask('/time seams:3000000 size:40in measure:edge')).error).not.toBeNull();
    expect((await ask('/time seams:3000000 edge:480in hours:1/4')).error?.code).toBe('too-far');
    expect((await ask('/time seams:42 rosette:2')).error?.code).toBe('one-of-these');
    expect((await ask('/time seams:42 pieces:7')).error?.code).toBe('one-of-these');
    expect((await ask('/time pieces:19 rosette:2')).error?.code).toBe('one-of-these');
    expect((await ask('/time pieces:1')).error?.code).toBe('nothing-to-sew');
    expect((await ask('/time rosette:0')).error?.code).toBe('too-small');
    expect((await ask('/time seams:10 start:2026-02-30')).error?.code).toBe('day-unread');
  });
});
