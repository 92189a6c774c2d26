import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inflateSync } from 'node:zlib';
import { afterAll, describe, expect, test } from 'vitest';
import { draw } from '../../src/pictures/draw.ts';
import type { PlanSheetRecipe } from '../../src/pictures/plan-sheet-recipe.ts';
import { openAsking, valuesOf } from '../commands/asking.ts';

const folder = mkdtempSync(join(tmpdir(), 'honeycount-sheet-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const ask = openAsking();

/** The sheet of an ask, drawn as the platforms do from what a kept reply carries. */
async function sheetOf(words: string): Promise<Uint8Array> {
  const reply = await ask(words);
  const picture = reply.pictures.find(({ name }) => name.endsWith('.pdf'));
  return draw(JSON.parse(JSON.stringify(picture?.of)));
}

const latin = (bytes: Uint8Array): string => Buffer.from(bytes).toString('latin1');

/** The drawing commands of every page, unpacked. */
function contents(bytes: Uint8Array): string {
  const text = latin(bytes);
  const parts: string[] = [];
  for (const found of text.matchAll(/<<[^>]*?\/Length (\d+)[^>]*?\/FlateDecode[^>]*?>>\s*stream\r?\n/g)) {
    const from = (found.index ?? 0) + found[0].length;
    const unpacked = inflateSync(Buffer.from(text.slice(from, from + Number(found[1])), 'latin1')).toString(
      'latin1',
    );
    if (/\bBT\b|\bre\b/.test(unpacked.slice(0, 2000))) parts.push(unpacked);
  }
  return parts.join('\n');
}

const boxes = (bytes: Uint8Array): number => contents(bytes).match(/ 9 9 re\b/g)?.length ?? 0;
const pages = (bytes: Uint8Array): number => latin(bytes).match(/\/Type \/Page\b/g)?.length ?? 0;

const blank: PlanSheetRecipe = {
  ...{ draw: 'plan-sheet', sheet: 'letter', title: 'Plan', under: 'of nothing', lines: [], sections: [] },
  ...{ notes: [], foot: '1 Dec 2026' },
};

const rows = (n: number): PlanSheetRecipe => ({
  ...blank,
  sections: [
    {
      title: 'Long',
      columns: [
        { title: 'what', share: 1 },
        { title: 'done', share: 1, box: true },
        { title: 'whose', share: 1, line: true },
      ],
      boxes: true,
      rows: Array.from({ length: n }, (_, i) => [`row ${i}`, '', '']),
      total: ['in all', '', String(n)],
    },
  ],
});

describe('the sheet to print', () => {
  test.each([
    ['letter', [612, 792]],
    ['a4', [595.28, 841.89]],
  ] as const)('is %s at its own size', async (sheet, [width, height]) => {
    const found = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(latin(await draw({ ...blank, sheet })));
    expect(Number(found?.[1])).toBeCloseTo(width, 1);
    expect(Number(found?.[2])).toBeCloseTo(height, 1);
  });

  test('has a box to tick for every part and every purchase', async () => {
    const words = '/plan garden rosettes:7 rounds:2 size:1in cloths:centre yellow, petal scraps, path white';
    const list = (await ask(words)).table?.rows ?? [];
    expect(boxes(await sheetOf(words))).toBe(3 + list.length - 1);
  });

  test('has a row of boxes for every kit', async () => {
    const reply = await ask('/kit rosette rounds:2 members:25');
    const items = reply.table?.rows.length ?? 0;
    expect(boxes(await sheetOf('/kit rosette rounds:2 members:25'))).toBe(items + 25 * 5);
  });

  test.each([0, 30, 90])('%d rows go on over as many pages as they need, none lost', async (n) => {
    const bytes = await draw({ ...rows(n) });
    expect(boxes(bytes)).toBe(2 * n);
    // A page has room for about 34 rows.
    expect(pages(bytes)).toBeGreaterThanOrEqual(Math.ceil(n / 36));
    expect(pages(bytes)).toBeLessThanOrEqual(Math.floor(n / 28) + 1);
  });

  test('is the same bytes every time, and small', async () => {
    const [one, other] = [await draw({ ...rows(12) }), await draw({ ...rows(12) })];
    expect(Buffer.compare(Buffer.from(one), Buffer.from(other))).toBe(0);
    expect(one.length).toBeLessThan(60_000);
  });

  test.each(['六角形 🐝 (paren) \\ % \u200f', 'x'.repeat(300), ''])(
    'any words are written: %j',
    async (words) => {
      const recipe = { ...rows(2), title: words, under: words, lines: [words], notes: [words] };
      expect(pages(await draw({ ...recipe }))).toBe(1);
    },
  );
});

/** With pdftotext of poppler, where it is installed: what a reader of the printed page reads. */
const reader = spawnSync('pdftotext', ['-v']).error === undefined;

describe.skipIf(!reader)('read back by poppler', () => {
  const textOf = (bytes: Uint8Array): string => {
    const file = join(folder, 'sheet.pdf');
    writeFileSync(file, bytes);
    return execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' });
  };

  test('the totals and the parts of the plan, in full', async () => {
    const words = '/plan field quilt:queen size:1in cloths:field Zoë’s blue';
    const text = textOf(await sheetOf(words));
    const reply = await ask(words);
    for (const [what = '', much = ''] of reply.table?.rows ?? []) {
      expect(text).toContain(what);
      expect(text).toContain(much);
    }
    expect(text).toContain(`in all`);
    expect(text).toContain(String(valuesOf(reply).total).replace(/(\d)(\d{3})$/, '$1,$2'));
    expect(text).toContain('page 1 of 1');
  });

  test('every row of a long table is there, with its titles on each page', async () => {
    const text = textOf(await draw({ ...rows(70) }));
    for (let i = 0; i < 70; i++) expect(text).toMatch(new RegExp(`row ${i}\\b`));
    expect(text.match(/whose/g)?.length).toBe(text.match(/page \d of \d/g)?.length);
  });
});
