import type { Facts } from '../chat/facts.ts';

/** The notes under which it is kept which platform a guild is on. */
const GUILDS = 'guilds';

/** On which platform each guild is: learned from its asks, kept for those who speak without being asked. */
export interface Whereabouts {
  /** An ask of this guild came in by this platform. */
  heard(platform: string, guild: string): Promise<void>;
  /** Nothing is known of this guild any more. */
  lost(guild: string): void;
  platformOf(guild: string): Promise<string | undefined>;
}

export function whereaboutsIn({ notes }: Facts): Whereabouts {
  const known = new Map<string, string>();
  return {
    async heard(platform, guild) {
      if (known.get(guild) === platform) return;
      known.set(guild, platform);
      if ((await notes.find(GUILDS, guild)) !== platform)
        await notes.keep(GUILDS, guild, platform, { guild, member: '' });
    },
    lost: (guild) => void known.delete(guild),
    async platformOf(guild) {
      const at = known.get(guild) ?? (await notes.find(GUILDS, guild));
      return typeof at === 'string' ? at : undefined;
    },
  };
}
