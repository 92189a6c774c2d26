import { another, BOT, SERVER } from './names.ts';
import { type Draft, type Levels, Place, type WireEvent } from './place.ts';

export interface RoomWish {
  readonly members?: readonly string[];
  readonly levels?: Levels;
  /** The content of the power levels, sound or not, in place of `levels`; null for a room without. */
  readonly powers?: Record<string, unknown> | null;
  readonly encrypted?: boolean;
  readonly version?: string;
  /** When it was made; some time ago where it is not given. */
  readonly at?: number;
}

const DAY = 24 * 60 * 60 * 1000;

/** All rooms of the stand-in, in its one order of events, and those who wait for something new. */
export class House {
  readonly rooms = new Map<string, Place>();
  readonly #waiting = new Set<() => void>();
  #at = 0;
  #held = false;

  /** How far the order of events has come. */
  get at(): number {
    return this.#at;
  }

  readonly next = (): number => ++this.#at;

  room(id: string): Place {
    const room = this.rooms.get(id);
    if (!room) throw new Error(`no room ${id}`);
    return room;
  }

  newRoom(): Place {
    const room = new Place(`!room${another()}:${SERVER}`, this.next);
    this.rooms.set(room.id, room);
    return room;
  }

  /** A room in which the bot already is. Its first member has the highest power. */
  makeRoom({
    members = [],
    levels,
    powers,
    encrypted,
    version = '11',
    at = Date.now() - DAY,
  }: RoomWish): string {
    const [maker = BOT] = members;
    const room = this.newRoom();
    const state = (type: string, content: Record<string, unknown>, state_key = '', sender = maker) =>
      room.add({ type, sender, state_key, content, at });
    state('m.room.create', { room_version: version });
    for (const member of new Set([...members, BOT])) {
      const displayname = member.slice(1).split(':')[0];
      state('m.room.member', { membership: 'join', displayname }, member, member);
    }
    if (powers !== null) state('m.room.power_levels', powers ?? { users: { [maker]: 100 }, ...levels });
    if (encrypted) state('m.room.encryption', { algorithm: 'm.megolm.v1.aes-sha2' });
    this.wake();
    return room.id;
  }

  /** Puts something into a room, as its members or the server do. */
  put(room: string, draft: Draft): WireEvent {
    const event = this.room(room).add(draft);
    this.wake();
    return event;
  }

  /** Puts several things into rooms so that one sync brings them all. */
  together(work: () => void): void {
    this.#held = true;
    work();
    this.#held = false;
    this.wake();
  }

  wake(): void {
    if (this.#held) return;
    for (const wake of this.#waiting) wake();
  }

  /** Resolves when there is something new, or after so many milliseconds. */
  somethingNew(wait: number): Promise<void> {
    return new Promise((done) => {
      const over = () => {
        clearTimeout(late);
        this.#waiting.delete(over);
        done();
      };
      const late = setTimeout(over, wait);
      this.#waiting.add(over);
    });
  }
}
