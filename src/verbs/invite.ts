import { readSettings } from '../config.ts';
import { CannotStart } from '../platforms/platform.ts';
import { ROOT } from './keeping.ts';
import { secretOf } from './platforms.ts';
import { sentence } from './sentence.ts';
import { readStartFlags } from './start-flags.ts';

/** Prints the link by which an organiser invites the bot, asking for the least that it needs. */
export async function invite(args: readonly string[]): Promise<number> {
  const flags = readStartFlags(args);
  const settings = flags.ok
    ? await readSettings({ file: flags.value.config, env: process.env, root: ROOT })
    : flags;
  if (!settings.ok) return complain(sentence(settings.problem), 2);
  const { discord } = settings.value;
  if (!discord)
    return complain('The settings name no Discord bot. Add "discord": { "token": { "env": "NAME" } }.', 2);
  const { inviteLink } = await import('../platforms/discord/invite-link.ts');
  try {
    const link = await inviteLink({ token: secretOf(discord.token, settings.value), api: discord.api });
    process.stdout.write(`${link}\n`);
    return 0;
  } catch (error) {
    if (!(error instanceof CannotStart)) throw error;
    return complain(error.ended.sentence, error.ended.status);
  }
}

function complain(words: string, status: number): number {
  process.stderr.write(`${words}\n`);
  return status;
}
