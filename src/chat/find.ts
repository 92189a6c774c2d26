import { ok, type Result, wrong } from '../measure/result.ts';
import { grouped } from '../measure/ruler.ts';
import { CONTROL, tidy } from '../measure/tidy.ts';
import type { Ask, AskedOptions, Command, CommandList, FilledIn, Form } from './command.ts';
import type { Doubt } from './doubt.ts';
import type { Question } from './question.ts';
import type { Manner } from './read-options.ts';

/** More than this many characters is no ask. */
export const LONGEST_ASK = 2000;

/** Another form that a question asks for, what that is called, and the words of its options. */
export interface BesideForm {
  readonly label: string;
  readonly form: Form;
  readonly words: string;
}

/** An ask found: which form of which command, with the words of its options. */
export interface Found {
  readonly command: Command;
  readonly form: Form;
  readonly options: string | Readonly<Record<string, string>>;
  readonly manner: Manner;
  /** Where a question can be read in several ways: what to ask back. */
  readonly doubt?: Doubt;
  /** What a question asks for beside that, of the same command. */
  readonly besides?: readonly BesideForm[];
  /** Options filled in on a form, beside those in words. */
  readonly filled?: Readonly<Record<string, string>>;
}

/** Finds the command that is asked for: by its name, or by what a plain question is about. */
export async function find(commands: CommandList, { words }: Ask): Promise<Result<Found>> {
  if (typeof words !== 'string')
    return 'ask' in words ? findFilledIn(commands, words) : findAsked(commands, words);
  return findInWords(commands, words);
}

async function findInWords(commands: CommandList, words: string): Promise<Result<Found>> {
  const text = legible(words);
  if (!text.ok) return text;
  if (text.value === '') return wrong('nothing-asked');
  return /^[/!]/.test(text.value)
    ? findCommand(commands, text.value.slice(1).trim())
    : findQuestion(commands, text.value);
}

/** A text that can be read at all, tidied. */
function legible(text: string): Result<string> {
  // One sign may be tidied into several: a long row of ½ is four times as long.
  const tidied = text.length > LONGEST_ASK ? text : tidy(text);
  if (tidied.length > LONGEST_ASK) return wrong('text-long', { most: grouped(LONGEST_ASK) });
  return CONTROL.test(text) ? wrong('control-characters') : ok(tidied);
}

/** A command from a platform that has typed options: each option's words are a text of their own. */
async function findAsked(commands: CommandList, asked: AskedOptions): Promise<Result<Found>> {
  const command = await named(commands, asked.command);
  if (!command) return unknownCommand(asked.command, commands);
  const form = command.forms.find((one) => one.name === asked.form);
  if (!form) return unknownForm(asked.form, command);
  const options = allLegible(asked.options);
  return options.ok ? ok({ command, form, options: options.value, manner: 'command' }) : options;
}

/** An ask of which some options were filled in on a form. */
async function findFilledIn(commands: CommandList, { ask, filled }: FilledIn): Promise<Result<Found>> {
  const found = await findInWords(commands, ask);
  if (!found.ok) return found;
  const texts = allLegible(filled);
  return texts.ok ? ok({ ...found.value, filled: texts.value }) : texts;
}

function allLegible(options: Readonly<Record<string, string>>): Result<Record<string, string>> {
  const read: [name: string, words: string][] = [];
  for (const [name, words] of Object.entries(options)) {
    const text = legible(words);
    if (!text.ok) return text;
    read.push([name, text.value]);
  }
  return ok(Object.fromEntries(read));
}

async function findCommand(commands: CommandList, text: string): Promise<Result<Found>> {
  if (text === '') return wrong('nothing-asked');
  const head = /^([a-z0-9-]+)\s*/i.exec(text);
  const name = head?.[1]?.toLowerCase() ?? text.split(' ', 1)[0] ?? '';
  const command = await named(commands, name);
  return command ? formOf(command, text.slice(head?.[0].length ?? 0)) : unknownCommand(name, commands);
}

async function findQuestion(commands: CommandList, text: string): Promise<Result<Found>> {
  const { readQuestion } = await import('./question.ts');
  const meant = readQuestion(text);
  const command = meant && (await named(commands, meant.command));
  const found = meant && command ? asQuestion(command, meant) : null;
  return found ? ok(found) : wrong('question-unread');
}

function asQuestion(command: Command, { form, words, exact, doubt, besides = [] }: Question): Found | null {
  const called = (name: string) => command.forms.find((one) => one.name === name);
  const meant = called(form);
  if (!meant) return null;
  const others = besides.flatMap(({ label, ask, words: said }) => {
    const other = called(ask.slice(command.name.length + 1));
    return other ? [{ label, form: other, words: said }] : [];
  });
  return {
    ...{ command, form: meant, options: words, manner: exact ? 'command' : 'question' },
    ...(doubt ? { doubt } : {}),
    ...(others.length > 0 ? { besides: others } : {}),
  };
}

/** A member may type any word, `constructor` too: only the list's own entries are commands. */
const named = async (commands: CommandList, name: string): Promise<Command | undefined> =>
  Object.hasOwn(commands, name) ? commands[name]?.() : undefined;

async function formOf(command: Command, text: string): Promise<Result<Found>> {
  const { forms, standing = '' } = command;
  const word = /^([a-z-]+)(?![a-z:=])\s*/i.exec(text);
  const form = forms.find((one) => one.name !== '' && one.name === word?.[1]?.toLowerCase());
  if (form) return ok({ command, form, options: text.slice(word?.[0].length ?? 0), manner: 'command' });
  const stands = forms.find((one) => one.name === standing);
  if (stands && (text === '' || Object.keys(stands.options).length > 0))
    return ok({ command, form: stands, options: text, manner: 'command' });
  const plain = text === '' ? null : await inPlainWords(command, text);
  return plain ? ok(plain) : unknownForm(word?.[1] ?? '', command);
}

/** `/count 7 rosettes 2 rounds`: the form is told by what the words are about, as in a question. */
async function inPlainWords(command: Command, text: string): Promise<Found | null> {
  const { readQuestion } = await import('./question.ts');
  // A mistyped form is asked about, as any other word of a command.
  const meant = readQuestion(text, 'as they are');
  return meant?.command === command.name ? asQuestion(command, meant) : null;
}

const unknownCommand = (got: string, commands: CommandList) =>
  wrong('command-unknown', { got, known: Object.keys(commands) });

function unknownForm(got: string, { name, forms }: Command) {
  const known = forms.map((one) => one.name);
  return got === ''
    ? wrong('form-missing', { command: name, known })
    : wrong('form-unknown', { command: name, got, known });
}
