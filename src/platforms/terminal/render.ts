import { styleText } from 'node:util';
import type { Reply } from '../../chat/reply.ts';
import { table } from './table.ts';
import { wrap } from './wrap.ts';

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
        .map(
          ({ label, ask }, i) => wrap(`${i + 1}  ${label}:`, width, 3) + paint('cyan', indented(ask, width)),
        )
        .join('\n'),
    );
  for (const note of reply.notes) parts.push(typed(paint('dim', wrap(note, width))));
  for (const caution of reply.cautions) parts.push(paint('yellow', wrap(`Take care: ${caution}`, width)));
  for (const { name, alt } of reply.pictures) {
    const file = files?.get(name);
    if (file) parts.push(wrap(`${isPicture(name) ? 'Picture' : 'File'} ${file}: ${alt}`, width));
    else if (!isPicture(name)) parts.push(paint('dim', wrap(`File ${name}: ${UNWRITTEN}`, width)));
  }
  return parts.join('\n').trimEnd();
}

const indented = (ask: string, width: number): string =>
  `\n${wrap(ask, width - 3)}`.replaceAll('\n', '\n   ');

const isPicture = (name: string): boolean => name.endsWith('.png');

/** Where a reply's file is the point of it, and is not there yet. */
const UNWRITTEN = 'ask with --pictures and a folder, or /pictures in the room, to have it.';
