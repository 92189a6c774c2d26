import { commands } from '../../commands/index.ts';
import { find } from '../../src/chat/find.ts';
import { readOptions } from '../../src/chat/read-options.ts';
import { writeAsk } from '../../src/chat/write-ask.ts';
import { ask } from './fakes.ts';

export const CONTEXT = { unit: 'in', today: '2026-12-01' } as const;

/** A plain question, or a command, as the ask that it is read as, every option named; or what is wrong with it. */
export async function readAs(words: string): Promise<string> {
  const found = await find(commands, ask(words));
  if (!found.ok) return found.problem.code;
  const { command, form, options, manner } = found.value;
  const read = readOptions(form.options, options as string, CONTEXT, manner);
  return read.ok ? writeAsk(command.name, form, read.value.values) : read.problem.code;
}
