import type { Option, ReadingContext } from '../src/chat/option.ts';
import { size } from '../src/chat/option-kinds.ts';
import { type RoleCount, readRoleCounts } from '../src/measure/cloth-list.ts';
import type { Taken } from '../src/measure/number.ts';
import { ok, type Result, wrong } from '../src/measure/result.ts';
import { arrangement } from './arrangement.ts';
import { gardenOption } from './garden-option.ts';
import type { MadeOf, MadeOfValues } from './made-of.ts';

/** A layout that says its own parts, and how it can be said again. */
interface NeededLayout {
  readonly layout: MadeOfValues;
  readonly words: string;
}

/** What is needed: so many patches for each part, or a layout. */
export type Need = { readonly parts: readonly RoleCount[] } | NeededLayout;

const quilt = size('');
const stars = arrangement('');

const numbered = (found: RegExpExecArray | null, otherwise = 0): number | null =>
  found && (Number(found[1] ?? otherwise) || null);

const ROSETTE = /^(?:an? |1 |one )?(?:rosette|flower)(?: of)?(?: (\d{1,3}) rounds?)?$/i;
const GARDEN = /^(?:an? )?(?:garden(?: of)? )?(?=\d)/i;
const STAR = /^(?:an? |1 |one )?star(?: of)? (\d{1,3}) (?:an?|to an?|on an?|per|each) side$/i;
const STARS = /^(\S+) stars$/i;
const BLOCKS = /^(\d{1,6}) (?:tumbling |baby )?blocks$/i;
const FIELD = /^(?:(?:an? )?(?:field|quilt)(?: of)? )?/i;

/** Each layout's value from what may be said of it, and how that is said again. */
const LAYOUTS: {
  readonly [Name in keyof MadeOfValues]?: {
    read(text: string, context: ReadingContext): MadeOfValues[Name] | null;
    say(value: NonNullable<MadeOfValues[Name]>): string;
  };
} = {
  rosette: {
    read: (text) => numbered(ROSETTE.exec(text), 1),
    say: (rounds) => `rosette ${rounds} rounds`,
  },
  star: { read: (text) => numbered(STAR.exec(text)), say: (side) => `star ${side} a side` },
  blocks: { read: (text) => numbered(BLOCKS.exec(text)), say: (many) => `${many} blocks` },
  garden: {
    read: (text, context) =>
      /\b(?:rosettes?|flowers?|garden)\b/i.test(text) && GARDEN.test(text)
        ? whole(gardenOption.take(text.replace(GARDEN, ''), context))
        : null,
    say: (garden) => `garden of ${gardenOption.write(garden)}`,
  },
  stars: {
    read: (text, context) => whole(stars.take(STARS.exec(text)?.[1] ?? '', context)),
    say: (standing) => `${stars.write(standing)} stars`,
  },
  field: {
    read: (text, context) => whole(quilt.take(text.replace(FIELD, ''), context)),
    say: (of) => `field ${quilt.write(of)}`,
  },
};

/** A value that took all of its text. */
const whole = <T>(taken: Result<Taken<T>> | null): T | null =>
  taken?.ok && taken.value.rest.trim() === '' ? taken.value.value : null;

/** A layout in the words of a member, or null where the text is of something else. */
function layoutIn(text: string, context: ReadingContext): NeededLayout | null {
  const said = text.trim().replace(/^["']+|["'\s.]+$/g, '');
  for (const [name, { read, say }] of Object.entries(LAYOUTS)) {
    const value = read(said, context);
    if (value !== null) return { layout: { [name]: value }, words: say(value as never) };
  }
  return null;
}

const LONGEST = 400;

/** How many patches each part of a layout needs, in free words; or the layout itself. */
export const needOption: Option<Need, false> = {
  kind: 'list of patches',
  summary: 'How many patches each part needs, each part from cloth of its own; or a layout',
  example: '7 centres, 42 petals, 24 path',
  bounds: 'numbers and names with commas between, or such as 7 rosettes of 2 rounds',
  shape: { as: 'words', longest: LONGEST },
  greedy: true,
  take(text, context) {
    const layout = layoutIn(text, context);
    if (layout) return ok({ value: layout, rest: '' });
    const list = readRoleCounts(text);
    return list.ok ? ok({ value: { parts: list.value }, rest: '' }) : list;
  },
  write: (need) => ('parts' in need ? need.parts.map(partAgain).join(', ') : need.words),
};

const partAgain = ({ count, role, cloth }: RoleCount): string =>
  cloth === undefined ? `${count} ${role}` : `${role} ${count} ${cloth}`;

/** What was said, with the layout that is needed in its own option's place. */
export const withNeeded = <V extends MadeOfValues & { readonly need?: Need }>(values: V): V =>
  values.need && 'layout' in values.need ? { ...values, ...values.need.layout } : values;

/** What is to be cut: the parts that were named, those of a layout whose parts are told apart, or one. */
export function needsFrom(
  { need, have, pieces }: { readonly need?: Need; readonly have?: unknown; readonly pieces?: number },
  of: MadeOf | null,
): Result<readonly RoleCount[]> {
  if (need && 'parts' in need) {
    if (of || pieces !== undefined) return wrong('one-of-these', { got: 'need, pieces, or a layout' });
    return ok(need.parts);
  }
  if (of) return ok(have || need ? of.byRole : [{ count: of.pieces, role: '' }]);
  return ok(pieces === undefined ? [] : [{ count: pieces, role: '' }]);
}
