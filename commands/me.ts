import { type Command, form } from '../src/chat/command.ts';
import { settle } from '../src/chat/defaults.ts';
import { GUILD_ITSELF } from '../src/chat/facts.ts';
import { reply } from '../src/chat/reply.ts';
import { wrong } from '../src/measure/result.ts';
import { decimal } from '../src/measure/ruler.ts';
import { speech } from '../src/measure/speech.ts';
import { changesFrom, defaultOptions, resetOf, resetOption, shownDefaults } from './defaults.ts';
import { ownLifeOptions } from './guild-life-options.ts';
import { meExport, meForget } from './me-kept.ts';
import { paceFor, paceSource } from './own-pace.ts';

const me: Command = {
  name: 'me',
  summary: 'Your own units, seam, cloth width, stitches, pace and time zone; all that is kept of you',
  standing: 'show',
  forms: [
    form({
      name: 'show',
      summary: 'What is set for you',
      examples: ['/me'],
      options: {},
      audience: 'asker',
      async run(_, here) {
        const pace = await paceFor(undefined, 1, here);
        const told = `${paceSource(pace)}: ${decimal(pace.minutes ?? 0, 1)} min for a seam of ${here.say.plain(1)}.`;
        return reply({
          title: `Set for ${here.who.name}`,
          ...shownDefaults(here.defaults, here.say),
          notes: pace.from === 'logs' ? [told] : [],
        });
      },
    }),
    form({
      name: 'set',
      summary: 'Set what is taken when you do not say it',
      examples: [
        '/me set unit:cm',
        '/me set seam:3/8in width:40in',
        '/me set zone:Europe/London nudge:sunday',
      ],
      options: { ...defaultOptions, ...ownLifeOptions },
      audience: 'asker',
      keeps: true,
      async run(values, here) {
        const changes = changesFrom({ ...values, ...(values.nudge ? { nudgePlace: here.place } : {}) });
        if (Object.keys(changes).length === 0)
          return wrong('nothing-set', { example: '/me set unit:cm, or /me set seam:3/8in' });
        const own = await here.facts.defaults.set(here.guild, here.who.id, changes);
        const defaults = settle(own, await here.facts.defaults.read(here.guild, GUILD_ITSELF));
        return reply({
          title: `Kept for ${here.who.name}`,
          ...shownDefaults(defaults, speech(defaults.reading.value)),
        });
      },
    }),
    form({
      name: 'reset',
      summary: 'Go back to what the guild has set',
      examples: ['/me reset', '/me reset seam'],
      options: { what: resetOption },
      audience: 'asker',
      keeps: true,
      async run({ what }, here) {
        const { guild, who, facts } = here;
        const reset = what && resetOf(what);
        if (!reset) await facts.defaults.clear(guild, who.id);
        const own = reset ? await facts.defaults.set(guild, who.id, reset.changes) : {};
        const defaults = settle(own, await facts.defaults.read(guild, GUILD_ITSELF));
        return reply({
          title: reset ? `Your ${reset.words}` : 'Yours are cleared',
          ...shownDefaults(defaults, speech(defaults.reading.value)),
        });
      },
    }),
    meExport,
    meForget,
  ],
};

export default me;
