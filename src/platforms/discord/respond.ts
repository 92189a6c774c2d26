import {
  type ButtonInteraction,
  type ChatInputCommandInteraction,
  DiscordAPIError,
  MessageFlags,
  type ModalSubmitInteraction,
} from 'discord.js';
import type { Reply } from '../../chat/reply.ts';
import type { PlatformNeeds } from '../platform.ts';
import { messageOf } from './message.ts';

export type Answerable = ChatInputCommandInteraction | ButtonInteraction | ModalSubmitInteraction;

/** An answer that is not there after so many milliseconds is promised first: the platform waits three seconds. */
const PROMISE_AFTER = 1000;

/** The platform no longer knows the event: three seconds were over before it heard of us. */
const TOO_LATE = 10062;
/** The platform had heard of us after all: an acknowledgement that we thought lost. */
const HEARD_ALREADY = 40060;

/** How one event is answered: with what, and whether anybody else may read it. */
export interface Answering {
  readonly reply: Promise<Reply>;
  /** Settled before the answer is known, since a promise cannot be made private later. */
  readonly alone: boolean;
  readonly whose: { readonly guild: string; readonly member: string };
  /** The page to show of a reply that is turned. */
  readonly at?: { readonly page: number; readonly key: string };
}

/** Answers an event: at once where the answer is quick, else promised and then filled in. */
export async function respond(event: Answerable, answering: Answering, needs: PlatformNeeds): Promise<void> {
  const { alone, whose, at } = answering;
  const message = answering.reply.then(async (reply) => ({
    reply,
    made: await messageOf(reply, { whose, notes: needs.facts.notes, draw: needs.draw }, at),
  }));
  const quick = await Promise.race([message, later(PROMISE_AFTER)]);
  if (quick) return first(event, quick.made, alone || isForAsker(quick.reply), needs);
  const promised = await promise(event, alone, needs);
  const { reply, made } = await message;
  if (!promised) return toPlace(event, made, alone || isForAsker(reply), needs);
  if (alone || !isForAsker(reply)) return fillIn(event, made);
  // Promised where all can read, but only meant for her: the promise goes, the answer comes alone.
  await event.webhook.deleteMessage('@original');
  await event.webhook.send({ ...made, flags: MessageFlags.Ephemeral });
}

type Made = Awaited<ReturnType<typeof messageOf>>;

/** By the event's own token, whatever the library believes has been acknowledged. */
async function fillIn(event: Answerable, made: Made): Promise<void> {
  await event.webhook.editMessage('@original', made);
}

const isForAsker = ({ audience }: Reply): boolean => audience === 'asker';

const later = (ms: number) => new Promise<null>((done) => setTimeout(done, ms, null).unref());

async function first(event: Answerable, made: Made, alone: boolean, needs: PlatformNeeds): Promise<void> {
  try {
    await event.reply({ ...made, ...(alone ? { flags: MessageFlags.Ephemeral } : {}) });
  } catch (error) {
    if (codeOf(error) === HEARD_ALREADY) return fillIn(event, made);
    if (codeOf(error) !== TOO_LATE) throw error;
    await toPlace(event, made, alone, needs);
  }
}

/** Tells the platform that the answer is coming; false where it no longer waits for it. */
async function promise(event: Answerable, alone: boolean, needs: PlatformNeeds): Promise<boolean> {
  try {
    await event.deferReply(alone ? { flags: MessageFlags.Ephemeral } : {});
    return true;
  } catch (error) {
    if (codeOf(error) === HEARD_ALREADY) return true;
    if (codeOf(error) !== TOO_LATE) throw error;
    needs.log.warn({ event: event.id }, 'the platform stopped waiting before our promise reached it');
    return false;
  }
}

/** The event cannot be answered any more, but the asker can: in the place, or alone where only she may read it. */
async function toPlace(event: Answerable, made: Made, alone: boolean, needs: PlatformNeeds): Promise<void> {
  const target = alone ? event.user : event.channel;
  if (!target || !('send' in target)) {
    needs.watch.count('replies_lost_total', { platform: 'discord' });
    return;
  }
  await target.send(made);
}

export const codeOf = (error: unknown): number | string | undefined =>
  error instanceof DiscordAPIError ? error.code : undefined;
