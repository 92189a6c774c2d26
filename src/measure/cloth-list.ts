import { type Cloth, takeCloth } from './cloth.ts';
import type { Unit } from './length.ts';
import { COUNT_WORDS, type Taken, takeNumber } from './number.ts';
import { ok, type Result, wrong } from './result.ts';
import { tidy } from './tidy.ts';

/** So many pieces of cloth that are alike, and what they are kept for, if that was said. */
export interface ClothPile {
  readonly count: number;
  readonly cloth: Cloth;
  /** As it was written, without the number: `fat quarters`. */
  readonly words: string;
  /** "for the path": lower case, without the article; empty where nothing was said. */
  readonly role: string;
}

/** So many patches that a part of a layout needs. */
export interface RoleCount {
  readonly count: number;
  readonly role: string;
  /** The cloth that the part is to be of, where one was named: `yellow`. */
  readonly cloth?: string;
}

/** The most pieces of one kind, and patches for one part. */
const MOST = 1_000_000;

/** A comma within a number, as in 1,024, parts nothing. */
const BETWEEN = /\s*(?:(?<!\d),|,(?!\d{3}(?!\d))|[;+&]|\band\b)\s*/i;
const QUOTES = /^["'\s]+|["'\s]+$/g;
const WORD_NUMBERS = COUNT_WORDS.slice(0, 11);
const TIMES = /^\s*(?:x|times|pieces? of|lots? of)\s+/i;
const LENGTHS = /^(\d+)\s*x\s+([\d ./]+\s*(?:yds?|yards?|m|met(?:re|er)s?)\b.*)$/i;
const FOR = /\s*(?:\bfor\b|:|=|\bas\b)\s*(?:the\b\s*)?(.*)$/i;

/**
 * Reads a list of cloth in free words, as a member tells what she has. Pieces are parted by commas, "and" or
 * plus signs; each may say what it is for. Says `cloth-unread` with the piece that could not be read, and
 * `cloth-list-empty` when there is none.
 *
 * @example
 * readClothList('3 fat quarters, 12 5in squares, 1 1/2yd', 'in').value.map(({ count, cloth }) => [count, cloth.length]) // [[3,21],[12,5],[1,54]]
 * readClothList('two fat eighths and a 10in square for the path', 'in').value[1].role // "path"
 * readClothList('3 fish', 'in').problem // {"code":"cloth-unread","got":"3 fish"}
 */
export function readClothList(text: string, unit: Unit): Result<ClothPile[]> {
  const piles: ClothPile[] = [];
  for (const part of partsOf(text)) {
    const pile = pileFrom(part, unit);
    if (!pile) return wrong('cloth-unread', { got: part });
    piles.push(pile);
  }
  return piles.length > 0 ? ok(piles) : wrong('cloth-list-empty');
}

/**
 * Reads how many patches each part of a layout needs: `7 centres, 42 petals, path 24`.
 *
 * @example
 * readRoleCounts('7 centres, 42 petals and path: 24').value // [{"count":7,"role":"centres"},{"count":42,"role":"petals"},{"count":24,"role":"path"}]
 * readRoleCounts('centre 19 yellow').value // [{"count":19,"role":"centre","cloth":"yellow"}]
 * readRoleCounts('some petals').problem // {"code":"role-unread","got":"some petals"}
 */
export function readRoleCounts(text: string): Result<RoleCount[]> {
  const needs: RoleCount[] = [];
  for (const part of partsOf(text)) {
    const need = needFrom(part);
    if (!need) return wrong('role-unread', { got: part });
    needs.push(need);
  }
  return needs.length > 0 ? ok(needs) : wrong('role-list-empty');
}

const partsOf = (text: string): string[] =>
  tidy(text)
    .replace(/^["']+|["']+$/g, '')
    .split(BETWEEN)
    .map((part) => part.trim())
    .filter((part) => part !== '');

function pileFrom(part: string, unit: Unit): ClothPile | null {
  // `2 x 1/2 yd` are two lengths, but `18 x 21 in` is a piece.
  const times = LENGTHS.exec(part);
  const each = times && takeCloth(times[2] ?? '', unit);
  if (times && each) return pile(Number(times[1]), each.value, times[2] ?? '', each.rest);
  // A piece by its own measures first: `1 1/2yd` is one length, `12 5in squares` are twelve.
  const whole = takeCloth(part, unit);
  if (whole) return pile(1, whole.value, part, whole.rest);
  const { count, rest } = countAtFront(part) ?? { count: 1, rest: part };
  const taken = takeClothOfColour(rest, unit);
  return taken && pile(count, taken.value, rest, taken.rest);
}

/** A piece with its colour or print before it: `blue fat quarters`, `old red charms`. */
export function takeClothOfColour(text: string, unit: Unit): Taken<Cloth> | null {
  const plain = takeCloth(text, unit);
  if (plain) return plain;
  const first = /^\p{L}[\p{L}'-]*\s+/u.exec(text)?.[0] ?? '';
  const second = /^\p{L}[\p{L}'-]*\s+/u.exec(text.slice(first.length))?.[0] ?? '';
  for (const before of [first, first + second]) {
    const taken = before === '' ? null : takeCloth(text.slice(before.length), unit);
    if (taken) return taken;
  }
  return null;
}

function pile(count: number, cloth: Cloth, words: string, rest: string): ClothPile | null {
  const role = FOR.exec(rest)?.[1]?.trim().toLowerCase() ?? '';
  const between = rest.replace(FOR, '').replace(QUOTES, '');
  // A colour may follow (`of blue`, `florals`), but no further number.
  if (/\d/.test(between)) return null;
  return { count, cloth, words: words.replace(FOR, '').trim(), role };
}

/** A whole number at the front of a text, in figures or in a word, and what is counted. */
export function countAtFront(text: string): { count: number; rest: string } | null {
  const word = /^([a-z]+)\s+/i.exec(text);
  const said = word ? spokenNumber(word[1] ?? '') : null;
  if (word && said !== null) return { count: said, rest: text.slice(word[0].length).replace(TIMES, '') };
  const number = takeNumber(text);
  if (!number || !Number.isInteger(number.value) || number.value < 1 || number.value > MOST) return null;
  return { count: number.value, rest: number.rest.trim().replace(TIMES, '').replace(/^x\s*/i, '') };
}

function spokenNumber(word: string): number | null {
  const lower = word.toLowerCase();
  if (lower === 'a' || lower === 'an') return 1;
  const found = WORD_NUMBERS.indexOf(lower);
  return found > 0 ? found : null;
}

/** `19 centres`, `19 yellow centres` as it stands; `centre 19`, `centre: 19 yellow` with the cloth after it. */
function needFrom(part: string): RoleCount | null {
  const counted = countAtFront(part);
  if (counted) {
    const role = named(counted.rest);
    return role === '' ? null : { count: counted.count, role };
  }
  const after = AFTER.exec(part);
  const count = Number(after?.[2]?.replaceAll(',', ''));
  const role = named(after?.[1] ?? '');
  const cloth = after?.[3]?.trim() ?? '';
  if (role === '' || !Number.isInteger(count) || count < 1 || count > MOST) return null;
  return { count, role, ...(cloth === '' ? {} : { cloth }) };
}

const AFTER = /^(\p{L}[^:=]*?)\s*[:= ]\s*(\d[\d,]*)(?:\s+(?:of |in |from )?(\p{L}[\p{L}\s'’-]*))?$/iu;

const named = (words: string): string =>
  words
    .replace(/^(?:for\s+)?(?:the\s+)?/i, '')
    .replace(/[\s:=]+$/, '')
    .trim();
