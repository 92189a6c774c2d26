import { takeCloth } from './cloth.ts';
import { countAtFront, takeClothOfColour } from './cloth-list.ts';
import type { Unit } from './length.ts';

/**
 * The piles that a text begins with, as in a sentence: what follows them is left. None where it begins with
 * something else.
 *
 * @example
 * takeClothList('3 fat quarters and 12 5 inch squares, what can I cut?', 'in').words // "3 fat quarters, 12 5 inch squares"
 * takeClothList('half a yard of blue, is it enough', 'in').rest // ", is it enough"
 * takeClothList('lots of time', 'in') // null
 */
export function takeClothList(text: string, unit: Unit): ClothListTaken | null {
  const found: string[] = [];
  let pieces = 0;
  let rest = text;
  for (;;) {
    const from = found.length === 0 ? rest : rest.replace(JOINED, '');
    const taken = takePile(from, unit);
    if (!taken) break;
    found.push(taken.words);
    pieces += taken.count;
    rest = from.slice(taken.words.length);
  }
  return found.length === 0 ? null : { words: found.join(', '), pieces, piles: found.length, rest };
}

/** Piles read off the front of a sentence. */
export interface ClothListTaken {
  /** As a list that can be read again. */
  readonly words: string;
  readonly piles: number;
  /** Of all the piles. */
  readonly pieces: number;
  readonly rest: string;
}

const JOINED =
  /^\s*(?:[,;+&]\s*)?(?:(?:and|plus|also)\s+)?(?:(?:i(?:'ve)?(?: also)? (?:have|got)|my|the|some)\s+)*/i;
/** A colour or a print after a piece: "of blue florals", or one word before the next piece or the end of the list. */
const WHICH =
  /^\s+(?:of (?:my )?[a-z]+(?: [a-z]+)?(?=\s*(?:[,;.?!+&]|$|\band\b|\bplus\b))|of (?:my )?[a-z]+|[a-z]+(?=\s*(?:[,;.?!+&-]|$|\band\b|\bplus\b)))/i;
const NO_COLOUR =
  /^\s+(?:of (?:them|it|each|these|those)|and|or|plus|each|please|pls|enough|left|here|only|too|though|wide)\b/i;

/** Sold by length too, but not to be cut into patches. */
const NO_CLOTH =
  /^(?: of)?\s+(?:sewing |cotton )?(?:thread|backing|binding|batting|wadding|ribbon|elastic|seams?)\b/i;

/** What it is kept for. */
const FOR_A_PART =
  /^\s+for (?:the |my )?(?:cent(?:re|er)s?|middles?|petals?|paths?|backgrounds?|round \d+|stars?)\b/i;

const BY_LENGTH = /y(?:ar)?ds?\b|met(?:re|er)|\d ?m\b|strip/i;

/** `2 x 1/2 yd` are two lengths, and no piece of two by a half. */
const LENGTHS = /^\d+\s*x\s+[\d ./]+\s*(?:yds?|yards?|m|met(?:re|er)s?)\b/i;

function takePile(text: string, unit: Unit): { readonly count: number; readonly words: string } | null {
  const whole = LENGTHS.test(text) ? null : takeCloth(text, unit);
  const counted = whole ? null : countAtFront(text);
  const taken = whole ?? (counted && takeClothOfColour(counted.rest, unit));
  if (!taken || taken.value.kind === 'paper' || NO_CLOTH.test(taken.rest)) return null;
  // A length of cloth is said in yards or metres, or it is "of" something: a patch's size is none.
  const length = text.slice(0, text.length - taken.rest.length);
  if (taken.value.kind === 'yardage' && !BY_LENGTH.test(length) && !/^ of\b/i.test(taken.rest)) return null;
  const which = NO_COLOUR.test(taken.rest) ? '' : (WHICH.exec(taken.rest)?.[0] ?? '');
  const kept = FOR_A_PART.exec(taken.rest.slice(which.length))?.[0] ?? '';
  const end = text.length - taken.rest.length + which.length + kept.length;
  return { count: counted?.count ?? 1, words: text.slice(0, end).trim() };
}
