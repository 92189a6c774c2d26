import { DiscordAPIError, HTTPError } from 'discord.js';
import { type Ended, EXIT } from '../platform.ts';

/** The gateway's own closing codes that no waiting mends, from the platform's documentation. */
const CLOSED: Readonly<Record<number, string>> = {
  4004: 'Discord does not take the token. Look at "discord.token" in the settings: copy it anew from the bot’s page.',
  4010: 'Discord does not take the number of shards. Leave "discord.shards" out, or write "auto".',
  4011: 'Discord wants this bot in more shards. Write "shards": "auto" in the settings.',
  4012: 'Discord no longer serves this version of its gateway. Update the program.',
  4013: 'Discord does not know an intent that was asked for. Update the program.',
  4014: 'Discord does not allow an intent that was asked for. The bot needs Guilds and Guild Messages only: look at its page.',
};

/** Why the connection ended, in a sentence, and whether starting again may help. */
export function endedBy(error: unknown): Ended {
  const code = codeOf(error);
  const closed = typeof code === 'number' ? CLOSED[code] : undefined;
  if (closed) return { sentence: closed, status: EXIT.settings };
  if (code === 'TokenInvalid' || statusOf(error) === 401)
    return { sentence: CLOSED[4004] ?? '', status: EXIT.settings };
  if (statusOf(error) === 403 || statusOf(error) === 404)
    return {
      sentence: `Discord refused: ${messageOf(error)}. Is the bot in the guild that the settings name, invited with the link of npm run -s invite?`,
      status: EXIT.refused,
    };
  return { sentence: `Discord cannot be reached: ${messageOf(error)}. Try again later.`, status: EXIT.later };
}

const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** The library tells some closings by their words alone. */
const WORDS: readonly (readonly [RegExp, number])[] = [
  [/authentication failed/i, 4004],
  [/invalid shard/i, 4010],
  [/sharding (?:is )?required/i, 4011],
  [/disallowed intent/i, 4014],
  [/invalid intent/i, 4013],
];

const codeOf = (error: unknown): unknown =>
  WORDS.find(([words]) => words.test(messageOf(error)))?.[1] ?? ownCode(error);

const ownCode = (error: unknown): unknown =>
  typeof error === 'object' && error !== null && 'code' in error ? error.code : undefined;

const statusOf = (error: unknown): number | undefined =>
  error instanceof DiscordAPIError || error instanceof HTTPError ? error.status : undefined;

/**
 * An error as the log has it: the library's own errors carry what was sent, and the event's token in an address,
 * and neither belongs there.
 */
export function accountOf(error: unknown): object {
  const why = messageOf(error);
  if (error instanceof DiscordAPIError || error instanceof HTTPError)
    return { why, status: error.status, code: ownCode(error), method: error.method };
  return { why, code: ownCode(error), stack: error instanceof Error ? error.stack : undefined };
}
