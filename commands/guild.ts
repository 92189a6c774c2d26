import { type Command, form, type Here } from '../src/chat/command.ts';
import { type KeptDefaults, settle } from '../src/chat/defaults.ts';
import { GUILD_ITSELF } from '../src/chat/facts.ts';
import { reply } from '../src/chat/reply.ts';
import { wrong } from '../src/measure/result.ts';
import { type Speech, speech } from '../src/measure/speech.ts';
import { changesFrom, defaultOptions, resetOf, resetOption, shownDefaults } from './defaults.ts';
import { guildForget } from './guild-forget.ts';
import { guildLifeOptions } from './guild-life-options.ts';

const guild: Command = {
  name: 'guild',
  summary: 'The guild’s units, seam, cloth width, stitches, pace and time zone',
  standing: 'show',
  forms: [
    form({
      name: 'show',
      summary: 'What is set for the whole guild',
      examples: ['/guild'],
      options: {},
      async run(_, here) {
        const kept = await here.facts.defaults.read(here.guild, GUILD_ITSELF);
        return reply({ title: 'Set for the guild', ...shownDefaults(settle({}, kept), here.say) });
      },
    }),
    form({
      name: 'set',
      summary: 'Set what is taken when a member has not set her own',
      examples: [
        '/guild set width:40in',
        '/guild set unit:cm zone:Europe/Berlin',
        '/guild set standings:totals',
      ],
      options: { ...defaultOptions, ...guildLifeOptions },
      organisers: true,
      keeps: true,
      async run(values, here) {
        const changes = changesFrom(values);
        if (Object.keys(changes).length === 0)
          return wrong('nothing-set', { example: '/guild set unit:cm, or /guild set width:40in' });
        const kept = await here.facts.defaults.set(here.guild, GUILD_ITSELF, changes);
        return reply({
          title: 'Kept for the guild',
          ...shownDefaults(settle({}, kept), await sayNow(here, kept)),
        });
      },
    }),
    form({
      name: 'reset',
      summary: 'Go back to what is usual',
      examples: ['/guild reset', '/guild reset width'],
      options: { what: resetOption },
      organisers: true,
      keeps: true,
      async run({ what }, here) {
        const { facts, guild: of } = here;
        const reset = what && resetOf(what);
        if (!reset) await facts.defaults.clear(of, GUILD_ITSELF);
        const kept = reset ? await facts.defaults.set(of, GUILD_ITSELF, reset.changes) : {};
        return reply({
          title: reset ? `The guild’s ${reset.words}` : 'The guild’s are cleared',
          ...shownDefaults(settle({}, kept), await sayNow(here, kept)),
        });
      },
    }),
    guildForget,
  ],
};

export default guild;

/** How lengths are read back to the asker from now on: her own way, else the one just set for the guild. */
async function sayNow({ facts, guild, who }: Here, kept: KeptDefaults): Promise<Speech> {
  return speech(settle(await facts.defaults.read(guild, who.id), kept).reading.value);
}
