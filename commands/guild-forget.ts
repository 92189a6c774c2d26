import { form } from '../src/chat/command.ts';
import { bare } from '../src/chat/option.ts';
import { yesNo } from '../src/chat/option-kinds.ts';
import { reply } from '../src/chat/reply.ts';

/** Takes away all that is kept of a guild; its messages in its channels are the platform's and stay. */
export const guildForget = form({
  name: 'forget',
  summary: 'Take away all that is kept of the whole guild, once you have said so twice',
  examples: ['/guild forget', '/guild forget confirm:yes'],
  options: { confirm: bare(yesNo('Whether you mean it')) },
  organisers: true,
  audience: 'asker',
  keeps: true,
  answerKept: 'nobodys',
  async run({ confirm }, { guild, facts }) {
    if (confirm === false) return reply({ title: 'Kept', lines: ['All stays as it was.'] });
    if (confirm === undefined)
      return reply({
        title: 'Forget this guild?',
        lines: ['Its challenges, months, swaps, plans, and what its members have set and logged here.'],
        asks: 'Take it all away? It cannot be undone.',
        choices: [
          { label: 'Yes, forget the guild', ask: '/guild forget confirm:yes' },
          { label: 'No, keep it', ask: '/guild forget confirm:no' },
        ],
        notes: ['`/challenge export` writes a challenge’s book to a file first.'],
      });
    await facts.forgetGuild(guild);
    return reply({
      title: 'Forgotten',
      lines: ['Nothing is kept of this guild any more.'],
      notes: ['Backups made before now still hold it: make a new one and delete them.'],
    });
  },
});
