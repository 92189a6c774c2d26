import type { MatrixClient } from 'matrix-js-sdk';
import type { Reply } from '../../chat/reply.ts';
import { reply } from '../../chat/reply.ts';
import { CannotStart, EXIT, type Platform } from '../platform.ts';
import { Memory } from './answered.ts';
import { Answering } from './answering.ts';
import { clientFor, startSync } from './connection.ts';
import { type DeviceFiles, deviceFilesIn, openDevice } from './device.ts';
import { Direct } from './direct.ts';
import { Intake } from './intake.ts';
import { Invitations } from './invitations.ts';
import type { KeptIndexedDb } from './kept-indexeddb/open.ts';
import { forgetLeft } from './left.ts';
import { logInAgain } from './login.ts';
import { Memberships } from './membership.ts';
import { Messages } from './messages.ts';
import { Outbox, Refused } from './outbox.ts';
import { Quiet } from './quiet.ts';
import { Reach } from './reach.ts';
import { Reading } from './reading.ts';
import { readRecoveryKey, signDevice } from './recovery.ts';
import { keepSession, type Session } from './session.ts';
import { type MatrixStart, PLATFORM } from './settings.ts';
import { brings, refusalIn } from './trouble.ts';

const DAY = 24 * 60 * 60 * 1000;

/** Logs in, opens the keys, syncs, and answers until it is stopped. */
export async function startMatrix(needs: MatrixStart): Promise<Platform> {
  const quiet = new Quiet(needs.log);
  quiet.hide(needs.password, needs.accessToken, needs.storeKey, needs.recoveryKey);
  quiet.takeConsole();
  const running = new Running(needs, quiet);
  try {
    await running.begin();
  } catch (error) {
    await running.stop();
    throw error;
  }
  return running;
}

class Running implements Platform {
  readonly name = PLATFORM;
  readonly #needs: MatrixStart;
  readonly #quiet: Quiet;
  readonly #memory: Memory;
  readonly #outbox: Outbox;
  readonly #reach: Reach;
  readonly #messages: Messages;
  readonly #intake: Intake;
  readonly #reading: Reading;
  readonly #invitations: Invitations;
  readonly #memberships: Memberships;
  readonly #files: DeviceFiles;
  #session: Session | undefined;
  #keys: KeptIndexedDb | undefined;
  #client: MatrixClient | undefined;
  /** The client once it may be used; another one after a new login. */
  #ready = Promise.withResolvers<MatrixClient>();
  #tidying: NodeJS.Timeout | undefined;
  #stopped = false;

  constructor(needs: MatrixStart, quiet: Quiet) {
    this.#needs = needs;
    this.#quiet = quiet;
    this.#files = deviceFilesIn(needs);
    this.#ready.promise.catch(() => {});
    const client = () => this.#ready.promise;
    const { log, watch, draw, prefix } = needs;
    this.#memory = new Memory(needs.facts.notes);
    this.#reach = new Reach(needs);
    this.#outbox = new Outbox({ log, watch, reach: this.#reach, client });
    this.#messages = new Messages({ outbox: this.#outbox, memory: this.#memory, prefix, log, draw });
    const parts = {
      start: needs,
      outbox: this.#outbox,
      memory: this.#memory,
      messages: this.#messages,
      client,
    };
    const answering = new Answering({ ...parts, direct: new Direct(parts) });
    this.#intake = new Intake({ ...parts, answering });
    this.#reading = new Reading({ ...parts, intake: this.#intake });
    this.#invitations = new Invitations(needs, this.#outbox);
    this.#memberships = new Memberships(needs);
  }

  async begin(): Promise<void> {
    const { recoveryKey } = this.#needs;
    const signing = recoveryKey ? readRecoveryKey(recoveryKey) : undefined;
    await this.#reading.begin();
    const device = await openDevice(this.#needs, this.#files, {
      wasHere: (await this.#memory.readTo()) !== undefined,
      onParted: (error) => this.#parted(error),
    });
    this.#session = device.session;
    this.#keys = device.keys;
    await this.#connect(signing);
    if (device.session.owesWord) await this.#tellLost();
    const tidy = () => this.#tidy();
    this.#tidying = setInterval(tidy, DAY).unref();
    void tidy();
  }

  async #tidy(): Promise<void> {
    const old = new Date(this.#needs.now().getTime() - 30 * DAY);
    try {
      await this.#memory.prune(old);
      await forgetLeft(old, this.#needs);
    } catch (error) {
      this.#needs.log.error(brings(error), 'could not tidy up');
    }
  }

  async #connect(signing: Uint8Array<ArrayBuffer> | undefined): Promise<void> {
    const { log, user, password } = this.#needs;
    let session = this.#session as Session;
    const client = await clientFor(session, {
      start: this.#needs,
      quiet: this.#quiet,
      recoveryKey: signing,
      onSynced: (news) => this.#client && this.#reading.take(news, this.#client),
    });
    this.#client = client;
    if (!session.keys) {
      session = { ...session, keys: true };
      this.#session = session;
      keepSession(this.#files.session, session);
    }
    await this.#listen(client, signing);
    const starting = startSync(client, this.#needs.now());
    this.#ready.resolve(client);
    await starting;
    if (signing) await signDevice(client, signing, { user, password, log });
    else log.warn({}, 'no "recoveryKey" in the settings: members’ clients may warn of an unsigned device');
  }

  async #listen(client: MatrixClient, signing: Uint8Array<ArrayBuffer> | undefined): Promise<void> {
    const { RoomEvent, ClientEvent, HttpApiEvent } = await import('matrix-js-sdk');
    client.on(RoomEvent.MyMembership, (room, membership, before) => {
      if (membership === 'invite') this.#invitations.note(room);
      else this.#memberships.note(room, before);
    });
    client.on(ClientEvent.Sync, (state, _before, data) => {
      // One sync that fails is nothing yet: a long wait for news may end early.
      // Nor is being logged out: that has a listener of its own.
      const loggedOut = data?.error && refusalIn(data.error)?.code === 'M_UNKNOWN_TOKEN';
      if (state === 'ERROR' && !loggedOut) this.#reach.lost('to sync', data?.error);
      if (state === 'SYNCING') this.#reach.found('to sync');
      if (state !== 'PREPARED' && state !== 'SYNCING') return;
      this.#invitations.takeNoted();
      this.#memberships.takeNoted();
    });
    client.once(HttpApiEvent.SessionLoggedOut, (error) => void this.#loggedOut(error, signing));
  }

  /** The homeserver wants a new login for the same device, or has put the device away. */
  async #loggedOut(error: unknown, signing: Uint8Array<ArrayBuffer> | undefined): Promise<void> {
    if (this.#stopped) return;
    const { log, watch } = this.#needs;
    const ready = Promise.withResolvers<MatrixClient>();
    ready.promise.catch(() => {});
    this.#ready = ready;
    try {
      if (!refusalIn(error)?.softLogout)
        throw new CannotStart({
          sentence:
            'The homeserver has logged the bot out. Started again, it begins with a new device where it has a password.',
          status: this.#needs.password ? EXIT.later : EXIT.refused,
        });
      log.warn({}, 'the homeserver wants a new login');
      this.#client?.stopClient();
      const again = await logInAgain(this.#needs, this.#session as Session, 'soft-logout');
      if (!again)
        throw new CannotStart({
          sentence:
            'The homeserver wants a new login. Started again, the bot takes the new token of the settings.',
          status: EXIT.later,
        });
      this.#session = again;
      keepSession(this.#files.session, this.#session);
      await this.#connect(signing);
      watch.count('reconnects_total', { platform: PLATFORM });
      log.info({}, 'logged in again');
    } catch (failed) {
      ready.reject(failed);
      const ended =
        failed instanceof CannotStart
          ? failed.ended
          : { sentence: 'The bot could not log in again.', status: EXIT.later };
      this.#needs.ended(ended);
    }
  }

  /** What cannot be written must not be told: the program ends, and starts again from what is on the disk. */
  #parted(error: unknown): void {
    this.#needs.log.error(brings(error), 'the keys could not be written');
    const sentence = `The keys of encrypted rooms cannot be written to ${this.#files.keys}. Is the disk full?`;
    this.#needs.ended({ sentence, status: EXIT.later });
  }

  async #tellLost(): Promise<void> {
    const client = await this.#ready.promise;
    const device = client.getDeviceId() ?? '';
    const words = reply({
      lines: [
        'My keys for encrypted rooms were lost, and I began anew.',
        'What was said here before I cannot read any more. If I owe you an answer, ask once more.',
      ],
    });
    for (const room of client.getRooms()) {
      if (room.getMyMembership() !== 'join' || !(await this.#outbox.encrypts(room.roomId))) continue;
      const once = `lost ${device} ${room.roomId}`;
      await this.#messages
        .send(words, { room: room.roomId }, once, { guild: room.roomId, member: '' })
        .catch((error: unknown) => this.#needs.log.warn(brings(error), 'a room could not be told'));
    }
    // What was cut short is told by the next start; nobody is told twice.
    if (this.#stopped) return;
    this.#session = { ...(this.#session as Session), owesWord: false };
    keepSession(this.#files.session, this.#session);
  }

  async tell(place: string, said: Reply, once: string): Promise<void> {
    if (await this.#memory.wasTold(once)) return;
    try {
      await this.#messages.send(said, { room: place }, once, { guild: place, member: '' });
      await this.#memory.keepTold(once);
    } catch (error) {
      // Where it may not speak, that has been said, and trying on would not mend it.
      if (!(error instanceof Refused)) throw error;
    }
  }

  /** Takes nothing more in and finishes what was begun; encrypting needs the client until then. */
  async stop(): Promise<void> {
    clearInterval(this.#tidying);
    this.#stopped = true;
    this.#intake.close();
    this.#reading.stop();
    const finished = Promise.allSettled([...this.#intake.begun(), this.#reading.finished()]);
    await Promise.race([finished, new Promise((done) => setTimeout(done, 10_000).unref())]);
    this.#outbox.stop();
    this.#client?.stopClient();
    this.#keys?.close();
    this.#quiet.giveConsoleBack();
  }
}
