import { COLOUR } from '../measure/colour-words.ts';
import type { Stretch } from './question-cloth.ts';

const NEXT = '(?:\\s*(?:,|\\/|&|\\+)\\s*(?:and |then )?|\\s+(?:and|then) |\\s+)';
const IN_TURN = new RegExp(`\\b${COLOUR}(?:${NEXT}${COLOUR})+\\b(?! (?:cent|middle|petal|path|backgr))`, 'i');
const EACH = new RegExp(COLOUR, 'gi');

/**
 * Colours that are named one after another, as rounds or rows take them in turn.
 *
 * @example
 * coloursIn('round and round red blue white').words // "red,blue,white"
 * coloursIn('rows of sky blue, red and white').words // "sky blue,red,white"
 * coloursIn('a red rosette') // null
 */
export function coloursIn(text: string): Stretch | null {
  const found = IN_TURN.exec(text);
  if (!found) return null;
  const names = (found[0].match(EACH) ?? []).map((name) => name.toLowerCase());
  return { at: found.index, length: found[0].length, words: names.join(',') };
}

const EACH_OF = /\b(\d[\d,]*)(?: (?:of|for|in))? each(?: (?:of|in))?\b/i;
const IN_SO_MANY =
  /\b(?:in|of|from|using) (\d{1,2}) (?:different )?(?:colou?rs|fabrics|prints|cloths)\b(?: (?:equally|evenly|each))?/i;

/** So many of each of several colours, as parts: "250 each of red, white and blue"; with the question that is left. */
export function equalParts(
  text: string,
  all: number | null,
): { readonly words: string; readonly rest: string } | null {
  const each = EACH_OF.exec(text);
  const colours = coloursIn(text);
  if (each && colours) {
    const words = colours.words.split(',').map((name) => `${each[1]} ${name}`);
    const rest = text.slice(0, colours.at) + text.slice(colours.at + colours.length);
    return { words: words.join(', '), rest: rest.replace(EACH_OF, ' ') };
  }
  const many = IN_SO_MANY.exec(text);
  const parts = Number(many?.[1] ?? 0);
  if (!many || all === null || parts < 2) return null;
  const words = Array.from({ length: parts }, (_, i) => `${Math.ceil(all / parts)} colour ${i + 1}`);
  return { words: words.join(', '), rest: text.replace(IN_SO_MANY, ' ') };
}

/** What a part is called, and the word that a plan knows it by. */
const PARTS: readonly (readonly [RegExp, string])[] = [
  [/^(?:cent|middle)/i, 'centre'],
  [/^petal/i, 'petal'],
  [/^path/i, 'path'],
  [/^bind/i, 'binding'],
  [/^back(?!g)/i, 'backing'],
  [/^border/i, 'border'],
  [/^star/i, 'star'],
];
const PILE = '(?:scrappy|scraps?|stash|leftovers?)';
const OF_A_PART = new RegExp(
  `\\b(${COLOUR}|${PILE}|florals?|prints?|solids?|batiks?)(?: ${COLOUR}| florals?| prints?| solids?)? (cent(?:re|er)s?|middles?|petals?|paths?|bindings?|backings?|borders?|stars?)\\b`,
  'gi',
);
/** One star has rounds, and no part that is called so. */
const SEVERAL_STARS = /\b\d+ stars\b|\bstars\b.*\b(?:between|set)\b|\bset\b.*\bstars\b/i;
const MY_PILE =
  /\b(?:(?:out of|from|with|using|use(?: up)?|in) )?(?:my |the |our )?(?:(?:old|own) )?(scraps?|scrappy|stash|leftovers?)\b(?: (?:fabrics?|cloth|bag|bin|box|pile))?/i;

/**
 * The cloths that a question names for the parts of a quilt, and scraps for all the others; with the question
 * that is left.
 *
 * @example
 * clothsIn('yellow centres, scrap petals and a white path').words // "centre yellow, petal scraps, path white"
 * clothsIn('a queen out of my scraps').words // "all scraps"
 * clothsIn('a queen in 1in hexies') // null
 */
export function clothsIn(text: string): { readonly words: string; readonly rest: string } | null {
  const said = new Map<string, string>();
  let rest = text.replace(OF_A_PART, (all, cloth: string, part: string) => {
    if (/^star/i.test(part) && !SEVERAL_STARS.test(text)) return all;
    const known = PARTS.find(([pattern]) => pattern.test(part))?.[1] ?? part;
    if (!said.has(known))
      said.set(known, new RegExp(`^${PILE}$`, 'i').test(cloth) ? 'scraps' : cloth.toLowerCase());
    return ' ';
  });
  const pile = MY_PILE.exec(rest);
  if (pile) {
    rest = rest.replace(MY_PILE, ' ');
    said.set('all', /stash/i.test(pile[1]!) ? 'stash' : 'scraps');
  }
  if (said.size === 0) return null;
  return { words: [...said].map(([part, cloth]) => `${part} ${cloth}`).join(', '), rest };
}
