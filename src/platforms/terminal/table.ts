import type { Table } from '../../chat/reply.ts';
import { signs, wordsOf, wrap } from './wrap.ts';

const BETWEEN = 2;

/** Columns side by side, each as wide as it needs; where that is too wide the last ones are broken. */
export function table({ columns, rows }: Table, width: number): string {
  const all = [columns, ...rows];
  const widths = fitted(all, width);
  return all.map((row) => beside(row, widths)).join('\n');
}

function fitted(rows: readonly (readonly string[])[], width: number): number[] {
  const widths = (rows[0] ?? []).map((_, c) => Math.max(...rows.map((row) => signs(row[c] ?? ''))));
  let over = widths.reduce((sum, each) => sum + each + BETWEEN, -BETWEEN) - width;
  for (let c = widths.length - 1; c >= 0 && over > 0; c--) {
    const longest = Math.max(...rows.flatMap((row) => wordsOf(row[c] ?? '', width).map(signs)));
    const spared = Math.min(over, (widths[c] ?? 0) - longest);
    widths[c] = (widths[c] ?? 0) - spared;
    over -= spared;
  }
  return widths;
}

function beside(row: readonly string[], widths: readonly number[]): string {
  const cells = row.map((cell, c) => wrap(cell, widths[c] ?? 0).split('\n'));
  const lines = Array.from({ length: Math.max(...cells.map((cell) => cell.length)) }, (_, l) =>
    cells.map((cell, c) => padded(cell[l] ?? '', (widths[c] ?? 0) + BETWEEN)).join(''),
  );
  return lines.map((line) => line.trimEnd()).join('\n');
}

const padded = (text: string, width: number): string => text + ' '.repeat(Math.max(0, width - signs(text)));
