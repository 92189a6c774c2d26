import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Picture } from '../chat/reply.ts';
import { draw } from '../pictures/draw.ts';

/** Draws a reply's pictures into a folder, made if it is not there; gives the file of each by its name. */
export async function writePictures(
  pictures: readonly Picture[],
  folder: string,
): Promise<Map<string, string>> {
  await mkdir(folder, { recursive: true });
  const files = new Map<string, string>();
  for (const { name, of } of pictures) {
    const file = join(folder, name);
    await writeFile(file, await draw(of));
    files.set(name, file);
  }
  return files;
}
