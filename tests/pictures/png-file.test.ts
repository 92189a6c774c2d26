import { Resvg } from '@resvg/resvg-js';
import { expect, test } from 'vitest';
import { type LayoutRecipe, layoutPicture } from '../../src/pictures/layout.ts';
import { pngFile } from '../../src/pictures/png-file.ts';
import { kept, pictureOf } from './drawn.ts';

/** What another reader of PNG (the renderer's own) finds in a file. */
function readBack(png: Uint8Array, width: number, height: number): Uint8Array {
  const data = Buffer.from(png).toString('base64');
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"><image width="${width}" height="${height}" href="data:image/png;base64,${data}" image-rendering="optimizeSpeed"/></svg>`;
  return new Resvg(svg).render().pixels;
}

function differences(a: Uint8Array, b: Uint8Array): { worst: number; same: number } {
  let [worst, same] = [0, 0];
  for (let i = 0; i < a.length; i += 4) {
    const apart = Math.max(...[0, 1, 2].map((c) => Math.abs(a[i + c]! - b[i + c]!)));
    worst = Math.max(worst, apart);
    if (apart === 0) same++;
  }
  return { worst, same: same / (a.length / 4) };
}

test('the file shows the drawing: its grounds exactly, its edges to what is not seen', async () => {
  const svg = layoutPicture(kept<LayoutRecipe>(await pictureOf('/count garden 7 rosettes rounds:2')));
  const { width, height, pixels } = new Resvg(svg, { font: { loadSystemFonts: false } }).render();
  const png = pngFile({ width, height, pixels });
  const { worst, same } = differences(pixels, readBack(png, width, height));
  expect(same).toBeGreaterThan(0.9);
  expect(worst).toBeLessThan(48);
});

test('of more than 256 colours each pixel gets one near its own', () => {
  const [width, height] = [64, 64];
  const pixels = new Uint8Array(width * height * 4);
  for (let i = 0; i < width * height; i++)
    pixels.set([(i % 64) * 4, Math.floor(i / 64) * 4, 128, 255], i * 4);
  const { worst } = differences(pixels, readBack(pngFile({ width, height, pixels }), width, height));
  expect(worst).toBeLessThan(40);
});

test('a picture of one colour keeps it', () => {
  const pixels = new Uint8Array(16 * 4).map((_, i) => [0xef, 0xae, 0x38, 255][i % 4]!);
  const back = readBack(pngFile({ width: 4, height: 4, pixels }), 4, 4);
  expect([...back.subarray(0, 4)]).toEqual([0xef, 0xae, 0x38, 255]);
});
