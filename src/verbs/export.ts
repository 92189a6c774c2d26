import { open, rename, rm } from 'node:fs/promises';
import { dirname } from 'node:path';
import { parseArgs } from 'node:util';
import { FactsTrouble } from '../chat/facts.ts';
import { type ExportFormat, exported } from '../guild/book-export.ts';
import type { Challenge, ChallengesKept } from '../guild/challenge-facts.ts';
import { ok, type Result, type Wrong, wrong } from '../measure/result.ts';
import { HOME_GUILD } from '../platforms/terminal/start.ts';
import { keepingAt } from './keeping.ts';
import { sentence } from './sentence.ts';

const MISTAKE = 2;

interface ExportFlags {
  readonly challenge: string;
  readonly guild: string;
  readonly format: ExportFormat;
  readonly out: string | undefined;
  readonly data: string | undefined;
  readonly config: string | undefined;
}

/** Writes a challenge's book to a file or to standard output, line by line: its length does not matter. */
export async function exportBook(args: readonly string[]): Promise<number> {
  const flags = readFlags(args);
  if (!flags.ok) return complain(flags);
  const keeping = await keepingAt({ data: flags.value.data, config: flags.value.config });
  if (!keeping.ok) return complain(keeping);
  const { facts, close } = keeping.value;
  try {
    const { guild, challenge, format, out } = flags.value;
    const found = await named(facts.challenges, guild, challenge);
    if (!found.ok) return complain(found);
    const book = exported(format, found.value, facts.challenges);
    return out === undefined ? await printed(book) : await written(book, out);
  } catch (error) {
    if (error instanceof FactsTrouble) return complain(error);
    throw error;
  } finally {
    await close();
  }
}

async function named(kept: ChallengesKept, guild: string, name: string): Promise<Result<Challenge>> {
  const all = await kept.all(guild, 10_000);
  const found = all.find(({ number }) => String(number) === name) ?? all.find((one) => one.name === name);
  return found
    ? ok(found)
    : wrong('no-such-challenge', { got: name, guild, known: all.slice(0, 8).map((one) => one.name) });
}

/**
 * A file is written under another name, flushed and only then put in its place: whoever looks sees the whole
 * book or none of it.
 */
async function written(pieces: AsyncIterable<string>, out: string): Promise<number> {
  const part = `${out}.part`;
  try {
    const file = await open(part, 'w', 0o600);
    try {
      const inBytes = encoder();
      for await (const piece of pieces) await file.writeFile(inBytes(piece));
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(part, out);
    const folder = await open(dirname(out));
    await folder.sync().finally(() => folder.close());
    return 0;
  } catch (error) {
    await rm(part, { force: true }).catch(() => {});
    // Of the file system's own errors the path says enough; any other is a fault of ours.
    if ((error as NodeJS.ErrnoException).syscall === undefined) throw error;
    return complain(wrong('export-not-written', { path: out }));
  }
}

/** To whoever reads; one who has read enough and goes is no fault. */
async function printed(pieces: AsyncIterable<string>): Promise<number> {
  const inBytes = encoder();
  process.stdout.on('error', () => {});
  for await (const piece of pieces) if (!(await said(inBytes(piece)))) break;
  return 0;
}

const said = (bytes: Uint8Array) =>
  new Promise<boolean>((done) => process.stdout.write(bytes, (error) => done(!error)));

/** One piece after the other in the same room: a long book would leave behind a heap of used buffers. */
function encoder(): (text: string) => Uint8Array {
  let room = Buffer.allocUnsafe(2 ** 18);
  return (text) => {
    const most = text.length * 3;
    if (most > room.length) room = Buffer.allocUnsafe(most);
    return room.subarray(0, room.write(text));
  };
}

function readFlags(args: readonly string[]): Result<ExportFlags> {
  const options = {
    challenge: { type: 'string' },
    guild: { type: 'string' },
    format: { type: 'string' },
    out: { type: 'string' },
    data: { type: 'string' },
    config: { type: 'string' },
  } as const;
  try {
    const { values, positionals } = parseArgs({ args: [...args], options, allowPositionals: true });
    const { guild = HOME_GUILD, format = 'csv', out, data, config } = values;
    const challenge = values.challenge ?? positionals.join(' ');
    if (challenge === '') return wrong('export-what');
    if (format !== 'csv' && format !== 'json') return wrong('export-format', { got: format });
    return ok({ challenge, guild, format, out, data, config });
  } catch (error) {
    return wrong('flag-unread', {
      got: error instanceof Error ? (error.message.split('. ')[0] ?? '') : '',
      known: Object.keys(options),
    });
  }
}

function complain({ problem }: Pick<Wrong, 'problem'>): number {
  process.stderr.write(`${sentence(problem)}\n`);
  return MISTAKE;
}
