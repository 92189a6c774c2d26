import { optionWords } from './question-words.ts';

/** What else a question asks for: the command and its form, what it is called, and the words of its options. */
export interface Beside {
  readonly label: string;
  readonly ask: string;
  readonly words: string;
}

const FINISHINGS = [
  { label: 'Backing', ask: 'finish backing', named: /\bbacking\b/i },
  { label: 'Binding', ask: 'finish binding', named: /\bbinding\b/i },
  { label: 'Batting', ask: 'finish batting', named: /\b(?:batting|wadding)\b/i },
  { label: 'Border', ask: 'finish border', named: /\bborders?\b/i },
] as const;
const LEFT_OUT =
  /\b(?:no|not|without|except|after|before) (?:the |any )?(?:backing|binding|batting|wadding|borders?)\b/gi;

/**
 * Of several things that a quilt is finished with, those that the answer is not about.
 *
 * @example
 * besidesIn('finish backing', 'backing and binding for 50x60').map(({ label }) => label) // ["Binding"]
 * besidesIn('finish backing', 'backing for 50x60, no binding') // []
 * besidesIn('cut', 'cut binding') // []
 */
export function besidesIn(sign: string, question: string): Beside[] {
  if (!FINISHINGS.some(({ ask }) => ask === sign)) return [];
  const asked = question.replace(LEFT_OUT, ' ');
  return FINISHINGS.filter(({ ask, named }) => ask !== sign && named.test(asked)).map(({ label, ask }) => ({
    label,
    ask,
    words: optionWords(ask, question),
  }));
}
