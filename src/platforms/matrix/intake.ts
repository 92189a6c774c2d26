import type { MatrixClient, MatrixEvent, Room } from 'matrix-js-sdk';
import { Seen } from '../seen.ts';
import type { Memory } from './answered.ts';
import type { Answering, Sending } from './answering.ts';
import { askedIn, pressedIn, type Said, type Words } from './asked.ts';
import { Loops } from './loops.ts';
import type { Messages } from './messages.ts';
import { type Outbox, Refused } from './outbox.ts';
import { isAlone, joinedAt } from './rights.ts';
import { type MatrixStart, PLATFORM, TOO_OLD } from './settings.ts';
import { brings } from './trouble.ts';
import { Turns } from './turns.ts';
import { Unreadable } from './unreadable.ts';
import { REACTIONS } from './words.ts';

interface IntakeNeeds {
  readonly start: MatrixStart;
  readonly outbox: Outbox;
  readonly memory: Memory;
  readonly messages: Messages;
  readonly answering: Answering;
  client(): Promise<MatrixClient>;
}

/** Takes the rooms' events in, and sees to it that each ask is answered once. */
export class Intake {
  readonly #needs: IntakeNeeds;
  readonly #seen = new Seen();
  readonly #turns = new Turns();
  readonly #begun = new Set<Promise<void>>();
  readonly #unreadable: Unreadable;
  readonly #loops = new Loops();
  #closed = false;

  constructor(needs: IntakeNeeds) {
    this.#needs = needs;
    this.#unreadable = new Unreadable(needs);
  }

  /** The works that are going on now; each ends in peace, whatever became of its event. */
  begun(): readonly Promise<void>[] {
    return [...this.#begun];
  }

  /** Nothing more is taken in: what comes now is left for the next start. */
  close(): void {
    this.#closed = true;
    this.#unreadable.stop();
  }

  /** An event of a room. The same event may come more than once: after a restart, or from a gap. */
  take(event: MatrixEvent, room: Room): void {
    const id = event.getId();
    const me = this.#needs.start.user;
    if (this.#closed || !id || event.isState() || event.getSender() === me) return;
    if (event.getTs() < joinedAt(room, me)) return;
    if (!this.#seen.first(`${room.roomId} ${id}`)) return;
    const work = this.#read(event, room)
      .catch((error: unknown) => this.#lost(error, id, room))
      .finally(() => this.#begun.delete(work));
    this.#begun.add(work);
  }

  #lost(error: unknown, id: string, { roomId }: Room): void {
    const { log, watch } = this.#needs.start;
    if (this.#closed && error instanceof Error && error.name === 'AbortError') {
      log.info({ event: id, room: roomId }, 'a reply is left for the next start');
      return;
    }
    watch.count('replies_lost_total', { platform: PLATFORM });
    // Where it was not allowed, that has been said already.
    if (!(error instanceof Refused))
      log.error({ ...brings(error), event: id, room: roomId }, 'a reply could not be sent');
  }

  /** What one member asks in a room is worked out in the order in which she asked; it is sent as it goes. */
  async #read(event: MatrixEvent, room: Room): Promise<void> {
    const inOrder = (work: () => Promise<Sending | undefined>) =>
      this.#turns.take(`${room.roomId} ${event.getSender()}`, work);
    const isOld = this.#needs.start.now().getTime() - event.getTs() > TOO_OLD;
    if (event.isEncrypted() && isOld) return;
    let sending = await inOrder(async () => {
      if (event.isEncrypted() && !(await this.#unreadable.isReadable(event))) return undefined;
      return this.#begin(saidIn(event, room), room, isOld);
    });
    // Nobody waits in line while a key may still be on its way.
    if (
      event.isEncrypted() &&
      event.isDecryptionFailure() &&
      (await this.#unreadable.becomesReadable(event, room))
    )
      sending = await inOrder(() => this.#begin(saidIn(event, room), room, isOld));
    await sending?.();
  }

  async #begin(said: Said, room: Room, isOld: boolean): Promise<Sending | undefined> {
    const { answering } = this.#needs;
    // Nobody waits for an old answer; what was taken away long ago is to go all the same.
    if (said.type === 'm.room.redaction')
      return said.redacts ? answering.takeAway(said.redacts, said.id) : undefined;
    if (said.type === 'm.reaction') return isOld ? undefined : this.#pressed(said, room);
    const words = this.#wordsIn(said, room);
    if (!words) return undefined;
    if (isOld) return this.#tooOld(said);
    if (words.byName && this.#isLoop(said)) return undefined;
    return answering.begin({ event: said, ...words, room, home: room });
  }

  #wordsIn(said: Said, room: Room): Words | null {
    const { user, prefix } = this.#needs.start;
    const name = room.getMember(user)?.rawDisplayName ?? user;
    return askedIn(said, { user, name, prefix, alone: isAlone(room) });
  }

  async #tooOld({ id }: Said): Promise<undefined> {
    const { memory, start } = this.#needs;
    if (!(await memory.answerTo(id))) start.watch.count('events_too_old_total', { platform: PLATFORM });
  }

  #isLoop({ sender, at, room }: Said): boolean {
    const heard = this.#loops.heard(`${room} ${sender}`, at);
    if (heard === 'too often from now on')
      this.#needs.start.log.warn(
        { room, sender },
        'so many questions by name, or numbers, within a minute: not answered',
      );
    return heard !== 'as people do';
  }

  /** A number under an answer of ours, pressed by the one who was answered. */
  async #pressed(event: Said, room: Room): Promise<Sending | undefined> {
    const pressed = pressedIn(event, REACTIONS);
    if (!pressed) return undefined;
    const { memory, answering } = this.#needs;
    const choices = await memory.choicesUnder(pressed.on);
    const choice = choices?.asks[pressed.at];
    if (!choices || !choice || (!choice.open && choices.meantFor !== event.sender)) return undefined;
    if (this.#isLoop(event)) return undefined;
    const client = await this.#needs.client();
    const home = client.getRoom(choices.home) ?? room;
    const { on: asked } = pressed;
    const thread = choices.thread ?? undefined;
    return answering.begin({ event, words: choice.ask, asked, edit: false, thread, room, home });
  }
}

/** The event as it was said, not as it was edited later; what it hangs on stands outside what is encrypted. */
export function saidIn(event: MatrixEvent, { roomId }: Room): Said {
  const content = event.getOriginalContent();
  const relation = event.getWireContent()['m.relates_to'] ?? content['m.relates_to'];
  const redacts = event.event.redacts ?? content.redacts;
  return {
    ...{ id: event.getId() ?? '', room: roomId, sender: event.getSender() ?? '', at: event.getTs() },
    type: event.getType(),
    content: { ...content, ...(relation ? { 'm.relates_to': relation } : {}) },
    ...(typeof redacts === 'string' ? { redacts } : {}),
  };
}
