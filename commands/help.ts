import { type Answer, type Command, type CommandList, type Form, form } from '../src/chat/command.ts';
import { type AnyOption, bare } from '../src/chat/option.ts';
import { words } from '../src/chat/option-kinds.ts';
import { type Reply, reply } from '../src/chat/reply.ts';
import { wrong } from '../src/measure/result.ts';

const help: Command = {
  name: 'help',
  summary: 'What I can work out, and how to ask',
  forms: [
    form({
      name: '',
      summary: 'What I can work out, and how to ask',
      examples: ['/help', '/help cut', '/help count garden'],
      options: { about: bare(words('The command to explain', 40, 'cut')) },
      run({ about }, { commands }) {
        return about ? explain(about, commands) : overview(commands);
      },
    }),
  ],
};

export default help;

async function overview(commands: CommandList): Promise<Reply> {
  const all = await Promise.all(Object.values(commands).map((load) => load()));
  return reply({
    title: 'What I can work out',
    lines: ['Ask in plain words, or with a command.', '`/help cut` explains one, with examples.'],
    table: { columns: ['command', 'for'], rows: all.map(({ name, summary }) => [`/${name}`, summary]) },
    choices: [{ label: 'How to cut', ask: '/help cut' }],
  });
}

async function explain(about: string, commands: CommandList): Promise<Answer> {
  const [name = '', formName = ''] = about.toLowerCase().replace(/^[/!]/, '').split(/\s+/);
  const command = Object.hasOwn(commands, name) ? await commands[name]?.() : undefined;
  const known = Object.keys(commands);
  if (!command) return wrong('command-unknown', { got: name, known });
  const named = command.forms.find((one) => one.name === formName);
  const only = command.forms.length === 1 ? command.forms[0] : undefined;
  const one = formName ? named : only;
  if (formName && !named)
    return wrong('form-unknown', { got: formName, known: command.forms.map((f) => f.name) });
  return one ? explainForm(command, one) : explainForms(command);
}

function explainForms({ name, summary, forms }: Command): Reply {
  return reply({
    title: `/${name}`,
    lines: [`${summary}.`, `\`/help ${name} ${forms[0]?.name}\` explains one of them.`],
    table: { columns: ['ask', 'for'], rows: forms.map((one) => [`/${name} ${one.name}`, one.summary]) },
    notes: forms.map((one) => one.examples[0] ?? '').filter((example) => example !== ''),
  });
}

function explainForm(command: Command, one: Form): Reply {
  const options = Object.entries(one.options);
  return reply({
    title: one.name ? `/${command.name} ${one.name}` : `/${command.name}`,
    lines: [`${one.summary}.`, 'For example:', ...one.examples.map((example) => `\`${example}\``)],
    table:
      options.length === 0
        ? null
        : {
            columns: ['option', 'what it is'],
            rows: options.map(([key, option]) => [key, describe(option)]),
          },
    notes: one.organisers ? ['For the guild’s organisers.'] : [],
  });
}

/** What an option is, what it may be, and what it is when nobody says. */
function describe({ summary, bounds, otherwise, required, neededUnless }: AnyOption): string {
  const may = bounds ? ` (${bounds})` : '';
  const or = neededUnless ? `; needed, or ${neededUnless}` : '';
  const unless = required ? '; needed' : otherwise ? `; otherwise ${otherwise}` : or;
  return `${summary}${may}${unless}`;
}
