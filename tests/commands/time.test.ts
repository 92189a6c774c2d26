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

  // Common practice, no source: minutes a patch are 2 to 4 basted with thread, 0.5 to 1.5 with glue, 0.5 to 1.5
  // traced and cut one by one, 0.1 to 0.3 in layers; basting thread is 1.1 of the outline and 4 in.
  test('basting alone, with thread and with glue', async () => {
    const reply = await answered(ask, '/time pieces:500 size:1in work:basting hours:5 start:2026-12-01');
    expectFigures(reply, 'min', { minutesLow: 1000, minutes: 1500, minutesHigh: 2000 });
    expectFigures(reply, 'min', { glueMinutesLow: 250, glueMinutesHigh: 750 });
    expectFigures(reply, 'in', { threadLength: 500 * (1.1 * 6 + 4) });
    // 25 hours at five are five weeks, 35 days.
    expectFigures(reply, 'date', { finishDate: '2027-01-05' });
    expect(reply.lines[0]).toBe('17 to 33 hours of basting with thread.');
    const diamonds = await answered(ask, '/time star:4 size:2in work:basting');
    expectFigures(diamonds, 'in', { threadLength: 96 * (1.1 * 8 + 4) });
  });

  test('with glue, told first where it is asked for; cutting and basting together', async () => {
    const reply = await answered(ask, '/time pieces:600 work:gluing hours:5');
    expectFigures(reply, 'min', { minutesLow: 300, minutesHigh: 900, threadMinutesHigh: 2400 });
    expect(reply.lines[0]).toBe('5 to 15 hours of basting with glue.');
    expect(reply.lines).toContain('Cutting comes before it: 5 to 15 hours; both 10 to 30 hours.');
    expect(reply.figures.threadLength).toBeUndefined();
  });

  test('cutting and basting together', async () => {
    const reply = await answered(ask, '/time pieces:600 work:before hours:5', { as: 'Hana' });
    expectFigures(reply, 'min', { minutesLow: 1500, minutesHigh: 3300 });
    expect(reply.lines[0]).toBe('25 to 55 hours of cutting and basting with thread.');
    expect(reply.lines[1]).toBe('Cutting 5 to 15 hours, basting 20 to 40 hours.');
    expect(reply.cautions.join(' ')).toMatch(/blade.*hands/s);
  });

  test('who asks for the thread reads it first', async () => {
    expect((await answered(ask, 'how much thread for 240 1in hexies')).lines[0]).toMatch(/^Thread: /);
    expect((await answered(ask, 'how long for 240 1in hexies')).lines[0]).toMatch(/hours of stitching\.$/);
  });

  test('cutting alone, with a care for the blade', async () => {
    const reply = await answered(ask, '/time rosette:3 size:1in work:cutting');
    expectFigures(reply, '', { pieces: 37 });
    expectFigures(reply, 'min', { minutesLow: 18.5, minutesHigh: 55.5 });
    expectFigures(reply, 'min', { layersMinutesLow: 3.7, layersMinutesHigh: 11.1 });
    expect(reply.cautions.join(' ')).toMatch(/blade/);
  });

  test.each([
    ['whip', 'Before that, 48 to 105 minutes of cutting and basting.'],
    ['running', 'Before that, 10 to 29 minutes of cutting.'],
  ])('what comes before the sewing by %s is told where the patches are known', async (method, words) => {
    const reply = await answered(ask, `/time rosette:2 method:${method}`);
    expect(reply.lines).toContain(words);
    const seams = await answered(ask, `/time seams:42 method:${method}`);
    expect(seams.lines.join(' ')).not.toContain('Before that');
  });

  test('the same before the sewing as a whole plan tells', async () => {
    const plan = await answered(ask, '/plan field quilt:60x72in size:1in');
    const field = await answered(ask, '/time field:60x72in size:1in');
    const hours = (reply: { lines: readonly string[] }) =>
      /^Before that, (\d+)(?: h)? to (\d+)/.exec(reply.lines.find((line) => line.startsWith('Before')) ?? '');
    expect(hours(field)?.slice(1)).toEqual(hours(plan)?.slice(1));
    expect(hours(field)).not.toBeNull();
  });

  test('basting and cutting want patches, not seams', async () => {
    expect((await ask('/time seams:42 work:basting')).error?.code).toBe('what-to-cut');
    expect((await ask('/time work:cutting')).error?.code).toBe('what-to-cut');
    expect((await ask('/time pieces:1000000 work:basting hours:1/4 start:9999-01-01')).error?.code).toBe(
      'too-far',
    );
    expect((await ask('/time pieces:19 rosette:2 work:cutting')).error?.code).toBe('one-of-these');
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
