const MARKS = /[\\*_~`|>#<[\]()-]/g;

/**
 * Text that the platform shows as it was written: nothing in it is bold, a link, a list or a mention. What stands
 * between backticks is an ask to type and stays code.
 */
export function escaped(text: string): string {
  return text
    .split(/(`[^`\n]+`)/)
    .map((part, i) => (i % 2 === 1 ? part : part.replace(MARKS, escapeMark)))
    .join('');
}

/** A hyphen, a bracket or a greater-than is only a mark where it can be one; elsewhere it stays readable. */
function escapeMark(mark: string, at: number, whole: string): string {
  const lineStart = at === 0 || whole[at - 1] === '\n';
  if (mark === '-' || mark === '#' || mark === '>') return lineStart ? `\\${mark}` : mark;
  if (mark === '(' || mark === ')') return whole[at - 1] === ']' ? `\\${mark}` : mark;
  return `\\${mark}`;
}
