import { DiscordAPIError, RESTJSONErrorCodes, type TextBasedChannel } from 'discord.js';
import type { Reply } from '../../chat/reply.ts';
import type { PlatformNeeds } from '../platform.ts';
import { PLATFORM } from './choices.ts';
import { messageOf } from './message.ts';

/**
 * One message of a name stands pinned in a place and is changed, not repeated. Where it has been deleted a new
 * one is sent; where pinning is not allowed it stands unpinned.
 */
export async function keepStanding(
  channel: TextBasedChannel,
  reply: Reply,
  whose: { readonly guild: string; readonly member: string },
  { facts, draw, log, watch }: PlatformNeeds,
): Promise<void> {
  if (!('send' in channel)) return;
  const key = `standing:${channel.id}:${reply.standing}`;
  const made = await messageOf(reply, { whose, notes: facts.notes, draw });
  const kept = (await facts.notes.find(PLATFORM, key)) as { message: string } | undefined;
  if (kept) {
    try {
      await channel.messages.edit(kept.message, { ...made, attachments: [] });
      return;
    } catch (error) {
      if (!isCode(error, RESTJSONErrorCodes.UnknownMessage)) throw error;
    }
  }
  const sent = await channel.send(made);
  await facts.notes.keep(PLATFORM, key, { message: sent.id });
  try {
    await sent.pin();
  } catch (error) {
    if (!isCode(error, RESTJSONErrorCodes.MissingPermissions)) throw error;
    watch.count('sends_refused_total', { platform: PLATFORM });
    log.warn({ channel: channel.id }, 'may not pin messages here');
  }
}

const isCode = (error: unknown, code: number): boolean =>
  error instanceof DiscordAPIError && error.code === code;
