import { commands } from '../../commands/index.ts';
import { openRoom } from '../chat/dispatch.ts';
import { FactsTrouble } from '../chat/facts.ts';
import type { Wrong } from '../measure/result.ts';
import { askOf, print, statusOf } from './answering.ts';
import { readFlags } from './ask-flags.ts';
import { keepingAt } from './keeping.ts';

const MISTAKE = 2;

/** Answers one ask from the command line, or one a line from standard input, and ends. */
export async function ask(args: readonly string[]): Promise<number> {
  const flags = readFlags(args);
  if (!flags.ok) return complain(flags);
  const keeping = await keepingAt({ data: flags.value.data, config: flags.value.config });
  if (!keeping.ok) return complain(keeping);
  const { facts, close } = keeping.value;
  const room = openRoom({ commands, facts, onFault: tellOperator });
  try {
    if (flags.value.words === '-') return await (await import('./ask-lines.ts')).askLines(room, flags.value);
    const reply = await room.answer(askOf(flags.value, flags.value.words));
    await print(reply, flags.value);
    return statusOf(reply);
  } finally {
    await close();
  }
}

async function complain({ problem }: Wrong): Promise<number> {
  process.stderr.write(`${(await import('./sentence.ts')).sentence(problem)}\n`);
  return MISTAKE;
}

/** Facts that are out of reach are told in a sentence; only a fault of ours shows where it happened. */
async function tellOperator(error: unknown, reference: string): Promise<void> {
  const text =
    error instanceof FactsTrouble
      ? (await import('./sentence.ts')).sentence(error.problem)
      : error instanceof Error
        ? (error.stack ?? error.message)
        : String(error);
  process.stderr.write(`${JSON.stringify({ level: 'error', reference, error: text })}\n`);
}
