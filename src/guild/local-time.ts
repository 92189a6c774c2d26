import type { Temporal as Temporals } from 'temporal-polyfill';

/*
 * Days and hours of a zone as its people keep them. The library of time zones takes a while to load, so it is
 * loaded when the first reminder is reckoned, and handed in here.
 */

export type TimeZones = typeof Temporals;

export const loadTimeZones = async (): Promise<TimeZones> => (await import('temporal-polyfill')).Temporal;

/**
 * The moment of a time of day (HH:MM) on a day in a zone, in milliseconds. A time that the clocks jump over
 * is as much later as they jump; of a time that comes twice it is the first.
 */
export function momentOf(zones: TimeZones, day: string, time: string, zone: string): number {
  const [hour = 0, minute = 0] = time.split(':').map(Number);
  const at = zones.PlainTime.from({ hour: hour % 24, minute });
  return zones.PlainDate.from(day).toZonedDateTime({ timeZone: zone, plainTime: at }).epochMilliseconds;
}

/** The day and the time of day of a moment in a zone. */
export function localOf(zones: TimeZones, moment: number, zone: string): { day: string; time: string } {
  const local = zones.Instant.fromEpochMilliseconds(moment).toZonedDateTimeISO(zone);
  return { day: local.toPlainDate().toString(), time: local.toPlainTime().toString().slice(0, 5) };
}

/**
 * Whether a time of day lies in a stretch of hours, which may go past midnight. Its end is outside.
 *
 * @example
 * isWithin('23:30', '21:00-08:00') // true
 * isWithin('08:00', '21:00-08:00') // false
 * isWithin('12:00', 'off') // false
 */
export function isWithin(time: string, stretch: string): boolean {
  if (stretch === 'off') return false;
  const [from = '', to = ''] = stretch.split('-');
  return from < to ? from <= time && time < to : time >= from || time < to;
}
