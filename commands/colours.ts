import type { Arrangement } from '../src/calculator/layouts/arrangement.ts';
import { byCloth, type Cloth } from '../src/calculator/layouts/by-cloth.ts';
import type { Option } from '../src/chat/option.ts';
import { alsoNamed } from '../src/chat/option.ts';
import { count, type Figure, type Table } from '../src/chat/reply.ts';
import { ok, type Result, wrong } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';

const MOST = 24;
const LONGEST = 24;

/** One cloth: a word or a few, up to the next comma; words that are options of the same ask end it. */
const WORD = "(?!(?:rounds?|rosettes?|rows|size|seam|path|outer|quilt|sides|in)\\b)[a-z][a-z'’-]*";
const ONE = `${WORD}(?: ${WORD}){0,3}`;
const LIST = new RegExp(`^${ONE}(?:\\s*(?:,|/|\\+|\\band\\b)\\s*${ONE})*`, 'i');
const BETWEEN = /\s*(?:,|\/|\+|\band\b)\s*/i;

/** Cloths in order: `red, blue, white`. */
const cloths: Option<readonly string[], false> = {
  kind: 'list of cloths',
  summary: 'Cloths in turn, begun again when the list ends; each is counted (figures cloth1, cloth2 …)',
  example: 'red,blue,white',
  bounds: `up to ${MOST}, with commas between`,
  shape: { as: 'words', longest: 200 },
  take(text) {
    const found = LIST.exec(text)?.[0];
    if (!found) return null;
    const names = found.split(BETWEEN).map((name) => name.toLowerCase());
    const long = names.find((name) => name.length > LONGEST);
    if (long) return wrong('text-too-long', { got: String(long.length), most: String(LONGEST) });
    if (names.length > MOST)
      return wrong('too-large', { got: `${names.length} cloths`, least: '1', most: String(MOST) });
    return ok({ value: names, rest: text.slice(found.length) });
  },
  write: (names) => names.join(','),
};

export const coloursOption = alsoNamed(cloths, 'colour', 'colors', 'color', 'cloths');

/** The cloths as a picture's ask carries them. */
export const inTheCloths = (names: readonly string[] | undefined) => (names ? { cloths: names } : {});

/** A layout's rounds or rows by cloth, or nothing where no cloths were named. */
export const coloured = (counts: readonly number[], names: readonly string[] | undefined): Cloth[] =>
  names ? byCloth(counts, names) : [];

/** Each cloth's count, `cloth1` the first that was named, all of them in `colours`, and their names. */
export function clothFigures(found: readonly Cloth[]): Record<string, Figure> {
  if (found.length === 0) return {};
  return {
    colours: count(found.map(({ pieces }) => pieces)),
    clothNames: { value: found.map(({ name }) => name).join(', '), unit: '' },
    ...Object.fromEntries(found.map(({ pieces }, i) => [`cloth${i + 1}`, count(pieces)])),
  };
}

const FEW = 5;

/** Which rounds a cloth is: "centre, 3, 6"; of many the first ones and how many more. */
export function placeWords(places: readonly number[], name: (place: number) => string): string {
  if (places.length === 0) return 'none';
  const shown = places.slice(0, FEW).map(name).join(', ');
  return places.length > FEW ? `${shown} and ${places.length - FEW} more` : shown;
}

/** A round about a centre, and a round of a star, whose innermost is its first. */
export const roundAbout = (place: number): string => (place === 0 ? 'centre' : String(place));
export const roundOf = (place: number): string => String(place + 1);

/** The cloths as a table, other rows after them; null where no cloths were named. */
export function clothTable(
  found: readonly Cloth[],
  pieces: string,
  places: { readonly called: string; readonly name: (place: number) => string },
  others: readonly (readonly string[])[] = [],
): Table | null {
  if (found.length === 0) return null;
  const rows = found.map((cloth) => [
    cloth.name,
    grouped(cloth.pieces),
    placeWords(cloth.places, places.name),
  ]);
  return {
    columns: ['cloth', pieces, places.called],
    rows: [...rows, ...others.map((row) => [...row, ''])],
  };
}

/** Several stars by cloth: how many diamonds, of how many stars; then what is set between them and at the edge. */
export const starTable = (found: readonly Cloth[], others: Readonly<Record<string, number>>): Table | null =>
  found.length === 0
    ? null
    : {
        columns: ['cloth', 'pieces', 'stars'],
        rows: [
          ...found.map(({ name, pieces, places }) => [name, grouped(pieces), grouped(places.length)]),
          ...Object.entries(others)
            .filter(([, pieces]) => pieces > 0)
            .map(([what, pieces]) => [what, grouped(pieces), '']),
        ],
      };

/** Diamonds of one star of several. */
const A_STAR = 6;

export const starCloths = (stars: number, names: readonly string[] | undefined): Cloth[] =>
  coloured(new Array<number>(stars).fill(A_STAR), names);

/** In which order the stars take their cloths. */
export const starsInTurn = ({ kind }: Arrangement, cloths: readonly unknown[]): string[] =>
  cloths.length < 2
    ? []
    : [`The stars take the cloths in turn, ${kind === 'rings' ? 'from the middle outward' : 'row by row'}.`];

const SHADES = ['light', 'medium', 'dark'] as const;

/** Cloths for the three shades of blocks, from light to dark: three, no more and no fewer. */
export function shadeCloths(perShade: number, names: readonly string[] | undefined): Result<Cloth[]> {
  if (names && names.length !== SHADES.length) return wrong('three-shades', { got: names.join(', ') });
  return ok(coloured([perShade, perShade, perShade], names));
}

export const shadeTable = (found: readonly Cloth[]): Table | null =>
  clothTable(found, 'diamonds', { called: 'shade', name: (place) => SHADES[place] ?? '' });
