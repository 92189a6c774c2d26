import { describe, expect, it } from 'vitest';
import { commands } from '../../commands/index.ts';
import { find } from '../../src/chat/find.ts';
import { readOptions } from '../../src/chat/read-options.ts';
import { ask } from './fakes.ts';
import { CONTEXT, readAs } from './read-as.ts';

/** Numbers that count something else than a size: the ask that is left, and what is told to be passed over. */
const COUNTED: readonly (readonly [message: string, asked: string, passed: string])[] = [
  ['2 twin quilts 1in how many hexies', '/count field quilt:twin size:1in', '2'],
  ['compare 2 rounds and 3 rounds for a queen 1in', '/count field quilt:queen size:1in', '2 rounds 3 rounds'],
  ["i'm 65 and want a quilt 65x80 in 1 inch, count", '/count field quilt:65x80in size:1in', '65'],
  ['we are 9, a rosette of 2 rounds in 1in', '/count rosette rounds:2 size:1in', '9'],
  ['scrap bag about 2 lbs how many hexies', '/cut shape:hexagon', '2 lbs'],
  [
    'i have $40 to spend at 11 a yard how many 1 in hexies',
    '/yield shape:hexagon size:1in cloth:36in',
    '$40 11',
  ],
  ['3 table runners 14x40, 1in', '/count field quilt:14x40in size:1in', '3'],
  ['grandmas flower garden block 3 rows how many pieces', '/count garden', '3 rows'],
  ['60x72 for my 30 guests', '/count field quilt:60x72in', '30'],
  ['finish a lap in 1 in by 1 june 2027?', '/count field quilt:lap size:1in', '1 june 2027'],
  ['how many hexies a day to finish 1917 in a year', '/cut shape:hexagon', '1917'],
  ['60x72 with 1/4 inch seams how many', '/count field quilt:60x72in', '1/4 inch'],
  ['60x72 in 1in hexies, seam of 3/8in', '/count field quilt:60x72in size:1in', '3/8in'],
  ['how do i fussy cut petals from a 4 inch repeat', '/cut', '4 inch'],
  ['use 30 weight thread for 42 seams how many needlefuls', '/time seams:42', '30'],
  ['a 12 inch block of 1in hexies', '/count blocks size:1in', '12 inch'],
  ['4 placemats 13 x 18 in 1in hexies how much fabric', '/yardage field:13x18in shape:hexagon size:1in', '4'],
  ['a 1/4 yd cut, 1in hexies', '/cut shape:hexagon size:1in', '1/4 yd'],
  ['do 100 hexies a week, how long for a queen 1in', '/time field:queen size:1in', '100 hexies a week'],
  ['i sew 20 hexies an hour, 500 seams, how long', '/time seams:500', '20 hexies 1 hour'],
  ['I am 5 foot 4 and want a throw in 1 inch hexies', '/count field quilt:throw size:1in', '5 foot 4'],
  ["I've basted 12 hexagons", '/cut shape:hexagon', '12'],
  ['when will i finish 500 hexagons if i do 20 a day', '/time pieces:500', '20 a day'],
  ['a rosette of 2 rounds, 12 in all', '/count rosette rounds:2', '12'],
];

/** Numbers without a unit that are the size all the same. */
const SIZES: readonly (readonly [message: string, asked: string])[] = [
  ['hexagon 1 1/2', '/cut shape:hexagon size:1 1/2in'],
  ['a 2 with 3/8in seams, hexagons', '/cut shape:hexagon size:2in seam:3/8in'],
  ['2 blue hexies cut size', '/cut shape:hexagon size:2in'],
  ['hexies at 2 from a fat quarter', '/yield shape:hexagon size:2in cloth:fat-quarter'],
  ['3/4 for a queen, how many', '/count field quilt:queen size:3/4in'],
  ['hexagon 2 seam 3/8', '/cut shape:hexagon size:2in seam:3/8in'],
  ['1 1/2 queen, how many', '/count field quilt:queen size:1 1/2in'],
];

describe('a number without a unit in a plain question', () => {
  it.each(COUNTED)('%s: counts something else', async (message, asked, passed) => {
    expect(await readAs(message)).toBe(asked);
    const found = await find(commands, ask(message));
    if (!found.ok) throw new Error(message);
    const read = readOptions(found.value.form.options, found.value.options as string, CONTEXT, 'question');
    const left = read.ok ? read.value.left.filter((word) => /\d/.test(word)) : [];
    expect(left.join(' ')).toBe(passed);
  });

  it.each(SIZES)('%s: is the size', async (message, asked) => {
    expect(await readAs(message)).toBe(asked);
  });

  it('is a size in a command', async () => {
    expect(await readAs('/count field queen 14')).toBe('/count field quilt:queen size:14in');
  });

  it('of flowers in a week is no number of flowers', async () => {
    expect(await readAs('if i do 3 flowers a week how long for 500 seams')).toBe('/time seams:500');
  });

  it('that stands before so many stars is told to make no ring', async () => {
    expect(await readAs('13 stars with hexagons between')).toBe('arrangement-unknown');
  });
});
