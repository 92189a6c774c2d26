import { ApplicationCommandOptionType, ApplicationCommandType, PermissionFlagsBits } from 'discord.js';
import type { Command, CommandList, Form } from '../../chat/command.ts';
import type { AnyOption } from '../../chat/option.ts';
import { cutTo, LIMITS } from './limits.ts';

/** Who may see organisers' commands where the guild's admins have not said otherwise. */
export const ORGANISER = PermissionFlagsBits.ManageGuild;

interface Described {
  readonly name: string;
  readonly description: string;
}

interface Offered extends Described {
  readonly type: number;
  readonly required?: boolean;
  readonly choices?: readonly { readonly name: string; readonly value: string }[];
  readonly min_value?: number;
  readonly max_value?: number;
  readonly max_length?: number;
  readonly autocomplete?: boolean;
  readonly options?: readonly Offered[];
}

export interface Registered extends Described {
  readonly type: ApplicationCommandType.ChatInput;
  readonly options: readonly Offered[];
  /** The description of the interface wants a number here and answers with a text. */
  readonly default_member_permissions?: number | string | null;
  readonly contexts: readonly number[];
}

const IN_GUILDS = 0;

/** Every command as the platform is told of it, made from the declarations. */
export async function registrations(commands: CommandList): Promise<Registered[]> {
  const all = await Promise.all(Object.values(commands).map((load) => load()));
  return all.map(registered);
}

function registered({ name, summary, forms }: Command): Registered {
  const [only] = forms;
  const single = forms.length === 1 && only?.name === '';
  return {
    type: ApplicationCommandType.ChatInput,
    name,
    description: cutTo(summary, LIMITS.commandSummary),
    options: single ? optionsOf(only) : forms.map(subcommand),
    ...(forms.every((form) => form.organisers) ? { default_member_permissions: Number(ORGANISER) } : {}),
    contexts: [IN_GUILDS],
  };
}

/** The form that a bare command means has no word of its own; as a subcommand it needs one. */
export const DEFAULT_FORM = 'do';

const subcommand = (form: Form): Offered => ({
  type: ApplicationCommandOptionType.Subcommand,
  name: form.name || DEFAULT_FORM,
  description: cutTo(form.summary, LIMITS.commandSummary),
  options: optionsOf(form),
});

/**
 * The platform takes no more options than so many. Where there are more, those go that others say as well (the
 * short forms of the size), and what went can be said in one option that takes words.
 */
const MOST_OPTIONS = 25;
const GO_FIRST: ReadonlySet<string> = new Set(['edge', 'flats', 'height']);

/** The option that takes in words what has no option of its own. */
export const IN_WORDS = 'more';

/** The names of the options that have no place of their own on the platform. */
export function withoutPlace({ options }: Form): string[] {
  const names = Object.keys(options);
  if (names.length <= MOST_OPTIONS) return [];
  const dispensable = names.filter((name) => !options[name]?.required);
  const inOrder = [
    ...dispensable.filter((name) => GO_FIRST.has(name)),
    ...dispensable.filter((name) => !GO_FIRST.has(name)).reverse(),
  ];
  return inOrder.slice(0, names.length - (MOST_OPTIONS - 1));
}

/** The platform wants what must be given first. */
function optionsOf(form: Form): Offered[] {
  const none = withoutPlace(form);
  const entries = Object.entries(form.options).filter(([name]) => !none.includes(name));
  const inOrder = [...entries.filter(([, o]) => o.required), ...entries.filter(([, o]) => !o.required)];
  return [...inOrder.map(offered), ...(none.length > 0 ? [inWords(none)] : [])];
}

const inWords = (names: readonly string[]): Offered => ({
  name: IN_WORDS,
  description: cutTo(
    `Anything else, as you would type it: ${names.map((name) => `${name}:`).join(' ')}`,
    LIMITS.commandSummary,
  ),
  type: ApplicationCommandOptionType.String,
});

function offered([name, option]: [string, AnyOption]): Offered {
  const description = cutTo(descriptionOf(option), LIMITS.commandSummary);
  const base = { name, description, ...(option.required ? { required: true } : {}) };
  const { shape } = option;
  if (shape.as === 'whole')
    return {
      ...base,
      type: ApplicationCommandOptionType.Integer,
      min_value: shape.least,
      max_value: shape.most,
    };
  if (shape.as === 'number')
    return {
      ...base,
      type: ApplicationCommandOptionType.Number,
      min_value: shape.least,
      max_value: shape.most,
    };
  if (shape.as === 'choice' && shape.choices.length <= LIMITS.choices) {
    const choices = shape.choices.map((one) => ({
      name: cutTo(one.title, LIMITS.choiceName),
      value: one.name,
    }));
    return { ...base, type: ApplicationCommandOptionType.String, choices };
  }
  const longest = shape.as === 'words' && shape.longest ? { max_length: shape.longest } : {};
  const known = shape.as === 'choice' || option.known || option.suggest ? { autocomplete: true } : {};
  return { ...base, type: ApplicationCommandOptionType.String, ...longest, ...known };
}

const descriptionOf = ({ summary, otherwise }: AnyOption): string =>
  otherwise && summary.length + otherwise.length < LIMITS.commandSummary - 2
    ? `${summary}; ${otherwise}`
    : summary;

/** Whether what the platform has is what we would say: order of commands aside, defaults it fills in aside. */
export function isSame(ours: readonly Registered[], theirs: readonly Registered[]): boolean {
  const canonical = (list: readonly Registered[]) =>
    JSON.stringify([...list].sort((a, b) => (a.name < b.name ? -1 : 1)).map(compared));
  return canonical(ours) === canonical(theirs);
}

function compared({ name, description, options, default_member_permissions, contexts }: Registered) {
  return {
    name,
    description,
    permissions: default_member_permissions == null ? null : String(default_member_permissions),
    contexts: contexts ?? [],
    options: (options ?? []).map(comparedOption),
  };
}

const comparedOption = (option: Offered): object => ({
  type: option.type,
  name: option.name,
  description: option.description,
  required: option.required ?? false,
  choices: (option.choices ?? []).map(({ name, value }) => ({ name, value })),
  min: option.min_value ?? null,
  max: option.max_value ?? null,
  longest: option.max_length ?? null,
  autocomplete: option.autocomplete ?? false,
  options: (option.options ?? []).map(comparedOption),
});
