import { describe, expect, test } from 'vitest';
import { type Asker, answered, expectFigures, numberOf, openAsking, wordsOf } from './asking.ts';

const cutEdge = async (ask: Asker, as: string) =>
  numberOf(await answered(ask, '/cut shape:hexagon size:1in', { as }), 'cutEdge');
const withSeam = (seam: number) => 1 + (2 * seam) / Math.sqrt(3);

describe('/me', () => {
  test('shows what is taken and whose it is; nobody’s at first', async () => {
    const ask = openAsking();
    const reply = await answered(ask, '/me');
    expect(reply.audience).toBe('asker');
    expect(reply.title).toContain('Ada');
    expect(new Set(reply.table?.rows.map(([, , whose]) => whose))).toEqual(new Set(['usual']));
    await answered(ask, '/me set seam:3/8in');
    const then = await answered(ask, '/me show');
    expect(then.table?.rows.find(([what]) => what === 'seam')).toEqual(['seam', '3/8 in', 'yours']);
  });

  test('what is set is used, and the reply says that it is hers', async () => {
    const ask = openAsking();
    const before = await answered(ask, '/cut shape:hexagon size:1in');
    expect(before.notes.join()).toContain('1/4 in seam');
    expect(before.notes.join()).not.toContain('your 1/4');
    await answered(ask, '/me set seam:3/8in width:40in stitches:12 pace:2 hours:7');

    const cut = await answered(ask, '/cut shape:hexagon size:1in');
    expectFigures(cut, 'in', { cutEdge: withSeam(0.375) });
    expect(cut.notes.join()).toContain('your 3/8 in seam');

    const cloth = await answered(ask, '/yield shape:hexagon size:1in seam:1/4in cloth:1yd');
    expectFigures(cloth, '', { nested: 310, ceiling: 333 });
    expect(cloth.notes.join()).toContain('your 40 in usable width');

    const time = await answered(ask, '/time seams:100 size:1in');
    expectFigures(time, '', { stitches: 1200 });
    expectFigures(time, 'min', { minutes: 200 });
    expectFigures(time, 'weeks', { weeks: 200 / 60 / 7 });
    expect(time.notes.join()).toMatch(/your 12 stitches an inch.*your 7 hours a week/);
    expect(time.lines.join(' ')).toContain('Your pace');
  });

  test('what is said beats what is kept, and is not called an assumption', async () => {
    const ask = openAsking();
    await answered(ask, '/me set seam:3/8in');
    const reply = await answered(ask, '/cut shape:hexagon size:1in seam:1/4in');
    expectFigures(reply, 'in', { cutEdge: withSeam(0.25) });
    expect(reply.notes.join()).not.toContain('seam');
  });

  test('each member keeps her own, in each guild its own', async () => {
    const ask = openAsking();
    await answered(ask, '/me set seam:3/8in', { as: 'Ada' });
    expect(await cutEdge(ask, 'Ada')).toBeCloseTo(withSeam(0.375), 9);
    expect(await cutEdge(ask, 'Bea')).toBeCloseTo(withSeam(0.25), 9);
    const elsewhere = await answered(ask, '/cut shape:hexagon size:1in', { as: 'Ada', guild: 'other' });
    expectFigures(elsewhere, 'in', { cutEdge: withSeam(0.25) });
  });

  test('one option more leaves the others; reset takes all away', async () => {
    const ask = openAsking();
    await answered(ask, '/me set seam:3/8in');
    await answered(ask, '/me set width:40in');
    expect(await cutEdge(ask, 'Ada')).toBeCloseTo(withSeam(0.375), 9);
    await answered(ask, '/me reset');
    expect(await cutEdge(ask, 'Ada')).toBeCloseTo(withSeam(0.25), 9);
  });

  test('a member who works in centimetres is read and answered so', async () => {
    const ask = openAsking();
    const kept = await answered(ask, '/me set unit:cm');
    expect(kept.table?.rows.find(([what]) => what === 'width')?.[1]).toMatch(/cm$/);

    const cut = await answered(ask, '/cut shape:hexagon size:2.54');
    expectFigures(cut, 'in', { finishedEdge: 1, cutEdge: withSeam(0.25) });
    expect(cut.lines[0]).toContain('56.5 mm'); // 56.69 mm: √3 in + ½ in
    expect(wordsOf(cut)).not.toMatch(/\d in\b/);

    const cloth = await answered(ask, '/yardage pieces:240 shape:hexagon size:2.54cm width:106cm');
    expect(cloth.lines[0]).toMatch(/^Buy [\d.]+ m:/);
    expect(cloth.figures.bestMetres).toEqual({ value: 0.7, unit: 'm' });
    expect(wordsOf(cloth)).not.toMatch(/\d yd\b/);

    const field = await answered(ask, '/count field quilt:140x200 size:2.5');
    expectFigures(field, '', { cover: 1782 });
    expect(field.title).toContain('140 x 200 cm');
  });

  test('millimetres; both', async () => {
    const ask = openAsking();
    await answered(ask, '/me set unit:mm');
    expectFigures(await answered(ask, '/cut shape:hexagon size:25.4'), 'in', { finishedEdge: 1 });
    await answered(ask, '/me set unit:in reading:both');
    const both = await answered(ask, '/cut shape:hexagon size:1 1/2');
    expect(both.lines[0]).toMatch(/3 1\/8 in.*78\.5 mm/);
  });

  test('the answer to a setting is in the units just set', async () => {
    const ask = openAsking();
    const seam = async (words: string) =>
      (await answered(ask, words)).table?.rows.find(([what]) => what === 'seam')?.[1];
    expect(await seam('/me set seam:1/2in unit:cm')).toBe('12.7 mm');
    expect(await seam('/me set unit:in')).toBe('1/2 in');
    expect(await seam('/me set unit:cm')).toMatch(/mm/);
    expect(await seam('/me reset')).toBe('1/4 in');
  });

  test('nothing to set, and what cannot be', async () => {
    const ask = openAsking();
    expect((await ask('/me set')).error?.code).toBe('nothing-set');
    for (const [words, code] of [
      ['seam:9in', 'too-large'],
      ['stitches:0', 'too-small'],
      ['hours:200', 'too-large'],
      ['zone:Mars', 'zone-unknown'],
      ['unit:furlong', 'option-unread'],
    ])
      expect((await ask(`/me set ${words}`)).error?.code, words).toBe(code);
    expect(await cutEdge(ask, 'Ada')).toBeCloseTo(withSeam(0.25), 9);
  });
});

describe('/guild', () => {
  const organiser = { as: 'Olga', organiser: true };

  test('an organiser’s setting holds for members, who are told whose it is', async () => {
    const ask = openAsking();
    await answered(ask, '/guild set seam:3/8in width:40in', organiser);
    const reply = await answered(ask, '/cut shape:hexagon size:1in');
    expectFigures(reply, 'in', { cutEdge: withSeam(0.375) });
    expect(reply.notes.join()).toContain('the guild’s 3/8 in seam');
    const shown = await answered(ask, '/guild');
    expect(shown.table?.rows.find(([what]) => what === 'width')).toEqual(['width', '40 in', 'the guild’s']);
  });

  test('a member’s own beats the guild’s', async () => {
    const ask = openAsking();
    await answered(ask, '/guild set seam:3/8in', organiser);
    await answered(ask, '/me set seam:1/2in');
    const reply = await answered(ask, '/cut shape:hexagon size:1in');
    expectFigures(reply, 'in', { cutEdge: withSeam(0.5) });
    expect(reply.notes.join()).toContain('your 1/2 in seam');
    await answered(ask, '/me reset');
    expect(await cutEdge(ask, 'Ada')).toBeCloseTo(withSeam(0.375), 9);
    await answered(ask, '/guild reset', organiser);
    expect(await cutEdge(ask, 'Ada')).toBeCloseTo(withSeam(0.25), 9);
  });

  test('a guild in centimetres: a member who set nothing is answered so, one who set inches is not', async () => {
    const ask = openAsking();
    await answered(ask, '/guild set unit:cm', organiser);
    await answered(ask, '/me set unit:in', { as: 'Bea' });
    expect((await answered(ask, '/cut shape:hexagon size:2.5')).lines[0]).toContain('mm');
    expect((await answered(ask, '/cut shape:hexagon size:1', { as: 'Bea' })).lines[0]).toContain(' in');
  });

  test('the answer to a guild’s setting is in the units it now takes, or in the organiser’s own', async () => {
    const ask = openAsking();
    const width = async (words: string, as = 'Olga') =>
      (await answered(ask, words, { as, organiser: true })).table?.rows.find(
        ([what]) => what === 'width',
      )?.[1];
    expect(await width('/guild set unit:cm')).toMatch(/cm$/);
    await answered(ask, '/me set unit:in', { as: 'Bea' });
    expect(await width('/guild', 'Bea')).toBe('42 in');
    expect(await width('/guild set width:40in', 'Bea')).toBe('40 in');
    expect(await width('/guild reset')).toBe('42 in');
  });

  test('one thing alone, or several, go back to what they were', async () => {
    const ask = openAsking();
    await answered(ask, '/me set seam:3/8in width:40in hours:9');
    const rows = (await answered(ask, '/me reset seam and hours')).table?.rows ?? [];
    const value = (what: string) => rows.find(([name]) => name === what)?.[1];
    expect([value('seam'), value('width'), value('hours')]).toEqual(['1/4 in', '40 in', '5 a week']);
    await answered(ask, '/guild set seam:3/8in width:40in', organiser);
    const kept = (await answered(ask, '/guild reset width', organiser)).table?.rows ?? [];
    expect(kept.find(([name]) => name === 'width')?.[1]).toBe('42 in');
    expect(kept.find(([name]) => name === 'seam')?.[1]).toBe('3/8 in');
  });

  test.each(['/guild set seam:3/8in', '/guild reset'])(
    'a member may not %s, and nothing changes',
    async (words) => {
      const ask = openAsking();
      await answered(ask, '/guild set seam:1/2in', organiser);
      const reply = await ask(words);
      expect(reply.error?.code).toBe('organisers-only');
      expect(reply.error?.message).toContain('organisers');
      expect(await cutEdge(ask, 'Ada')).toBeCloseTo(withSeam(0.5), 9);
    },
  );
});

test('the caution on blades is said once a day to each member', async () => {
  const ask = openAsking();
  const cautions = async (as: string, now: string) =>
    (await answered(ask, '/cut shape:hexagon size:1in', { as, now })).cautions.length;
  expect(await cautions('Ada', '2026-12-01T10:00:00Z')).toBe(1);
  expect(await cautions('Ada', '2026-12-01T11:00:00Z')).toBe(0);
  expect(await cautions('Bea', '2026-12-01T11:00:00Z')).toBe(1);
  expect(await cautions('Ada', '2026-12-02T10:00:00Z')).toBe(1);
});
