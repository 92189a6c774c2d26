import { MUCH, TIME } from './question-signs.ts';

const PAPERS = /\bpapers (?:for|to make)\b/i;

/** What was asked of a whole plan: its cloth, its hours, its papers or how many patches; as the line that tells so. */
export function toldOfPlan(question: string): RegExp {
  if (MUCH.test(question)) return /^(?:scraps|cloth in all)\b/;
  if (TIME.test(question)) return /\bof sewing\b/;
  return PAPERS.test(question) ? /^papers\b/ : /\d/;
}
