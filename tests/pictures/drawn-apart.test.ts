import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { draw } from '../../src/pictures/draw.ts';
import { DrawnApart } from '../../src/pictures/drawn-apart.ts';
import { drawnBefore } from '../../src/pictures/drawn-before.ts';

const ended: (() => void)[] = [];
afterEach(() => {
  for (const end of ended.splice(0)) end();
});

/** A process that draws, or one that runs this instead. */
function apart(instead?: string): DrawnApart {
  let entry: string | undefined;
  if (instead !== undefined) {
    const folder = mkdtempSync(join(tmpdir(), 'honeycount-'));
    entry = join(folder, 'entry.mjs');
    writeFileSync(entry, instead);
    ended.push(() => rmSync(folder, { recursive: true }));
  }
  const drawing = new DrawnApart(entry);
  ended.push(() => drawing.stop());
  return drawing;
}

const text = (words: string) => ({ draw: 'text', text: words }) as const;

describe('drawn in a process of its own', () => {
  test('a picture is what it is when it is drawn here', async () => {
    const patch = {
      ...{ draw: 'patch', title: 'T', shape: 'hexagon', dimensions: { edge: 1 }, seam: 0.25 },
      ...{ cornerStyle: 'pointed', reading: 'ruler', measures: [{ name: 'edge', words: 'side' }] },
    };
    const drawing = apart();
    expect(Buffer.from(await drawing.draw(patch)).equals(await draw(patch))).toBe(true);
    expect(drawing.running).toBe(true);
    drawing.stop();
    expect(drawing.running).toBe(false);
  });

  test('one that cannot be drawn says why, and the next one is drawn', async () => {
    const drawing = apart();
    await expect(drawing.draw({ draw: 'nothing' })).rejects.toThrow('no drawing is called nothing');
    expect(Buffer.from(await drawing.draw(text('yes'))).toString()).toBe('yes');
  });

  test('several at once each get their own', async () => {
    const drawing = apart();
    const words = Array.from({ length: 20 }, (_, i) => `number ${i}`);
    const drawn = await Promise.all(words.map((one) => drawing.draw(text(one))));
    expect(drawn.map((bytes) => Buffer.from(bytes).toString())).toEqual(words);
  });

  test('a process that ends in the middle is missed by nobody but the one who waited', async () => {
    const drawing = apart(`process.on('message', ({ id, recipe }) => {
      if (recipe.text === 'end') process.exit(3);
      process.send({ id, picture: Buffer.from(recipe.text) });
    });`);
    await expect(drawing.draw(text('end'))).rejects.toThrow('has ended');
    expect(Buffer.from(await drawing.draw(text('again'))).toString()).toBe('again');
  });

  test('stopping leaves nobody waiting', async () => {
    const drawing = apart(`process.on('message', ({ id, recipe }) => {
      if (recipe.text !== 'never') process.send({ id, picture: Buffer.from(recipe.text) });
    });`);
    await drawing.draw(text('first'));
    const never = drawing.draw(text('never'));
    drawing.stop();
    await expect(never).rejects.toThrow('stopped');
  });
});

describe('what was drawn before', () => {
  const bytes = (words: string) => new Uint8Array(Buffer.from(words));

  test('is at hand, drawn once however many ask at once', async () => {
    const drawn: string[] = [];
    const kept = drawnBefore(async (recipe) => {
      drawn.push(String(recipe.text));
      return bytes(String(recipe.text));
    });
    await Promise.all([kept(text('a')), kept(text('a')), kept(text('b'))]);
    expect(await kept(text('a'))).toEqual(bytes('a'));
    expect(drawn).toEqual(['a', 'b']);
  });

  test('goes when there is too much, what was asked for longest ago first', async () => {
    const drawn: string[] = [];
    const kept = drawnBefore(async (recipe) => {
      drawn.push(String(recipe.text));
      return new Uint8Array(40);
    }, 100);
    for (const one of ['a', 'b', 'a', 'c', 'a', 'b']) await kept(text(one));
    expect(drawn).toEqual(['a', 'b', 'c', 'b']);
  });

  test('what could not be drawn is tried again', async () => {
    let tries = 0;
    const kept = drawnBefore(() =>
      tries++ === 0 ? Promise.reject(new Error('no')) : Promise.resolve(bytes('yes')),
    );
    await expect(kept(text('a'))).rejects.toThrow('no');
    expect(await kept(text('a'))).toEqual(bytes('yes'));
  });

  test('one too large to keep is drawn each time and puts nothing else out', async () => {
    let large = 0;
    const kept = drawnBefore(async (recipe) => {
      if (recipe.text === 'large') large++;
      return new Uint8Array(recipe.text === 'large' ? 200 : 10);
    }, 100);
    await kept(text('small'));
    await kept(text('large'));
    await kept(text('large'));
    expect(large).toBe(2);
  });
});
