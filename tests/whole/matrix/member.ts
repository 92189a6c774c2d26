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
