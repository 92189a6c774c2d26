import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Reply, reply } from '../../../src/chat/reply.ts';
import { escaped } from '../../../src/platforms/discord/escape.ts';
import { cutTo, inPieces, LIMITS } from '../../../src/platforms/discord/limits.ts';
import { type Made, messageOf } from '../../../src/platforms/discord/message.ts';
import { pagesOf } from '../../../src/platforms/discord/pages.ts';
import { faultsOf } from '../../standin/discord/rules.ts';
import { memoryFacts } from '../../standin/memory-facts.ts';

const whose = { guild: '1', member: '2' };
const made = (of: Reply, page = 0, bytes = 10): Promise<Made> =>
  messageOf(
    of,
    { whose, notes: memoryFacts().notes, draw: async () => new Uint8Array(bytes) },
    { page, key: 'k' },
  );

/** What the strict stand-in finds wrong with a message. */
const faults = ({ json, files }: Made) =>
  faultsOf(
    'POST',
    '/channels/1/messages',
    json,
    files.map(({ name }) => name),
  );

/** Signs of every kind: marks, several units long, right to left, blanks. */
const signs = fc.string({ unit: fc.constantFrom(...'ab \n*_~`|>#<[]()-\\é🧵山ש'), maxLength: 900 });
const words = fc.oneof(signs, fc.string({ unit: 'grapheme', maxLength: 5000 }));

const replies = fc.record({
  title: fc.oneof(words, fc.constant('T')),
  lines: fc.array(words, { maxLength: 12 }),
  notes: fc.array(signs, { maxLength: 3 }),
  cautions: fc.array(signs, { maxLength: 2 }),
  asks: fc.option(signs),
  table: fc.option(
    fc.record({
      columns: fc.constant(['a', 'b', 'c']),
      rows: fc.array(fc.tuple(words, words, signs), { maxLength: 40 }),
    }),
  ),
  choices: fc.array(fc.record({ label: signs, ask: signs.map((ask) => `/cut ${ask}`) }), { maxLength: 50 }),
});

describe('a reply as messages', () => {
  test('keeps every limit, whatever is in it', async () => {
    await fc.assert(
      fc.asyncProperty(replies, async (parts) => {
        const of = reply({ ...parts, table: parts.table as Reply['table'] });
        const pages = Math.max(pagesOf(of).length, Math.ceil(of.choices.length / 20));
        for (let page = 0; page < pages; page++) expect(faults(await made(of, page))).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  test('loses no word of it: all is on some page', () => {
    fc.assert(
      fc.property(replies, (parts) => {
        const of = reply({ ...parts, table: parts.table as Reply['table'] });
        const pages = pagesOf(of);
        const read = pages
          .flatMap(({ title, text, fields }) => [
            title,
            text,
            ...fields.flatMap(({ name, value }) => [name, value]),
          ])
          .join(' ')
          .replace(/\s+/g, '');
        const squeezed = (text: string) => escaped(text).replace(/\s+/g, '');
        // Lines of up to a piece are found whole; longer ones by their end.
        for (const line of [...of.lines, ...of.notes, ...(of.table?.rows.flat() ?? [])])
          expect(read).toContain(squeezed(line).slice(-200));
      }),
      { numRuns: 100 },
    );
  });

  test('a title that is too long is cut in its place and whole under it', () => {
    const title = `The ${'very '.repeat(80)}long swap`;
    const [page] = pagesOf(reply({ title, lines: ['yes'] }));
    expect(page?.title.length).toBeLessThanOrEqual(LIMITS.embedTitle);
    expect(page?.title.endsWith('…')).toBe(true);
    expect(page?.text).toContain(title);
  });

  test('a file that is too large, or one too many, is named in the answer', async () => {
    const picture = (i: number) => ({ name: `${i}.png`, alt: 'one', of: { draw: 'text' } });
    const many = await made(
      reply({ title: 'T', pictures: Array.from({ length: 12 }, (_, i) => picture(i)) }),
    );
    expect(many.files).toHaveLength(10);
    expect(many.json.content).toMatch(/^10\.png is more than[\s\S]*\n11\.png is more than/);
    const large = await made(reply({ title: 'T', pictures: [picture(1)] }), 0, LIMITS.fileBytes + 1);
    expect(large.files).toEqual([]);
    expect(large.json.content).toContain('1.png');
    expect(faults(many)).toEqual([]);
    expect(faults(large)).toEqual([]);
  });
});

describe('a text that is cut', () => {
  test('keeps to its limit, at a whole sign, and says that it was cut', () => {
    fc.assert(
      fc.property(words, fc.integer({ min: 2, max: 300 }), (text, most) => {
        const cut = cutTo(text, most);
        expect(cut.length).toBeLessThanOrEqual(most);
        expect(cut === text || cut.endsWith('…')).toBe(true);
        expect(cut.isWellFormed()).toBe(text.isWellFormed());
      }),
    );
  });

  test('does not end in the mark that kept its next sign plain', () => {
    expect(cutTo(escaped('abc*def'), 5)).toBe('abc…');
    expect(cutTo('ab\\\\cdefg', 5)).toBe('ab\\\\…');
  });

  test('in pieces is all there', () => {
    fc.assert(
      fc.property(words, fc.integer({ min: 2, max: 300 }), (text, most) => {
        const pieces = inPieces(text, most);
        for (const piece of pieces) {
          expect(piece.length).toBeLessThanOrEqual(most);
          expect(piece.isWellFormed() || !text.isWellFormed()).toBe(true);
        }
        expect(pieces.join('').replace(/\s/g, '')).toBe(text.replace(/\s/g, ''));
      }),
    );
  });
});
