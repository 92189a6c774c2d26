import { type Client, Routes } from 'discord.js';
import type { CommandList } from '../../chat/command.ts';
import type { Log } from '../platform.ts';
import { isSame, type Registered, registrations } from './register.ts';

export interface RegisterNeeds {
  readonly commands: CommandList;
  readonly log: Log;
  readonly testGuild?: string | undefined;
}

/** Compares what the platform has with what is declared, in one scope, and writes it whole only where they differ. */
export async function keepRegistered(client: Client<true> | Client, needs: RegisterNeeds): Promise<void> {
  const id = client.application?.id ?? '';
  const { testGuild, commands, log } = needs;
  const route = testGuild ? Routes.applicationGuildCommands(id, testGuild) : Routes.applicationCommands(id);
  const theirs = (await client.rest.get(route)) as Registered[];
  const ours = await registrations(commands);
  if (isSame(ours, theirs)) return;
  await client.rest.put(route, { body: ours });
  log.info({ commands: ours.length, guild: testGuild ?? null }, 'commands registered');
}
