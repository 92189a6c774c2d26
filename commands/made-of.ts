import { type Arrangement, howMany } from '../src/calculator/layouts/arrangement.ts';
import { garden } from '../src/calculator/layouts/garden.ts';
import { stars } from '../src/calculator/layouts/stars.ts';
import { partOf } from '../src/calculator/plan/top.ts';
import type { ShapeName } from '../src/calculator/shapes/shape.ts';
import type { Here } from '../src/chat/command.ts';
import { signed, type Values } from '../src/chat/option.ts';
import { size, whole } from '../src/chat/option-kinds.ts';
import { ok, type Result, wrong } from '../src/measure/result.ts';
import type { Size } from '../src/measure/size.ts';
import { many } from '../src/measure/speech.ts';
import { arrangement } from './arrangement.ts';
import { PATH_WORDS } from './count-words.ts';
import { type GardenWords, gardenOption } from './garden-option.ts';
import {
  type Counted,
  countBlocksApart,
  countDiamonds,
  countedFrom,
  countField,
  countRosette,
  countStar,
} from './layouts.ts';

/** In place of a number of seams or patches: the layout they are counted from. */
export const madeOfOptions = {
  rosette: whole('A rosette of so many rounds', 1, 576, '2'),
  field: size('A field of hexagons of this size, covered and trimmed'),
  star: whole('A six-point star of diamonds, so many a side', 1, 408, '4'),
  blocks: whole('So many three-shade blocks of diamonds', 1, 333_333, '100'),
  garden: gardenOption,
  stars: arrangement('Six-point stars set with diamonds, in rings or in rows'),
  diamonds: signed(whole('A large diamond of small ones, so many a side', 1, 1000, '8')),
};

export type MadeOfValues = Values<typeof madeOfOptions>;

/** What a layout needs of one shape, and what it is called. */
export interface MadeOf {
  readonly pieces: number;
  readonly seams: number;
  readonly shape: ShapeName;
  readonly words: string;
  /** The patches of each part, those that are none left out. */
  readonly byRole: readonly { readonly role: string; readonly count: number }[];
}

type Maker = (
  value: never,
  edge: number,
  here: Here,
) => Result<{ of: Counted; shape: ShapeName; words: string }>;

const named = (made: Result<Counted>, shape: ShapeName, words: string) =>
  made.ok ? ok({ of: made.value, shape, words }) : made;

const MAKERS: Readonly<Record<keyof typeof madeOfOptions, Maker>> = {
  rosette: (rounds: number, edge) =>
    named(countRosette(rounds, edge), 'hexagon', `a rosette of ${many(rounds, 'round', 'rounds')}`),
  field: ({ width, height }: Size, edge, { say }) =>
    named(
      countField({ width, height, edge, rows: 'across', sides: 'cover' }),
      'hexagon',
      `a field to cover ${say.size(width, height)}`,
    ),
  star: (side: number, edge) => named(countStar(side, edge), 'diamond', `a star, ${side} a side`),
  blocks: (count: number, edge) =>
    named(countBlocksApart(count, edge), 'diamond', `${count} blocks of three`),
  garden: ({ arrangement: stand, rounds, path }: GardenWords, edge) =>
    named(
      countedFrom(garden({ arrangement: stand, rounds, path, outer: false }), edge),
      'hexagon',
      `${many(howMany(stand), 'rosette', 'rosettes')} of ${many(rounds, 'round', 'rounds')}, ${PATH_WORDS[path]}`,
    ),
  stars: (stand: Arrangement, edge) =>
    named(
      countedFrom(stars({ arrangement: stand, set: 'diamonds', edge: 'open' }), edge),
      'diamond',
      `${many(howMany(stand), 'star', 'stars')} set with diamonds`,
    ),
  diamonds: (side: number, edge) =>
    named(
      countDiamonds(side % 2 === 1 ? 1 : 4, Math.floor((side - 1) / 2), edge),
      'diamond',
      `a large diamond, ${side} a side`,
    ),
};

/** The shape that the layout named is made of, or null where it may be any. */
export const shapeMadeOf = (values: MadeOfValues): ShapeName | null =>
  (['star', 'blocks', 'stars', 'diamonds'] as const).some((name) => values[name] !== undefined)
    ? 'diamond'
    : null;

/** The patches and seams of the layout named, or null where none was. */
export function madeOf(values: MadeOfValues, edge: number, here: Here): Result<MadeOf> | null {
  const said = (Object.keys(madeOfOptions) as (keyof typeof MAKERS)[]).filter(
    (name) => values[name] !== undefined,
  );
  const [name] = said;
  if (!name) return null;
  if (said.length > 1) return wrong('one-of-these', { got: said.join(', ') });
  const made = MAKERS[name](values[name] as never, edge, here);
  if (!made.ok) return made;
  const { of, shape, words } = made.value;
  return ok({ pieces: of.counted.total, seams: of.counted.seams, shape, words, byRole: partsOf(of) });
}

/** The patches of each part; a part that is all of it needs no name. */
function partsOf({ counted }: Counted): MadeOf['byRole'] {
  const parts = new Map<string, number>();
  for (const [role, count] of Object.entries(counted.byRole))
    if (count > 0) parts.set(partOf(role), (parts.get(partOf(role)) ?? 0) + count);
  return [...parts].map(([role, count]) => ({ role: parts.size === 1 ? '' : role, count }));
}
