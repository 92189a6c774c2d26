import type { Reply, ReplyChoice, Table } from '../../chat/reply.ts';

/** A message's two bodies: the same words, plain and marked up. */
export interface Words {
  readonly plain: string;
  readonly html: string;
  /** All the words, where they did not fit into one message. */
  readonly whole?: string;
}

/**
 * The platform refuses an event of more than 65,536 bytes. An edit holds the words twice, and locking them makes
 * four bytes of three.
 */
const MOST_BYTES = 20_000;

/** More reactions than a hand has fingers are no help. */
export const REACTIONS = ['1️⃣', '2️⃣', '3️⃣', '4️⃣', '5️⃣', '6️⃣', '7️⃣', '8️⃣', '9️⃣', '🔟'] as const;

/** The choices that get a number: those that can be asked as they are. */
export const numbered = (choices: readonly ReplyChoice[]): ReplyChoice[] =>
  choices.filter(({ fillIn }) => !fillIn?.length).slice(0, REACTIONS.length);

export const escaped = (text: string): string =>
  text.replace(
    /[&<>"]/g,
    (sign) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[sign] ?? sign,
  );

/** A reply in words, with asks to type written as they are typed here. */
export function wordsOf(reply: Reply, prefix: string): Words {
  const typed = (text: string) => text.replace(/`\/(?=[a-z])/g, `\`${prefix}`);
  const plain: string[] = [];
  const html: string[] = [];
  const say = (text: string, wrap = (inner: string) => inner) => {
    const words = typed(text);
    plain.push(words.replaceAll('`', ''));
    html.push(wrap(coded(words)));
  };
  if (reply.title) say(reply.title, (inner) => `<strong>${inner}</strong>`);
  for (const line of reply.lines) say(line);
  if (reply.asks) say(reply.asks, (inner) => `<strong>${inner}</strong>`);
  const table = reply.table ? tableOf(reply.table, typed) : null;
  const after: Words[] = [];
  const numbers = numbered(reply.choices);
  for (const [i, { label, ask }] of numbers.entries())
    after.push(same(`${REACTIONS[i]} ${label || typed(ask)}`));
  for (const choice of reply.choices.filter((one) => !numbers.includes(one)))
    after.push(
      same(
        `${choice.label}: ${typed(`\`${[choice.ask, ...(choice.fillIn ?? []).map((name) => `${name}:`)].join(' ')}\``)}`,
      ),
    );
  for (const caution of reply.cautions) after.push(same(`Take care: ${typed(caution)}`));
  for (const note of reply.notes) after.push(same(typed(note), (inner) => `<em>${inner}</em>`));
  const words = {
    plain: [...plain, ...(table ? [table.plain] : []), ...after.map((one) => one.plain)].join('\n'),
    html: `${html.join('<br>')}${table ? table.html : ''}${table || after.length === 0 ? '' : '<br>'}${after.map((one) => one.html).join('<br>')}`,
  };
  return bytesOf(words) <= MOST_BYTES ? words : cut(words);
}

const same = (text: string, wrap = (inner: string) => inner): Words => ({
  plain: text.replaceAll('`', ''),
  html: wrap(coded(text)),
});

/** What stands between backticks is shown as typed; everything else as it is written, with no mark of its own. */
const coded = (text: string): string =>
  escaped(text).replace(/`([^`]+)`/g, (_, typed: string) => `<code>${typed}</code>`);

function tableOf({ columns, rows }: Table, typed: (text: string) => string): Words {
  const line = (cells: readonly string[]) => cells.map((cell) => typed(cell).replaceAll('`', '')).join(' | ');
  const row = (cells: readonly string[], tag: string) =>
    `<tr>${cells.map((cell) => `<${tag}>${coded(typed(cell))}</${tag}>`).join('')}</tr>`;
  return {
    plain: [line(columns), ...rows.map(line)].join('\n'),
    html: `<table><thead>${row(columns, 'th')}</thead><tbody>${rows.map((cells) => row(cells, 'td')).join('')}</tbody></table>`,
  };
}

const bytesOf = ({ plain, html }: Words): number => Buffer.byteLength(JSON.stringify([plain, html]));

/** A reply too long for one message: the lines that fit, and where the rest is. */
function cut({ plain: whole }: Words): Words {
  const fits: string[] = [];
  const shown = (lines: readonly string[]): Words => {
    const all = [...lines, '…', 'The rest is in the file below.'];
    return { plain: all.join('\n'), html: all.map(escaped).join('<br>') };
  };
  for (const line of whole.split('\n')) {
    if (bytesOf(shown([...fits, line])) > MOST_BYTES) break;
    fits.push(line);
  }
  return { ...shown(fits), whole };
}
