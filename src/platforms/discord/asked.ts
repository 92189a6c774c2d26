import {
  ApplicationCommandOptionType,
  type ChatInputCommandInteraction,
  type CommandInteractionOption,
  type Interaction,
  type Message,
  PermissionFlagsBits,
} from 'discord.js';
import type { Ask, AskedOptions, FilledIn, Member } from '../../chat/command.ts';
import { guildAlone } from '../../chat/facts.ts';
import { DEFAULT_FORM, IN_WORDS } from './register.ts';

/** The guild's id, or for words said to the bot alone the member's own. */
const guildOf = (guildId: string | null, userId: string): string => guildId ?? guildAlone(userId);

/** The presser or asker, with her right as the platform states it for this very event. */
export function memberOf(interaction: Interaction): Member {
  const { user, memberPermissions, member } = interaction;
  const name = (member && 'displayName' in member ? member.displayName : null) ?? user.displayName;
  return { id: user.id, name, organiser: memberPermissions?.has(PermissionFlagsBits.ManageGuild) ?? false };
}

/** An ask with the event's own id, so that the same event delivered again is the same ask. */
export function askOf(interaction: Interaction, words: Ask['words'], now: Date, guild?: string): Ask {
  return {
    who: memberOf(interaction),
    guild: guildOf(interaction.guildId ?? guild ?? null, interaction.user.id),
    place: interaction.channelId ?? '',
    event: `discord:${interaction.id}`,
    onlyEffects: true,
    words,
    now,
  };
}

/** Which command a slash command is, and its words by the names of its options. */
export function optionsOf(interaction: ChatInputCommandInteraction): AskedOptions {
  const [first] = interaction.options.data;
  const sub = first?.type === ApplicationCommandOptionType.Subcommand ? first : undefined;
  const given = sub ? (sub.options ?? []) : interaction.options.data;
  return {
    command: interaction.commandName,
    form: sub ? (sub.name === DEFAULT_FORM ? '' : sub.name) : '',
    options: Object.fromEntries(
      given.map(({ name, value }: CommandInteractionOption) => [name, String(value ?? '')]),
    ),
  };
}

/** What is asked with the options: with those beside them that have no place of their own and were typed. */
export function asksFor({ command, form, options }: AskedOptions): AskedOptions | FilledIn {
  const { [IN_WORDS]: more, ...filled } = options;
  if (more === undefined) return { command, form, options };
  return { ask: [`/${command}`, form, more].filter((part) => part !== '').join(' '), filled };
}

/** What was said to the bot in a message that mentions it: the words without the mention. */
export function wordsTo(botId: string, content: string): string | null {
  const mention = new RegExp(`<@!?${botId}>`, 'g');
  return mention.test(content) ? content.replace(mention, ' ').replace(/\s+/g, ' ').trim() : null;
}

/** A plain question or a typed command in a message that mentions the bot. */
export function askInMessage(message: Message, words: string, now: Date): Ask {
  const { author, member, guildId, channelId } = message;
  const organiser = member?.permissions.has(PermissionFlagsBits.ManageGuild) ?? false;
  return {
    who: { id: author.id, name: member?.displayName ?? author.displayName, organiser },
    guild: guildOf(guildId, author.id),
    place: channelId,
    event: `discord:${message.id}`,
    onlyEffects: true,
    words,
    now,
  };
}
