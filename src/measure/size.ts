import { INCHES, takeLength, toInches, type Unit } from './length.ts';
import { type Taken, takeNumber } from './number.ts';

/** Width and height in inches, as asked; `bed` is the name it was given by, if it was. */
export interface Size {
  readonly width: number;
  readonly height: number;
  readonly bed?: string;
}

interface Bed {
  readonly name: string;
  readonly words: RegExp;
  readonly width: number;
  readonly height: number;
  readonly infant?: boolean;
}

/**
 * Usual finished quilt sizes by the name of the bed, in inches. Common practice, no source: about 15 in of
 * drop, and a tuck under the pillow from queen up. Every answer says the size that it took.
 */
export const BEDS: readonly Bed[] = [
  { name: 'crib', words: bedWords('crib|cot|baby'), width: 36, height: 52, infant: true },
  { name: 'lap', words: bedWords('lap'), width: 48, height: 60 },
  { name: 'throw', words: bedWords('throw'), width: 50, height: 60 },
  { name: 'twin', words: bedWords('twin|single'), width: 70, height: 90 },
  { name: 'full', words: bedWords('full|double'), width: 84, height: 90 },
  { name: 'queen', words: bedWords('queen'), width: 90, height: 108 },
  { name: 'king', words: bedWords('king'), width: 108, height: 108 },
];

/** `queen`, `queen-size quilt`, `queensized bed`; a baby block is no bed. */
function bedWords(names: string): RegExp {
  return new RegExp(
    `^(?:${names})(?:[- ]?sized?)?(?:[- ](?:quilts?|beds?))*(?![a-z0-9]|[- ]blocks?\\b)`,
    'i',
  );
}

const BETWEEN = /^\s*(?:x|by)\s*/i;

/** What may stand between a bed's name and its size in figures: `queen, 96x108`, `crib of 36x52`. */
const JOINED = /^[\s,]*(?:(?:of|at|is)\s+)?/;

/**
 * Reads a width × height off the front of a tidied text: `60x72`, `60 x 72 in`, `140 x 200 cm`, `5 ft by 6 ft`,
 * or a bed's name. A unit said once, after the second number, holds for both. Where a bed is named beside
 * figures the figures are the size; an infant's bed keeps its name, for the caution that goes with it.
 *
 * @example
 * takeSize('60x72in', 'in').value // {"width":60,"height":72}
 * takeSize('queen size', 'in').value.width // 90
 * takeSize('queen 96x108in', 'in').value // {"width":96,"height":108}
 * takeSize('25.4 x 50.8 cm', 'in').value // {"width":10,"height":20}
 */
export function takeSize(text: string, unit: Unit): Taken<Size> | null {
  const before = takeBed(text);
  const figures = takeByLengths(before ? before.rest.replace(JOINED, '') : text, unit);
  if (!figures) return before && { value: usualSize(before.value), rest: before.rest };
  const after = before ? null : takeBed(figures.rest.trimStart());
  const bed = before ?? after;
  const value = bed?.value.infant ? { ...figures.value, bed: bed.value.name } : figures.value;
  return { value, rest: after ? after.rest : figures.rest };
}

const usualSize = ({ name, width, height }: Bed): Size => ({ width, height, bed: name });

function takeBed(text: string): Taken<Bed> | null {
  for (const bed of BEDS) {
    const found = bed.words.exec(text);
    if (found) return { value: bed, rest: text.slice(found[0].length) };
  }
  return null;
}

function takeByLengths(text: string, unit: Unit): Taken<Size> | null {
  const split = takeSide(text, unit);
  if (!split) return null;
  const between = BETWEEN.exec(split.rest);
  if (!between) return null;
  const second = takeLength(split.rest.slice(between[0].length), unit);
  if (!second) return null;
  const width = split.unit ? split.value : toInches(split.bare, second.unit ?? unit);
  const height =
    second.unit || !split.unit ? second.value : (second.value / INCHES[unit]) * INCHES[split.unit];
  return { value: { width, height }, rest: second.rest };
}

/** The first side stands before an x, where a length by itself would refuse to be read. */
function takeSide(text: string, unit: Unit) {
  const number = takeNumber(text);
  if (!number) return null;
  if (BETWEEN.test(number.rest)) return { value: 0, bare: number.value, unit: null, rest: number.rest };
  const length = takeLength(text, unit);
  return length && { ...length, bare: 0 };
}

/** Whether a bed's name is an infant's, where the safe-sleep caution belongs. */
export const isInfantBed = (bed: string | undefined): boolean =>
  BEDS.some((b) => b.name === bed && b.infant === true);

/**
 * Whether a size is the usual one of the bed that it was given by.
 *
 * @example
 * isUsual({ width: 90, height: 108, bed: 'queen' }) // true
 * isUsual({ width: 30, height: 40, bed: 'crib' }) // false
 */
export const isUsual = ({ width, height, bed }: Size): boolean =>
  BEDS.some((one) => one.name === bed && one.width === width && one.height === height);
