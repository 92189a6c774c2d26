import type { MatrixClient } from 'matrix-js-sdk';
import type { Memory } from './answered.ts';
import { type Gap, GapReader } from './gaps.ts';
import type { Intake } from './intake.ts';
import { joinedAt } from './rights.ts';
import { type MatrixStart, PLATFORM, TOO_OLD } from './settings.ts';
import type { News, RoomEvent, RoomNews } from './sync-answer.ts';
import { brings } from './trouble.ts';
import { Turns } from './turns.ts';

interface ReadingNeeds {
  readonly start: MatrixStart;
  readonly memory: Memory;
  readonly intake: Intake;
  client(): Promise<MatrixClient>;
}

/** What goes on after a room's turn is over. */
interface Late {
  readonly late: Promise<void>;
}

/** A room's list of events is begun anew when it is this long: nobody looks back in it. */
const LONGEST_TIMELINE = 200;

/**
 * Hands over what was said, room by room in its order, what a sync left out first; and keeps how far was read
 * only when all of it is done.
 */
export class Reading {
  readonly #needs: ReadingNeeds;
  readonly #turns = new Turns();
  readonly #stopping = new AbortController();
  #readTo: string | undefined;
  #keeping: Promise<void> = Promise.resolve();

  constructor(needs: ReadingNeeds) {
    this.#needs = needs;
  }

  /** Goes on from where an earlier process had read to. */
  async begin(): Promise<void> {
    this.#readTo = await this.#needs.memory.readTo();
  }

  /** Nothing more is kept, so that the next start begins where the work was done. */
  stop(): void {
    this.#stopping.abort();
  }

  /** Settles when everything told so far has been kept, or was given up by stopping. */
  finished(): Promise<void> {
    return this.#keeping;
  }

  /** Takes in what a sync told; the library knows the rooms by then. */
  take(news: News, client: MatrixClient): void {
    if (this.#stopping.signal.aborted) return;
    const before = this.#readTo;
    this.#readTo = news.next;
    const { intake, memory, start } = this.#needs;
    const handed = news.rooms.map((one) => this.#room(one, before, client));
    this.#keeping = this.#keeping
      .then(() => Promise.all(handed))
      .then((late) => Promise.all(late.map((one) => one())))
      .then(() => Promise.all(intake.begun()))
      .then(async () => {
        if (!this.#stopping.signal.aborted) await memory.keepReadTo(news.next);
      })
      .catch((error: unknown) => {
        if (!this.#stopping.signal.aborted) start.log.error(brings(error), 'could not keep how far was read');
      });
  }

  /** Hands a room's events over in its turn. Resolves to what is still to be waited for: a gap not yet read. */
  async #room(news: RoomNews, to: string | undefined, client: MatrixClient) {
    const { room: id, events } = news;
    let late: Promise<void> = Promise.resolve();
    await this.#turns.take(id, async () => {
      trim(client, id);
      const gap = this.#gapIn(news, to, client);
      if (gap) ({ late } = await this.#fill(gap, client));
      this.#hand(id, events, client);
    });
    return () => late;
  }

  /** What a sync left out, as far as it can concern us: not what is too old, or was said before we came in. */
  #gapIn({ room: id, from, begins }: RoomNews, to: string | undefined, client: MatrixClient): Gap | null {
    const room = client.getRoom(id);
    if (!room || from === null) return null;
    const tooOld = this.#needs.start.now().getTime() - TOO_OLD;
    const oldest = Math.max(tooOld, joinedAt(room, client.getSafeUserId()));
    return begins < oldest ? null : { room: id, from, to, oldest };
  }

  /** What was left out is said first. Where it cannot be read now, the room does not wait for it. */
  async #fill(gap: Gap, client: MatrixClient): Promise<Late> {
    const { start, client: now } = this.#needs;
    const reader = new GapReader(gap, { ...start, client: now, signal: this.#stopping.signal });
    try {
      this.#hand(gap.room, await reader.read(), client);
      return { late: Promise.resolve() };
    } catch (error) {
      const late = reader.readOn(error).then(async (read) => this.#hand(gap.room, read ?? [], await now()));
      late.catch(() => {});
      return { late };
    }
  }

  #hand(id: string, events: readonly RoomEvent[], client: MatrixClient): void {
    const { intake, start } = this.#needs;
    const room = client.getRoom(id);
    if (!room) return;
    const mapper = client.getEventMapper({ decrypt: false, preventReEmit: true });
    for (const event of events)
      try {
        intake.take(mapper({ ...event, room_id: id } as never), room);
      } catch (error) {
        start.watch.count('events_unsound_total', { platform: PLATFORM });
        start.log.warn({ ...brings(error), room: id, event: event.event_id }, 'an event cannot be read');
      }
  }
}

/** The library keeps every event of a room's state in the order of its coming; the state itself stays. */
function trim(client: MatrixClient, id: string): void {
  const room = client.getRoom(id);
  if (room && room.getLiveTimeline().getEvents().length > LONGEST_TIMELINE) room.resetLiveTimeline();
}
