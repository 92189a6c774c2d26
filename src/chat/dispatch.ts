import { type Problem, type Result, wrong } from '../measure/result.ts';
import { speech } from '../measure/speech.ts';
import { CONTROL, tidy } from '../measure/tidy.ts';
import type { Ask, Command, CommandList, Form, Here } from './command.ts';
import { type Defaults, settle } from './defaults.ts';
import { type Facts, FactsTrouble, GUILD_ITSELF } from './facts.ts';
import { type Manner, type ReadOptions, readNamedOptions, readOptions } from './read-options.ts';
import type { Reply } from './reply.ts';
import { dateIn } from './today.ts';
import { writeAsk } from './write-ask.ts';

/** What a room of asks needs from outside. */
export interface RoomNeeds {
  readonly commands: CommandList;
  readonly facts: Facts;
  /** Told of each fault, with the reference that the member saw. */
  onFault(error: unknown, reference: string, ask: Ask): void;
}

/** Answers asks. One room serves every platform of the program. */
export interface Room {
  answer(ask: Ask): Promise<Reply>;
}

/** More than this many characters is no ask. */
export const LONGEST_ASK = 2000;

/** An ask found: which form of which command, with the words of its options. */
interface Found {
  readonly command: Command;
  readonly form: Form;
  readonly options: string | Readonly<Record<string, string>>;
  readonly manner: Manner;
}

/** The same list, each command loaded once and then at hand. */
function loadedOnce(commands: CommandList): CommandList {
  const loaded = new Map<string, Promise<Command>>();
  return Object.fromEntries(
    Object.entries(commands).map(([name, load]) => [
      name,
      () => {
        const at = loaded.get(name) ?? load();
        loaded.set(name, at);
        return at;
      },
    ]),
  );
}

export function openRoom({ commands, facts, onFault }: RoomNeeds): Room {
  const shown = new Map<string, string>();
  const list = loadedOnce(commands);

  const firstToday = (who: string, today: string) => (caution: string) => {
    const key = `${who}\n${caution}`;
    if (shown.get(key) === today) return false;
    shown.set(key, today);
    return true;
  };

  async function answer(ask: Ask): Promise<Reply> {
    let at: { command: string; form: Form | null } = { command: '', form: null };
    try {
      const found = await find(list, ask);
      if (!found.ok) return await explain(found.problem, '', null);
      at = { command: found.value.command.name, form: found.value.form };
      return await (ask.event === null ? run(found.value, ask, facts) : once(found.value, ask, ask.event));
    } catch (error) {
      if (error instanceof FactsTrouble) return explain(error.problem, at.command, at.form, false);
      const reference = referenceOf(ask.now);
      onFault(error, reference, ask);
      return (await import('./errors.ts')).fault(at.command, reference);
    }
  }

  /** The event's id and its effect are kept together, so that an event delivered twice has one effect. */
  async function once(found: Found, ask: Ask, event: string): Promise<Reply> {
    return facts.together(async (bound) => {
      const kept = await bound.answered.find(ask.guild, event);
      if (kept?.reply) return kept.reply as Reply;
      const answered = await run(found, ask, bound);
      await bound.answered.keep(ask.guild, event, {
        member: ask.who.id,
        command: answered.command,
        reply: answered,
      });
      return answered;
    });
  }

  async function run(found: Found, ask: Ask, bound: Facts): Promise<Reply> {
    const { command, form } = found;
    const own = await bound.defaults.read(ask.guild, ask.who.id);
    const defaults = settle(own, await bound.defaults.read(ask.guild, GUILD_ITSELF));
    const today = dateIn(ask.now, defaults.zone.value);
    const read = readAsked(found, { unit: defaults.unit.value, today });
    if (!read.ok) return explain(read.problem, command.name, form);
    if (form.organisers && !ask.who.organiser)
      return explain({ code: 'organisers-only', what: heading(command, form) }, command.name, form, false);
    const { values, given } = withFallbacks(form, read.value);
    const work = async (facts: Facts) => {
      const here = hereFor(found, ask, { defaults, today, given, bare: read.value.bare, values, facts });
      return form.run(values as never, { ...here, commands, firstToday: firstToday(ask.who.id, today) });
    };
    // What a form keeps is kept all or none; inside an event's transaction there is one already.
    const made = await (form.keeps && ask.event === null ? bound.together(work) : work(bound));
    if ('problem' in made) return explain(made.problem, command.name, form);
    return { ...made, command: command.name, audience: form.audience ?? made.audience };
  }

  return { answer };
}

async function explain(
  problem: Problem,
  command: string,
  form: Form | null,
  showExample = true,
): Promise<Reply> {
  const { mistake } = await import('./errors.ts');
  return mistake(problem, {
    command,
    form: form?.name ?? '',
    example: showExample ? (form?.examples[0] ?? (problem.code === 'nothing-asked' ? '/help' : null)) : null,
  });
}

async function find(commands: CommandList, ask: Ask): Promise<Result<Found>> {
  if (typeof ask.words !== 'string') {
    const command = await commands[ask.words.command]?.();
    const form = command?.forms.find((one) => one.name === (ask.words as { form: string }).form);
    if (!command || !form) return unknownCommand(ask.words.command, commands);
    return { ok: true, value: { command, form, options: ask.words.options, manner: 'command' } };
  }
  if (ask.words.length > LONGEST_ASK) return wrong('text-long', { most: String(LONGEST_ASK) });
  if (CONTROL.test(ask.words)) return wrong('control-characters');
  const text = tidy(ask.words);
  if (text === '') return wrong('nothing-asked');
  return /^[/!]/.test(text) ? findCommand(commands, text.slice(1)) : findQuestion(commands, text);
}

async function findCommand(commands: CommandList, text: string): Promise<Result<Found>> {
  const head = /^\s*([a-z0-9-]+)\s*/i.exec(text);
  const name = head?.[1]?.toLowerCase() ?? text.slice(0, 20);
  const load = Object.hasOwn(commands, name) ? commands[name] : undefined;
  if (!load) return unknownCommand(name, commands);
  return formOf(await load(), text.slice(head?.[0].length ?? 0), 'command');
}

async function findQuestion(commands: CommandList, text: string): Promise<Result<Found>> {
  const { readQuestion } = await import('./question.ts');
  const meant = readQuestion(text);
  if (!meant) return wrong('question-unread');
  const load = commands[meant.command];
  if (!load) return unknownCommand(meant.command, commands);
  const command = await load();
  const form = command.forms.find((one) => one.name === meant.form);
  if (!form) return wrong('question-unread');
  return { ok: true, value: { command, form, options: meant.words, manner: 'question' } };
}

function formOf(command: Command, text: string, manner: Manner): Result<Found> {
  const word = /^([a-z-]+)(?![a-z:=])\s*/i.exec(text);
  const named = command.forms.find((one) => one.name !== '' && one.name === word?.[1]?.toLowerCase());
  if (named)
    return { ok: true, value: { command, form: named, options: text.slice(word?.[0].length ?? 0), manner } };
  const standing = command.forms.find((one) => one.name === (command.standing ?? ''));
  if (standing) return { ok: true, value: { command, form: standing, options: text, manner } };
  const known = command.forms.map((one) => one.name);
  return word ? wrong('form-unknown', { got: word[1], known }) : wrong('form-missing', { known });
}

const unknownCommand = (got: string, commands: CommandList) =>
  wrong('command-unknown', { got, known: Object.keys(commands) });

function readAsked(
  { form, options, manner }: Found,
  context: { unit: Defaults['unit']['value']; today: string },
) {
  return typeof options === 'string'
    ? readOptions(form.options, options, context, manner)
    : readNamedOptions(form.options, options, context);
}

function withFallbacks(form: Form, read: ReadOptions) {
  const values: Record<string, unknown> = { ...read.values };
  const given = new Set(Object.keys(read.values));
  for (const [key, option] of Object.entries(form.options))
    if (values[key] === undefined && option.fallback !== undefined) values[key] = option.fallback;
  return { values, given };
}

function hereFor(
  { command, form }: Found,
  ask: Ask,
  known: Pick<Here, 'defaults' | 'today' | 'given' | 'bare' | 'facts'> & {
    values: Readonly<Record<string, unknown>>;
  },
): Omit<Here, 'firstToday' | 'commands'> {
  const { who, guild, place, now } = ask;
  const { defaults, today, given, bare, facts, values } = known;
  return {
    ...{ who, guild, place, now, today, defaults, given, bare, facts },
    say: speech(defaults.reading.value),
    again: (changes) =>
      writeAsk(command.name, form, {
        ...Object.fromEntries([...given].map((key) => [key, values[key]])),
        ...changes,
      }),
  };
}

const heading = (command: Command, form: Form): string =>
  `/${command.name}${form.name ? ` ${form.name}` : ''}`;

/** Short enough to read out, different enough to find in the log. */
function referenceOf(now: Date): string {
  const tail = Math.floor(Math.random() * 36 ** 3)
    .toString(36)
    .padStart(3, '0');
  return `${(now.getTime() % 36 ** 5).toString(36).padStart(5, '0')}-${tail}`;
}
