import { randomBytes } from 'node:crypto';
import type { NotesKept } from '../../chat/facts.ts';
import type { Reply, ReplyChoice } from '../../chat/reply.ts';
import { LIMITS } from './limits.ts';

export const PLATFORM = 'discord';

/** What a pressed button asks for, and who may press it; `null` for everyone. */
export type Pressed =
  | { readonly kind: 'ask'; readonly ask: string; readonly meantFor: string | null }
  | {
      readonly kind: 'fill';
      readonly ask: string;
      readonly names: readonly string[];
      readonly meantFor: string | null;
    }
  | { readonly kind: 'page'; readonly reply: Reply; readonly page: number; readonly meantFor: string | null };

interface Whose {
  readonly guild: string;
  readonly member: string;
}

/**
 * The custom id of a choice's button. The ask stands in it where it fits; a longer one is kept under a short
 * key, so that the button works after a restart either way.
 */
export async function idOfChoice(choice: ReplyChoice, whose: Whose, notes: NotesKept): Promise<string> {
  const meantFor = choice.open ? '*' : whose.member;
  if (choice.fillIn) {
    const key = shortKey();
    await notes.keep(PLATFORM, `choice:${key}`, { meantFor, ask: choice.ask, names: choice.fillIn }, whose);
    return `key:${key}`;
  }
  const whole = `ask:${meantFor}:${choice.ask}`;
  if (whole.length <= LIMITS.customId) return whole;
  const key = shortKey();
  await notes.keep(PLATFORM, `choice:${key}`, { meantFor, ask: choice.ask }, whose);
  return `key:${key}`;
}

/** Keeps a reply of several pages, so that its pages can be turned later; the key names it in the buttons. */
export async function keepPages(reply: Reply, whose: Whose, notes: NotesKept): Promise<string> {
  const key = shortKey();
  await notes.keep(PLATFORM, `pages:${key}`, { meantFor: whose.member, reply }, whose);
  return key;
}

export const idOfPage = (key: string, page: number): string => `page:${key}:${page}`;

interface KeptChoice {
  readonly meantFor: string;
  readonly ask: string;
  readonly names?: readonly string[];
}

/** Keeps what a form that is being filled in will ask. */
export async function keepFilling(
  ask: string,
  names: readonly string[],
  whose: Whose,
  notes: NotesKept,
): Promise<string> {
  const key = shortKey();
  await notes.keep(PLATFORM, `fill:${key}`, { ask, names }, whose);
  return key;
}

/** The ask and the names of a form that was filled in; null where it is too old. */
export async function fillingOf(
  customId: string,
  notes: NotesKept,
): Promise<{ ask: string; names: readonly string[] } | null> {
  if (!customId.startsWith('fill:')) return null;
  const kept = await notes.find(PLATFORM, customId);
  return (kept as { ask: string; names: readonly string[] } | undefined) ?? null;
}

/** What a custom id stands for; null where it is none of ours, or is too old to be kept. */
export async function pressedBy(customId: string, notes: NotesKept): Promise<Pressed | null> {
  const [kind = '', key = '', ...rest] = customId.split(':');
  if (kind === 'ask') return { kind, ask: rest.join(':'), meantFor: key === '*' ? null : key };
  if (kind === 'key') {
    const kept = (await notes.find(PLATFORM, `choice:${key}`)) as KeptChoice | undefined;
    if (!kept) return null;
    const { ask, names } = kept;
    const meantFor = kept.meantFor === '*' ? null : kept.meantFor;
    return names ? { kind: 'fill', ask, names, meantFor } : { kind: 'ask', ask, meantFor };
  }
  if (kind !== 'page') return null;
  const kept = (await notes.find(PLATFORM, `pages:${key}`)) as { meantFor: string; reply: Reply } | undefined;
  return kept ? { kind, reply: kept.reply, page: Number(rest[0]), meantFor: kept.meantFor } : null;
}

const shortKey = (): string => randomBytes(9).toString('base64url');
