import type { ShapeName } from '../src/calculator/shapes/shape.ts';
import type { Option } from '../src/chat/option.ts';
import { choice, LONGEST, SHORTEST, writeLength } from '../src/chat/option-kinds.ts';
import { type Good, goodArea, goodWords, SWAP_SHAPES, tellingWords } from '../src/guild/swap-goods.ts';
import { PIECES } from '../src/measure/cloth.ts';
import { INCHES, takeLength, type Unit } from '../src/measure/length.ts';
import type { Taken } from '../src/measure/number.ts';
import { ok, type Result, wrong } from '../src/measure/result.ts';
import { takeSize } from '../src/measure/size.ts';
import { shapeChoices } from './patch.ts';

/** So many pieces of one kind, with what was said of colour and print. */
export interface Goods {
  readonly count: number;
  readonly good: Good;
  readonly words: readonly string[];
  readonly typed: string;
}

/** So many pieces on one line, lines in one ask, characters in one line. */
export const MOST_PIECES = 10_000;
export const MOST_LINES = 20;
export const LONGEST_LINE = 120;

/** What stands between two lines: the next begins with a number or an article. */
const BETWEEN = /(?:\s*(?:;|\n|,(?=\s)|(?<!\d),)\s*|\s+and\s+)(?=[\d¼½¾⅓⅔⅛⅜⅝⅞]|an?\s)/iu;

/** What is offered or wished for: one line, or several with a comma between. */
export function goods(
  summary: string,
  example: string,
  stops: readonly string[],
): Option<readonly Goods[], false> {
  const stop = new RegExp(`\\s(?:${stops.join('|')})\\s*[:=]`, 'i');
  return {
    kind: 'so many of something',
    summary,
    example,
    bounds: '6 fat quarters florals; 60 1in hexagons blue; 2 1/2in strips x 20',
    shape: { as: 'words', longest: 600 },
    known: KNOWN,
    greedy: true,
    take(text, { unit, alone }) {
      const end = (alone ? null : stop.exec(text))?.index ?? text.length;
      const read = readGoods(text.slice(0, end), unit);
      return read.ok ? ok({ value: read.value, rest: text.slice(end) }) : read;
    },
    write: (lines) => lines.map(({ typed }) => typed).join(', '),
  };
}

/** What can be swapped, as it is called, for a mistyped word. */
const KNOWN: readonly string[] = [
  ...PIECES.filter(({ kind }) => kind === 'piece').map(({ title }) => `${title}s`),
  ...SWAP_SHAPES.map((shape) => `${shape}s`),
  'squares',
  'strips',
  'yards',
];

/** Reads every line of a text that was tidied. */
export function readGoods(text: string, unit: Unit): Result<Goods[]> {
  const lines = linesOf(text);
  if (lines.length > MOST_LINES)
    return wrong('goods-many', { got: String(lines.length), most: String(MOST_LINES) });
  const read: Goods[] = [];
  for (const line of lines) {
    const one = readLine(line, unit);
    if (!one.ok) return one;
    read.push(one.value);
  }
  return ok(read);
}

/** The lines of a text, tidied or as it was typed. */
export const linesOf = (text: string): string[] =>
  text
    .split(BETWEEN)
    .map((line) => line.trim())
    .filter((line) => line !== '');

interface Reading {
  readonly count: number;
  readonly rest: string;
  /** A bare number may be a size only where another said how many. */
  readonly bare: boolean;
}

const TIMES_AFTER = /^(.+?)[\s,]*(?:x|\*|times)\s*(\d{1,3}(?:,\d{3})+|\d{1,6})$/i;
const COUNT_BEFORE = /^(\d{1,3}(?:,\d{3})+|\d{1,6})\s*(?:x\s*|of\s+|\s)(?=\S)/i;
const ARTICLE = /^(?:an?|one)\s+/i;

/** From so few on, "6 1/2in hexagons" may be six of half an inch, or one of six and a half. */
const FEW = 12;

function readLine(line: string, unit: Unit): Result<Goods> {
  if (line.length > LONGEST_LINE)
    return wrong('text-too-long', { got: String(line.length), most: String(LONGEST_LINE) });
  const after = TIMES_AFTER.exec(line);
  const before = COUNT_BEFORE.exec(line);
  const readings: Reading[] = [
    ...(after ? [{ count: number(after[2]), rest: after[1] ?? '', bare: true }] : []),
    ...(before ? [{ count: number(before[1]), rest: line.slice(before[0].length), bare: true }] : []),
    { count: 1, rest: line.replace(ARTICLE, ''), bare: false },
  ];
  const found = readings
    .map((reading) => ({ ...reading, piece: findPiece(reading.rest, reading.bare, unit) }))
    .filter(({ piece }) => piece !== null);
  const [first, second] = found;
  if (!first?.piece) return unread(line, before);
  if (second?.piece?.ok && first.piece.ok && /^\d+\/\d/.test(first.rest)) {
    if (first.count === 1 || tooNarrow(first.piece.value.good))
      return goodsOf(line, second.count, second.piece);
    if (first.count <= FEW && isUnsure(first.piece.value.good)) return eitherOf(first, second);
  }
  return goodsOf(line, first.count, first.piece);
}

const number = (text = ''): number => Number(text.replaceAll(',', ''));

/** Nobody cuts strips or squares of half an inch: "2 1/2in strips" are two and a half wide. */
const tooNarrow = (good: Good): boolean => (good.is === 'strip' || good.is === 'cloth') && good.width < 1;

const isUnsure = ({ is }: Good): boolean => is === 'patch' || is === 'yardage';

type Found = { readonly count: number; readonly piece: Result<Piece> | null };

function eitherOf(one: Found, other: Found): Result<never> {
  const words = ({ count, piece }: Found) =>
    piece?.ok ? `${goodWords(piece.value.good, count)} x ${count}` : '';
  return wrong('goods-either', { one: words(one), other: words(other) });
}

function goodsOf(typed: string, count: number, piece: Result<Piece>): Result<Goods> {
  if (!piece.ok) return piece;
  if (count < 1 || count > MOST_PIECES)
    return wrong('goods-count', { got: String(count), most: String(MOST_PIECES) });
  const { good, about } = piece.value;
  if (goodArea(good) <= 0) return wrong('goods-unread', { got: typed, known: KNOWN });
  return ok({ count, good, words: tellingWords(about), typed });
}

function unread(line: string, before: RegExpExecArray | null): Result<never> {
  const rest = before ? line.slice(before[0].length) : line;
  return wrong('goods-unread', { got: rest, known: KNOWN, ...(before ? { count: before[1] } : {}) });
}

interface Piece {
  readonly good: Good;
  /** The words around it. */
  readonly about: string;
}

/** The first piece that is named anywhere in the text; null where none is. */
function findPiece(text: string, bare: boolean, unit: Unit): Result<Piece> | null {
  for (const { index } of text.matchAll(/(?<![\p{L}\p{N}/.-])(?=[\p{L}\p{N}.])/gu)) {
    const taken = takeGood(text.slice(index), bare, unit);
    if (!taken) continue;
    if (!taken.ok) return taken;
    const { value, rest } = taken.value;
    return ok({ good: value, about: `${text.slice(0, index)} ${rest}` });
  }
  return null;
}

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

function takeGood(text: string, bare: boolean, unit: Unit): Result<Taken<Good>> | null {
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
