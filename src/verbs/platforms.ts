import { join } from 'node:path';
import type { Settings } from '../config.ts';
import type { Platform, PlatformNeeds } from '../platforms/platform.ts';

/** `folder` is where a platform may keep files of its own; null where nothing is to be kept. */
export type OpenPlatform = (
  settings: Settings,
  needs: PlatformNeeds,
  folder: string | null,
) => Promise<Platform>;

/** Every platform by the name that the settings have for it, each loaded when it is to be started. */
export const PLATFORMS: Readonly<Record<string, () => Promise<OpenPlatform>>> = {
  terminal: async () => {
    const { startTerminal } = await import('../platforms/terminal/start.ts');
    return (_settings, needs, folder) =>
      startTerminal({ ...needs, history: folder === null ? null : join(folder, 'history') });
  },
};
