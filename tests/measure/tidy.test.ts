import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CONTROL, tidy } from '../../src/measure/tidy.ts';

describe('one sign for many', () => {
  it.each([
    ['1½″ × 2′', '1 1/2" x 2\''],
    ['  two   blanks ', 'two blanks'],
    ['a\tb\nc\u00a0d', 'a b c d'],
    ['1–1⁄2', '1-1/2'],
    ['−1', '-1'],
    ['“fat quarter”', '"fat quarter"'],
    ['it’s', "it's"],
    ["6''", '6"'],
    ['¾ and ⅞', '3/4 and 7/8'],
    ['10½', '10 1/2'],
    ['60✕72', '60x72'],
  ])('%s', (text, plain) => {
    expect(tidy(text)).toBe(plain);
  });

  it('a tidied text stays as it is', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        expect(tidy(tidy(text))).toBe(tidy(text));
      }),
    );
  });

  it('plain words are left alone', () => {
    fc.assert(
      fc.property(fc.array(fc.stringMatching(/^[a-z0-9:,./]{1,8}$/), { maxLength: 9 }), (words) => {
        expect(tidy(words.join(' '))).toBe(words.join(' '));
      }),
    );
  });
});

describe('characters that no message holds on purpose', () => {
  it.each([
    ['a null', 'a\u0000b'],
    ['a bell', '\u0007'],
    ['an escape', '\u001b[31m'],
    ['a delete', '\u007f'],
    ['a C1 control', '\u0085'],
    ['a blank without width', 'a\u200bb'],
    ['a right-to-left override', '\u202etuc'],
    ['an isolate', '\u2066'],
    ['an Arabic letter mark', '\u061c'],
    ['a byte order mark', '\ufeff1in'],
    ['a word joiner', '\u2060'],
    ['half a surrogate pair, first', 'a\ud83d b'],
    ['half a surrogate pair, second', 'a\udc1d b'],
  ])('%s', (_, text) => {
    expect(CONTROL.test(text)).toBe(true);
  });

  it.each(['1½″ × 2′', 'two\nlines\tand a tab', '🐝 👩🏽‍🌾 ⚙️', 'Ærø, Ňučičky, Ωμέγα', 'ｈｅｘ', '\u00a0'])(
    'not %j',
    (text) => {
      expect(CONTROL.test(text)).toBe(false);
    },
  );
});
