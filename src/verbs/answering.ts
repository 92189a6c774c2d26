import type { Ask } from '../chat/command.ts';
import { document, type Reply } from '../chat/reply.ts';
import { render } from '../platforms/terminal/render.ts';
import { HOME_GUILD } from '../platforms/terminal/start.ts';
import type { AskFlags } from './ask-flags.ts';

/** Status of a process whose ask was a mistake, or a fault of ours. */
const MISTAKE = 2;
const FAULT = 1;

/** One ask with the flags' who, where and when. */
export function askOf(flags: AskFlags, words: string): Ask {
  const { as, organiser, place, now } = flags;
  return {
    who: { id: as, name: as, organiser },
    guild: HOME_GUILD,
    place,
    event: null,
    words,
    now: now ?? new Date(),
  };
}

/** Prints a reply as the flags say, its pictures written first. */
export async function print(reply: Reply, { json, pictures }: AskFlags): Promise<void> {
  const files = pictures && reply.pictures.length > 0 ? await drawn(reply, pictures) : undefined;
  const text = json ? JSON.stringify(document(reply, files)) : render(reply, { files });
  await write(`${text}\n`);
}

async function drawn({ pictures }: Reply, folder: string): Promise<Map<string, string>> {
  const { writePictures } = await import('../platforms/terminal/pictures-out.ts');
  const { draw } = await import('../pictures/draw.ts');
  return writePictures(pictures, folder, draw);
}

/** Waits until the text is handed over, so that what is kept is told before the next line is read. */
const write = (text: string) => new Promise<void>((done) => process.stdout.write(text, () => done()));

export const statusOf = ({ error }: Reply): number =>
  error === null ? 0 : error.code === 'fault' ? FAULT : MISTAKE;
