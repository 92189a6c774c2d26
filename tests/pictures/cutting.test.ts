import { describe, expect, test } from 'vitest';
import { type CuttingRecipe, cuttingPicture } from '../../src/pictures/cutting.ts';
import { draw } from '../../src/pictures/draw.ts';
import { asked, elements, kept, lettersIn, outlinesIn, pictureOf, sizeOfPng } from './drawn.ts';

const svgOf = async (words: string): Promise<string> =>
  cuttingPicture(kept<CuttingRecipe>(await pictureOf(words)));

/** The patches that lie on the cloth: the path that is filled and has an outline. */
const patchesIn = (svg: string): number =>
  Math.max(...elements(svg, 'path').map(({ d = '', fill }) => (fill?.startsWith('#') ? outlinesIn(d) : 0)));

/** From the trade's own table of yields: patch, cloth, and the better of its methods. */
const YIELDS: readonly (readonly [string, number])[] = [
  ['/yield hexagon 1in fat-quarter', 75],
  ['/yield hexagon 1in 10in-square', 16],
  ['/yield hexagon 1in 5in-square', 4],
  ['/yield hexagon 1in strip width:42in', 18],
  ['/yield diamond 2in fat-quarter', 56],
  ['/yield triangle 1 1/2in fat-quarter', 140],
  ['/yield square 1 1/2in 10in-square', 25],
];

describe.each(YIELDS)('the picture of %s', (words, count) => {
  test('lays out at least so many, as many as the reply says, with the cloth’s measures', async () => {
    const svg = await svgOf(words);
    const { figures, pictures } = await asked(words);
    const best = figures.best!.value as number;
    expect(best).toBeGreaterThanOrEqual(count);
    expect(patchesIn(svg)).toBe(best);
    expect(lettersIn(svg).join('\n')).toMatch(new RegExp(`^${best} `, 'm'));
    expect(pictures[0]!.alt).toContain(`${best} `);
    const [width, length] = [figures.clothWidth!.value, figures.clothLength!.value];
    expect(lettersIn(svg)).toContain(`${width} in`);
    expect(lettersIn(svg)).toContain(`${length === 2.5 ? '2 1/2' : length} in`);
  });

  test('says what is wasted: the cloth less the patches', async () => {
    const { figures, title } = await asked(words);
    const shape = /^(\S+)/.exec(title)![1]!;
    const cut = await asked(words.replace('/yield', '/cut').replace(/ (?:fat|10in|5in|strip).*$/, ''));
    const cloth = (figures.clothWidth!.value as number) * (figures.clothLength!.value as number);
    const used = ((figures.best!.value as number) * (cut.figures.cutArea!.value as number)) / cloth;
    expect(lettersIn(await svgOf(words)), shape).toContain(`waste: ${Math.round((1 - used) * 100)} %`);
  });
});

test('cloth from the bolt has selvages at its sides, a fat quarter at one end, a square none', async () => {
  const bands = async (words: string) =>
    elements(await svgOf(words), 'rect').filter(({ fill, rx }) => fill === 'url(#selvage)' && !rx);
  const [left, right] = await bands('/yield hexagon 1in 1yd');
  expect([left!.width, right!.width]).toEqual([left!.width, left!.width]);
  expect(Number(right!.x)).toBeGreaterThan(Number(left!.x) + 500);
  const [end, ...more] = await bands('/yield hexagon 1in fat-quarter');
  expect(more).toEqual([]);
  expect(Number(end!.width)).toBeGreaterThan(Number(end!.height) * 10);
  expect(await bands('/yield hexagon 1in 10in-square')).toEqual([]);
});

test('of yardage only the patches asked for are laid out, and what is bought to spare is shown', async () => {
  const words = '/yardage 240 hexagon 1in width:42in';
  const svg = await svgOf(words);
  expect(patchesIn(svg)).toBe(240);
  // ¾ yd bought, 26.78 in needed: the trade's own worked case.
  expect(lettersIn(svg)).toContain('27 in');
  expect(lettersIn(svg)).toContain('to spare: 0.21 in');
});

test('what the wash takes is not to spare', async () => {
  const svg = await svgOf('/yardage 240 hexagon 1in width:42in shrink:3%');
  // 26.78 / 0.97 = 27.61: 7/8 yd = 31.5 in, after the wash 30.56, less 26.78.
  expect(lettersIn(svg)).toContain('to spare: 3.77 in');
});

test('strips have their straight cuts from edge to edge, rows that share lines have none', async () => {
  const strips = await svgOf('/yardage 300 diamond 2in width:40in method:strips');
  expect(lettersIn(strips)).toContain('straight cuts');
  const cuts = elements(strips, 'path').find(
    ({ d = '', fill }) => fill === 'none' && /^(?:M[\d. -]+h[\d.-]+)+$/.test(d),
  );
  // 20 strips, the trade's own worked case: 21 lines.
  expect(outlinesIn(cuts!.d!)).toBe(21);
  // Each from edge to edge of the cloth: all of one length.
  expect(new Set([...cuts!.d!.matchAll(/h([\d.-]+)/g)].map(([, long]) => long)).size).toBe(1);
  expect(lettersIn(await svgOf('/yield hexagon 1in 1yd'))).not.toContain('straight cuts');
});

test('very long cloth is shown in two parts with a tear, and all its length is said', async () => {
  const svg = await svgOf('/yardage 5000 hexagon 1in width:42in');
  const { figures } = await asked('/yardage 5000 hexagon 1in width:42in');
  expect(figures.bestLength!.value).toBeGreaterThan(400);
  expect(lettersIn(svg)).toContain('and so on');
  const { height } = sizeOfPng(await draw((await pictureOf('/yardage 5000 hexagon 1in width:42in')).of));
  expect(height).toBeLessThan(2600);
});

test('more patches than anybody looks at are not laid out', async () => {
  expect((await asked('/yardage 1000000 hexagon 1in')).pictures).toEqual([]);
  expect((await asked('/yardage 15000 hexagon 1in')).pictures).toHaveLength(1);
});

test('the sewing line is drawn where it can be seen, and not where it would blur', async () => {
  const dashed = async (words: string) =>
    elements(await svgOf(words), 'path').some(
      (path) => path['stroke-dasharray'] === '9 6' && outlinesIn(path.d!) > 3,
    );
  expect(await dashed('/yield hexagon 1in 10in-square')).toBe(true);
  expect(await dashed('/yield hexagon 1/2in 2yd')).toBe(false);
});
