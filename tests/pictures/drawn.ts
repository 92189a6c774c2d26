import { Resvg } from '@resvg/resvg-js';
import { commands } from '../../commands/index.ts';
import { openRoom } from '../../src/chat/dispatch.ts';
import type { Picture, Reply } from '../../src/chat/reply.ts';
import { memoryFacts } from '../standin/memory-facts.ts';

const room = openRoom({
  commands,
  facts: memoryFacts(),
  onFault(error) {
    throw error;
  },
});

/** The reply to an ask of a member who has set nothing. */
export async function asked(words: string): Promise<Reply> {
  const reply = await room.answer({
    who: { id: words, name: 'Ada', organiser: false },
    guild: 'guild',
    place: 'home',
    event: null,
    words,
    now: new Date('2026-12-01T10:00:00Z'),
  });
  if (reply.error || reply.asks) throw new Error(`${words}: ${reply.error?.message ?? reply.asks}`);
  return reply;
}

/** The one picture of a reply. */
export async function pictureOf(words: string): Promise<Picture> {
  const { pictures } = await asked(words);
  if (pictures.length !== 1) throw new Error(`${words}: ${pictures.length} pictures`);
  return pictures[0]!;
}

/** A recipe as it comes back from where replies are kept. */
export const kept = <T>(picture: Picture): T => JSON.parse(JSON.stringify(picture.of)) as T;

/** The attributes of every element of a kind in a picture, in order. */
export function elements(svg: string, name: string): Record<string, string>[] {
  return [...svg.matchAll(new RegExp(`<${name}((?: [\\w-]+="[^"]*")*)/?>`, 'g'))].map(([, attributes = '']) =>
    Object.fromEntries([...attributes.matchAll(/([\w-]+)="([^"]*)"/g)].map(([, key, value]) => [key, value])),
  );
}

/** What is written in a picture, in order. */
export const lettersIn = (svg: string): string[] =>
  [...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, text = '']) =>
    text.replaceAll('&amp;', '&').replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&quot;', '"'),
  );

/** How many outlines a path has. */
export const outlinesIn = (d: string): number => d.match(/m/gi)?.length ?? 0;

/** How many pixels a path fills, drawn by the renderer: an area measured by somebody else. */
export function pixelsFilled(d: string, width: number, height: number): number {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"><path d="${d}" fill="#000"/></svg>`;
  const { pixels } = new Resvg(svg).render();
  let covered = 0;
  for (let i = 3; i < pixels.length; i += 4) covered += pixels[i]! / 255;
  return covered;
}

/** A PNG's size in pixels, from its header. */
export function sizeOfPng(png: Uint8Array): { width: number; height: number } {
  const header = Buffer.from(png.buffer, png.byteOffset, 24);
  if (header.toString('latin1', 1, 4) !== 'PNG') throw new Error('not a PNG');
  return { width: header.readUInt32BE(16), height: header.readUInt32BE(20) };
}
