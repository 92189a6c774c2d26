import { closeSync, fsyncSync, openSync, readFileSync, renameSync, rmSync, writeSync } from 'node:fs';
import { dirname } from 'node:path';
import { z } from 'zod';

const shape = z.object({
  homeserver: z.string(),
  user: z.string(),
  deviceId: z.string(),
  accessToken: z.string(),
  /** The device's keys have been made, so they must be there. */
  keys: z.boolean(),
  /** An earlier device is lost or was put away, and the rooms have not all been told. */
  owesWord: z.boolean().default(false),
});

/** One device of ours at the homeserver. */
export type Session = z.infer<typeof shape>;

/** The session kept in a file; undefined where there is none that can be read. */
export function readSession(file: string): Session | undefined {
  try {
    return shape.parse(JSON.parse(readFileSync(file, 'utf8')));
  } catch {
    return undefined;
  }
}

/**
 * Keeps the session, readable by its owner alone. A new file is written, flushed and put in the old one's place,
 * so that a crash leaves the one or the other.
 */
export function keepSession(file: string, session: Session): void {
  const beside = `${file}.new`;
  rmSync(beside, { force: true });
  const out = openSync(beside, 'wx', 0o600);
  writeSync(out, `${JSON.stringify(session)}\n`);
  fsyncSync(out);
  closeSync(out);
  renameSync(beside, file);
  const folder = openSync(dirname(file), 'r');
  fsyncSync(folder);
  closeSync(folder);
}
