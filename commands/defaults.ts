import type { Defaults, KeptDefaults, Settled } from '../src/chat/defaults.ts';
import type { DefaultChanges } from '../src/chat/facts.ts';
import { bare, type Option } from '../src/chat/option.ts';
import { choice, length, number, zone } from '../src/chat/option-kinds.ts';
import type { Table } from '../src/chat/reply.ts';
import { ok } from '../src/measure/result.ts';
import type { Speech } from '../src/measure/speech.ts';
import { LIFE_WORDS } from './guild-life-options.ts';

/** What a member or a guild may set; the same words for both. */
export const defaultOptions = {
  unit: bare(
    choice('The unit of a number without one', [
      { name: 'in', title: 'inches', words: ['inch', 'inches', 'imperial'] },
      { name: 'cm', title: 'centimetres', words: ['centimetre', 'centimeter', 'metric'] },
      { name: 'mm', title: 'millimetres', words: ['millimetre', 'millimeter'] },
    ]),
  ),
  reading: choice('How lengths are read back', [
    { name: 'ruler', title: 'inches on a ruler' },
    { name: 'metric', title: 'millimetres' },
    { name: 'both', title: 'both' },
  ]),
  seam: length('Seam allowance', 1 / 16, 2, '3/8in'),
  width: length('Usable width of cloth', 4, 200, '40in'),
  stitches: number('Stitches an inch', 2, 40, '12'),
  pace: number('Minutes for one seam', 0.1, 60, '2.5'),
  hours: number('Hours of stitching a week', 0.25, 112, '5'),
  zone: zone('Time zone'),
};

const settable = choice(
  'What alone goes back; all of it where nothing is said',
  [...Object.keys(defaultOptions), ...LIFE_WORDS].map((name) => ({ name, title: name })),
);

/** What was set and is to be as if it never had been, one or several: `seam`, `seam, width and hours`. */
export const resetOption: Option<readonly string[], false> = {
  kind: 'what is set',
  summary: settable.summary,
  example: 'seam',
  bounds: 'unit, seam, width and so on',
  shape: { as: 'words', longest: 100 },
  bare: true,
  untold: true,
  take(text, context) {
    const named: string[] = [];
    let rest = text;
    for (let next = settable.take(rest, context); next?.ok; next = settable.take(rest, context)) {
      named.push(next.value.value);
      rest = next.value.rest.replace(/^(?:[\s,;&]|and\b)+/i, '');
    }
    return named.length === 0 ? null : ok({ value: named, rest });
  },
  write: (named) => named.join(', '),
};

/** What is reset, as changes to what is kept; and in words. */
export const resetOf = (named: readonly string[]) => ({
  changes: Object.fromEntries(named.map((name) => [name, null])) as DefaultChanges,
  words: `${named.join(', ')} ${named.length === 1 ? 'is' : 'are'} cleared`,
});

/** The values given, as changes to what is kept. */
export function changesFrom(values: { readonly [K in keyof KeptDefaults]?: unknown }): DefaultChanges {
  return Object.fromEntries(
    Object.entries(values).filter(([, value]) => value !== undefined),
  ) as DefaultChanges;
}

const SOURCE: Readonly<Record<Settled<unknown>['from'], string>> = {
  you: 'yours',
  guild: 'the guild’s',
  usual: 'usual',
};

/** Each default in force, and whose it is. */
export function shownDefaults(defaults: Defaults, say: Speech): { lines: string[]; table: Table } {
  const hers = Object.values(defaults).some(({ from }) => from === 'you');
  const rows: [string, Settled<unknown>, string][] = [
    ['unit', defaults.unit, defaults.unit.value],
    ['reading', defaults.reading, defaults.reading.value],
    ['seam', defaults.seam, say.plain(defaults.seam.value)],
    ['width', defaults.width, say.plain(defaults.width.value)],
    [
      'stitches',
      defaults.stitches,
      defaults.stitches.value === null ? 'by the method' : `${defaults.stitches.value} an inch`,
    ],
    [
      'pace',
      defaults.pace,
      defaults.pace.value === null ? 'by the method' : `${defaults.pace.value} min a seam`,
    ],
    ['hours', defaults.hours, defaults.hours.value === null ? '5 a week' : `${defaults.hours.value} a week`],
    ['zone', defaults.zone, defaults.zone.value],
    ...LIFE_WORDS.filter((name) => defaults[name].from !== 'usual').map(
      (name): [string, Settled<unknown>, string] => [name, defaults[name], defaults[name].value],
    ),
  ];
  return {
    lines: [hers ? 'Taken when you do not say otherwise:' : 'Taken when nobody says otherwise:'],
    table: {
      columns: ['what', 'value', 'whose'],
      rows: rows.map(([name, { from }, value]) => [name, value, SOURCE[from]]),
    },
  };
}
