const VULGAR: Readonly<Record<string, string>> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

const FRACTION_SIGN = /[¼½¾⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]/gu;

const ALIKE: readonly (readonly [RegExp, string])[] = [
  [/[″“”„]|''|′′|’’/gu, '"'],
  [/[′‘’`´]/gu, "'"],
  [/[×✕✖]/gu, 'x'],
  [/[⁄∕]/gu, '/'],
  [/[‐‑‒–—−]/gu, '-'],
  [/\s+/gu, ' '],
];

const PLAIN = /^[!-~ ]*$/;

/**
 * What a member typed, with the many signs for one thing made one: ½ becomes 1/2, ″ becomes ", × becomes x,
 * every dash a hyphen, any run of white space one blank.
 *
 * @example
 * tidy('1½″ × 2′') // "1 1/2\" x 2'"
 */
export function tidy(text: string): string {
  if (PLAIN.test(text) && !text.includes("''") && !text.includes('`') && !text.includes('  '))
    return text.trim();
  let out = text;
  out = out.replace(FRACTION_SIGN, (found) => ` ${VULGAR[found]}`);
  for (const [sign, plain] of ALIKE) out = out.replace(sign, plain);
  return out.trim();
}

/**
 * Characters that no message holds on purpose: controls other than white space, signs without width, direction
 * marks and overrides, half of a surrogate pair.
 */
export const CONTROL =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: finding them is the point
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u061c\u200b\u200e\u200f\u202a-\u202e\u2060-\u2069\ufeff\p{Surrogate}]/u;
