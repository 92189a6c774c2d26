/**
 * What would be a mark, not a sign to be read: most wherever they stand, a hyphen, a hash or a greater-than at
 * the beginning of a line, a bracket right after a square one.
 */
const MARKS = /[\\*_~`|<[\]]|^[-#>]|(?<=\])[()]/gm;
/** Most texts hold none of them. */
const MAY_MARK = /[\\*_~`|<>[\]#-]/;
const ASK = /(`[^`\n]+`)/;

/**
 * Text that the platform shows as it was written: nothing in it is bold, a link, a list or a mention. What stands
 * between backticks is an ask to type and stays code.
 *
 * @example
 * escaped('**Bea** (2.232)') // "\\*\\*Bea\\*\\* (2.232)"
 * escaped('- see `/me set`') // "\\- see `/me set`"
 */
export function escaped(text: string): string {
  if (!MAY_MARK.test(text)) return text;
  if (!text.includes('`')) return text.replace(MARKS, '\\$&');
  return text
    .split(ASK)
    .map((part, i) => (i % 2 === 1 ? part : part.replace(MARKS, '\\$&')))
    .join('');
}
