import { form, type Here } from '../src/chat/command.ts';
import { bare } from '../src/chat/option.ts';
import { yesNo } from '../src/chat/option-kinds.ts';
import { count, type Picture, type Reply, reply } from '../src/chat/reply.ts';
import type { KeptRows } from '../src/guild/kept-of-facts.ts';
import { many } from '../src/measure/speech.ts';

/** So many characters of an export are read out in the reply too. */
const SHORT = 1500;

export const meExport = form({
  name: 'export',
  summary: 'All that is kept of you, as a file',
  examples: ['/me export'],
  options: {},
  audience: 'asker',
  answerKept: 'not',
  async run(_, here) {
    const kept = await here.facts.keptOf.read(here.who.id);
    const rows = rowsIn(kept);
    const short = JSON.stringify(Object.fromEntries(kept.map(({ table, rows }) => [table, rows])));
    return reply({
      title: 'Kept of you',
      lines: [
        rows === 0 ? 'Nothing is kept of you.' : `${many(rows, 'thing is', 'things are')} kept of you.`,
        ...(rows > 0 && short.length <= SHORT ? [short] : []),
      ],
      figures: { kept: count(rows) },
      table: kept.length === 0 ? null : tableOf(kept),
      pictures: [file(exported(kept, here))],
      notes: ['`/me forget` takes it all away.'],
    });
  },
});

export const meForget = form({
  name: 'forget',
  summary: 'Take away all that is kept of you, once you have said so twice',
  examples: ['/me forget', '/me forget confirm:yes'],
  options: { confirm: bare(yesNo('Whether you mean it')) },
  audience: 'asker',
  keeps: true,
  answerKept: 'nobodys',
  run: ({ confirm }, here) => {
    if (confirm === undefined) return askFirst(here);
    return confirm ? forget(here) : reply({ title: 'Kept', lines: ['All stays as it was.'] });
  },
});

function exported(kept: readonly KeptRows[], { who, now }: Here): string {
  return JSON.stringify({ member: who.id, name: who.name, at: now.toISOString(), kept }, null, 1);
}

const rowsIn = (kept: readonly KeptRows[]): number => kept.reduce((sum, { rows }) => sum + rows.length, 0);

const tableOf = (kept: readonly KeptRows[]) => ({
  columns: ['kept as', 'how many'],
  rows: kept.map(({ table, rows }) => [table.replaceAll('_', ' '), String(rows.length)]),
});

const file = (text: string): Picture => ({
  name: 'kept-of-you.json',
  alt: 'All that is kept of you, with what each part of it is',
  of: { draw: 'text', text },
});

async function askFirst({ who, facts }: Here): Promise<Reply> {
  const kept = await facts.keptOf.read(who.id);
  const rows = rowsIn(kept);
  if (rows === 0) return reply({ title: 'Nothing to forget', lines: ['Nothing is kept of you.'] });
  return reply({
    title: 'Forget you?',
    lines: [`${many(rows, 'thing is', 'things are')} kept of you.`],
    figures: { kept: count(rows) },
    table: tableOf(kept),
    asks: 'Take it all away? It cannot be undone.',
    choices: [
      { label: 'Yes, forget me', ask: '/me forget confirm:yes' },
      { label: 'No, keep it', ask: '/me forget confirm:no' },
    ],
    notes: ['`/me export` gives you a copy first.'],
  });
}

/** The reply names nobody: it is kept for an event delivered twice, when she is forgotten already. */
async function forget({ who, facts }: Here): Promise<Reply> {
  const { gone, nobodys } = await facts.keptOf.forget(who.id);
  const stay =
    nobodys > 0
      ? `; ${many(nobodys, 'stays as nobody’s, without name or words.', 'stay as nobody’s, without name or words.')}`
      : '.';
  return reply({
    title: 'Forgotten',
    lines: [
      'Your name, words and settings are gone.',
      `${many(gone, 'thing is', 'things are')} taken away${stay}`,
    ],
    figures: { gone: count(gone), nobodys: count(nobodys) },
    forgets: true,
    notes: ['Backups made before now still hold you: an organiser can make a new one and delete them.'],
  });
}
