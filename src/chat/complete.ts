import type { Command, CommandList, Form } from './command.ts';
import type { AnyOption, SuggestWhere } from './option.ts';

/**
 * What the last word of a line may become: a command, one of its forms, an option's name, a choice's word, or
 * with somebody who types somewhere, what is kept there. Gives the whole words that could stand there and the
 * part of the line they replace.
 */
export async function complete(
  commands: CommandList,
  line: string,
  where?: SuggestWhere,
): Promise<{ words: string[]; replaces: string }> {
  const replaces = /\S*$/.exec(line)?.[0] ?? '';
  const all = await candidates(commands, line, replaces, where);
  return { words: all.filter((word) => word.startsWith(replaces)), replaces };
}

async function candidates(
  commands: CommandList,
  line: string,
  last: string,
  where: SuggestWhere | undefined,
): Promise<string[]> {
  const before = line.slice(0, line.length - last.length).trim();
  if (before === '') return Object.keys(commands).map((name) => `/${name} `);
  const [head = '', second = ''] = before.split(/\s+/);
  const name = head.replace(/^[/!]/, '');
  const command = Object.hasOwn(commands, name) ? await commands[name]?.() : undefined;
  if (!command) return [];
  if (name === 'help') return Object.keys(commands).map((one) => `${one} `);
  const form = formNamed(command, second);
  const forms =
    second === '' ? command.forms.filter((one) => one.name !== '').map((one) => `${one.name} `) : [];
  return form ? [...forms, ...(await optionWords(form, before, last, where))] : forms;
}

const formNamed = ({ forms, standing }: Command, word: string): Form | undefined =>
  forms.find((one) => one.name !== '' && one.name === word) ??
  forms.find((one) => one.name === (standing ?? ''));

async function optionWords(
  form: Form,
  before: string,
  last: string,
  where: SuggestWhere | undefined,
): Promise<string[]> {
  const name = /^([a-z-]+):/.exec(last)?.[1];
  if (name !== undefined) {
    const option = Object.hasOwn(form.options, name) ? form.options[name] : undefined;
    if (!option) return [];
    const kept = where && option.suggest ? await option.suggest(where) : [];
    return [...offered(option), ...kept].map((word) => `${name}:${word} `);
  }
  const said = new Set(before.toLowerCase().split(/[\s:=]+/));
  const open = Object.entries(form.options).filter(
    ([key, option]) => !said.has(key) && !(option.bare && offered(option).some((word) => said.has(word))),
  );
  const bare = open.flatMap(([, option]) => offered(option).filter((word) => mayStandBare(option, word)));
  return [...bare.map((word) => `${word} `), ...open.map(([key]) => `${key}:`)];
}

const mayStandBare = ({ bare, bareWhen }: AnyOption, word: string): boolean =>
  bare === true && (bareWhen?.test(word) ?? true);

/** The words that an option is completed to: a choice by its name only. */
const offered = ({ shape, known = [] }: AnyOption): readonly string[] =>
  shape.as === 'choice' ? shape.choices.map((one) => one.name) : known;
