import { MUCH, TIME } from './question-signs.ts';

/** What was asked of a whole plan: its cloth, its hours, or how many patches; as the line of it that tells so. */
export const toldOfPlan = (question: string): RegExp =>
  MUCH.test(question) ? /^(?:scraps|cloth in all)\b/ : TIME.test(question) ? /\bof sewing\b/ : /\d/;
