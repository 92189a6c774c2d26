import { mkdir, writeFile } from 'node:fs/promises';
import { join, parse } from 'node:path';
import type { Picture, Recipe } from '../../chat/reply.ts';

/** What this process has written, so that one reply's file never takes the place of another's. */
const written = new Map<string, string>();

/** Draws a reply's pictures into a folder, made if it is not there; gives the file of each by its name. */
export async function writePictures(
  pictures: readonly Picture[],
  folder: string,
  draw: (recipe: Recipe) => Promise<Uint8Array>,
): Promise<Map<string, string>> {
  await mkdir(folder, { recursive: true });
  const files = new Map<string, string>();
  for (const { name, of } of pictures) {
    const recipe = JSON.stringify(of);
    const file = freeName(join(folder, name), recipe);
    if (written.get(file) !== recipe) await writeFile(file, await draw(of));
    written.set(file, recipe);
    files.set(name, file);
  }
  return files;
}

/** The name itself, or with the first number that is free, or that the same recipe has already. */
function freeName(wanted: string, recipe: string): string {
  const { dir, name, ext } = parse(wanted);
  let file = wanted;
  for (let n = 2; written.has(file) && written.get(file) !== recipe; n++)
    file = join(dir, `${name}-${n}${ext}`);
  return file;
}
