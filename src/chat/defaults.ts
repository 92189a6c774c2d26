import type { Unit } from '../measure/length.ts';
import type { Reading } from '../measure/speech.ts';

/** What a member or a guild has set, and nothing more. Lengths in inches. */
export interface KeptDefaults {
  readonly unit?: Unit;
  readonly reading?: Reading;
  readonly seam?: number;
  readonly width?: number;
  /** Stitches per inch. */
  readonly stitches?: number;
  /** Minutes per seam. */
  readonly pace?: number;
  /** Hours of stitching a week. */
  readonly hours?: number;
  /** Time zone by its IANA name. */
  readonly zone?: string;
  /** How members stand in standings: ranked, by name, or not at all. A guild's choice. */
  readonly standings?: 'ranked' | 'unranked' | 'totals';
  /** Who opens, edits and closes what the guild does together. A guild's choice. */
  readonly openers?: 'organisers' | 'everyone';
  /** Whether the guild's rooms are reminded of what opens and ends. A guild's choice. */
  readonly reminders?: 'on' | 'off';
  /** The day of the week on which a challenge's week is summed up. A guild's choice. */
  readonly digest?: Weekday | 'off';
  /** When a member wants to be reminded of her own. */
  readonly nudge?: Weekday | 'daily' | 'off';
  /** Where she said so. */
  readonly nudgePlace?: string;
  /** The time of day of reminders, HH:MM. */
  readonly at?: string;
  /** The hours without reminders, HH:MM-HH:MM. */
  readonly quiet?: string;
}

export const WEEKDAYS = [
  'monday',
  'tuesday',
  'wednesday',
  'thursday',
  'friday',
  'saturday',
  'sunday',
] as const;
export type Weekday = (typeof WEEKDAYS)[number];

/** A default in force and where it comes from. */
export interface Settled<T> {
  readonly value: T;
  readonly from: 'you' | 'guild' | 'usual';
}

/** The defaults in force for one asker: hers before the guild's before what is usual. */
export interface Defaults {
  readonly unit: Settled<Unit>;
  readonly reading: Settled<Reading>;
  readonly seam: Settled<number>;
  readonly width: Settled<number>;
  readonly stitches: Settled<number | null>;
  readonly pace: Settled<number | null>;
  readonly hours: Settled<number | null>;
  readonly zone: Settled<string>;
  readonly standings: Settled<'ranked' | 'unranked' | 'totals'>;
  readonly openers: Settled<'organisers' | 'everyone'>;
  readonly reminders: Settled<'on' | 'off'>;
  readonly digest: Settled<Weekday | 'off'>;
  readonly nudge: Settled<Weekday | 'daily' | 'off'>;
  readonly nudgePlace: Settled<string | null>;
  readonly at: Settled<string>;
  readonly quiet: Settled<string>;
}

/**
 * Usual where nobody has said: a ¼ in seam and 42 in of usable width (common practice, no source).
 * Stitches, pace and hours have no one usual value: the command that needs them says what it took.
 */
const USUAL: { readonly [K in keyof KeptDefaults]-?: KeptDefaults[K] | null } = {
  unit: 'in',
  reading: 'ruler',
  seam: 1 / 4,
  width: 42,
  stitches: null,
  pace: null,
  hours: null,
  zone: 'UTC',
  standings: 'unranked',
  openers: 'organisers',
  reminders: 'on',
  digest: 'monday',
  nudge: 'off',
  nudgePlace: null,
  at: '09:00',
  quiet: '21:00-08:00',
};

const KEYS = Object.keys(USUAL) as (keyof KeptDefaults)[];

/**
 * Settles each default: the member's, else the guild's, else the usual one.
 *
 * @example
 * settle({ seam: 0.375 }, { seam: 0.5, width: 40 }).seam // {"value":0.375,"from":"you"}
 * settle({}, { width: 40 }).width // {"value":40,"from":"guild"}
 * settle({ unit: 'cm' }, {}).reading.value // "metric"
 */
export function settle(own: KeptDefaults, guild: KeptDefaults): Defaults {
  const pick = <K extends keyof KeptDefaults>(key: K) => {
    if (own[key] !== undefined) return { value: own[key], from: 'you' };
    if (guild[key] !== undefined) return { value: guild[key], from: 'guild' };
    return { value: USUAL[key], from: 'usual' };
  };
  const each: Partial<Record<keyof KeptDefaults, unknown>> = {};
  for (const key of KEYS) each[key] = pick(key);
  const settled = each as unknown as Defaults;
  if (settled.reading.from !== 'usual' || settled.unit.value === 'in') return settled;
  return { ...settled, reading: { value: 'metric', from: settled.unit.from } };
}
