import type { Problem } from '../measure/result.ts';
import type { Ask, CommandList } from './command.ts';
import { nearest } from './near.ts';

/** Examples shown to a member who was not understood at all. */
const FEW = 3;

type Instead = (problem: Problem, words: string, commands: CommandList) => string[] | Promise<string[]>;

/** What to type in place of an ask for which no command was found. */
const INSTEAD: Readonly<Record<string, Instead>> = {
  'nothing-asked': () => ['/help'],
  'command-unknown': ({ got, known }, words) => [swapped(words, got, known) ?? '/help'],
  'form-unknown': async ({ got, known, command }, words, commands) => {
    const meant = swapped(words, got, known);
    return meant ? [meant] : examplesOf(String(command), commands, FEW);
  },
  'form-missing': ({ command }, _, commands) => examplesOf(String(command), commands, FEW),
  'question-unread': async (_, __, commands) =>
    (
      await Promise.all(
        Object.keys(commands)
          .slice(0, FEW)
          .map((name) => examplesOf(name, commands, 1)),
      )
    ).flat(),
};

/** The lines to type instead, none where none would help. */
export const insteadOf = async (
  problem: Problem,
  words: Ask['words'],
  commands: CommandList,
): Promise<string[]> =>
  (await INSTEAD[problem.code]?.(problem, typeof words === 'string' ? words : '', commands)) ?? [];

/** The ask with its mistyped command or form put right. */
function swapped(words: string, got: Problem[string], known: Problem[string]): string | null {
  const typed = String(got);
  const meant = Array.isArray(known) ? nearest(typed, known) : null;
  const at = words.toLowerCase().indexOf(typed.toLowerCase());
  return meant && at >= 0 ? words.slice(0, at) + meant + words.slice(at + typed.length) : null;
}

const examplesOf = async (name: string, commands: CommandList, most: number): Promise<string[]> => {
  const forms = (await commands[name]?.())?.forms ?? [];
  return forms
    .map((one) => one.examples[0] ?? '')
    .filter(Boolean)
    .slice(0, most);
};
