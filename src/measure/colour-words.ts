/** Colours by their plain names, each with what else it is called. Two words may be a name. */
export const COLOUR_WORDS = {
  red: ['crimson', 'scarlet', 'ruby'],
  maroon: ['burgundy', 'wine', 'claret', 'dark red', 'deep red'],
  pink: ['rose', 'blush'],
  orange: ['rust', 'terracotta'],
  yellow: ['lemon'],
  gold: ['golden', 'mustard', 'ochre', 'amber'],
  olive: ['khaki', 'moss', 'sage'],
  green: ['emerald'],
  lime: ['light green', 'pale green'],
  teal: ['peacock'],
  turquoise: ['aqua', 'cyan', 'mint'],
  blue: [],
  sky: ['sky blue', 'light blue', 'pale blue', 'baby blue', 'powder blue'],
  navy: ['navy blue', 'dark blue', 'indigo', 'midnight'],
  purple: ['violet', 'plum', 'aubergine'],
  lavender: ['lilac', 'mauve', 'light purple', 'pale purple'],
  brown: ['chocolate'],
  tan: ['beige', 'fawn', 'taupe', 'sand', 'light brown'],
  cream: ['ivory', 'ecru', 'natural', 'off white'],
  white: ['snow'],
  grey: ['gray', 'silver'],
  black: ['charcoal'],
} as const;

export type Colour = keyof typeof COLOUR_WORDS;

const BY_WORDS: ReadonlyMap<string, Colour> = new Map(
  (Object.entries(COLOUR_WORDS) as [Colour, readonly string[]][]).flatMap(([plain, others]) =>
    [plain, ...others].map((words) => [words, plain] as const),
  ),
);

/** Every name, the longest first, as one pattern to build others from; a hyphen may stand for a blank. */
export const COLOUR = `(?:${[...BY_WORDS.keys()]
  .sort((a, b) => b.length - a.length)
  .join('|')
  .replaceAll(' ', '[- ]')})`;

/**
 * The colour that a cloth's name says: by its last words, or by the only plain colour in it; null where it says
 * none, or several.
 *
 * @example
 * colourIn('Sky Blue') // "sky"
 * colourIn('my red florals') // "red"
 * colourIn('wine bottles') // null
 * colourIn('red and white stripes') // null
 */
export function colourIn(cloth: string): Colour | null {
  const words: readonly string[] = cloth.toLowerCase().match(/\p{L}+/gu) ?? [];
  const last = BY_WORDS.get(words.slice(-2).join(' ')) ?? BY_WORDS.get(words.at(-1) ?? '');
  if (last) return last;
  const within = new Set(words.filter((word): word is Colour => Object.hasOwn(COLOUR_WORDS, word)));
  return within.size === 1 ? [...within][0]! : null;
}
