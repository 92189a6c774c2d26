import { stripVTControlCharacters, styleText } from 'node:util';
import type { Reply, Table } from '../../chat/reply.ts';

export interface RenderSettings {
  /** Signs a line. */
  readonly width?: number;
  readonly colour?: boolean;
  readonly files?: ReadonlyMap<string, string> | undefined;
}

type Style = Parameters<typeof styleText>[0];

/** A reply as a member reads it at a terminal. */
export function render(reply: Reply, { width = 72, colour = false, files }: RenderSettings = {}): string {
  const paint = (style: Style, text: string) =>
    colour ? styleText(style, text, { validateStream: false }) : text;
  const typed = (text: string) => text.replace(/`([^`]+)`/g, (_, ask: string) => paint('cyan', ask));
  const parts: string[] = [];
  if (reply.title) parts.push(paint('bold', wrap(reply.title, width)));
  const lines = reply.lines.map((line) => wrap(line, width)).join('\n');
  if (lines) parts.push(typed(lines));
  if (reply.asks) parts.push(wrap(reply.asks, width));
  if (reply.table) parts.push(`\n${table(reply.table, width)}\n`);
  if (reply.choices.length > 0)
    parts.push(
      reply.choices
        .map(({ label, ask }, i) => wrap(`${i + 1}  ${label}: `, width, 3) + paint('cyan', `\n   ${ask}`))
        .join('\n'),
    );
  for (const note of reply.notes) parts.push(typed(paint('dim', wrap(note, width))));
  for (const caution of reply.cautions) parts.push(paint('yellow', wrap(`Take care: ${caution}`, width)));
  for (const { name, alt } of reply.pictures) {
    const file = files?.get(name);
    if (file) parts.push(wrap(`Picture ${file}: ${alt}`, width));
  }
  return parts.join('\n');
}

/** Columns side by side, each as wide as it needs; the last one wraps in what is left. */
function table({ columns, rows }: Table, width: number): string {
  const all = [columns, ...rows];
  const widths = columns.map((_, c) => Math.max(...all.map((row) => signs(row[c] ?? ''))));
  const before = widths.slice(0, -1).reduce((sum, w) => sum + w + 2, 0);
  const last = Math.max(12, Math.min(widths.at(-1) ?? 0, width - before));
  return all
    .map((row) => {
      const head = row.slice(0, -1).map((cell, c) => cell + ' '.repeat((widths[c] ?? 0) - signs(cell) + 2));
      return head.join('') + wrap(row.at(-1) ?? '', last).replaceAll('\n', `\n${' '.repeat(before)}`);
    })
    .map((row) => row.trimEnd())
    .join('\n');
}

/** Breaks a text at blanks so that no line is longer than `width`, words that are longer aside. */
export function wrap(text: string, width: number, indent = 0): string {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && signs(line) + 1 + signs(word) > width) {
      lines.push(line);
      line = ' '.repeat(indent) + word;
    } else line = line === '' && lines.length === 0 ? word : `${line} ${word}`;
  }
  return [...lines, line].join('\n');
}

const signs = (text: string): number => [...stripVTControlCharacters(text)].length;
