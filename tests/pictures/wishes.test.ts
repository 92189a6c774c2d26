import { describe, expect, test } from 'vitest';
import { type LayoutRecipe, layoutPicture } from '../../src/pictures/layout.ts';
import { asked, elements, kept, lettersIn, outlinesIn, pictureOf } from './drawn.ts';

const svgOf = async (words: string): Promise<string> =>
  layoutPicture(kept<LayoutRecipe>(await pictureOf(words)));

/** How many patches are drawn in each look, by the words of the legend. */
function patchesByLook(svg: string): Record<string, number> {
  const swatches = elements(svg, 'rect').filter(({ fill }) => fill?.startsWith('url(#role'));
  const paths = elements(svg, 'path').filter(({ fill }) => fill?.startsWith('url(#role'));
  const words = lettersIn(svg).filter((text) => /^[^…]*: [\d,]+$/.test(text));
  return Object.fromEntries(
    words.map((text, i) => [
      text.split(':')[0]!,
      outlinesIn(paths.find(({ fill }) => fill === swatches[i]!.fill)?.d ?? ''),
    ]),
  );
}

describe('a layout by cloth', () => {
  test.each([
    ['/count rosette rounds:5 colours:red,blue,white', { red: 19, blue: 30, white: 42 }],
    ['/count star side:4 colours:red,white', { red: 36, white: 60 }],
    ['/count diamonds from:4 rounds:3 colours:red,white', { red: 24, white: 40 }],
    [
      '/count garden rosettes:7 rounds:2 path:one outer:yes colours:yellow,red,pink',
      { yellow: 7, red: 42, pink: 84, path: 84 },
    ],
    [
      '/count garden rosettes:7 rounds:2 path:diamonds colours:yellow,red',
      { yellow: 91, red: 42, 'diamonds between': 24, 'triangles between': 6 },
    ],
  ] as const)('%s has each cloth’s patches in one look', async (words, cloths) => {
    const svg = await svgOf(words);
    expect(patchesByLook(svg)).toEqual(cloths);
    const { pictures } = await asked(words);
    expect(pictures[0]!.alt).toContain('coloured by cloth');
    for (const [cloth, count] of Object.entries(cloths))
      expect(pictures[0]!.alt).toContain(`${cloth}: ${count}`);
  });

  test('rows of a field: the cloths of the picture are the figures of the reply', async () => {
    for (const sides of ['cover', 'whole']) {
      const words = `/count field 20x24in colours:red,white,blue sides:${sides}`;
      const { figures } = await asked(words);
      const drawn = patchesByLook(await svgOf(words));
      expect([drawn.red, drawn.white, drawn.blue]).toEqual(figures.colours?.value);
    }
  });

  test('a cloth called as a role is stays apart from it', async () => {
    const svg = await svgOf('/count garden rosettes:7 rounds:1 path:diamonds colours:triangle,red');
    const set = { 'diamonds between': 12, 'triangle, no cloth': 6 };
    expect(patchesByLook(svg)).toEqual({ triangle: 7, red: 42, ...set });
  });
});

describe('a layout as large as a quilt', () => {
  test.each([
    '/count garden quilt:60x72in rounds:2 path:one size:1in',
    '/count garden quilt:30x36in rounds:1 path:diamonds size:1in',
    '/count stars quilt:30x36in set:diamonds size:1in',
    '/count stars quilt:30x36in set:hexagons size:1in',
    '/count blocks quilt:30x36in size:1in',
  ])('%s is drawn with the line that it is trimmed to, at the quilt’s size', async (words) => {
    const { figures, pictures } = await asked(words);
    const svg = await svgOf(words);
    const letters = lettersIn(svg);
    expect(letters).toContain('trim here');
    const [wide, high] = words.includes('60x72') ? ['60 in', '72 in'] : ['30 in', '36 in'];
    expect(letters).toEqual(expect.arrayContaining([wide, high]));
    const drawn = Object.values(patchesByLook(svg)).reduce((sum, n) => sum + n, 0);
    expect(drawn).toBe(figures.total?.value);
    expect(pictures[0]!.alt).toMatch(/trimmed to \d+ x \d+ in along the dashed line/);
  });

  test.each([
    '/count rosette quilt:20x20in size:1in',
    '/count star quilt:20x20in size:1in',
    '/count diamonds quilt:20x20in size:1in',
  ])('%s is drawn as far as it reaches, nothing trimmed', async (words) => {
    const { figures } = await asked(words);
    const svg = await svgOf(words);
    expect(lettersIn(svg)).not.toContain('trim here');
    expect(Object.values(patchesByLook(svg)).reduce((sum, n) => sum + n, 0)).toBe(figures.total?.value);
  });

  test('rows that are level only when the hexagons lean have no picture', async () => {
    expect((await asked('/count garden quilt:30x36in rounds:1 path:own')).pictures).toEqual([]);
  });
});
