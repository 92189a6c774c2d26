import { expect, it } from 'vitest';
import { fileName } from '../../commands/pictures.ts';
import { openAsking } from './asking.ts';

/** Titles that are longer than a file's name may be. */
const LONG = [
  '/yield long-hexagon 1 1/2in side:2 3/8in angle:75 fat-quarter seam:3/8in',
  '/yield tumbler 3 1/2in narrow:2 1/4in height:4 1/8in 1 3/8yd width:41 1/2in',
  '/yield hexagon 1 1/2in 1 3/8yd width:41 1/2in motif:4 1/2x5 1/8in',
  '/yardage tumbler 3 1/2in narrow:2 1/4in height:4 1/8in pieces:12345',
  '/template long-hexagon 1 1/2in side:2 3/8in angle:75 seam:3/8in',
  '/count garden 6x5 rosettes 12 rounds 1 3/16in path:own',
  '/plan garden quilt:61 1/8x72 3/8in rounds:2 size:1 3/16in path:diamonds',
];

it.each(LONG)('%s: the names of its files are whole, and no two are alike', async (words) => {
  const { pictures } = await openAsking()(words);
  const names = pictures.map(({ name }) => name);
  for (const name of names)
    expect(name).toMatch(/^[a-z0-9](?:[a-z0-9.-]{0,78}[a-z0-9])?\.(?:png|pdf|csv|json)$/);
  expect(new Set(names).size).toBe(names.length);
});

it('a long title is cut between words, and what tells the files apart stays', () => {
  const title = 'Tumblers, 3 1/2 in wide end, 2 1/4 in narrow end, 4 1/8 in high, from 42 x 36 in';
  expect(fileName(title, 'png', 'cutting plan')).toBe(
    'tumblers-3-1-2-in-wide-end-2-1-4-in-narrow-end-4-1-8-in-high-from-cutting-plan.png',
  );
  expect(fileName(title, 'png')).toBe(
    'tumblers-3-1-2-in-wide-end-2-1-4-in-narrow-end-4-1-8-in-high-from-42-x-36-in.png',
  );
  expect(fileName('x'.repeat(200), 'pdf')).toBe(`${'x'.repeat(80)}.pdf`);
});
