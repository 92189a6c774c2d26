import { describe, expect, test } from 'vitest';
import { draw } from '../../src/pictures/draw.ts';
import { type LayoutRecipe, layoutPicture } from '../../src/pictures/layout.ts';
import { asked, elements, kept, lettersIn, outlinesIn, pictureOf, sizeOfPng } from './drawn.ts';

/** Each layout once, and what its patches are for, with the figures that trade counts for it. */
const LAYOUTS: readonly (readonly [string, Readonly<Record<string, number>>])[] = [
  ['/count rosette rounds:3', { centre: 1, 'round 1': 6, 'round 2': 12, 'round 3': 18 }],
  ['/count garden rosettes:7 rounds:2 path:one outer:yes', { centres: 7, rounds: 126, path: 84 }],
  ['/count garden 7 rosettes rounds:1 path:none', { centres: 7, rounds: 42 }],
  ['/count garden 6x5 rosettes 2 rounds path:one', { centres: 30, rounds: 540, path: 196 }],
  [
    '/count garden 7 rosettes rounds:1 path:diamonds',
    { centres: 7, rounds: 42, 'diamonds between': 12, 'triangles between': 6 },
  ],
  ['/count star side:4', { 'round 1': 6, 'round 2': 18, 'round 3': 30, 'round 4': 42 }],
  ['/count stars stars:7 set:diamonds', { 'in stars': 42, 'diamonds between': 12 }],
  ['/count stars stars:7 set:hexagons outer:yes', { 'in stars': 42, 'hexagons between': 24 }],
  ['/count diamonds from:4 rounds:3', { centre: 4, 'round 1': 12, 'round 2': 20, 'round 3': 28 }],
  ['/count blocks side:5', { light: 25, dark: 25, medium: 25 }],
  ['/count blocks 10 blocks', { light: 10, dark: 10, medium: 10 }],
  ['/count field 20x20in 3/4in sides:whole', { whole: 247 }],
  ['/count field 20x20in 3/4in sides:straight', { whole: 285, halves: 19 }],
];

const svgOf = async (words: string): Promise<string> =>
  layoutPicture(kept<LayoutRecipe>(await pictureOf(words)));

/** The patches that are drawn in each role's own look, by the words of the legend. */
function patchesByRole(svg: string): Record<string, number> {
  const paths = elements(svg, 'path').filter(({ fill }) => fill?.startsWith('url(#role'));
  const swatches = elements(svg, 'rect').filter(({ fill }) => fill?.startsWith('url(#role'));
  const words = lettersIn(svg).filter((text) => /^[^…]*: [\d,]+$/.test(text));
  expect(swatches.length).toBe(words.length);
  return Object.fromEntries(
    words.map((text, i) => {
      const path = paths.find(({ fill }) => fill === swatches[i]!.fill);
      return [text.split(':')[0]!, outlinesIn(path?.d ?? '')];
    }),
  );
}

describe.each(LAYOUTS)('the picture of %s', (words, roles) => {
  test('has each role’s patches, and the legend says the same numbers as the reply', async () => {
    const svg = await svgOf(words);
    expect(patchesByRole(svg)).toEqual(roles);
    const { figures, pictures } = await asked(words);
    const told = Object.entries(roles).map(([role, count]) => `${role}: ${count}`);
    for (const line of told) {
      expect(lettersIn(svg)).toContain(line);
      expect(pictures[0]!.alt).toContain(line);
    }
    const total = Object.values(roles).reduce((sum, count) => sum + count, 0);
    expect(figures.total?.value).toBe(total);
  });

  test('says the finished size of the reply', async () => {
    const svg = await svgOf(words);
    if (words.includes('10 blocks')) {
      // Blocks that are not joined have no size.
      expect(lettersIn(svg).filter((text) => / in$/.test(text))).toEqual([]);
      return;
    }
    const size = /(?:Finishes at) (.+?) x (.+?) in\./.exec((await asked(words)).lines.join('\n'))!;
    expect(lettersIn(svg)).toContain(`${size[1]} in`);
    expect(lettersIn(svg)).toContain(`${size[2]} in`);
  });
});

test('the trim line is where the sides are trimmed, and only there', async () => {
  const trims = async (words: string) => lettersIn(await svgOf(words)).includes('trim here');
  expect(await trims('/count field 20x20in 3/4in sides:cover')).toBe(true);
  expect(await trims('/count field 20x20in 3/4in sides:straight')).toBe(true);
  expect(await trims('/count field 20x20in 3/4in sides:whole')).toBe(false);
  expect(await trims('/count rosette rounds:2')).toBe(false);
});

test('each part that is there has a letter, and none is left out between', async () => {
  const words = '/count stars stars:7 size:1in colours:red, blue, green, cream, plum';
  const letters = new Set(lettersIn(await svgOf(words)).filter((text) => /^[A-Z]$/.test(text)));
  expect([...letters].sort().join('')).toBe('ABCDEF');
});

test('every patch of a small rosette carries the number of its round', async () => {
  const letters = lettersIn(await svgOf('/count rosette rounds:3'));
  const numbered = (n: string) => letters.filter((text) => text === n).length;
  // Each once more in the legend.
  expect([numbered('1'), numbered('2'), numbered('3')]).toEqual([7, 13, 19]);
});

test('a large rosette has numbers along one line, clear of each other', async () => {
  const svg = await svgOf('/count rosette rounds:20');
  const places = [...svg.matchAll(/<text x="([\d.]+)" y="([\d.]+)"[^>]*>(\d+)<\/text>/g)]
    .map(([, x, y, n]) => ({ x: Number(x), y: Number(y), n: Number(n) }))
    .filter(({ y }, _, all) => y === all[0]!.y);
  expect(places.length).toBeGreaterThan(4);
  for (const [i, { x, n }] of places.slice(1).entries()) {
    expect(n).toBeGreaterThan(places[i]!.n);
    expect(x - places[i]!.x).toBeGreaterThan(55);
  }
});

test('of a layout too large to be seen a part is shown, and the picture says so', async () => {
  const svg = await svgOf('/count field 470x470in 1in');
  const letters = lettersIn(svg).join(' ');
  expect(letters).toMatch(/The upper left .* of it/);
  const total = (await asked('/count field 470x470in 1in')).figures.total!.value as number;
  expect(total).toBeGreaterThan(80_000);
  const drawn = elements(svg, 'path').reduce(
    (sum, { d = '', fill }) => sum + (fill?.startsWith('url(#role') ? outlinesIn(d) : 0),
    0,
  );
  expect(drawn).toBeLessThan(8_000);
  expect(drawn).toBeGreaterThan(4_000);
});

test('4,000 patches make a PNG 1200 pixels wide and under 1 MB', async () => {
  const { of } = await pictureOf('/count field 90x115in 1in');
  const png = await draw(of);
  expect(sizeOfPng(png).width).toBe(1200);
  expect(png.length).toBeLessThan(1_000_000);
});
