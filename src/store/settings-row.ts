import { type KeptDefaults, WEEKDAYS } from '../chat/defaults.ts';
import type { Problem } from '../measure/result.ts';

/*
 * Rows read back are checked by hand, not by a schema library: a single ask must start quickly, and this
 * is all that it reads.
 */

type Fits = (value: unknown) => boolean;

const oneOf =
  (...words: string[]): Fits =>
  (value) =>
    words.includes(value as string);
const positive: Fits = (value) => typeof value === 'number' && Number.isFinite(value) && value > 0;
const like =
  (pattern: RegExp): Fits =>
  (value) =>
    typeof value === 'string' && pattern.test(value);
const name: Fits = (value) => typeof value === 'string' && value !== '' && value.length <= 100;

const fits: Readonly<Record<keyof KeptDefaults, Fits>> = {
  unit: oneOf('in', 'cm', 'mm'),
  reading: oneOf('ruler', 'metric', 'both'),
  seam: positive,
  width: positive,
  stitches: positive,
  pace: positive,
  hours: positive,
  zone: name,
  standings: oneOf('ranked', 'unranked', 'totals'),
  openers: oneOf('organisers', 'everyone'),
  reminders: oneOf('on', 'off'),
  digest: oneOf(...WEEKDAYS, 'off'),
  nudge: oneOf(...WEEKDAYS, 'daily', 'off'),
  nudgePlace: name,
  at: like(/^\d\d:\d\d$/),
  quiet: like(/^(?:\d\d:\d\d-\d\d:\d\d|off)$/),
};

const isDefault = (key: string): key is keyof KeptDefaults => Object.hasOwn(fits, key);

/** The settings in one row, as far as they make sense, and the names of those that do not. */
export interface SettingsRead {
  readonly settings: KeptDefaults;
  /** Names of what was left out; '*' when the row as a whole could not be read. */
  readonly bad: readonly string[];
}

export function readSettingsRow(text: string | null | undefined): SettingsRead {
  if (text === null || text === undefined) return { settings: {}, bad: [] };
  const row = parsed(text);
  if (row === undefined) return { settings: {}, bad: ['*'] };
  const entries = Object.entries(row);
  const good = entries.filter(([key, value]) => isDefault(key) && fits[key](value));
  return {
    settings: Object.fromEntries(good) as KeptDefaults,
    bad: entries.map(([key]) => key).filter((key) => !good.some(([each]) => each === key)),
  };
}

function parsed(text: string): object | undefined {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === 'object' && value !== null && !Array.isArray(value) ? value : undefined;
  } catch {
    return undefined;
  }
}

/** What is told to the operator about a row that was left out, whole or in part. */
export const badRow = (table: string, guild: string, member: string, bad: readonly string[]): Problem => ({
  code: 'store-bad-row',
  table,
  guild,
  member,
  names: bad,
});
