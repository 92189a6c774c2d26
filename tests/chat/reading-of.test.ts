import { describe, expect, test } from 'vitest';
import { settle } from '../../src/chat/defaults.ts';
import { readingOf } from '../../src/chat/reading-of.ts';

const unset = settle({}, {});

describe('how an answer reads', () => {
  test.each([
    'hexagon 2cm',
    'field 150x200cm 2 cm',
    'hexagon 20mm from fat-quarter',
    'how many 2cm hexies from 1.5 m of 110 cm',
    'half a metre of 110 cm, 2cm hexies',
  ])('%s: in metric', (words) => {
    expect(readingOf(words, unset)).toBe('metric');
  });

  test.each([
    'hexagon 1in',
    'hexagon 2cm seam 1/4in',
    'half a yard, 2cm hexies',
    'a yard of it, 2cm hexies',
    'field queen 1 1/2"',
    'hexagon',
    'members:2 more:no',
  ])('%s: on an inch ruler', (words) => {
    expect(readingOf(words, unset)).toBe('ruler');
  });

  test('options handed over by name count together', () => {
    expect(readingOf({ shape: 'hexagon', size: '2cm' }, unset)).toBe('metric');
    expect(readingOf({ size: '2cm', seam: '1/4in' }, unset)).toBe('ruler');
  });

  test('what she or her guild has set goes before', () => {
    expect(readingOf('hexagon 2cm', settle({ reading: 'both' }, {}))).toBe('both');
    expect(readingOf('hexagon 2cm', settle({}, { reading: 'ruler' }))).toBe('ruler');
    expect(readingOf('hexagon 2cm', settle({ unit: 'in' }, {}))).toBe('ruler');
    expect(readingOf('hexagon 1in', settle({ unit: 'cm' }, {}))).toBe('metric');
  });
});
