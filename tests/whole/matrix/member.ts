import { createDecipheriv, createHash } from 'node:crypto';
import * as sdk from 'matrix-js-sdk';
import { type Account, type Reach, register } from './homeserver.ts';

const SILENT = { trace() {}, debug() {}, info() {}, warn() {}, error() {}, getChild: () => SILENT } as never;

// The library talks to the console even with a logger given.
for (const level of ['trace', 'debug', 'info', 'warn'] as const) console[level] = () => {};

export interface Seen {
  readonly id: string;
  readonly room: string;
  readonly sender: string;
  readonly type: string;
  readonly content: Record<string, unknown>;
  readonly relation: Record<string, unknown> | undefined;
  readonly encrypted: boolean;
  readonly readable: boolean;
  readonly event: sdk.MatrixEvent;
}

/** A member at another client: the same library, with her keys in memory. */
export class Member {
  readonly client: sdk.MatrixClient;
  readonly account: Account;
  /** The key that opens the account's secrets. */
  recovery: Uint8Array<ArrayBuffer> | undefined;
  readonly #events = new Map<string, sdk.MatrixEvent>();
  #number = 0;

  private constructor(client: sdk.MatrixClient, account: Account) {
    this.client = client;
    this.account = account;
  }

  /** A new member. */
  static async join(reach: Reach, called: string): Promise<Member> {
    return Member.with(reach, await register(reach, called));
  }

  /** Somebody at an account that there is. */
  static async with({ address }: Reach, account: Account): Promise<Member> {
    let member: Member | undefined;
    const door = sdk.createClient({ baseUrl: address, logger: SILENT });
    const session = await door.loginRequest({
      type: 'm.login.password',
      identifier: { type: 'm.id.user', user: account.user },
      password: account.password,
    });
    const client = sdk.createClient({
      ...{ baseUrl: address, userId: account.user, logger: SILENT, disableVoip: true },
      ...{ deviceId: session.device_id, accessToken: session.access_token },
      cryptoCallbacks: {
        getSecretStorageKey: async ({ keys }) => {
          const [name] = Object.keys(keys);
          return name && member?.recovery ? [name, member.recovery] : null;
        },
      },
    });
    await client.initRustCrypto({ useIndexedDB: false });
    const made = new Member(client, account);
    member = made;
    client.on(sdk.RoomEvent.Timeline, (event) => void made.#events.set(event.getId() ?? '', event));
    const prepared = new Promise<void>((done) =>
      client.on(sdk.ClientEvent.Sync, (state) => state === 'PREPARED' && done()),
    );
    await client.startClient({ initialSyncLimit: 20 });
    await prepared;
    return made;
  }

  stop(): void {
    this.client.stopClient();
  }

  get user(): string {
    return this.account.user;
  }

  /** Makes the account's own keys and locks them with a recovery key, as a person does; the key as written down. */
  async setUpRecovery(): Promise<string> {
    const crypto = this.client.getCrypto();
    const key = await crypto?.createRecoveryKeyFromPassphrase();
    if (!crypto || !key) throw new Error('no keys');
    this.recovery = key.privateKey;
    const { user, password } = this.account;
    await crypto.bootstrapCrossSigning({
      authUploadDeviceSigningKeys: async (upload) => {
        const identifier = { type: 'm.id.user', user };
        await upload({ type: 'm.login.password', identifier, user, password });
      },
    });
    await crypto.bootstrapSecretStorage({ createSecretStorageKey: async () => key });
    return key.encodedPrivateKey ?? '';
  }

  /** What other clients are told of an account: its devices, and the key that stands for the person. */
  async #keysOf(user: string) {
    return this.client.downloadKeysForUsers([user]);
  }

  async devicesOf(user: string): Promise<string[]> {
    return Object.keys((await this.#keysOf(user)).device_keys[user] ?? {});
  }

  async masterKeyOf(user: string): Promise<string | undefined> {
    return Object.values((await this.#keysOf(user)).master_keys?.[user]?.keys ?? {})[0];
  }

  /** Waits until this client sees a device bear its account's own signature. */
  async seesSigned(user: string, device: string): Promise<void> {
    const crypto = this.client.getCrypto();
    const isSigned = async () => (await crypto?.getDeviceVerificationStatus(user, device))?.signedByOwner;
    await until(async () => (await isSigned()) ?? false, `${device} is signed`);
  }

  /** Logs another device of the account out. */
  async putAway(device: string): Promise<void> {
    const { user, password } = this.account;
    const identifier = { type: 'm.id.user', user };
    const path = `${this.client.baseUrl}/_matrix/client/v3/devices/${device}`;
    const ask = (auth?: object) =>
      fetch(path, {
        method: 'DELETE',
        headers: { authorization: `Bearer ${this.client.getAccessToken()}` },
        body: JSON.stringify(auth ? { auth } : {}),
      });
    const { session } = (await (await ask()).json()) as { session: string };
    const answer = await ask({ type: 'm.login.password', identifier, user, password, session });
    if (!answer.ok) throw new Error(`putting a device away: ${await answer.text()}`);
  }

  /** What the homeserver says to a token. */
  whoAmI(token: string): Promise<Response> {
    return fetch(`${this.client.baseUrl}/_matrix/client/v3/account/whoami`, {
      headers: { authorization: `Bearer ${token}` },
    });
  }

  /** Brings another member into a room. */
  async bring(room: string, other: Member): Promise<void> {
    await this.client.invite(room, other.user);
    await other.client.joinRoom(room);
    await until(
      () => this.client.getRoom(room)?.getMember(other.user)?.membership === 'join',
      `${other.user} joins`,
    );
  }

  /** A room with others in it, encrypted or not. */
  async makeRoom(others: readonly string[], encrypted: boolean, more: object = {}): Promise<string> {
    const encryption = {
      type: 'm.room.encryption',
      state_key: '',
      content: { algorithm: 'm.megolm.v1.aes-sha2' },
    };
    const { room_id: room } = await this.client.createRoom({
      invite: [...others],
      preset: sdk.Preset.PrivateChat,
      initial_state: encrypted ? [encryption] : [],
      ...more,
    });
    await until(() => this.client.getRoom(room) !== null, 'the room is known');
    for (const other of others)
      await until(() => this.client.getRoom(room)?.getMember(other)?.membership === 'join', `${other} joins`);
    return room;
  }

  async say(room: string, body: string, more: object = {}): Promise<string> {
    return this.send(room, 'm.room.message', { msgtype: 'm.text', body, ...more });
  }

  async send(room: string, type: string, content: object): Promise<string> {
    const { event_id: id } = await this.client.sendEvent(
      room,
      type as never,
      content as never,
      `m${Date.now()}.${this.#number++}`,
    );
    return id;
  }

  edit(room: string, event: string, body: string): Promise<string> {
    return this.say(room, `* ${body}`, {
      'm.new_content': { msgtype: 'm.text', body },
      'm.relates_to': { rel_type: 'm.replace', event_id: event },
    });
  }

  react(room: string, event: string, key: string): Promise<string> {
    return this.send(room, 'm.reaction', {
      'm.relates_to': { rel_type: 'm.annotation', event_id: event, key },
    });
  }

  /** Everything seen in a room so far, in the order of arrival. */
  seen(room: string): Seen[] {
    return [...this.#events.values()].filter((event) => event.getRoomId() === room).map(seenOf);
  }

  /** Waits for the first event in a room that the test takes. */
  async sees(room: string, wanted: (seen: Seen) => boolean, what: string, seconds = 20): Promise<Seen> {
    await until(() => this.seen(room).some(wanted), what, seconds);
    return this.seen(room).find(wanted) as Seen;
  }

  /** Waits for the bot's answer to a message. */
  answerTo(room: string, ask: string, seconds = 20): Promise<Seen> {
    return this.sees(
      room,
      (seen) => isAnswerTo(seen, ask) && seen.content.msgtype === 'm.notice',
      `answer to ${ask}`,
      seconds,
    );
  }

  answers(room: string, ask: string): Seen[] {
    return this.seen(room).filter((seen) => isAnswerTo(seen, ask));
  }

  /** Asks, and waits for the answer. */
  async ask(room: string, body: string, more: object = {}): Promise<Seen> {
    return this.answerTo(room, await this.say(room, body, more));
  }

  /** The pictures and files of an answer, so many of them. */
  async attachments(room: string, ask: string, many: number): Promise<Seen[]> {
    const come = () => this.answers(room, ask).filter(({ content }) => content.msgtype !== 'm.notice');
    await until(() => come().length >= many, `${many} pictures or files for ${ask}`);
    return come();
  }

  /** A picture's bytes: by the authenticated way, unlocked where it was locked. */
  async fetch(content: Record<string, unknown>): Promise<Buffer> {
    const file = content.file as Locked | undefined;
    const answer = await this.download(file?.url ?? String(content.url), '/_matrix/client/v1/media');
    if (!answer.ok) throw new Error(`fetching a picture: ${answer.status}`);
    const bytes = Buffer.from(await answer.arrayBuffer());
    return file ? unlocked(bytes, file) : bytes;
  }

  /** Asks for something that was uploaded, at one of the paths that homeservers have had for it. */
  download(url: string, path: string, token = this.client.getAccessToken() ?? ''): Promise<Response> {
    const [, server, media] = /^mxc:\/\/([^/]+)\/(.+)$/.exec(url) ?? [];
    return fetch(`${this.client.baseUrl}${path}/download/${server}/${media}`, {
      headers: token ? { authorization: `Bearer ${token}` } : {},
    });
  }
}

interface Locked {
  readonly url: string;
  readonly iv: string;
  readonly key: { readonly k: string };
  readonly hashes: { readonly sha256: string };
}

/** As the specification has a client do it: first the hash of what came, then the key. */
function unlocked(bytes: Buffer, { iv, key, hashes }: Locked): Buffer {
  const hash = createHash('sha256').update(bytes).digest('base64').replace(/=+$/, '');
  if (hash !== hashes.sha256) throw new Error('a locked file is not the one that was sent');
  const unlock = createDecipheriv('aes-256-ctr', Buffer.from(key.k, 'base64url'), Buffer.from(iv, 'base64'));
  return Buffer.concat([unlock.update(bytes), unlock.final()]);
}

function seenOf(event: sdk.MatrixEvent): Seen {
  const content = event.getOriginalContent();
  return {
    ...{ id: event.getId() ?? '', room: event.getRoomId() ?? '', sender: event.getSender() ?? '' },
    type: event.getType(),
    content,
    relation: (event.getWireContent()['m.relates_to'] ?? content['m.relates_to']) as Seen['relation'],
    encrypted: event.isEncrypted(),
    readable: !event.isDecryptionFailure() && event.getType() !== 'm.room.encrypted',
    event,
  };
}

const isAnswerTo = ({ relation, type }: Seen, ask: string): boolean =>
  type === 'm.room.message' &&
  (relation?.['m.in_reply_to'] as { event_id?: string } | undefined)?.event_id === ask;

/** Waits until something holds. */
export async function until(
  holds: () => boolean | Promise<boolean>,
  what: string,
  seconds = 20,
): Promise<void> {
  const end = performance.now() + seconds * 1000;
  while (!(await holds())) {
    if (performance.now() > end) throw new Error(`waited ${seconds} s in vain: ${what}`);
    await new Promise((done) => setTimeout(done, 20));
  }
}
