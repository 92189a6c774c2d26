import { crc32, deflateSync } from 'node:zlib';

/** Red, green, blue and opacity of each pixel, row by row. What is transparent is not kept. */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly pixels: Uint8Array;
}

/**
 * The bytes of a PNG of up to 256 colours (PNG specification, W3C, colour type 3). Our drawings have few
 * colours, and the mixtures at their edges are rounded to what the eye cannot tell; such a file is a quarter of
 * one in full colour, which counts on a telephone.
 */
export function pngFile(picture: Pixels): Uint8Array {
  const { width, height } = picture;
  const { colours, indices } = indexed(picture);
  const rows = Buffer.alloc(height * (width + 1));
  // Each row begins with its filter, 0: none, which suits a picture of few colours best.
  for (let y = 0; y < height; y++)
    rows.set(indices.subarray(y * width, (y + 1) * width), y * (width + 1) + 1);
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 3, 0, 0, 0], 8);
  return Buffer.concat([
    Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'),
    chunk('IHDR', header),
    chunk('PLTE', colours),
    chunk('IDAT', deflateSync(rows, { level: 6 })),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function chunk(name: string, data: Uint8Array): Buffer {
  const head = Buffer.alloc(8);
  head.writeUInt32BE(data.length, 0);
  head.write(name, 4, 'latin1');
  const sum = Buffer.alloc(4);
  sum.writeUInt32BE(crc32(data, crc32(head.subarray(4))), 0);
  return Buffer.concat([head, data, sum]);
}

/** Colours alike in the upper five bits of red, green and blue are taken together. */
const KINDS = 1 << 15;
const MOST = 256;
/** So many places go to the commonest kinds; the rest is spread over all the others. */
const COMMONEST = 128;

const kindOf = (pixels: Uint8Array, i: number): number =>
  ((pixels[i]! >> 3) << 10) | ((pixels[i + 1]! >> 3) << 5) | (pixels[i + 2]! >> 3);

function indexed({ pixels }: Pixels): { colours: Uint8Array; indices: Uint8Array } {
  const { counts, colour } = kindsIn(pixels);
  const used = [...counts.keys()].filter((kind) => counts[kind]! > 0);
  const kept = keptOf(used, counts);
  const shades = kept.map((kind) => colour[kind]!);
  const place = new Uint8Array(KINDS);
  for (const kind of used) place[kind] = nearest(colour[kind]!, shades);
  const indices = new Uint8Array(pixels.length / 4);
  for (let i = 0, n = 0; n < indices.length; i += 4, n++) indices[n] = place[kindOf(pixels, i)]!;
  return { colours: Uint8Array.from(shades.flatMap(parts)), indices };
}

/** The kinds that get a place: all where there is room, else the commonest and an even choice of the others. */
function keptOf(used: readonly number[], counts: Uint32Array): readonly number[] {
  if (used.length <= MOST) return used;
  const byCount = used.toSorted((a, b) => counts[b]! - counts[a]!);
  const others = byCount.slice(COMMONEST).sort((a, b) => a - b);
  const room = MOST - COMMONEST;
  const even = Array.from(
    { length: room },
    (_, i) => others[Math.floor(((i + 0.5) * others.length) / room)]!,
  );
  return [...byCount.slice(0, COMMONEST), ...even];
}

/** How many pixels there are of each kind, and the commonest colour among them (by majority vote). */
function kindsIn(pixels: Uint8Array): { counts: Uint32Array; colour: Uint32Array } {
  const counts = new Uint32Array(KINDS);
  const colour = new Uint32Array(KINDS);
  const lead = new Uint32Array(KINDS);
  for (let i = 0; i < pixels.length; i += 4) {
    const kind = kindOf(pixels, i);
    const exact = (pixels[i]! << 16) | (pixels[i + 1]! << 8) | pixels[i + 2]!;
    counts[kind]!++;
    if (colour[kind] === exact) lead[kind]!++;
    else if (lead[kind] === 0) [colour[kind], lead[kind]] = [exact, 1];
    else lead[kind]!--;
  }
  return { counts, colour };
}

const parts = (colour: number): [number, number, number] => [colour >> 16, (colour >> 8) & 255, colour & 255];

function nearest(colour: number, among: readonly number[]): number {
  const [r, g, b] = parts(colour);
  let [best, least] = [0, Infinity];
  among.forEach((one, i) => {
    const [x, y, z] = parts(one);
    const apart = (r - x) ** 2 + (g - y) ** 2 + (b - z) ** 2;
    if (apart < least) [best, least] = [i, apart];
  });
  return best;
}
