import type { PlatformNeeds } from '../platform.ts';
import { PLATFORM } from './choices.ts';

type LeftNeeds = Pick<PlatformNeeds, 'facts' | 'log' | 'now'>;

const keyOf = (guild: string): string => `left:${guild}`;

/** A guild that was left keeps its facts for a while, in case the bot is invited again. */
export async function noteLeft(guild: string, { facts, log }: LeftNeeds): Promise<void> {
  await facts.notes.keep(PLATFORM, keyOf(guild), { guild });
  log.info({ guild }, 'left a guild; its facts go in 30 days');
}

export async function noteJoined(guild: string, { facts }: LeftNeeds): Promise<void> {
  await facts.notes.remove(PLATFORM, keyOf(guild));
}

/** Forgets the facts of guilds that were left before a moment. */
export async function forgetLeft(before: Date, { facts, log }: LeftNeeds): Promise<void> {
  for (const guild of await facts.notes.before(PLATFORM, 'left:', before)) {
    const id = guild.slice('left:'.length);
    await facts.forgetGuild(id);
    await facts.notes.remove(PLATFORM, guild);
    log.info({ guild: id }, 'forgot a guild that was left');
  }
}
