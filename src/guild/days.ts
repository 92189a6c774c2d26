/*
 * Days of the calendar as they are written, YYYY-MM-DD. They are counted in universal time, where each has 24
 * hours: which day it is for somebody is settled before.
 */

const DAY = 86_400_000;

/**
 * Days from one to another; below zero where the other is earlier.
 *
 * @example
 * daysBetween('2026-12-01', '2027-01-01') // 31
 * daysBetween('2026-12-01', '2026-11-30') // -1
 */
export const daysBetween = (from: string, to: string): number =>
  Math.round((Date.parse(to) - Date.parse(from)) / DAY);

/**
 * The day so many days later.
 *
 * @example
 * dayAfter('2028-02-28', 1) // "2028-02-29"
 * dayAfter('2026-12-01', -1) // "2026-11-30"
 */
export const dayAfter = (day: string, days: number): string =>
  new Date(Date.parse(day) + days * DAY).toISOString().slice(0, 10);

/**
 * The same day of the month so many months later, or the month's last where it is shorter.
 *
 * @example
 * monthAfter('2027-01-31', 1) // "2027-02-28"
 * monthAfter('2027-01-15', 12) // "2028-01-15"
 */
export function monthAfter(day: string, months: number): string {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  const last = new Date(Date.UTC(year, month + months, 0)).getUTCDate();
  return new Date(Date.UTC(year, month - 1 + months, Math.min(date, last))).toISOString().slice(0, 10);
}

/**
 * Which day of the week it is: 0 for Monday.
 *
 * @example
 * weekdayOf('2026-12-01') // 1
 */
export const weekdayOf = (day: string): number => (new Date(day).getUTCDay() + 6) % 7;
