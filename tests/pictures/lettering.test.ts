import { createRequire } from 'node:module';
import PDFDocument from 'pdfkit';
import { expect, test } from 'vitest';
import { widthOf, wrapped } from '../../src/pictures/lettering.ts';

const require = createRequire(import.meta.url);

// The font's own figures, read by the PDF library's font reader.
test.each([
  ['DejaVuSansCondensed', false],
  ['DejaVuSansCondensed-Bold', true],
])('widths are those of %s', (name, bold) => {
  const paper = new PDFDocument().font(require.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`)).fontSize(1000);
  for (let code = 32; code < 127; code++) {
    const sign = String.fromCharCode(code);
    expect(widthOf(sign, 1000, bold), sign).toBeCloseTo(paper.widthOfString(sign), -0.4);
  }
});

test('no line is wider than its room, and no word is lost', () => {
  const text = '7 rosettes in 6 rows of 5, 2 rounds, a shared path, 1 1/2 in side, for 60 x 72 in';
  for (const room of [300, 500, 900]) {
    const lines = wrapped(text, 42, room);
    for (const line of lines) expect(widthOf(line, 42)).toBeLessThanOrEqual(room);
    expect(lines.join(' ')).toBe(text);
  }
});

test('a size, a mixed number and a unit are not parted', () => {
  for (const room of [200, 260, 320, 400]) {
    const lines = wrapped('cut 1 1/2 in and 60 x 72 in and 5 cm', 42, room);
    for (const line of lines) expect(line).not.toMatch(/(?:^| )(?:\d+|x|1\/2)$|^(?:x|in|cm|1\/2)/);
  }
});

test('what does not fit is cut short and says so', () => {
  expect(wrapped('unbelievablylongword', 42, 200)[0]).toMatch(/^unbel.*…$/);
  expect(wrapped('one two three four', 42, 100, { most: 2 }).at(-1)).toMatch(/…$/);
});
