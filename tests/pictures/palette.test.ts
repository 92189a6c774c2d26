import { describe, expect, test } from 'vitest';
import { INK, LOOKS, lookOf, PAPER, SEWN, SOFT_INK } from '../../src/pictures/palette.ts';
import { contrast, difference, lightOf, SIGHTS, seenAs } from './seen.ts';

const fills = Array.from({ length: 6 }, (_, i) => lookOf(i).fill);

/** Ten times what can just be told apart: patches lie side by side, and some are small. */
const CLEARLY_APART = 25;

describe.each(Object.entries(SIGHTS))('with %s', (_, sight) => {
  test('any two role colours stay clearly apart', () => {
    for (const [i, one] of fills.entries())
      for (const other of fills.slice(i + 1)) {
        const apart = difference(seenAs(lightOf(one), sight), seenAs(lightOf(other), sight));
        expect(apart, `${one} beside ${other}`).toBeGreaterThan(CLEARLY_APART);
      }
  });
});

test('the simulation can tell: a red and a green that are one to a deuteranope are found to be', () => {
  const [red, green] = [lightOf('#C05A3C'), lightOf('#7E7A34')];
  expect(difference(red, green)).toBeGreaterThan(CLEARLY_APART);
  expect(difference(seenAs(red, SIGHTS.deuteranopia!), seenAs(green, SIGHTS.deuteranopia!))).toBeLessThan(
    CLEARLY_APART,
  );
});

test('no two looks are alike in both colour and texture', () => {
  const looks = Array.from({ length: LOOKS }, (_, i) => `${lookOf(i).fill} ${lookOf(i).texture}`);
  expect(new Set(looks).size).toBe(LOOKS);
});

test('the first six looks differ in texture alone, for a reader who sees no colour', () => {
  expect(new Set(Array.from({ length: 6 }, (_, i) => lookOf(i).texture)).size).toBe(6);
});

test('letters and lines stand out from what they are on (WCAG 2: 4.5 for text, 3 for large text and lines)', () => {
  expect(contrast(INK, PAPER)).toBeGreaterThan(7);
  expect(contrast(SOFT_INK, PAPER)).toBeGreaterThan(4.5);
  expect(contrast(SEWN, PAPER)).toBeGreaterThan(4.5);
  // Marks are bold and 40 pixels high: large text.
  for (let i = 0; i < 6; i++)
    expect(contrast(lookOf(i).mark, lookOf(i).fill), lookOf(i).fill).toBeGreaterThan(3);
});
