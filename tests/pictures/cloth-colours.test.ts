import { describe, expect, test } from 'vitest';
import { colourNamed } from '../../src/pictures/cloth-colours.ts';
import { type LayoutRecipe, layoutPicture } from '../../src/pictures/layout.ts';
import { lookOf, looksFor } from '../../src/pictures/palette.ts';
import { asked, elements, kept, lettersIn } from './drawn.ts';
import { contrast, difference, labOf, lightOf, SIGHTS, seenAs } from './seen.ts';

/** What a name stands for: the keywords of CSS Color Module Level 4 (W3C), chapter 6.1. */
const KEYWORDS: Readonly<Record<string, string>> = {
  ...{ red: '#FF0000', maroon: '#800000', pink: '#FFC0CB', orange: '#FFA500', yellow: '#FFFF00' },
  ...{ gold: '#FFD700', olive: '#808000', green: '#008000', lime: '#00FF00', teal: '#008080' },
  ...{ turquoise: '#40E0D0', blue: '#0000FF', 'sky blue': '#87CEEB', navy: '#000080', purple: '#800080' },
  ...{ lavender: '#E6E6FA', brown: '#A52A2A', tan: '#D2B48C', ivory: '#FFFFF0' },
};

/** Of no hue. */
const GREYS = ['white', 'grey', 'black'];

const NAMES = [...Object.keys(KEYWORDS), ...GREYS];

const fillOf = (name: string): string => colourNamed(name)!.fill;

/** CIE hue in degrees, and how strong the colour is. */
function hue(hex: string): { angle: number; chroma: number } {
  const [, a, b] = labOf(lightOf(hex));
  return { angle: (Math.atan2(b, a) * 180) / Math.PI, chroma: Math.hypot(a, b) };
}

const turn = (one: number, other: number): number => Math.abs(((one - other + 540) % 360) - 180);

test.each(Object.entries(KEYWORDS))('%s is drawn in a shade of it', (name, keyword) => {
  const [drawn, meant] = [hue(fillOf(name)), hue(keyword)];
  expect(turn(drawn.angle, meant.angle)).toBeLessThan(50);
  expect(drawn.chroma).toBeGreaterThan(12);
});

test('white, grey and black have no hue, and are light, middling and dark', () => {
  for (const name of GREYS) expect(hue(fillOf(name)).chroma).toBeLessThan(4);
  const light = GREYS.map((name) => labOf(lightOf(fillOf(name)))[0]);
  expect(light[0]).toBeGreaterThan(95);
  expect(light[1]).toBeGreaterThan(40);
  expect(light[1]).toBeLessThan(65);
  expect(light[2]).toBeLessThan(15);
});

/** Five times what can just be told apart, with a texture or a letter beside it. */
const APART = 12;

describe.each(Object.entries(SIGHTS))('with %s', (_, sight) => {
  test('any two named colours stay apart', () => {
    for (const [i, one] of NAMES.entries())
      for (const other of NAMES.slice(i + 1)) {
        const [a, b] = [one, other].map((name) => seenAs(lightOf(fillOf(name)), sight));
        expect(difference(a!, b!), `${one} beside ${other}`).toBeGreaterThan(APART);
      }
  });

  test('a cloth without a colour is not drawn like one that has one', () => {
    for (const name of NAMES) {
      const [one, ...others] = looksFor([name, '', '']);
      for (const other of others) {
        const [a, b] = [one!, other].map(({ fill }) => seenAs(lightOf(fill), sight));
        expect(difference(a!, b!), `${name} beside ${other.fill}`).toBeGreaterThan(APART);
      }
    }
  });
});

test('letters stand out on every colour (WCAG 2: 3 for large text)', () => {
  for (const name of NAMES) {
    const { fill, mark } = colourNamed(name)!;
    expect(contrast(mark, fill), name).toBeGreaterThan(3);
  }
});

test.each([
  ['Navy', 'navy'],
  ['my old red', 'red'],
  ['LIGHT BLUE', 'sky'],
  ['blue florals', 'blue'],
  ['yellow scraps', 'yellow'],
  ['off-white', 'cream'],
  ['dark green', 'green'],
  ['gray', 'grey'],
])('%s is %s', (said, name) => {
  expect(fillOf(said)).toBe(fillOf(name));
});

test.each(['scraps', 'florals', 'red and white stripe', 'wine bottles', 'reddish', 'постель', ''])(
  '‘%s’ says no colour',
  (said) => {
    expect(colourNamed(said)).toBeNull();
  },
);

test('cloths of one colour differ in texture, and so do the first six of any', () => {
  const reds = looksFor(['red', 'deep red', 'crimson', 'dark red', 'old red', 'scarlet']);
  expect(new Set(reds.map(({ texture }) => texture)).size).toBe(6);
  const alike = looksFor(['red', '', '', '', '', '', 'red', 'blue']);
  expect(new Set(alike.map(({ fill, texture }) => `${fill} ${texture}`)).size).toBe(8);
});

test('roles without a colour look as they always did', () => {
  expect(looksFor(['', 'scraps', 'florals'])).toEqual([0, 1, 2].map(lookOf));
});

/** Each role's words in the legend, and the colour of the cloth that is drawn for it. */
async function drawn(words: string): Promise<Record<string, string>> {
  const { pictures } = await asked(words);
  const svg = layoutPicture(kept<LayoutRecipe>(pictures.find(({ name }) => name.endsWith('.png'))!));
  const grounds = [...svg.matchAll(/<pattern id="(role\d+)".*?<rect[^>]*fill="(#\w+)"/g)];
  const swatches = elements(svg, 'rect').filter(({ fill }) => fill?.startsWith('url(#role'));
  const told = lettersIn(svg).filter((text) => /: [\d,]+$/.test(text));
  return Object.fromEntries(
    swatches.map(({ fill }, i) => [
      told[i]!.split(':')[0]!,
      grounds.find(([, id]) => fill === `url(#${id})`)![2]!,
    ]),
  );
}

test('the pictures of counts and of plans draw named cloths in their colours', async () => {
  expect(await drawn('/count rosette rounds:4 colours:red,white,blue')).toEqual({
    red: fillOf('red'),
    white: fillOf('white'),
    blue: fillOf('blue'),
  });
  expect(
    await drawn('/plan garden rosettes:7 rounds:2 cloths:centre yellow, petal old scraps, path off white'),
  ).toMatchObject({ 'centres, yellow': fillOf('yellow'), 'path, off white': fillOf('cream') });
  expect(await drawn('/plan quilt:20x24 size:1in cloths:field navy')).toEqual({
    'whole, navy': fillOf('navy'),
    'trimmed, navy': fillOf('navy'),
  });
});
