import { describe, expect, test } from 'vitest';
import { answered, expectFigures, numberOf, openAsking } from './asking.ts';

const ask = openAsking();

describe('least cloth and fewest cuts', () => {
  test('/yield says both in a line each, with their numbers', async () => {
    const reply = await answered(ask, '/yield shape:hexagon size:1in seam:1/4in cloth:fat-quarter');
    expect(numberOf(reply, 'best')).toBeGreaterThan(75);
    expectFigures(reply, '', { fewest: 64, nested: 75, strips: 64 });
    expect(reply.lines[0]).toContain(`At least ${numberOf(reply, 'best')}`);
    // 8 strips of 8: a cut between strips and one at the end, and two slanting ones at each of 9 points.
    expect(reply.lines.join(' ')).toMatch(/Fewest cuts, 64: 8 strips .* 152 straight cuts\./);
    expect(reply.lines.join(' ')).toContain(`${numberOf(reply, 'tracedSides')} sides to trace`);
    expect(reply.lines.length).toBeLessThanOrEqual(7);
  });

  test('method: chooses, and leads with its own number', async () => {
    const of = (method: string) =>
      answered(ask, `/yield shape:hexagon size:1in seam:1/4in cloth:fat-quarter method:${method}`);
    const fewest = await of('fewest');
    expect(fewest.lines[0]).toMatch(/^64 this way; with the least cloth \d+\./);
    expectFigures(fewest, '', { straightCuts: 152, tracedSides: 0, fewest: 64 });
    expect((await of('nested')).lines[0]).toMatch(/^75 this way/);
    expect((await of('squares')).lines[0]).toMatch(/^56 this way/);
    expect((await of('best')).lines).toEqual(
      (await answered(ask, '/yield shape:hexagon size:1in seam:1/4in cloth:fat-quarter')).lines,
    );
    const none = await ask('/yield shape:diamond size:1in cloth:fat-quarter method:nested');
    expect(none.error?.code).toBe('method-not-for-shape');
  });

  test('one line where the least cloth has the fewest cuts too', async () => {
    const reply = await answered(ask, '/yield shape:square size:1 1/2in seam:1/4in cloth:10in-square');
    expect(reply.lines.join(' ')).not.toContain('Fewest cuts');
    expect(reply.lines.at(-1)).toMatch(/^8 straight cuts; no way of the trade takes clearly fewer/);
  });

  test('a plan of several parts is told part by part, and the parts add up', async () => {
    const reply = await answered(
      ask,
      '/yield shape:rectangle size:1 1/2x2 1/4in seam:1/4in cloth:fat-quarter',
    );
    const parts = reply.lines.filter((line) => /^(?:From|Then) /.test(line)).join(' ');
    const counts = [...parts.matchAll(/ in, (\d+):/g)].map(([, count]) => Number(count));
    expect(counts.length).toBeGreaterThan(1);
    expect(counts.reduce((sum, count) => sum + count, 0)).toBe(numberOf(reply, 'best'));
  });

  test('/yardage says both, and /yield on the best length gives the patches', async () => {
    const reply = await answered(ask, '/yardage pieces:240 shape:diamond size:2in seam:1/4in width:42in');
    expect(numberOf(reply, 'bestLength')).toBeLessThan(numberOf(reply, 'stripsLength'));
    expect(reply.lines.join(' ')).toMatch(/Fewest cuts, 1 yd: 16 strips .* 271 straight cuts\./);
    expectFigures(reply, 'yd', { fewestYards: 1 });
    const from = async (long: number) =>
      numberOf(
        await answered(ask, `/yield shape:diamond size:2in seam:1/4in cloth:42x${long.toFixed(6)}in`),
        'best',
      );
    expect(await from(numberOf(reply, 'bestLength') + 1e-5)).toBeGreaterThanOrEqual(240);
    expect(await from(numberOf(reply, 'bestLength') - 1e-5)).toBeLessThan(240);
    const fewest = await answered(
      ask,
      '/yardage pieces:240 shape:diamond size:2in seam:1/4in width:42in method:fewest',
    );
    expect(fewest.lines[1]).toMatch(/^Strips: .*271 straight cuts/);
  });
});

describe('motifs', () => {
  test('/yield: whole motifs, patches, and wherever the print begins', async () => {
    // 42 / 4 and 36 / 5 in whole numbers; begun anywhere (42 − 2.58) / 4 and (36 − 2.23) / 5.
    const reply = await answered(
      ask,
      '/yield shape:hexagon size:1in seam:1/4in cloth:1yd width:42in motif:4x5in',
    );
    expectFigures(reply, '', { motifs: 70, best: 70, anyhow: 54 });
    expect(reply.lines[0]).toContain('70 patches, one round each motif');
    expect(reply.notes.join()).toContain('begins with a whole motif');
  });

  test('/yardage: enough wherever the print begins', async () => {
    const reply = await answered(
      ask,
      '/yardage pieces:54 shape:hexagon size:1in seam:1/4in width:42in motif:4x5in',
    );
    // 9 columns are sure, so 6 rows of 5 in and the patch's own height.
    expectFigures(reply, 'in', { bestLength: 6 * 5 + Math.sqrt(3) + 0.5 });
    const on = await answered(
      ask,
      `/yield shape:hexagon size:1in seam:1/4in cloth:42x${numberOf(reply, 'bestLength').toFixed(6)}in motif:4x5in`,
    );
    expect(numberOf(on, 'anyhow')).toBe(54);
  });

  test('a bed is no motif, and a patch that fits nowhere is said to be too large', async () => {
    expect((await ask('/yield hexagon 1in 1yd motif:queen')).error?.code).toBe('option-unread');
    expect((await ask('/yield shape:hexagon edge:4in cloth:5in-square motif:2x2in')).error?.code).toBe(
      'patch-wider-than-cloth',
    );
  });
});

describe('what one has', () => {
  test('what can be cut from what, and what stays whole', async () => {
    const reply = await answered(
      ask,
      '/yardage pieces:240 shape:hexagon size:1in seam:1/4in have:"3 fat quarters, 12 5in squares, 1/2yd"',
    );
    expectFigures(reply, '', { pieces: 240, covered: 240, missing: 0 });
    const gives = reply.table!.rows.reduce((sum, [, count]) => sum + Number(count), 0);
    expect(gives).toBeGreaterThanOrEqual(240);
    expect(reply.table!.rows[0]![0]).toBe('3 fat quarters');
    expect(reply.lines.join(' ')).toContain('1/2yd');
  });

  test('by part: what is wanting, and the yards to buy, as /yardage has them', async () => {
    const reply = await answered(
      ask,
      '/yardage shape:hexagon size:1in seam:1/4in width:42in need:7 centres, 420 petals have:2 charms',
    );
    const [first, ...rest] = reply.table!.rows;
    expect(first).toEqual(['2 charms', '8', 'centres']);
    expect(rest).toHaveLength(1);
    const alone = await answered(ask, '/yardage pieces:420 shape:hexagon size:1in seam:1/4in width:42in');
    expectFigures(reply, 'yd', { buyYards: numberOf(alone, 'bestYards') });
    expectFigures(reply, '', { covered: 7, missing: 420 });
  });

  test('the parts of a layout', async () => {
    const reply = await answered(ask, '/yardage rosette:2 size:1in seam:1/4in have:3 fat eighths');
    expectFigures(reply, '', { pieces: 19, missing: 0 });
    expect(reply.table!.rows.map(([, , role]) => role).sort()).toEqual(['centre', 'round 1', 'round 2']);
  });

  test('spare patches and shrinking cloth are counted in', async () => {
    const reply = await answered(
      ask,
      '/yardage shape:hexagon size:1in seam:1/4in width:42in need:100 petals spare:10% shrink:5%',
    );
    const alone = await answered(
      ask,
      '/yardage pieces:100 shape:hexagon size:1in seam:1/4in width:42in spare:10% shrink:5%',
    );
    expectFigures(reply, '', { pieces: 110 });
    expectFigures(reply, 'yd', { buyYards: numberOf(alone, 'bestYards') });
  });

  test.each([
    ['have:3 fish', 'cloth-unread'],
    ['have:2 letter', 'cloth-unread'],
    ['have:" "', 'cloth-list-empty'],
    ['need:some petals', 'role-unread'],
    ['need:" "', 'role-list-empty'],
    ['need:3 petals pieces:3', 'one-of-these'],
    ['have:1yd', 'what-to-cut'],
  ])('%s is met with a sentence', async (words, code) => {
    expect((await ask(`/yardage hexagon 1in ${words}`)).error?.code).toBe(code);
  });
});
