import type { PlatformNeeds } from '../platform.ts';
import { PLATFORM } from './choices.ts';

type LeftNeeds = Pick<PlatformNeeds, 'facts' | 'log' | 'now'>;

const IN = 'in:';
const LEFT = 'left:';

/** A guild that was left keeps its facts for a while, in case the bot is invited again. */
export async function noteLeft(guild: string, { facts: { notes }, log }: LeftNeeds): Promise<void> {
  await notes.remove(PLATFORM, IN + guild);
  await notes.keep(PLATFORM, LEFT + guild, { guild });
  log.info({ guild }, 'left a guild; its facts go in 30 days');
}

export async function noteJoined(guild: string, { facts: { notes } }: LeftNeeds): Promise<void> {
  await notes.remove(PLATFORM, LEFT + guild);
  if ((await notes.find(PLATFORM, IN + guild)) === undefined) await notes.keep(PLATFORM, IN + guild, {});
}

/** What has changed while the bot was away: guilds that it is in now, and guilds that it was in and is no more. */
export async function noteChanges(guilds: ReadonlySet<string>, needs: LeftNeeds): Promise<void> {
  const { facts, now } = needs;
  const soon = new Date(now().getTime() + 60_000);
  for (const key of await facts.notes.before(PLATFORM, IN, soon)) {
    const guild = key.slice(IN.length);
    if (!guilds.has(guild)) await noteLeft(guild, needs);
  }
  for (const guild of guilds) await noteJoined(guild, needs);
}

/** Forgets the facts of guilds that were left before a moment. */
export async function forgetLeft(before: Date, { facts, log }: LeftNeeds): Promise<void> {
  for (const key of await facts.notes.before(PLATFORM, LEFT, before)) {
    const guild = key.slice(LEFT.length);
    await facts.forgetGuild(guild);
    await facts.notes.remove(PLATFORM, key);
    log.info({ guild }, 'forgot a guild that was left');
  }
}
