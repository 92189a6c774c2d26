import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { CannotStart, EXIT } from '../platform.ts';
import type { KeptIndexedDb } from './kept-indexeddb/open.ts';
import { openKeys, putAside } from './keys.ts';
import { logIn, logInAgain, logOut, standingOf } from './login.ts';
import { keepSession, readSession, type Session } from './session.ts';
import type { MatrixStart } from './settings.ts';

/** Where a device keeps what it must not lose. */
export interface DeviceFiles {
  readonly session: string;
  readonly keys: string;
}

/** The bot's device at the homeserver, its keys open. */
export interface Device {
  readonly session: Session;
  readonly keys: KeptIndexedDb;
}

/** The files in the folder of the settings, which only its owner may look into. */
export function deviceFilesIn({ folder }: MatrixStart): DeviceFiles {
  const within = join(folder, 'matrix');
  mkdirSync(within, { recursive: true, mode: 0o700 });
  return { session: join(within, 'session.json'), keys: join(within, 'keys.sqlite') };
}

interface Opening {
  /** The bot has been at work before, whatever is left of that. */
  readonly wasHere: boolean;
  /** Told where keys cannot be written. */
  onParted(error: unknown): void;
}

/** The session and its keys: those that are kept, or a new device. */
export async function openDevice(
  needs: MatrixStart,
  files: DeviceFiles,
  { wasHere, onParted }: Opening,
): Promise<Device> {
  const keys = { file: files.keys, storeKey: needs.storeKey, onParted };
  const before = readSession(files.session);
  const known = before && (await knownSession(needs, files.session, before));
  const opened = known && (await openKeys(keys, known.keys));
  if (opened) return { session: known, keys: opened };
  if (known && !needs.password)
    throw new CannotStart({
      sentence: `The keys in ${files.keys} are lost, and a new device needs a "password", or a new "accessToken" after ${files.session} is deleted.`,
      status: EXIT.settings,
    });
  if (known) {
    await logOut(needs, known);
    needs.log.warn({ device: known.deviceId }, 'the keys of this device are lost: beginning a new one');
  }
  const owesWord = before ? before.user === needs.user : wasHere;
  const session = { ...(await logIn(needs)), owesWord };
  // Until then they may still be of use: to a new token of the same device.
  putAside(files.keys, needs.now());
  keepSession(files.session, session);
  const made = await openKeys(keys, false);
  if (!made) throw new Error('a new file for keys cannot be opened');
  return { session, keys: made };
}

/** The kept session where the homeserver still takes it, logged in again where that can be. */
async function knownSession(needs: MatrixStart, file: string, read: Session): Promise<Session | undefined> {
  const { user, homeserver } = needs;
  if (read.user !== user) return undefined;
  // The account's homeserver may be found at another address than before.
  const kept = { ...read, homeserver };
  const standing = await standingOf(needs, kept);
  if (standing === 'good') return kept;
  const again = await logInAgain(needs, kept, standing);
  if (again) keepSession(file, again);
  return again;
}
