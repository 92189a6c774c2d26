import { takeCloth } from '../measure/cloth.ts';
import { isMetric } from './metric-words.ts';
import { clothIn, coloursApart, hadIn, partsIn, type Stretch } from './question-cloth.ts';
import { clothsIn, coloursIn, equalParts } from './question-colours.ts';
import { countIn } from './question-patterns.ts';
import { TURNS } from './question-turns.ts';

const IN_COLOURS = /^count (?:field|rosette|garden|stars?|diamonds)$/;
/** Blocks have three shades: so many colours are those. */
const SHADES = 3;
const OF_CLOTHS = /^(?:plan make|kit)$/;

/**
 * The words of a question for the reader of options: what it says without naming it is named, in front; what
 * takes all the words up to the next name comes last.
 *
 * @example
 * optionWords('time', 'how long does a 2 round rosette take') // "rosette:2, how long does a rosette take"
 * optionWords('yardage', '240 hexies at 40 wide') // "width:40, pieces:240, hexies at"
 * optionWords('yield', '1in hexies from a fat quarter') // "cloth:fat quarter, 1in hexies"
 * optionWords('yield', '1in hexies from 3 fat quarters') // "1in hexies have:3 fat quarters"
 */
export function optionWords(of: string, text: string): string {
  const reading = new Reading(text);
  if (of === 'yield') cutFrom(reading, text);
  if (of === 'yardage') boughtFor(reading, text);
  // What one has is no part of a whole plan.
  if (of === 'plan make') reading.drop(hadIn(reading.rest));
  if (IN_COLOURS.test(of)) reading.first('colours', coloursIn(reading.rest));
  if (of === 'count blocks') {
    const shades = coloursIn(reading.rest);
    if (shades?.words.split(',').length === SHADES) reading.first('colours', shades);
  }
  if (OF_CLOTHS.test(of)) {
    const cloths = clothsIn(reading.rest);
    if (cloths) reading.replace(cloths.rest, `cloths:${cloths.words}`);
  }
  if (of === 'plan make') reading.last('name', namedIn(reading.rest));
  for (const turn of TURNS) {
    if (!turn.of.test(of) || turn.unless?.test(text) || turn.where?.test(text) === false) continue;
    const found = turn.words.exec(reading.rest);
    if (found) reading.takeOut(found.index, found[0].length, turn.says?.(found, text) ?? '');
  }
  return reading.words();
}

const NAMED = /\b(?:called|named) ([\p{L}\d][\p{L}\d' -]{0,58}?)\s*(?=[:,.;]|$)/iu;

/** The name that a plan is given. */
function namedIn(text: string): Stretch | null {
  const found = NAMED.exec(text);
  return found && { at: found.index, length: found[0].length, words: found[1] ?? '' };
}

/** "A fat quarter" is one, but "a yard" is a length. */
const AN = /^(?:an?|one) (?=fat|fq|charm|strip|(?:5|10)\b)/i;

/** One piece is cut from as it is; of several, each gives so many. */
function cutFrom(reading: Reading, text: string): void {
  const had = hadIn(text);
  const one = had?.pieces === 1 ? { ...had, words: had.words.replace(AN, '') } : null;
  if (had && !(one && takeCloth(one.words, 'in'))) reading.last('have', had);
  else reading.first('cloth', one ?? clothIn(text, isMetric(text) ? 'a4' : 'letter'));
}

/** What is needed, by parts where they are told, and what there is of it. */
function boughtFor(reading: Reading, text: string): void {
  const had = hadIn(reading.rest);
  const cloths = had && clothsIn(text);
  reading.last('have', had && cloths ? { ...had, words: forTheirParts(had.words, cloths.words) } : had);
  const count = countIn.exec(reading.rest);
  const equal = equalParts(reading.rest, count ? Number(count[1] ?? count[2]) : null);
  if (equal) reading.replace(equal.rest.replace(countIn, ' '), `need:${equal.words}`);
  else {
    const apart = coloursApart(reading.rest);
    const parts = apart ?? partsIn(reading.rest);
    if (apart) reading.replace(apart.rest, `need:${apart.words}`);
    else reading.last('need', partsIn(reading.rest));
    if (parts) reading.drop(sumIn(reading.rest, parts.words));
  }
}

/** "60 hexies, 30 red and 30 blue": how many there are in all is told twice. */
function sumIn(rest: string, parts: string): Stretch | null {
  const count = countIn.exec(rest);
  const sum = (parts.match(/\d+/g) ?? []).reduce((all, one) => all + Number(one), 0);
  return count && Number(count[1] ?? count[2]) === sum
    ? { at: count.index, length: count[0].length, words: count[0] }
    : null;
}

/** "1/2 yd white" is for the path, where the path is to be white. */
function forTheirParts(piles: string, cloths: string): string {
  const parts = cloths
    .split(', ')
    .map((one) => one.split(/ (.*)/))
    .filter(([part]) => part !== 'all');
  return piles
    .split(', ')
    .map((pile) => {
      const meant = parts.filter(([, cloth = '']) => new RegExp(`\\b${cloth}s?$`, 'i').test(pile));
      return meant.length === 1 ? `${pile} for ${meant[0]?.[0]}` : pile;
    })
    .join(', ');
}

/** A question while what it says is taken out of it. */
class Reading {
  rest: string;
  readonly #said: string[] = [];
  readonly #last: string[] = [];

  constructor(text: string) {
    this.rest = text;
  }

  /** An option that was not said yet; of one that was, the words stay where they are. */
  takeOut(at: number, length: number, says: string): void {
    if (says !== '' && this.#has(says)) return;
    this.rest = `${this.rest.slice(0, at)} ${this.rest.slice(at + length)}`.replace(/ {2,}/g, ' ').trim();
    if (says !== '') this.#said.push(says);
  }

  first(option: string, found: Stretch | null): void {
    if (found) this.takeOut(found.at, found.length, `${option}:${found.words}`);
  }

  last(option: string, found: Stretch | null): void {
    if (!found) return;
    this.takeOut(found.at, found.length, '');
    this.#last.push(`${option}:${found.words}`);
  }

  drop(found: Stretch | null): void {
    if (found) this.takeOut(found.at, found.length, '');
  }

  replace(rest: string, last: string): void {
    this.rest = rest.replace(/ {2,}/g, ' ').trim();
    this.#last.push(last);
  }

  words(): string {
    return [[...this.#said, this.rest].join(', '), ...this.#last]
      .join(', ')
      .replace(/, (?=(?:need|have|cloths|name):)/g, ' ');
  }

  #has(says: string): boolean {
    const [name] = says.split(':');
    return this.#said.some((one) => one.split(':')[0] === name);
  }
}
