import { createRequire } from 'node:module';
import { renderAsync } from '@resvg/resvg-js';
import { FONT } from './lettering.ts';
import { pngFile } from './png-file.ts';

const require = createRequire(import.meta.url);
const fontFiles = ['DejaVuSansCondensed', 'DejaVuSansCondensed-Bold'].map((name) =>
  require.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`),
);

/** A picture as the bytes of a PNG. Only the fonts that are brought along are looked at. */
export async function toPng(picture: string): Promise<Uint8Array> {
  const rendered = await renderAsync(picture, {
    font: { loadSystemFonts: false, fontFiles, defaultFontFamily: FONT },
    logLevel: 'off',
  });
  return pngFile(rendered);
}
