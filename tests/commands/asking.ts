import { expect } from 'vitest';
import { commands } from '../../commands/index.ts';
import type { Command, Form } from '../../src/chat/command.ts';
import { openRoom } from '../../src/chat/dispatch.ts';
import type { Figure, Reply } from '../../src/chat/reply.ts';
import { memoryFacts } from '../standin/memory-facts.ts';

/** Who asks, where and when; a member of one guild on the first of December unless said otherwise. */
export interface Asking {
  readonly as?: string;
  readonly organiser?: boolean;
  readonly guild?: string;
  readonly now?: string;
  readonly event?: string;
}

export type Asker = (words: string, asking?: Asking) => Promise<Reply>;

/** A room of all the commands over facts in memory. A fault of the program is thrown, never answered. */
export function openAsking(): Asker {
  const room = openRoom({
    commands,
    facts: memoryFacts(),
    onFault(error) {
      throw error;
    },
  });
  return (
    words,
    { as = 'Ada', organiser = false, guild = 'guild', now = '2026-12-01T10:00:00Z', event } = {},
  ) =>
    room.answer({
      who: { id: as, name: as, organiser },
      guild,
      place: 'home',
      event: event ?? null,
      words,
      now: new Date(now),
    });
}

/** An answer that is one: no mistake, no question back. */
export async function answered(ask: Asker, words: string, asking?: Asking): Promise<Reply> {
  const reply = await ask(words, asking);
  expect(reply.error, words).toBeNull();
  expect(reply.asks, words).toBeNull();
  return reply;
}

export type Expected = Readonly<Record<string, number | string | readonly number[]>>;

/** Each figure named is there, in its unit, and has this value (numbers to 4 decimals, as they are tabled). */
export function expectFigures(reply: Reply, unit: string, expected: Expected): void {
  for (const [name, value] of Object.entries(expected)) {
    const figure = reply.figures[name];
    expect(figure, `${reply.title}: ${name}`).toBeDefined();
    expect(figure?.unit, `${reply.title}: unit of ${name}`).toBe(unit);
    if (typeof value === 'number') expect(figure?.value, `${reply.title}: ${name}`).toBeCloseTo(value, 4);
    else expect(figure?.value, `${reply.title}: ${name}`).toEqual(value);
  }
}

/** The figures' values alone, by name. */
export const valuesOf = (reply: Reply): Record<string, Figure['value']> =>
  Object.fromEntries(Object.entries(reply.figures).map(([name, { value }]) => [name, value]));

/** The value of a figure that is one number. */
export function numberOf(reply: Reply, name: string): number {
  const value = reply.figures[name]?.value;
  expect(value, `${reply.title}: ${name}`).toBeTypeOf('number');
  return value as number;
}

/** Every word of a reply that a member may read, in one text. */
export const wordsOf = (reply: Reply): string =>
  [
    reply.title,
    ...reply.lines,
    reply.asks ?? '',
    ...(reply.table ? [...reply.table.columns, ...reply.table.rows.flat()] : []),
    ...reply.notes,
    ...reply.cautions,
    ...reply.choices.map(({ label }) => label),
    ...reply.pictures.map(({ alt }) => alt),
    reply.error?.message ?? '',
  ].join('\n');

export interface Declared {
  readonly command: Command;
  readonly form: Form;
}

/** Every form of every command, as declared. */
export const declared: readonly Declared[] = (
  await Promise.all(Object.values(commands).map((load) => load()))
).flatMap((command) => command.forms.map((form) => ({ command, form })));

/** Every example that a declaration shows. */
export const examples: readonly string[] = declared.flatMap(({ form }) => form.examples);

/** What a guild does together: an ask of it needs something to be open, and changes what the next one finds. */
export const TOGETHER =
  /^\/(?:challenge|log|undo|fix|standings|month|swap|me export|me forget|guild forget)\b/;

/** The examples that can be asked in any order; those of what is done together are asked in a guild of their own. */
export const alone: readonly string[] = examples.filter((one) => !TOGETHER.test(one));
