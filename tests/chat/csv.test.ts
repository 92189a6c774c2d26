import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Cell, csv } from '../../src/chat/csv.ts';

/** A reader of RFC 4180, written from its grammar: quoted cells, doubled quotes, CR LF at the end of each line. */
function read(text: string): string[][] {
  const rows: string[][] = [];
  const cell = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n)/gy;
  let row: string[] = [];
  let at = text.startsWith('\ufeff') ? 1 : 0;
  while (at < text.length) {
    cell.lastIndex = at;
    const found = cell.exec(text);
    if (!found) throw new Error(`not RFC 4180 at ${at}: ${JSON.stringify(text.slice(at, at + 20))}`);
    row.push(found[1] === undefined ? (found[2] ?? '') : found[1].replaceAll('""', '"'));
    if (found[3] === '\r\n') {
      rows.push(row);
      row = [];
    }
    at = cell.lastIndex;
  }
  return rows;
}

describe('a table for a spreadsheet', () => {
  test('what needs quotes is quoted, and lines end in CR LF', () => {
    expect(
      csv([
        ['a', 1, null],
        ['b, "c"', 0.375, 'd\ne'],
      ]),
    ).toBe('a,1,\r\n"b, ""c""",0.375,"d\ne"\r\n');
  });

  test.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', ' =cmd|x', '＝1+1', '|x', '%x', '\u00a0=1'])(
    '%j cannot be taken for a formula',
    (words) => {
      expect(read(csv([[words]]))[0]?.[0]).toBe(`'${words}`);
    },
  );

  test('numbers are left as they are, below zero too', () => {
    expect(csv([[-1.5, 1e21, Number.NaN]])).toBe('-1.5,1e+21,\r\n');
  });

  test('a byte order mark leads only where it is of use', () => {
    expect(csv([['plain']]).charCodeAt(0)).toBe('p'.charCodeAt(0));
    expect(csv([['Zoë']]).charCodeAt(0)).toBe(0xfeff);
  });

  test('every table is read back as it was written', () => {
    const cell: fc.Arbitrary<Cell> = fc.oneof(
      fc.string({ unit: 'grapheme', maxLength: 12 }),
      fc.constantFrom('"', ',', '\r\n', '""', '=1', "'", ' a', 'b '),
      fc.integer(),
      fc.constant(null),
    );
    fc.assert(
      fc.property(
        fc
          .integer({ min: 1, max: 4 })
          .chain((width) =>
            fc.array(fc.array(cell, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 5 }),
          ),
        (rows) => {
          const back = read(csv(rows));
          expect(back).toHaveLength(rows.length);
          for (const [r, row] of rows.entries())
            for (const [c, each] of row.entries()) {
              const got = back[r]?.[c] ?? '';
              const wanted = each === null ? '' : String(each);
              expect([wanted, `'${wanted}`]).toContain(got);
              if (typeof each === 'string') expect(got).not.toMatch(/^[=+\-@]/);
            }
        },
      ),
    );
  });
});
