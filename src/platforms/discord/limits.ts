/**
 * Every limit of the platform that a reply can meet, in one place (Discord's published API description, v10,
 * and its developer documentation). Lengths are in UTF-16 units, as the platform counts them.
 */
export const LIMITS = {
  content: 2000,
  embedTitle: 256,
  embedText: 4096,
  fields: 25,
  fieldName: 256,
  fieldValue: 1024,
  /** Title, text, fields and footers of all embeds of one message together. */
  embedsTogether: 6000,
  rows: 5,
  buttonsInRow: 5,
  buttonLabel: 80,
  customId: 100,
  files: 10,
  altText: 1024,
  commandSummary: 100,
  choices: 25,
  choiceName: 100,
  modalTitle: 45,
  modalLabel: 45,
  modalInputs: 5,
  inputLength: 4000,
  nonce: 25,
} as const;

const CUT = '…';

/** A text cut to a limit, at a whole sign, with a mark that something is missing. */
export function cutTo(text: string, most: number): string {
  if (text.length <= most) return text;
  let end = 0;
  for (const sign of text) {
    if (end + sign.length > most - CUT.length) break;
    end += sign.length;
  }
  return `${text.slice(0, end).trimEnd()}${CUT}`;
}

/** Whether cutting would lose something. */
export const isOver = (text: string, most: number): boolean => text.length > most;
