import { expect } from 'vitest';
import type { Reply } from '../../src/chat/reply.ts';
import { wordsOf } from './asking.ts';

/** Words of programming that no member should read. */
const BANNED =
  /\b(?:invalid|undefined|null|nan|infinity|error|object|parameter|argument|exception|boolean|string|array|json|syntax|input|parse[drs]?|token|regex|function|default value)\b/i;

/** A reply as it should read: no mistake, plain words, short, a table that a phone has room for. */
export function expectReadsWell(reply: Reply): void {
  expect(reply.error).toBeNull();
  expect(reply.title).not.toBe('');
  const text = wordsOf(reply);
  expect(text).not.toMatch(BANNED);
  expect(text).not.toMatch(/!(?:\s|$)/);
  expect(text).not.toMatch(/ {2}| [,.;:)]|\( |\.\.|,,|\bof of\b/);

  // At most seven lines before a table, a table of at most three columns, every row as wide as its head.
  expect(reply.lines.length).toBeLessThanOrEqual(7);
  if (reply.table) {
    expect(reply.table.columns.length).toBeLessThanOrEqual(3);
    for (const row of reply.table.rows) expect(row).toHaveLength(reply.table.columns.length);
  }
  for (const line of reply.lines) if (!line.startsWith('`')) expect(line).toMatch(/[.:`]$/);
  for (const note of reply.notes) expect(note).toMatch(/[.`\w]$/);
}
