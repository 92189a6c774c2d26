import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nearest, nearestStart, slipOf } from '../../src/chat/near.ts';

const SHAPES = ['hexagon', 'hexie', 'diamond', 'triangle', 'kite', 'third', 'square', 'half-hexagon'];
const PIECES = ['fat-quarter', 'fat-eighth', '5in-square', '10in-square', 'strip', 'letter', 'a4'];
const COMMANDS = ['cut', 'count', 'yield', 'yardage', 'time', 'me', 'guild', 'help'];

describe('the word that was meant', () => {
  it.each([
    ['hexgon', SHAPES, 'hexagon'],
    ['hexagno', SHAPES, 'hexagon'],
    ['HEXGON', SHAPES, 'hexagon'],
    ['dimond', SHAPES, 'diamond'],
    ['sqaure', SHAPES, 'square'],
    ['half hexgon', SHAPES, 'half-hexagon'],
    ['fat quater', PIECES, 'fat-quarter'],
    ['fatquarter', PIECES, 'fat-quarter'],
    ['fat eigth', PIECES, 'fat-eighth'],
    ['cutt', COMMANDS, 'cut'],
    ['conut', COMMANDS, 'count'],
    ['yeild', COMMANDS, 'yield'],
    ['yard', COMMANDS, 'yardage'],
    ['tiem', COMMANDS, 'time'],
  ])('%s', (got, known, word) => {
    expect(nearest(got, known)).toBe(word);
  });

  it.each([
    ['bananas', SHAPES],
    ['x', SHAPES],
    ['circle', SHAPES],
    ['frobnicate', COMMANDS],
    ['', COMMANDS],
    ['hexagon'.repeat(9), SHAPES],
    ['hexgon', []],
  ])('%s is near to nothing', (got, known) => {
    expect(nearest(got, known)).toBeNull();
  });

  it('a known word is its own nearest, and so is any with one sign dropped or two swapped', () => {
    const word = fc.constantFrom(...SHAPES.filter((one) => one.length > 4));
    fc.assert(
      fc.property(word, fc.nat(), (known, at) => {
        const i = at % (known.length - 1);
        const dropped = known.slice(0, i) + known.slice(i + 1);
        const turned = known.slice(0, i) + known[i + 1] + known[i] + known.slice(i + 2);
        for (const got of [known, dropped, turned])
          expect([known, 'hexie', 'hexagon']).toContain(nearest(got, SHAPES));
        expect(nearest(known, SHAPES)).toBe(known);
      }),
    );
  });

  it('at the start of a stretch, three words, two or one', () => {
    expect(nearestStart('fat quater of blue', PIECES)).toEqual({ got: 'fat quater', word: 'fat-quarter' });
    expect(nearestStart('hexgon, fat quater', SHAPES)).toEqual({ got: 'hexgon', word: 'hexagon' });
    expect(nearestStart('blue hexgon', SHAPES)).toBeNull();
  });
});

describe('a slip among ordinary words', () => {
  it.each([
    ['dimonds', 'diamonds'],
    ['hexagns', 'hexagons'],
    ['Hexgons', 'hexagons'],
  ])('%s', (got, word) => {
    expect(slipOf(got, ['diamonds', 'hexagons'])).toBe(word);
  });

  it('ordinary words of a question are no slips', () => {
    const ordinary =
      'about above after again almost because before bigger could does each enough every fabric finish from ' +
      'have inches large like make many measure much need number pieces please quilt should size small some ' +
      'that their there these they thing think this those through want what when where which while width with ' +
      'spare share hours would wrote your yours cutting sewing scraps sister thanks wanted white blue green';
    const known = [...SHAPES, ...PIECES, 'whole', 'cover', 'straight', 'across', 'down', 'running', 'whip'];
    for (const word of ordinary.split(' ')) expect(slipOf(word, known), word).toBeNull();
  });
});
