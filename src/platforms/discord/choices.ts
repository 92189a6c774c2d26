import { randomBytes } from 'node:crypto';
import type { NotesKept } from '../../chat/facts.ts';
import type { Reply, ReplyChoice } from '../../chat/reply.ts';
import { keptChoice, keptFilling, keptPages } from './kept.ts';
import { LIMITS } from './limits.ts';

export const PLATFORM = 'discord';

/** An ask with the names of what is to be filled in first; none where it is asked as it is. */
export interface Filling {
  readonly ask: string;
  readonly names: readonly string[];
}

/** What a pressed button asks for, and who may press it; `null` for everyone. */
export type Pressed =
  | ({
      readonly kind: 'ask';
      readonly meantFor: string | null;
      /** Of which guild it is asked, where that is another than the place says. */
      readonly guild?: string | undefined;
    } & Filling)
  | { readonly kind: 'page'; readonly reply: Reply; readonly page: number; readonly meantFor: string | null };

/** Whose ask is answered; '' where it is nobody's, and anybody may press its buttons. */
export interface Whose {
  readonly guild: string;
  readonly member: string;
  /** The answer goes to her alone, outside of the guild: its buttons must say which guild they are about. */
  readonly apart?: boolean;
}

const EVERYONE = '*';
const meantFor = (whom: string): string | null => (whom === EVERYONE ? null : whom);

/**
 * The custom id of a choice's button. The ask stands in it where it fits, so that it works as long as the button
 * is there; a longer one is kept under a short key. What is kept works after a restart too, for a month.
 */
export async function idOfChoice(choice: ReplyChoice, whose: Whose, notes: NotesKept): Promise<string> {
  const whom = choice.open || whose.member === '' ? EVERYONE : whose.member;
  const { ask, fillIn: names = [] } = choice;
  const [of, kept] = whose.apart ? [`@${whose.guild}`, { guild: whose.guild }] : ['', {}];
  return standing(`ask${of}:${whom}:${names.join(',')}:${ask}`, () =>
    keptAs('choice', { meantFor: whom, ask, names, ...kept }, whose, notes),
  );
}

/** The custom id of a form that is being filled in. */
export async function idOfForm({ ask, names }: Filling, whose: Whose, notes: NotesKept): Promise<string> {
  return standing(`form:${names.join(',')}:${ask}`, () => keptAs('fill', { ask, names }, whose, notes));
}

/** Keeps a reply of several pages, so that its pages can be turned later; the key names it in the buttons. */
export async function keepPages(
  reply: Reply,
  whose: Whose,
  notes: NotesKept,
  key = shortKey(),
): Promise<string> {
  await notes.keep(PLATFORM, `pages:${key}`, { meantFor: whose.member || EVERYONE, reply }, whose);
  return key;
}

export const idOfPage = (key: string, page: number): string => `page:${key}:${page}`;

/** An id that says all itself, or where it would be too long one that was kept. */
const standing = async (whole: string, kept: () => Promise<string>): Promise<string> =>
  whole.length <= LIMITS.customId ? whole : kept();

/** Keeps what a custom id stands for; gives the id. */
async function keptAs(kind: string, what: object, whose: Whose, notes: NotesKept): Promise<string> {
  const id = `${kind}:${shortKey()}`;
  await notes.keep(PLATFORM, id, what, whose);
  return id;
}

/** The ask and the names of a form that was filled in; null where it is too old. */
export async function fillingOf(customId: string, notes: NotesKept): Promise<Filling | null> {
  const [kind, names = '', ...ask] = customId.split(':');
  if (kind === 'form') return { ask: ask.join(':'), names: namesIn(names) };
  if (kind !== 'fill') return null;
  return keptFilling(await notes.find(PLATFORM, customId));
}

/** What a custom id stands for; null where it is none of ours, or is too old to be kept. */
export async function pressedBy(customId: string, notes: NotesKept): Promise<Pressed | null> {
  const [head = '', ...rest] = customId.split(':');
  const [kind, guild] = head.split('@');
  if (kind === 'ask') {
    const [whom = '', names = '', ...ask] = rest;
    return { kind, guild, ask: ask.join(':'), names: namesIn(names), meantFor: meantFor(whom) };
  }
  if (kind === 'choice') {
    const kept = keptChoice(await notes.find(PLATFORM, customId));
    return kept ? { ...kept, kind: 'ask', meantFor: meantFor(kept.meantFor) } : null;
  }
  if (kind !== 'page') return null;
  const [key = '', page] = rest;
  const kept = keptPages(await notes.find(PLATFORM, `pages:${key}`));
  return kept ? { kind, reply: kept.reply, page: Number(page), meantFor: meantFor(kept.meantFor) } : null;
}

const namesIn = (list: string): string[] => (list === '' ? [] : list.split(','));

const shortKey = (): string => randomBytes(9).toString('base64url');
