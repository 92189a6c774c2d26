import { OAuth2Scopes, PermissionFlagsBits, REST, Routes } from 'discord.js';
import { CannotStart } from '../platform.ts';
import { endedBy } from './trouble.ts';

/** The least the bot needs where it answers: to see the place, write, embed, attach, and pin what stands. */
export const PERMISSIONS =
  PermissionFlagsBits.ViewChannel |
  PermissionFlagsBits.SendMessages |
  PermissionFlagsBits.SendMessagesInThreads |
  PermissionFlagsBits.EmbedLinks |
  PermissionFlagsBits.AttachFiles |
  PermissionFlagsBits.ReadMessageHistory |
  PermissionFlagsBits.PinMessages;

export interface InviteNeeds {
  readonly token: string;
  readonly api?: string | undefined;
}

/** The link by which whoever manages a guild lets the bot in. */
export async function inviteLink({ token, api }: InviteNeeds): Promise<string> {
  const rest = new REST({ version: '10', ...(api ? { api } : {}) }).setToken(token);
  try {
    const { id } = (await rest.get(Routes.currentApplication())) as { id: string };
    const link = new URL('https://discord.com/oauth2/authorize');
    link.searchParams.set('client_id', id);
    link.searchParams.set('scope', `${OAuth2Scopes.Bot} ${OAuth2Scopes.ApplicationsCommands}`);
    link.searchParams.set('permissions', String(PERMISSIONS));
    return String(link);
  } catch (error) {
    throw new CannotStart(endedBy(error), error);
  }
}
