import { form } from '../src/chat/command.ts';
import { marked } from '../src/chat/csv.ts';
import { bare, otherwise } from '../src/chat/option.ts';
import { choice } from '../src/chat/option-kinds.ts';
import { count, reply } from '../src/chat/reply.ts';
import { exported } from '../src/guild/book-export.ts';
import { wrong } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';
import { many } from '../src/measure/speech.ts';
import { challengeOption, whichChallenge } from './which-challenge.ts';

/** A longer book is too much for a message: the person who keeps the program running writes it to a file. */
const MOST_LINES = 5000;

export const exportForm = form({
  name: 'export',
  summary: 'A challenge’s whole book as a file, for a spreadsheet or another program',
  examples: ['/challenge export', '/challenge export format:json challenge:Spring'],
  options: {
    challenge: challengeOption,
    format: otherwise(
      bare(
        choice('What kind of file', [
          { name: 'csv', title: 'CSV, for a spreadsheet', words: ['spreadsheet'] },
          { name: 'json', title: 'JSON, for a program' },
        ]),
      ),
      'csv',
    ),
  },
  organisers: true,
  audience: 'asker',
  // It changes nothing, and would be kept a second time in all its length.
  answerKept: 'not',
  async run({ challenge, format }, here) {
    const found = await whichChallenge(challenge, here, 'any');
    if ('asks' in found) return found.asks;
    if (!found.ok) return found;
    const of = found.value;
    if (of.lines > MOST_LINES)
      return wrong('book-long', {
        lines: grouped(of.lines),
        most: grouped(MOST_LINES),
        instead: `npm run -s export -- --guild ${of.guild} --challenge ${of.number} --format ${format} --out ${fileName(of.name, format)}`,
      });
    let text = '';
    for await (const piece of exported(format, of, here.facts.challenges)) text += piece;
    return reply({
      title: `${of.name}, written out`,
      lines: [`${many(of.lines, 'line', 'lines')} of its book, in one file.`],
      figures: { lines: count(of.lines) },
      pictures: [
        {
          name: fileName(of.name, format),
          alt: `The book of ${of.name}: ${many(of.lines, 'line', 'lines')}`,
          of: { draw: 'text', text: format === 'csv' ? marked(text) : text },
        },
      ],
      notes: ['Lines that take something back are in it too: pieces below zero.'],
    });
  },
});

/** The challenge's name as a file can have it on any machine. */
function fileName(name: string, format: string): string {
  const plain = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  return `${plain || 'challenge'}.${format}`;
}
