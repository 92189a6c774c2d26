import { CATALOGUE } from '../src/calculator/shapes/catalogue.ts';
import { QUARTER_ARC } from '../src/calculator/shapes/curves.ts';
import type { FurtherDimension, ShapeName } from '../src/calculator/shapes/shape.ts';
import { SQUARE_POINT } from '../src/calculator/shapes/straights.ts';
import type { Option } from '../src/chat/option.ts';
import { usually } from '../src/chat/option.ts';
import { length } from '../src/chat/option-kinds.ts';
import { takeNumber } from '../src/measure/number.ts';
import { ok, type Wrong, wrong } from '../src/measure/result.ts';
import type { Speech } from '../src/measure/speech.ts';

/** Sharper points and flatter ones than these cannot be pieced. */
const SHARPEST = 5;
const FLATTEST = 175;

/** An angle in degrees: `60`, `60°`, `60 degrees`. */
const angle: Option<number, false> = {
  kind: 'angle',
  summary: 'The angle at a long hexagon’s points, or of an apple-core’s arcs',
  example: '60',
  bounds: `${SHARPEST}° to ${FLATTEST}°`,
  shape: { as: 'number', least: SHARPEST, most: FLATTEST },
  take(text) {
    const taken = takeNumber(text);
    if (!taken) return null;
    const { value } = taken;
    const rest = taken.rest.replace(/^\s*(?:°|deg(?:ree)?s?\b)/i, '');
    if (/^\s*(?:in\b|inch|["']|cm\b|mm\b)/i.test(rest)) return null;
    const bounds = { got: `${value}°`, least: `${SHARPEST}°`, most: `${FLATTEST}°` };
    if (value < SHARPEST) return wrong('too-small', bounds);
    return value > FLATTEST ? wrong('too-large', bounds) : ok({ value, rest });
  },
  write: String,
};

const longSide = length('A long hexagon’s long side; of other shapes the size, along one side');

/** `4in side to side` says how a size was measured, and no side. */
const side: Option<number, false> = {
  ...longSide,
  take(text, context) {
    const taken = longSide.take(text, context);
    return taken?.ok && /^[\s-]*side[- ]to[- ]side\b/i.test(taken.value.rest) ? null : taken;
  },
};

/** The options beside the size that fix a patch of the shapes that need more than one. */
export const dimensionOptions = {
  side: usually(side, 'as the slant'),
  angle: usually(angle, `${SQUARE_POINT}`),
  narrow: usually(length('A tumbler’s narrow end'), 'two thirds of the wide end'),
};

/** Further dimensions as they were said, by the name of the option. */
export type Further = Readonly<Partial<Record<FurtherDimension, number>>>;

/** How each further dimension is said of its shape, and what is taken where it was not. */
interface Words {
  readonly said: (value: number, say: Speech) => string;
  readonly usual: string;
}

const FURTHER: Readonly<Partial<Record<ShapeName, Partial<Record<FurtherDimension, Words>>>>> = {
  'long-hexagon': {
    side: {
      said: (value, say) => `${say.plain(value)} long side`,
      usual: 'long sides as long as the slants',
    },
    angle: { said: (value) => `${value}° points`, usual: `${SQUARE_POINT}° points` },
  },
  tumbler: {
    narrow: {
      said: (value, say) => `${say.plain(value)} narrow end`,
      usual: 'the narrow end two thirds of the wide',
    },
    height: { said: (value, say) => `${say.plain(value)} high`, usual: 'as high as the wide end' },
  },
  'apple-core': {
    angle: { said: (value) => `${value}° arcs`, usual: `arcs of a quarter circle (${QUARTER_ARC}°)` },
  },
};

const wordsOf = (shape: ShapeName): [FurtherDimension, Words][] =>
  Object.entries(FURTHER[shape] ?? {}) as [FurtherDimension, Words][];

/** The further dimensions that were said, for a title. */
export const furtherWords = (shape: ShapeName, further: Further, say: Speech): string[] =>
  wordsOf(shape).flatMap(([name, { said }]) => {
    const value = further[name];
    return value === undefined ? [] : [said(value, say)];
  });

/** The usual proportions that were taken where nothing was said. */
export const usualWords = (shape: ShapeName, further: Further): string[] =>
  wordsOf(shape).flatMap(([name, { usual }]) => (further[name] === undefined ? [usual] : []));

const NAMES = { angle: 'angle', narrow: 'narrow end' } as const;

/** A dimension that the shape has not got, as a problem that names those that have it; null where all is well. */
export function notOfShape(shape: ShapeName, further: Further): Wrong | null {
  for (const name of ['angle', 'narrow'] as const) {
    if (further[name] === undefined || CATALOGUE[shape].also?.[name] !== undefined) continue;
    const has = Object.values(CATALOGUE).filter(({ also }) => also?.[name] !== undefined);
    return wrong('dimension-not-of-shape', {
      shape: CATALOGUE[shape].titles,
      option: NAMES[name],
      known: has.map(({ titles }) => titles),
    });
  }
  return null;
}
