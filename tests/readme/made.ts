import { commands } from '../../commands/index.ts';
import { openRoom } from '../../src/chat/dispatch.ts';
import { render } from '../../src/platforms/terminal/render.ts';
import { memoryFacts } from '../standin/memory-facts.ts';

/** Signs a line in the README: near a phone's width, and no table is squeezed. */
const WIDTH = 60;
const NOW = new Date('2026-12-01T10:00:00Z');

const EXAMPLE = /```text\n> ([^\n]+)\n[\s\S]*?```/g;
/** What the guild does together: one organiser's asks, each going on from the one before. */
const TOGETHER = /^\/(?:challenge|log|standings|month|swap)\b/;
const TABLE = /(<!-- commands -->\n)[\s\S]*?(<!-- \/commands -->)/;

/** The README as the program makes it true: each example's reply asked anew, the table from the declarations. */
export async function madeTrue(readme: string): Promise<string> {
  const room = openRoom({
    commands,
    facts: memoryFacts(),
    onFault: (error) => {
      throw error;
    },
  });
  let text = readme;
  for (const [block, words = ''] of readme.matchAll(EXAMPLE)) {
    const together = TOGETHER.test(words);
    const who = { id: together ? 'ada' : `reader of ${words}`, name: 'Ada', organiser: together };
    const reply = await room.answer({ who, guild: 'readme', place: 'home', event: null, words, now: NOW });
    text = text.replace(block, () => `\`\`\`text\n> ${words}\n${render(reply, { width: WIDTH })}\n\`\`\``);
  }
  const rows = await commandRows();
  return text.replace(TABLE, (_, open: string, close: string) => `${open}${rows}${close}`);
}

/** How many examples the README shows. */
export const examplesIn = (readme: string): string[] =>
  [...readme.matchAll(EXAMPLE)].map(([, words = '']) => words);

async function commandRows(): Promise<string> {
  const rows: string[] = [];
  for (const load of Object.values(commands)) {
    const { name, forms } = await load();
    for (const form of forms) {
      const ask = form.name ? `/${name} ${form.name}` : `/${name}`;
      rows.push(`| \`${ask}\` | ${form.summary} | \`${form.examples[0] ?? ask}\` |`);
    }
  }
  return ['| command | for | example |', '| --- | --- | --- |', ...rows, ''].join('\n');
}
