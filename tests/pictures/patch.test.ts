import { describe, expect, test } from 'vitest';
import { shapeNames } from '../../src/calculator/shapes/catalogue.ts';
import { draw } from '../../src/pictures/draw.ts';
import { type PatchRecipe, patchPicture } from '../../src/pictures/patch.ts';
import { asked, elements, kept, lettersIn, pictureOf, sizeOfPng } from './drawn.ts';

const askFor = (shape: string) => `/cut shape:${shape} size:${shape === 'rectangle' ? '2x3in' : '2in'}`;

describe.each(shapeNames)('the picture of a %s', (shape) => {
  test('says each measure of the table, finished and cut, and so does its alt text', async () => {
    const { table, pictures } = await asked(askFor(shape));
    const letters = lettersIn(patchPicture(kept<PatchRecipe>(pictures[0]!))).join('\n');
    const rows = table!.rows.filter(([words]) => words !== 'area');
    expect(rows.length).toBeGreaterThan(0);
    for (const [words = '', finished = '', cut = ''] of rows) {
      expect(letters).toContain(words);
      expect(letters).toContain(`finished ${finished}`);
      expect(letters).toContain(`cut ${cut}`);
      expect(pictures[0]!.alt.toLowerCase()).toContain(`${words} ${finished} finished, ${cut} cut`);
    }
  });

  test('has both lines, and a letter on the drawing for each letter of the key', async () => {
    const { of } = await pictureOf(askFor(shape));
    const svg = patchPicture(of as unknown as PatchRecipe);
    const closed = elements(svg, 'path').filter(({ d }) => d?.endsWith('Z') && !d.includes('NaN'));
    expect(closed.some((path) => path['stroke-dasharray'] !== undefined)).toBe(true);
    expect(svg).not.toContain('NaN');
    const letters = lettersIn(svg);
    const { measures } = of as unknown as PatchRecipe;
    for (const i of measures.keys())
      expect(letters.filter((text) => text === String.fromCharCode(65 + i)).length).toBe(2);
  });
});

test('the corner style is drawn and said', async () => {
  const corners = async (words: string) => {
    const svg = patchPicture(kept<PatchRecipe>(await pictureOf(words)));
    const outline = elements(svg, 'path').find((path) => path['stroke-width'] === '5')!.d!;
    return { words: lettersIn(svg), sides: outline.match(/[ML]/g)!.length };
  };
  const pointed = await corners('/cut hexagon 1in');
  expect(pointed.words).toContain('pointed corners');
  expect(pointed.sides).toBe(6);
  const blunt = await corners('/cut hexagon 1in corners:blunt');
  expect(blunt.words).toContain('blunt corners');
  expect(blunt.sides).toBe(12);
});

test('without a seam there is one line to cut, and no word of sewing', async () => {
  const svg = patchPicture(kept<PatchRecipe>(await pictureOf('/cut hexagon 1in seam:0in')));
  expect(lettersIn(svg).join(' ')).not.toMatch(/sew/);
});

test('it becomes a PNG 1200 pixels wide', async () => {
  const { of } = await pictureOf('/cut diamond 2in');
  expect(sizeOfPng(await draw(of)).width).toBe(1200);
});
