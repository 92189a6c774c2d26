import type { Command, CommandList } from '../../../src/chat/command.ts';
import { form } from '../../../src/chat/command.ts';
import { bare, required } from '../../../src/chat/option.ts';
import { whole, words } from '../../../src/chat/option-kinds.ts';
import { count, reply } from '../../../src/chat/reply.ts';
import { wrong } from '../../../src/measure/result.ts';

/** Commands that do what no real one does on demand: take long, say much, offer a form, keep a count. */
export function fakeCommands(): {
  commands: CommandList;
  logged: { pieces: number; note: string | undefined }[];
} {
  const logged: { pieces: number; note: string | undefined }[] = [];
  const one = (command: Command) => async () => command;
  const commands: CommandList = {
    slow: one({
      name: 'slow',
      summary: 'Takes its time',
      forms: [
        form({
          name: '',
          summary: 'Takes its time',
          options: { ms: required(whole('How long', 0, 10_000)) },
          examples: ['/slow ms:10'],
          async run({ ms }) {
            await new Promise((done) => setTimeout(done, ms));
            return ms % 10 === 7
              ? wrong('nothing-set', { example: '/slow' })
              : reply({ title: 'Done', lines: [`${ms}`] });
          },
        }),
      ],
    }),
    long: one({
      name: 'long',
      summary: 'Says much',
      forms: [
        form({
          name: '',
          summary: 'Says much',
          options: { rows: required(whole('How many rows', 1, 1000)) },
          examples: ['/long rows:3'],
          run: ({ rows }) =>
            reply({
              title: 'Long '.repeat(100),
              lines: Array.from({ length: Math.ceil(rows / 4) }, (_, i) => `line ${i} ${'word '.repeat(20)}`),
              table: {
                columns: ['a', 'b'],
                rows: Array.from({ length: rows }, (_, i) => [`row ${i}`, `value ${i}`]),
              },
              pictures: [{ name: 'long.png', alt: 'A long picture', of: { draw: 'long' } }],
              choices: Array.from({ length: 43 }, (_, i) => ({ label: `choice ${i}`, ask: `/slow ms:${i}` })),
            }),
        }),
      ],
    }),
    board: one({
      name: 'board',
      summary: 'Stands pinned, with a form',
      forms: [
        form({
          name: '',
          summary: 'Stands pinned',
          options: {},
          examples: ['/board'],
          run: () =>
            reply({
              title: 'Board',
              lines: [`${logged.length} logged`],
              standing: 'board',
              choices: [{ label: 'Log', ask: '/enter', open: true, fillIn: ['pieces', 'note'] }],
            }),
        }),
      ],
    }),
    enter: one({
      name: 'enter',
      summary: 'Enters pieces',
      forms: [
        form({
          name: '',
          summary: 'Enters pieces with a note',
          options: {
            pieces: required(bare(whole('How many', 1, 1000))),
            note: words('A note', 500, 'blue one'),
          },
          examples: ['/enter 3'],
          keeps: true,
          run({ pieces, note }, here) {
            logged.push({ pieces, note });
            return reply({
              title: `Entered for ${here.who.name}`,
              lines: [`${pieces} ${note ?? ''}`],
              figures: { pieces: count(pieces) },
            });
          },
        }),
      ],
    }),
    organise: one({
      name: 'organise',
      summary: 'For organisers',
      forms: [
        form({
          name: '',
          summary: 'For organisers',
          options: {},
          examples: ['/organise'],
          organisers: true,
          run: () => reply({ title: 'Organised', lines: ['yes'] }),
        }),
      ],
    }),
    help: one({
      name: 'help',
      summary: 'Helps',
      forms: [
        form({
          name: '',
          summary: 'Helps',
          options: {},
          examples: ['/help'],
          run: () => reply({ title: 'Help', lines: ['ask'] }),
        }),
      ],
    }),
  };
  return { commands, logged };
}
