import { type Client, DiscordAPIError, Routes } from 'discord.js';
import type { CommandList } from '../../chat/command.ts';
import type { Facts } from '../../chat/facts.ts';
import type { Log } from '../platform.ts';
import { PLATFORM } from './choices.ts';
import { keptScope } from './kept.ts';
import { isSame, type Registered, registrations } from './register.ts';

export interface RegisterNeeds {
  readonly commands: CommandList;
  readonly facts: Facts;
  readonly log: Log;
  readonly testGuild?: string | undefined;
}

/** The note of the scope that the commands are registered in: a guild's id, or '' for all guilds. */
const SCOPE = 'registered';

/** The address of the commands of a guild, or with '' of all guilds. */
function routeIn(client: Client, guild: string) {
  const id = client.application?.id ?? '';
  return guild ? Routes.applicationGuildCommands(id, guild) : Routes.applicationCommands(id);
}

/** Compares what the platform has with what is declared, in one scope, and writes it whole only where they differ. */
export async function keepRegistered(
  client: Client,
  { testGuild = '', commands, log }: RegisterNeeds,
): Promise<void> {
  const route = routeIn(client, testGuild);
  const theirs = (await client.rest.get(route)) as Registered[];
  const ours = await registrations(commands);
  if (isSame(ours, theirs)) return;
  await client.rest.put(route, { body: ours });
  log.info({ commands: ours.length, guild: testGuild || null }, 'commands registered');
}

/** Where the commands were registered in another scope before, they go from there: they would be offered twice. */
export async function keepToOneScope(
  client: Client,
  { testGuild = '', facts, log }: RegisterNeeds,
): Promise<void> {
  const before = keptScope(await facts.notes.find(PLATFORM, SCOPE))?.guild;
  if (before === testGuild) return;
  if (before !== undefined) {
    await client.rest.put(routeIn(client, before), { body: [] }).catch(unlessGone);
    log.info({ guild: before || null }, 'commands taken back');
  }
  await facts.notes.keep(PLATFORM, SCOPE, { guild: testGuild });
}

/** In a guild that the bot is no longer in it has no commands either. */
function unlessGone(error: unknown): void {
  if (!(error instanceof DiscordAPIError) || ![403, 404].includes(error.status)) throw error;
}
