import { ok, type Result } from '../measure/result.ts';
import type { Doubt } from './doubt.ts';
import type { Found } from './find.ts';
import type { ReadingContext } from './option.ts';
import { passedOver } from './passed-over.ts';
import { readOptions } from './read-options.ts';
import { type Reply, reply } from './reply.ts';
import { writeAsk } from './write-ask.ts';

/**
 * The reply to a question that can be read in several ways: the one question back, what each way would come to,
 * and each way as a choice.
 */
export async function askBack(
  { command, form }: Found,
  { title, asks, ways, tells }: Doubt,
  context: ReadingContext,
  answer: (words: string) => Promise<Reply>,
): Promise<Result<Reply>> {
  const choices: { label: string; ask: string }[] = [];
  const rows: string[][] = [];
  const cautions = new Set<string>();
  const notes = new Set<string>();
  for (const { label, words } of ways) {
    const read = readOptions(form.options, words, context, 'question');
    if (!read.ok) return read;
    choices.push({ label, ask: writeAsk(command.name, form, read.value.values) });
    for (const note of passedOver(read.value.left)) notes.add(note);
    const answered = await answer(words);
    const told = answered.error === null ? toldOf(answered, tells) : undefined;
    if (told !== undefined) rows.push([label, told]);
    for (const caution of answered.cautions) cautions.add(caution);
  }
  const table = rows.length > 0 ? { columns: ['if it is', 'then'], rows } : null;
  return ok(reply({ title, asks, table, notes: [...notes], cautions: [...cautions], choices }));
}

/** What one answer comes to, in a line. */
function toldOf({ lines, table }: Reply, tells: RegExp | undefined): string | undefined {
  if (!tells) return lines[0];
  const row = table?.rows.find(([first = '']) => tells.test(first));
  return lines.find((line) => tells.test(line)) ?? (row ? rowWords(row) : lines[0]);
}

/** How much, and of what where that does not say so itself. */
const rowWords = ([what = '', much = '']: readonly string[]): string =>
  much.endsWith(what) ? much : `${much}, ${what}`;
