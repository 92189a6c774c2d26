import { ok, type Problem, type Result } from '../measure/result.ts';
import { speech } from '../measure/speech.ts';
import { type Ask, type Command, type CommandList, type Form, type Here, keepsForAll } from './command.ts';
import { settle } from './defaults.ts';
import type { Doubt } from './doubt.ts';
import { type Facts, FactsTrouble, guildAlone } from './facts.ts';
import { type Found, find } from './find.ts';
import { loadedOnce } from './loaded-once.ts';
import type { Options, ReadingContext } from './option.ts';
import { passedOver } from './passed-over.ts';
import { type ReadOptions, readNamedOptions, readOptions } from './read-options.ts';
import { readingOf } from './reading-of.ts';
import { referenceOf } from './reference.ts';
import type { Reply, ReplyChoice } from './reply.ts';
import { shownName } from './shown-name.ts';
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

export function openRoom({ commands, facts, onFault }: RoomNeeds): Room {
  const shown = new Map<string, string>();
  const list = loadedOnce(commands);

  const firstToday = (who: string, today: string) => (caution: string) => {
    const key = `${who}\n${caution}`;
    if (shown.get(key) === today) return false;
    shown.set(key, today);
    return true;
  };

  async function answer(asked: Ask): Promise<Reply> {
    const ask = { ...asked, who: { ...asked.who, name: shownName(asked.who.name) } };
    let command = '';
    try {
      const found = await find(list, ask);
      if (!found.ok) return await unfound(found.problem, ask, list);
      command = found.value.command.name;
      return await (ask.event === null || (ask.onlyEffects && !found.value.form.keeps)
        ? run(found.value, { ...ask, event: null }, facts)
        : once(found.value, ask, ask.event));
    } catch (error) {
      const reference = referenceOf(ask.now);
      onFault(error, reference, ask);
      const { fault, trouble } = await import('./errors.ts');
      return error instanceof FactsTrouble
        ? trouble(error.problem, command, reference)
        : fault(command, reference);
    }
  }

  /** The event's id and its effect are kept together, so that an event delivered twice has one effect. */
  async function once(found: Found, ask: Ask, event: string): Promise<Reply> {
    const { answerKept } = found.form;
    if (answerKept === 'not') return run(found, ask, facts);
    // In a guild of hers alone even nobody's answer would tell of her.
    if (answerKept === 'nobodys' && ask.guild === guildAlone(ask.who.id))
      return run(found, { ...ask, event: null }, facts);
    return facts.together(async (bound) => {
      const kept = await bound.answered.find(ask.guild, event);
      if (kept)
        return (kept.reply as Reply | null) ?? (await import('./errors.ts')).answeredBefore(kept.command);
      const answered = await run(found, ask, bound);
      await bound.answered.keep(ask.guild, event, {
        member: answerKept === 'nobodys' ? '' : ask.who.id,
        command: answered.command,
        reply: answered,
      });
      return answered;
    });
  }

  async function run(found: Found, ask: Ask, bound: Facts): Promise<Reply> {
    const { command, form } = found;
    const kept = await bound.defaults.both(ask.guild, ask.who.id);
    const defaults = settle(kept.own, kept.guild);
    const today = dateIn(ask.now, defaults.zone.value);
    const context = { unit: defaults.unit.value, today };
    if (found.doubt) return askedBack(found, found.doubt, context, ask, bound);
    const read = await readAnyway(found, context);
    const slip = await slipOfQuestion(found, read);
    if (slip) return explain(slip, found, context);
    if (!read.ok) return explain(read.problem, found, context);
    if (form.organisers && !ask.who.organiser)
      return explain({ code: 'organisers-only', what: heading(command, form) }, found);
    const { values, given } = withFallbacks(form, read.value);
    const work = async (facts: Facts) => {
      const here = hereFor(found, ask, { defaults, today, given, bare: read.value.bare, values, facts });
      return form.run(values as never, { ...here, commands, firstToday: firstToday(ask.who.id, today) });
    };
    // What a form keeps is kept all or none; inside an event's transaction there is one already.
    const made = await (form.keeps && ask.event === null ? bound.together(work) : work(bound));
    if ('problem' in made) return explain(made.problem, found, context);
    const notes = [...(found.manner === 'question' ? passedOver(read.value.left) : []), ...made.notes];
    const beside = await besideChoices(found, context, (form, options) =>
      run({ command, form, options, manner: 'question' }, ask, bound),
    );
    const choices = [...beside, ...made.choices];
    return { ...made, notes, choices, command: command.name, audience: form.audience ?? made.audience };
  }

  /** A question that can be read in several ways: each is answered, and which is meant is asked. */
  async function askedBack(
    found: Found,
    doubt: Doubt,
    context: ReadingContext,
    ask: Ask,
    bound: Facts,
  ): Promise<Reply> {
    const { doubt: _, ...plain } = found;
    const { askBack } = await import('./ask-back.ts');
    const asked = await askBack(found, doubt, context, (options) => run({ ...plain, options }, ask, bound));
    return asked.ok
      ? { ...asked.value, command: found.command.name }
      : explain(asked.problem, found, context);
  }

  return { answer };
}

/** What a question asks for beside what was answered: as choices that tell it, where it can be read. */
async function besideChoices(
  { command, besides = [] }: Found,
  context: ReadingContext,
  answer: (form: Form, words: string) => Promise<Reply>,
): Promise<ReplyChoice[]> {
  if (besides.length === 0) return [];
  const { writeAsk } = await import('./write-ask.ts');
  const choices: ReplyChoice[] = [];
  for (const { label, form, words } of besides) {
    const read = readOptions(form.options, words, context, 'question');
    if (!read.ok) continue;
    const { error, asks, lines } = await answer(form, words);
    const told = error === null && asks === null ? `: ${lines[0]?.replace(/\.$/, '')}` : '';
    choices.push({ label: `${label}${told}`, ask: writeAsk(command.name, form, read.value.values) });
  }
  return choices;
}

/** What was wrong, and the line to type instead: this very ask put right where that can be told, or an example. */
async function explain(problem: Problem, found: Found, context?: ReadingContext): Promise<Reply> {
  const { command } = found;
  const { mistake } = await import('./errors.ts');
  const { mended } = await import('./mend.ts');
  if (problem.instead !== undefined)
    return mistake(problem, { command: command.name, instead: [String(problem.instead)].filter(Boolean) });
  const instead =
    context && (mended(problem, { ...found, command: command.name }, context) ?? exampleOf(found));
  return mistake(problem, { command: command.name, instead: instead ? [instead] : [] });
}

/** An example to type; where it would keep for all what she did not say, how such an ask is made. */
const exampleOf = ({ command, form }: Found): string | undefined =>
  keepsForAll(form) ? `/help ${command.name}` : form.examples[0];

/** An ask that is no command of ours and no question that is understood. */
async function unfound(problem: Problem, { words }: Ask, commands: CommandList): Promise<Reply> {
  const { mistake } = await import('./errors.ts');
  const { insteadOf } = await import('./instead.ts');
  return mistake(problem, { command: '', instead: await insteadOf(problem, words, commands) });
}

/** Words shorter than this are never taken for a slip. */
const SHORTEST_SLIP = 5;

/** A mistyped word of a plain question that would have changed the answer. */
async function slipOfQuestion({ form, manner }: Found, read: Result<ReadOptions>): Promise<Problem | null> {
  if (manner === 'command') return null;
  if (read.ok && !read.value.left.some((word) => word.length >= SHORTEST_SLIP)) return null;
  return (await import('./mend.ts')).slipIn(form.options, read);
}

/** What cannot be read in a command is read once more with its numbers in figures: "one and a half inch". */
async function readAnyway(found: Found, context: ReadingContext): Promise<Result<ReadOptions>> {
  const read = readAsked(found, context);
  if (read.ok || found.manner === 'question') return read;
  const { inFigures } = await import('./number-words.ts');
  const options =
    typeof found.options === 'string' ? inFigures(found.options) : eachIn(found.options, inFigures);
  const again = readAsked({ ...found, options }, context);
  return again.ok ? again : read;
}

const eachIn = (options: Readonly<Record<string, string>>, change: (words: string) => string) =>
  Object.fromEntries(Object.entries(options).map(([name, words]) => [name, change(words)]));

function readAsked({ form, options, manner, filled }: Found, context: ReadingContext): Result<ReadOptions> {
  if (typeof options !== 'string') return readNamedOptions(form.options, options, context);
  if (!filled) return readOptions(form.options, options, context, manner);
  // What was filled in on a form is that option's words and no other's, whatever stands in them; it takes the
  // place of what the ask itself says.
  const said = readOptions(unmissed(form.options, filled), options, context, manner);
  if (!said.ok) return said;
  const onForm = Object.entries(form.options).filter(([name]) => Object.hasOwn(filled, name));
  const added = readNamedOptions(Object.fromEntries(onForm), filled, context);
  if (!added.ok) return added;
  return ok({ ...said.value, values: { ...said.value.values, ...added.value.values } });
}

/** The options, none of those filled in missed where the ask itself does not say them. */
const unmissed = (options: Options, filled: Readonly<Record<string, string>>): Options =>
  Object.fromEntries(
    Object.entries(options).map(([name, option]) =>
      Object.hasOwn(filled, name) ? [name, { ...option, required: false }] : [name, option],
    ),
  );

function withFallbacks(form: Form, read: ReadOptions) {
  const values: Record<string, unknown> = { ...read.values };
  const given = new Set(Object.keys(read.values));
  for (const [key, option] of Object.entries(form.options))
    if (values[key] === undefined && option.fallback !== undefined) values[key] = option.fallback;
  return { values, given };
}

function hereFor(
  { command, form, options }: Found,
  ask: Ask,
  known: Pick<Here, 'defaults' | 'today' | 'given' | 'bare' | 'facts'> & {
    values: Readonly<Record<string, unknown>>;
  },
): Omit<Here, 'firstToday' | 'commands'> {
  const { who, guild, place, now } = ask;
  const { defaults, today, given, bare, facts, values } = known;
  return {
    ...{ who, guild, place, now, today, defaults, given, bare, facts },
    typed: ask.words,
    say: speech(readingOf(options, defaults)),
    again: (changes) =>
      writeAsk(command.name, form, {
        ...Object.fromEntries([...given].map((key) => [key, values[key]])),
        ...changes,
      }),
  };
}

const heading = (command: Command, form: Form): string =>
  `/${command.name}${form.name ? ` ${form.name}` : ''}`;
