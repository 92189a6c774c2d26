import { expect, test } from 'vitest';
import { type BallRecipe, ballPicture } from '../../src/pictures/ball.ts';
import { draw } from '../../src/pictures/draw.ts';
import { asked, elements, kept, lettersIn, pictureOf, sizeOfPng } from './drawn.ts';

const svgOf = async (words: string): Promise<string> => ballPicture(kept<BallRecipe>(await pictureOf(words)));

const piecesIn = (svg: string): { x: number; y: number }[][] =>
  elements(svg, 'path')
    .filter(({ fill }) => fill?.startsWith('url(#piece'))
    .map(({ d = '' }) =>
      d
        .slice(1, -1)
        .split('L')
        .map((corner) => {
          const [x = 0, y = 0] = corner.split(' ').map(Number);
          return { x, y };
        }),
    );

test('the ball is seen twice: one piece and five about it, and four at a seam', async () => {
  const svg = await svgOf('/count ball size:1in');
  const pieces = piecesIn(svg);
  expect(pieces).toHaveLength(6 + 4);
  for (const piece of pieces) expect(piece).toHaveLength(5);
  const foremost = elements(svg, 'path').filter(({ fill }) => fill === 'url(#piece0)');
  expect(foremost).toHaveLength(1 + 2);
});

test('it says the sizes and counts of the reply', async () => {
  for (const words of ['/count ball size:1in', '/count ball across:4in', '/count ball size:40mm']) {
    const [{ lines, pictures }, letters] = [await asked(words), lettersIn(await svgOf(words))];
    const [flat, corner] = [/(.+?) across, flat/, /\n(.+?) across, corner/].map(
      (size) => size.exec(lines.slice(1).join('\n'))![1]!,
    );
    for (const told of [`flat to flat ${flat}`, `corner to corner ${corner}`, 'pentagons: 12', 'seams: 30'])
      expect(letters).toContain(told);
    expect(pictures[0]!.alt).toContain(`${corner} corner to corner, ${flat} flat to flat`);
  }
});

test('both sizes can be measured where it is seen at a seam: their lines are as long as they say', async () => {
  const reply = await asked('/count ball size:2in');
  const svg = await svgOf('/count ball size:2in');
  const lines = elements(svg, 'path').flatMap(({ d = '', stroke }) => {
    const ends = /^M([\d.-]+) ([\d.-]+)L([\d.-]+) ([\d.-]+)$/.exec(d)?.slice(1).map(Number);
    return ends && stroke === '#1B2233' ? [Math.hypot(ends[2]! - ends[0]!, ends[3]! - ends[1]!)] : [];
  });
  const [corner, flat] = [reply.figures.cornerToCorner, reply.figures.flatToFlat].map((one) =>
    Number(one?.value),
  );
  expect(lines).toHaveLength(2);
  expect(lines[1]! / lines[0]!).toBeCloseTo(flat! / corner!, 3);
});

test('a piece seen face on is a regular pentagon', async () => {
  const svg = await svgOf('/count ball size:1in');
  const [first] = elements(svg, 'path').filter(({ fill }) => fill === 'url(#piece0)');
  const piece = piecesIn(
    `<path${Object.entries(first!)
      .map(([key, value]) => ` ${key}="${value}"`)
      .join('')}/>`,
  )[0]!;
  const sides = piece.map(({ x, y }, i) => Math.hypot(piece[(i + 1) % 5]!.x - x, piece[(i + 1) % 5]!.y - y));
  for (const side of sides) expect(side).toBeCloseTo(sides[0]!, 1);
});

test('it makes a PNG', async () => {
  const { of } = await pictureOf('/count ball size:1in');
  expect(sizeOfPng(await draw(of)).width).toBe(1200);
});
