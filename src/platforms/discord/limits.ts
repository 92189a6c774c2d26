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
  /** What every guild may be sent in one file; some may be sent more. */
  fileBytes: 10 * 1024 * 1024,
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
  // A mark that keeps the next sign plain goes with that sign.
  const kept = text.slice(0, end).replace(/(?<!\\)(?:\\\\)*\\$/, (marks) => marks.slice(1));
  return `${kept.trimEnd()}${CUT}`;
}

/** A text in pieces that each keep to a limit, broken at a blank where there is one. */
export function inPieces(text: string, most: number): string[] {
  if (text.length <= most) return [text];
  const blank = text.lastIndexOf(' ', most);
  const end = blank > 0 ? blank : wholeSign(text, most);
  return [text.slice(0, end), ...inPieces(text.slice(end).trimStart(), most)];
}

/** The same place, or the one before it where it would part a sign of two units. */
const wholeSign = (text: string, at: number): number =>
  at > 1 && (text.codePointAt(at - 1) ?? 0) > 0xffff ? at - 1 : at;
