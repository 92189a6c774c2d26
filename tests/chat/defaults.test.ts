import { describe, expect, it } from 'vitest';
import { settle } from '../../src/chat/defaults.ts';
import { dateIn } from '../../src/chat/today.ts';

describe('the defaults in force', () => {
  it('hers before the guild’s before what is usual, each by itself', () => {
    const settled = settle({ seam: 0.375, hours: 3 }, { seam: 0.5, width: 40 });
    expect(settled.seam).toEqual({ value: 0.375, from: 'you' });
    expect(settled.width).toEqual({ value: 40, from: 'guild' });
    expect(settled.hours).toEqual({ value: 3, from: 'you' });
    expect(settled.unit).toEqual({ value: 'in', from: 'usual' });
  });

  /** ¼ in seam and 42 in usable width: common practice, no source. */
  it('usual: inches, a quarter inch seam, 42 in of width, UTC; no pace, stitches or hours', () => {
    expect(settle({}, {})).toMatchObject({
      unit: { value: 'in', from: 'usual' },
      reading: { value: 'ruler', from: 'usual' },
      seam: { value: 0.25, from: 'usual' },
      width: { value: 42, from: 'usual' },
      stitches: { value: null, from: 'usual' },
      pace: { value: null, from: 'usual' },
      hours: { value: null, from: 'usual' },
      zone: { value: 'UTC', from: 'usual' },
    });
  });

  it('usual together: by name, organisers open, a digest on Mondays at nine, quiet at night, nobody nudged', () => {
    expect(settle({}, {})).toMatchObject({
      standings: { value: 'unranked', from: 'usual' },
      openers: { value: 'organisers', from: 'usual' },
      reminders: { value: 'on', from: 'usual' },
      digest: { value: 'monday', from: 'usual' },
      at: { value: '09:00', from: 'usual' },
      quiet: { value: '21:00-08:00', from: 'usual' },
      nudge: { value: 'off', from: 'usual' },
    });
  });

  it('a seam of nothing is a seam that somebody set', () => {
    expect(settle({ seam: 0 }, { seam: 0.5 }).seam).toEqual({ value: 0, from: 'you' });
  });

  it('who thinks in metric is read to in metric, unless a reading is set', () => {
    expect(settle({ unit: 'cm' }, {}).reading).toEqual({ value: 'metric', from: 'you' });
    expect(settle({}, { unit: 'mm' }).reading).toEqual({ value: 'metric', from: 'guild' });
    expect(settle({ unit: 'cm' }, { reading: 'both' }).reading).toEqual({ value: 'both', from: 'guild' });
    expect(settle({ unit: 'in' }, { unit: 'cm' }).reading).toEqual({ value: 'ruler', from: 'usual' });
  });
});

/** Offsets from UTC as the time zone database has them for those days. */
describe('the date in a zone', () => {
  it.each([
    ['2026-12-01T23:30:00Z', 'UTC', '2026-12-01'],
    ['2026-12-01T23:30:00Z', 'Europe/Berlin', '2026-12-02'],
    ['2026-12-01T04:59:00Z', 'America/New_York', '2026-11-30'],
    ['2026-07-01T03:59:00Z', 'America/New_York', '2026-06-30'],
    ['2026-07-01T04:00:00Z', 'America/New_York', '2026-07-01'],
    ['2026-12-31T10:59:00Z', 'Pacific/Auckland', '2026-12-31'],
    ['2026-12-31T11:00:00Z', 'Pacific/Auckland', '2027-01-01'],
    ['2026-03-29T00:30:00Z', 'Europe/London', '2026-03-29'],
    ['2026-06-30T23:30:00Z', 'Europe/London', '2026-07-01'],
  ])('%s in %s is %s', (moment, zone, date) => {
    expect(dateIn(new Date(moment), zone)).toBe(date);
  });
});
