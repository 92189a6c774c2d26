import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { draw } from '../../src/pictures/draw.ts';
import { pictureOf } from '../pictures/drawn.ts';

/** The PDF is rendered by poppler's pdftoppm, which knows nothing of how it was made, at 300 dots an inch. */
const DOTS = 300;
const MISSING =
  'pdftoppm is not here, so no PDF can be rendered. On Debian: apt-get install poppler-utils. Then run this again.';

const folder = mkdtempSync(join(tmpdir(), 'honeycount-print-'));
afterAll(() => rmSync(folder, { recursive: true }));

beforeAll(() => {
  try {
    execFileSync('pdftoppm', ['-v'], { stdio: 'pipe' });
  } catch {
    throw new Error(MISSING);
  }
});

interface Print {
  readonly width: number;
  readonly height: number;
  dark(x: number, y: number): boolean;
}

/** A page as it comes out of the printer. */
function printed(pdf: Uint8Array, name: string, page = 1): Print {
  const file = join(folder, `${name}.pdf`);
  writeFileSync(file, pdf);
  execFileSync('pdftoppm', [
    '-r',
    String(DOTS),
    '-gray',
    '-f',
    String(page),
    '-l',
    String(page),
    '-singlefile',
    file,
    join(folder, name),
  ]);
  const pgm = readFileSync(join(folder, `${name}.pgm`));
  const header = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(pgm.toString('latin1', 0, 64))!;
  const [width, height] = [Number(header[1]), Number(header[2])];
  const start = header[0].length;
  return { width, height, dark: (x, y) => pgm[start + y * width + x]! < 128 };
}

const turned = ({ width, height, dark }: Print): Print => ({
  width: height,
  height: width,
  dark: (x, y) => dark(y, x),
});

/** The lengths of level dark runs of more than an inch and a half, each line counted once. */
function longRuns({ width, height, dark }: Print): number[] {
  const runs: { from: number; length: number; y: number }[] = [];
  for (let y = 0; y < height; y++) {
    let from = 0;
    for (let x = 0; x <= width; x++) {
      if (x < width && dark(x, y)) continue;
      const length = x - from;
      const same = runs.some((run) => y - run.y < 12 && Math.abs(run.from - from) < 6);
      if (length > 1.5 * DOTS && !same) runs.push({ from, length, y });
      from = x + 1;
    }
  }
  return runs.map(({ length }) => length);
}

/** The two bars are there, along the foot or the side, each as long as it says, to a dot and a half at either end for its ticks. */
function expectBars(print: Print): void {
  const runs = [...longRuns(print), ...longRuns(turned(print))];
  for (const inches of [2, 50 / 25.4])
    expect(
      runs.some((run) => Math.abs(run - inches * DOTS) <= 3),
      `${inches.toFixed(3)} in among ${runs}`,
    ).toBe(true);
}

describe('a printed sheet of templates', () => {
  test('is a letter sheet with its bars on it', async () => {
    const { of } = await pictureOf('/template hexagon 1in seam:1/4in sheet:letter');
    const print = printed(await draw(of), 'letter');
    expect([print.width, print.height]).toEqual([8.5 * DOTS, 11 * DOTS]);
    expectBars(print);
  });

  test('is an A4 sheet with its bars on it', async () => {
    const { of } = await pictureOf('/template hexagon edge:3 1/2in sheet:a4');
    const print = printed(await draw(of), 'a4');
    expect(Math.abs(print.width - (210 / 25.4) * DOTS)).toBeLessThanOrEqual(1);
    expectBars(print);
  });

  test('has its hexagon cut at 2.2321 in flat to flat, the trade’s own figure', async () => {
    const { of } = await pictureOf('/template hexagon 1in seam:1/4in sheet:letter');
    const print = printed(await draw(of), 'flats');
    // Along the row through the first hexagon's middle, its upright sides are the dark dots furthest apart.
    const y = Math.round((0.25 + 2.5774 / 2) * DOTS);
    const dark = Array.from({ length: print.width }, (_, x) => x).filter((x) =>
      [-40, 0, 40].every((step) => print.dark(x, y + step)),
    );
    const sides = dark.filter((x, i) => i === 0 || x - dark[i - 1]! > 2);
    // The grain arrow stands between the two sides, so every pair is looked at.
    const flats = sides.flatMap((x, i) => sides.slice(i + 1).map((other) => other - x));
    expect(
      flats.some((across) => Math.abs(across - 2.2321 * DOTS) <= 3),
      `among ${flats}`,
    ).toBe(true);
  });

  test('is there for each page', async () => {
    const { of } = await pictureOf('/template hexagon 1in seam:0in papers:60 sheet:letter');
    const print = printed(await draw(of), 'third', 3);
    expectBars(print);
  });
});
