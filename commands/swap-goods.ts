import type { Option } from '../src/chat/option.ts';
import { type Good, goodArea, goodWords, SWAP_SHAPES, tellingWords } from '../src/guild/swap-goods.ts';
import { PIECES } from '../src/measure/cloth.ts';
import type { Unit } from '../src/measure/length.ts';
import { ok, type Result, type Wrong, wrong } from '../src/measure/result.ts';
import { countInFigures, SMALL_NUMBER } from './small-numbers.ts';
import { takeGood } from './swap-good.ts';

/** So many pieces of one kind, with what was said of colour and print. */
export interface Goods {
  readonly count: number;
  readonly good: Good;
  readonly words: readonly string[];
  readonly typed: string;
  /** What it may mean as well: "6 1/2in hexagons" is six of half an inch, or one of six and a half. */
  readonly or?: Goods;
}

/** So many pieces on one line, lines in one ask, characters in one line. */
export const MOST_PIECES = 10_000;
export const MOST_LINES = 20;
export const LONGEST_LINE = 120;

/** What stands between two lines: the next begins with a number or an article. */
const BETWEEN = new RegExp(
  `(?:\\s*(?:;|\\n|,(?=\\s)|(?<!\\d),)\\s*|\\s+and\\s+)(?=[\\d¼½¾⅓⅔⅛⅜⅝⅞]|an?\\s|(?:half a dozen|${SMALL_NUMBER})\\s)`,
  'iu',
);

/** What is offered or wished for: one line, or several with a comma between. */
export function goods(
  summary: string,
  example: string,
  stops: readonly string[],
  /** It may be said of what alone, where another option says how many. */
  countless = false,
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
      const read = readGoods(text.slice(0, end), unit, countless);
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

const BUT_NOT = /(?<!-)\b(?:but )?(?:not?|except|without|never)\s+\p{L}+.*$/iu;

/** What she does not want of what she wishes for: it would be read as the very colour that she wants. */
export function notWished(lines: readonly Goods[]): Wrong | null {
  const said = lines.map(({ typed }) => BUT_NOT.exec(typed)?.[0]).find((words) => words !== undefined);
  return said === undefined ? null : wrong('goods-but-not', { got: said.trim(), instead: '' });
}

/** Reads every line of a text that was tidied. */
export function readGoods(text: string, unit: Unit, countless = false): Result<Goods[]> {
  const lines = linesOf(text);
  if (lines.length > MOST_LINES)
    return wrong('goods-many', { got: String(lines.length), most: String(MOST_LINES) });
  const read: Goods[] = [];
  for (const line of lines) {
    const one = readLine(line, unit, countless);
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

/** Several, and it must be said how many; so many yards are one length. */
const PLURAL = /\p{L}(?<!yard|met(?:er|re)|inche|feet)s(?![\p{L}])/iu;

/** From so few on, "6 1/2in hexagons" may be six of half an inch, or one of six and a half. */
const FEW = 12;

/** How many pieces are in one of these differs from shop to shop. */
const PACK = /(?:\b(?:an?|one|two|three|\d+)\s+)?(?:\p{L}+\s+)?(?:packs?|bundles?|rolls?|assortments?)\b/iu;
/** What the pieces came in, where they are counted themselves. */
const OUT_OF_PACK =
  /(?:\s*,)?\s+(?:in|from|out of|off) (?:an?|one|the|my)\s+(?:\p{L}+\s+)?(?:pack|bundle|roll|assortment)\b/giu;
const SHARES: readonly (readonly [RegExp, string])[] = [
  [/\b(fat[- ]quarters?) of an? (?:yard|met(?:er|re))\b/gi, '$1'],
  [/\bhalf (?:of )?an? (?=yard|met)/gi, '1/2 '],
  [/\b(?:an? )?quarter of an? (?=yard|met)/gi, '1/4 '],
  [/(\d\/\d+|[½¼¾⅓⅔⅛⅜⅝⅞]) (?:of )?an? (?=yard|met)/gi, '$1 '],
  [/\bthree[- ]quarters? (?:of )?(?:an? )?(?=yard|met)/gi, '3/4 '],
];
const lengthInFigures = (line: string): string =>
  SHARES.reduce((said, [words, figures]) => said.replace(words, figures), line);

function readLine(typed: string, unit: Unit, countless: boolean): Result<Goods> {
  if (typed.length > LONGEST_LINE)
    return wrong('text-too-long', { got: String(typed.length), most: String(LONGEST_LINE) });
  const named = /^\d/.test(countInFigures(typed)) ? typed.replace(OUT_OF_PACK, '') : typed;
  const packed = PACK.exec(named);
  if (packed) return wrong('goods-pack', { got: packed[0].trim(), instead: '' });
  const line = countInFigures(lengthInFigures(named));
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
  const sure = ({ count, bare, piece }: Found) =>
    piece?.ok && !bare && !countless && !ARTICLE.test(line) && PLURAL.test(piece.value.said)
      ? wrong('goods-how-many', { got: typed, instead: '' })
      : goodsOf(typed, count, piece);
  const [first, second] = found;
  if (!first?.piece) return unread(line, before);
  if (second?.piece?.ok && first.piece.ok && /^\d+\/\d/.test(first.rest)) {
    if (first.count === 1 || tooNarrow(first.piece.value.good)) return sure(second);
    if (first.count <= FEW && isUnsure(first.piece.value.good)) return eitherOf(first, second);
  }
  return sure(first);
}

const number = (text = ''): number => Number(text.replaceAll(',', ''));

/** Nobody cuts strips or squares of half an inch: "2 1/2in strips" are two and a half wide. */
const tooNarrow = (good: Good): boolean => (good.is === 'strip' || good.is === 'cloth') && good.width < 1;

const isUnsure = ({ is }: Good): boolean => is === 'patch' || is === 'yardage';

type Found = Reading & { readonly piece: Result<Piece> | null };

/** Both readings, each as it is typed without a doubt: the count behind, with an x. */
function eitherOf(...both: readonly [Found, Found]): Result<Goods> {
  const [one, or] = both.map(({ count, piece }) => {
    if (!piece?.ok) return piece ?? unread('', null);
    const words = tellingWords(piece.value.about);
    return goodsOf([...words, goodWords(piece.value.good, count), `x ${count}`].join(' '), count, piece);
  });
  return one?.ok && or?.ok ? ok({ ...one.value, or: or.value }) : (one ?? unread('', null));
}

function goodsOf(typed: string, count: number, piece: Result<Piece> | null): Result<Goods> {
  if (!piece) return unread(typed, null);
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
  /** The words that name it, and the words around it. */
  readonly said: string;
  readonly about: string;
}

/** The first piece that is named anywhere in the text; null where none is. */
function findPiece(text: string, bare: boolean, unit: Unit): Result<Piece> | null {
  for (const { index } of text.matchAll(/(?<![\p{L}\p{N}/.-])(?=[\p{L}\p{N}.])/gu)) {
    const taken = takeGood(text.slice(index), bare, unit);
    if (!taken) continue;
    if (!taken.ok) return taken;
    const { value, rest } = taken.value;
    const said = text.slice(index, text.length - rest.length).trim();
    return ok({ good: value, said, about: `${text.slice(0, index)} ${rest}` });
  }
  return null;
}
