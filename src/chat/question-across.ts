import { takeLength } from '../measure/length.ts';
import type { Doubt } from './doubt.ts';
import { NUMBER, UNIT } from './question-patterns.ts';
import { optionWords } from './question-words.ts';

const HEX = '(?<!(?:half|long|elongated|stretched)[- ])hex(?:agons?|ies?|y|es)?';
const ACROSS = new RegExp(
  `\\b${HEX}(?: (?:that|which|are|is|measur\\w*|of|at|about))* (${NUMBER}${UNIT}) (?:across|wide)\\b|\\b(${NUMBER}${UNIT})[- ]*(?:${HEX} across|(?:across|wide) ${HEX})\\b`,
  'i',
);
const MEASURED = /\bacross (?:the )?(?:flats|points|corners)\b/i;
const OF_HEXAGONS = /^(?:cut|count (?:field|rosette|garden)|yield|yardage|time|template)$/;
const OF_A_PLAN = /^(?:plan make|kit)$/;

/** Wider than this is cloth. Inches. */
const WIDEST = 12;

/** "2 inches across": a hexagon is wider from point to point than from flat to flat. */
export function acrossWhich(sign: string, question: string): Doubt | null {
  const found = ACROSS.exec(question);
  if (!found || MEASURED.test(question) || !(OF_HEXAGONS.test(sign) || OF_A_PLAN.test(sign))) return null;
  const size = found[1] ?? found[2] ?? '';
  const length = takeLength(size, 'in')?.value;
  if (length === undefined || length > WIDEST) return null;
  const rest = optionWords(sign, question.replace(found[0], 'hexagons '));
  const says = (measure: string) =>
    OF_A_PLAN.test(sign) ? `size:${size} measure:${measure}` : `${measure}:${size}`;
  return {
    ask: sign,
    title: `Hexagons ${size} across`,
    asks: `Is ${size} across flat to flat, or point to point?`,
    ways: [
      { label: 'Flat to flat', words: `${says('flats')}, ${rest}` },
      { label: 'Point to point', words: `${says('corners')}, ${rest}` },
    ],
  };
}
