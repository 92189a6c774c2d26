/**
 * The date of a moment in a time zone, YYYY-MM-DD.
 *
 * @example
 * dateIn(new Date('2026-12-01T23:30:00Z'), 'Europe/Berlin') // "2026-12-02"
 */
export function dateIn(now: Date, zone: string): string {
  const minute = Math.floor(now.getTime() / MINUTE);
  const last = told.get(zone);
  if (last?.minute === minute) return last.date;
  const date = dateAt(now, zone);
  told.set(zone, { minute, date });
  return date;
}

const MINUTE = 60_000;

/** Every ask wants today's date; in no zone does it change but with the minute. */
const told = new Map<string, { readonly minute: number; readonly date: string }>();

function dateAt(now: Date, zone: string): string {
  if (zone === 'UTC') return now.toISOString().slice(0, 10);
  return new Intl.DateTimeFormat('en-CA', {
    timeZone: zone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
  }).format(now);
}
