import { dirname, join } from 'node:path';
import type { Settings } from '../config.ts';
import { storeOf } from '../config.ts';
import type { Platform, PlatformNeeds } from '../platforms/platform.ts';

export type OpenPlatform = (settings: Settings, needs: PlatformNeeds) => Promise<Platform>;

/** Every platform by the name that the settings have for it, each loaded when it is to be started. */
export const PLATFORMS: Readonly<Record<string, () => Promise<OpenPlatform>>> = {
  terminal: async () => {
    const { startTerminal } = await import('../platforms/terminal/start.ts');
    return (settings, needs) =>
      startTerminal({ ...needs, history: join(dirname(storeOf(settings)), 'history') });
  },
};
