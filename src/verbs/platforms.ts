import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Settings } from '../config.ts';
import { readSecret, type Secret } from '../config.ts';
import { CannotStart, EXIT, type Platform, type PlatformNeeds } from '../platforms/platform.ts';
import { sentence } from './sentence.ts';

/** `folder` is where a platform may keep files of its own; null where nothing is to be kept. */
export type OpenPlatform = (
  settings: Settings,
  needs: PlatformNeeds,
  folder: string | null,
) => Promise<Platform>;

/** A secret read when it is needed; without it the platform cannot start. */
export function secretOf(secret: Secret, { base }: Settings): string {
  const read = readSecret(secret, process.env, base);
  if (!read.ok) throw new CannotStart({ sentence: sentence(read.problem), status: EXIT.settings });
  return read.value;
}

/** Every platform by the name that the settings have for it, each loaded when it is to be started. */
export const PLATFORMS: Readonly<Record<string, () => Promise<OpenPlatform>>> = {
  discord: async () => {
    const { startDiscord } = await import('../platforms/discord/start.ts');
    return (settings, needs) => {
      const { discord } = settings;
      if (!discord) throw new Error('no discord in the settings');
      const { api, testGuild, shards } = discord;
      return startDiscord({ ...needs, token: secretOf(discord.token, settings), api, testGuild, shards });
    };
  },
  matrix: async () => {
    const { startMatrix } = await import('../platforms/matrix/start.ts');
    return (settings, needs) => {
      const { matrix } = settings;
      if (!matrix) throw new Error('no matrix in the settings');
      const { homeserver, user, prefix, inviteFrom } = matrix;
      const read = (secret: Secret | undefined) => (secret ? secretOf(secret, settings) : undefined);
      return startMatrix({
        ...needs,
        ...{ homeserver, user, prefix, inviteFrom, folder: settings.data },
        password: read(matrix.password),
        accessToken: read(matrix.accessToken),
        storeKey: secretOf(matrix.storeKey, settings),
        recoveryKey: read(matrix.recoveryKey),
      });
    };
  },
  terminal: async () => {
    const { startTerminal } = await import('../platforms/terminal/start.ts');
    return (_settings, needs, folder) =>
      startTerminal({
        ...needs,
        history: folder === null ? null : join(folder, 'history'),
        pictures: folder === null ? join(tmpdir(), 'honeycount-pictures') : join(folder, 'pictures'),
      });
  },
};
