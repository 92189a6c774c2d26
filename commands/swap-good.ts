import type { ShapeName } from '../src/calculator/shapes/shape.ts';
import { choice, LONGEST, SHORTEST, writeLength } from '../src/chat/option-kinds.ts';
import { type Good, SWAP_SHAPES } from '../src/guild/swap-goods.ts';
import { PIECES } from '../src/measure/cloth.ts';
import { INCHES, takeLength, type Unit } from '../src/measure/length.ts';
import type { Taken } from '../src/measure/number.ts';
import { ok, type Result, wrong } from '../src/measure/result.ts';
import { takeSize } from '../src/measure/size.ts';
import { shapeChoices } from './patch-options.ts';

type Take = (text: string, bare: boolean, unit: Unit) => Result<Taken<Good>> | null;

const shapes = choice(
  '',
  shapeChoices.filter(({ name }) => SWAP_SHAPES.includes(name)),
);

const takeShape = (text: string, unit: Unit): Taken<ShapeName> | null => {
  const taken = shapes.take(text, { unit, today: '' });
  return taken?.ok ? (taken.value as Taken<ShapeName>) : null;
};

/** `2in strips`, `6in squares`, `1in hexagons`, `3 yd`. */
const sizedFirst: Take = (text, bare, unit) => {
  const length = takeLength(text, unit);
  if (!length) return null;
  if (length.unit && ['yd', 'm'].includes(length.unit)) return off(length.value, length.rest);
  if (!length.unit && !bare) return null;
  const rest = length.rest.replace(/^[\s-]+/, '');
  const strip = /^(?:wide\s+)?strips?\b/i.exec(rest);
  if (strip) return good({ is: 'strip', width: length.value }, length.value, rest.slice(strip[0].length));
  const square = /^squares?\b/i.exec(rest);
  if (square)
    return good(
      { is: 'cloth', width: length.value, length: length.value },
      length.value,
      rest.slice(square[0].length),
    );
  const shape = takeShape(rest, unit);
  return shape && good({ is: 'patch', shape: shape.value, edge: length.value }, length.value, shape.rest);
};

/** `18x21in pieces`. */
const sizedBothWays: Take = (text, _, unit) => {
  const size = takeSize(text, unit);
  if (!size || size.value.bed) return null;
  const { width, height } = size.value;
  const rest = size.rest.replace(/^\s*(?:pieces?|cuts?|rectangles?|scraps?)\b/i, '');
  return good({ is: 'cloth', width, length: height }, Math.min(width, height), rest, Math.max(width, height));
};

const OFF_THE_BOLT: readonly (readonly [RegExp, number])[] = [
  [/^half[- ]yards?\b(?: cuts?)?/i, 18],
  [/^quarter[- ]yards?\b(?: cuts?)?/i, 9],
  [/^yards?\b/i, 36],
  [/^half[- ]met(?:re|er)s?\b/i, 500 * INCHES.mm],
  [/^met(?:re|er)s?\b/i, 1000 * INCHES.mm],
];

/** `yards`, after how many. */
const offTheBolt: Take = (text) => {
  for (const [words, inches] of OFF_THE_BOLT) {
    const found = words.exec(text);
    if (found) return off(inches, text.slice(found[0].length));
  }
  return null;
};

/** `fat quarters`, `charms`; `strips 2in`. */
const named: Take = (text, _, unit) => {
  for (const { kind, words, width, length } of PIECES) {
    const found = kind === 'piece' ? words.exec(text) : null;
    if (!found) continue;
    const rest = text.slice(found[0].length);
    if (width !== null) return good({ is: 'cloth', width, length }, length, rest);
    const own = takeLength(rest.trimStart(), unit);
    return own?.unit
      ? good({ is: 'strip', width: own.value }, own.value, own.rest)
      : good({ is: 'strip', width: length }, length, rest);
  }
  return null;
};

/** `hexagons 1in`. */
const shapedFirst: Take = (text, _, unit) => {
  const shape = takeShape(text, unit);
  if (!shape) return null;
  const length = takeLength(shape.rest.replace(/^\s*(?:of|size)?\s*[:=]?\s*/i, ''), unit);
  if (!length) return wrong('goods-size', { shape: shape.value });
  return good({ is: 'patch', shape: shape.value, edge: length.value }, length.value, length.rest);
};

const TAKES: readonly Take[] = [sizedBothWays, sizedFirst, offTheBolt, named, shapedFirst];

/** A good read off the front of a text, one of them; null where none is named there. */
export function takeGood(text: string, bare: boolean, unit: Unit): Result<Taken<Good>> | null {
  for (const take of TAKES) {
    const taken = take(text, bare, unit);
    if (taken) return taken;
  }
  return null;
}

/** The most cloth in one piece, inches. */
const LONGEST_CLOTH = 3600;

const off = (inches: number, rest: string): Result<Taken<Good>> =>
  inches > LONGEST_CLOTH
    ? tooLarge(inches, LONGEST_CLOTH)
    : good({ is: 'yardage', length: inches }, SHORTEST, rest.replace(/^\s*(?:cuts?|lengths?|of)\b/i, ''));

function good(value: Good, least: number, rest: string, most = least): Result<Taken<Good>> {
  if (least < SHORTEST)
    return wrong('too-small', {
      got: writeLength(least),
      least: writeLength(SHORTEST),
      most: writeLength(LONGEST),
    });
  return most > LONGEST ? tooLarge(most, LONGEST) : ok({ value, rest });
}

const tooLarge = (got: number, most: number) =>
  wrong('too-large', {
    got: got < 1e7 ? writeLength(got) : 'that',
    least: writeLength(SHORTEST),
    most: writeLength(most),
  });
