import type { Swap, Swapper } from '../src/guild/swap-facts.ts';
import { goodOf, goodWords } from '../src/guild/swap-goods.ts';
import { areaOf } from '../src/guild/swap-plan.ts';
import { INCHES } from '../src/measure/length.ts';
import { grouped } from '../src/measure/ruler.ts';
import type { Speech } from '../src/measure/speech.ts';

/**
 * So many pieces of a good: "6 fat quarters", "20 × 5-inch squares".
 */
export function piecesWords(good: string, count: number, say: Speech): string {
  const words = good === '' ? (count === 1 ? 'piece' : 'pieces') : goodWords(goodOf(good), count, say);
  if (count === 1 && good.startsWith('yardage') && /^\d/.test(words)) return words;
  return `${grouped(count)} ${/^\d/.test(words) ? '× ' : ''}${words}`;
}

/** An area in whole square inches or centimetres, without its unit: the note of a table says it. */
export const areaFigure = (inches: number, { reading }: Speech): string =>
  grouped(reading === 'metric' ? inches / INCHES.cm ** 2 : inches);

export const areaUnit = ({ reading }: Speech): string =>
  reading === 'metric' ? 'square cm' : 'square inches';

export const areaWords = (inches: number, say: Speech): string =>
  `${areaFigure(inches, say)} ${say.reading === 'metric' ? 'sq cm' : 'sq in'}`;

/** The area of so many pieces, as it is said; nothing where it is not known what they are. */
export const areaOfWords = (good: string, count: number, say: Speech): string =>
  good === '' ? '' : areaFigure(areaOf(good, count), say);

/** Who somebody is called in a swap; she may have been forgotten. */
export function namesIn(people: readonly Swapper[]): (member: string) => string {
  const names = new Map(people.map(({ member, name }) => [member, name]));
  return (member) => names.get(member) ?? 'somebody who left';
}

/** A part of one as it is said: `percentWords(0.2)` is "20 %". */
export const percentWords = (part: number): string => `${Number((part * 100).toFixed(1))} %`;

/** What each gives in an even swap. */
export const evenWords = ({ each, good }: Swap, say: Speech): string =>
  `Each gives ${piecesWords(good ?? '', each ?? 0, say)} to every other.`;
