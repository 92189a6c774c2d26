/** A file of plain text: a table for a spreadsheet, or all that is kept of a member. */
export interface TextRecipe {
  readonly draw: 'text';
  readonly text: string;
}

/**
 * The bytes of a text file, UTF-8.
 *
 * @example
 * drawText({ draw: 'text', text: 'a,b' }).length // 3
 */
export const drawText = ({ text }: TextRecipe): Uint8Array => new TextEncoder().encode(text);
