import {
  type ButtonInteraction,
  type ChatInputCommandInteraction,
  DiscordAPIError,
  type ModalSubmitInteraction,
} from 'discord.js';
import type { Reply } from '../../chat/reply.ts';
import type { PlatformNeeds } from '../platform.ts';
import { type Made, messageAnyway } from './message.ts';
import { answer, answerAloneInstead, change, fillIn, promise, promiseChange, sendTo } from './send.ts';

export type Answerable = ChatInputCommandInteraction | ButtonInteraction | ModalSubmitInteraction;

/** An answer that is not there after so many milliseconds is promised first: the platform waits three seconds. */
const PROMISE_AFTER = 1000;

/** The platform no longer knows the event: three seconds were over before it heard of us. */
export const TOO_LATE = 10062;
/** The platform had heard of us after all: an acknowledgement that we thought lost. */
export const HEARD_ALREADY = 40060;

/** How one event is answered: with what, and whether anybody else may read it. */
export interface Answering {
  readonly reply: Promise<Reply>;
  /** Settled before the answer is known, since a promise cannot be made private later. */
  readonly alone: boolean;
  readonly whose: { readonly guild: string; readonly member: string };
}

/** Answers an event: at once where the answer is quick, else promised and then filled in. */
export async function respond(event: Answerable, answering: Answering, needs: PlatformNeeds): Promise<void> {
  const { alone, whose } = answering;
  const message = answering.reply.then(async (reply) => ({
    made: await messageAnyway(reply, { whose, notes: needs.facts.notes, draw: needs.draw }, needs),
    alone: alone || reply.audience === 'asker',
  }));
  const quick = await soon(message);
  if (quick) return first(event, quick.made, quick.alone, needs);
  const heard = await promised(event, alone, needs);
  const { made, alone: forAsker } = await message;
  const { rest } = event.client;
  if (!heard) return toPlace(event, made, forAsker, needs);
  if (alone || !forAsker) await fillIn(rest, event, made);
  // Promised where all can read, but only meant for her: the promise goes, the answer comes alone.
  else await answerAloneInstead(rest, event, made);
}

/** Changes the message whose button was pressed: at once, or promised first where that takes its time. */
export async function respondByChange(event: ButtonInteraction, coming: Promise<Made>): Promise<void> {
  const { rest } = event.client;
  const quick = await soon(coming);
  if (quick) return void (await change(rest, event, quick));
  await promiseChange(rest, event);
  await fillIn(rest, event, await coming);
}

/** What comes before the promise is due; null where it does not. */
async function soon<T>(coming: Promise<T>): Promise<T | null> {
  const { promise: due, resolve } = Promise.withResolvers<null>();
  const timer = setTimeout(resolve, PROMISE_AFTER, null);
  try {
    return await Promise.race([coming, due]);
  } finally {
    clearTimeout(timer);
  }
}

async function first(event: Answerable, made: Made, alone: boolean, needs: PlatformNeeds): Promise<void> {
  const { rest } = event.client;
  try {
    await answer(rest, event, made, alone);
  } catch (error) {
    if (codeOf(error) === HEARD_ALREADY) return void (await fillIn(rest, event, made));
    if (codeOf(error) !== TOO_LATE) throw error;
    await toPlace(event, made, alone, needs);
  }
}

/** Tells the platform that the answer is coming; false where it no longer waits for it. */
async function promised(event: Answerable, alone: boolean, { log }: PlatformNeeds): Promise<boolean> {
  try {
    await promise(event.client.rest, event, alone);
    return true;
  } catch (error) {
    if (codeOf(error) === HEARD_ALREADY) return true;
    if (codeOf(error) !== TOO_LATE) throw error;
    log.warn({ event: event.id }, 'the platform stopped waiting before our promise reached it');
    return false;
  }
}

/** The event cannot be answered any more, but the asker can: in the place, or alone where only she may read it. */
async function toPlace(event: Answerable, made: Made, alone: boolean, needs: PlatformNeeds): Promise<void> {
  const channel = alone ? (await event.user.createDM()).id : event.channelId;
  if (channel === null) return needs.watch.count('replies_lost_total', { platform: 'discord' });
  await sendTo(event.client.rest, channel, made, { nonce: event.id });
}

export const codeOf = (error: unknown): number | string | undefined =>
  error instanceof DiscordAPIError ? error.code : undefined;
