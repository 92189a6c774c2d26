import type { MatrixClient, MatrixEvent, Room } from 'matrix-js-sdk';
import { type Reply, reply } from '../../chat/reply.ts';
import { type Answered, type Memory, NOTHING_SENT } from './answered.ts';
import { askedIn, pressedIn, type Said, type Words } from './asked.ts';
import { directRoomWith } from './direct.ts';
import type { Messages, Target, Whose } from './messages.ts';
import { type Outbox, Refused, transactionOf } from './outbox.ts';
import { guildOf, isAlone, isOrganiser, joinedAt } from './rights.ts';
import { Seen } from './seen.ts';
import { type MatrixStart, PLATFORM, TOO_OLD } from './settings.ts';
import { keepStanding } from './standing.ts';
import { brings } from './trouble.ts';
import { Turns } from './turns.ts';
import { Unreadable } from './unreadable.ts';
import { REACTIONS } from './words.ts';

interface IntakeNeeds {
  readonly start: MatrixStart;
  readonly outbox: Outbox;
  readonly memory: Memory;
  readonly messages: Messages;
  client(): Promise<MatrixClient>;
}

/** An ask ready to be answered. */
interface Asked {
  readonly event: Said;
  readonly words: string;
  /** The event that the ask is known by, and the message that is answered. */
  readonly asked: string;
  readonly edit: boolean;
  readonly thread: string | undefined;
}

/** Answers to our own messages, from one sender within a minute, after which we fall silent: no bot talks so. */
const MOST_IN_A_ROW = 12;

/** Takes the rooms' events in, and sees to it that each ask is answered once. */
export class Intake {
  readonly #needs: IntakeNeeds;
  readonly #seen = new Seen();
  readonly #turns = new Turns();
  readonly #begun = new Set<Promise<void>>();
  readonly #unreadable: Unreadable;
  readonly #inARow = new Map<string, number[]>();
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
  }

  /** An event of a room's timeline. The same event may come more than once: after a restart, or from a gap. */
  take(event: MatrixEvent, room: Room): void {
    const { start } = this.#needs;
    const id = event.getId();
    const me = start.user;
    if (this.#closed || !id || event.isState() || event.getSender() === me) return;
    const at = event.getTs();
    if (start.now().getTime() - at > TOO_OLD) {
      this.#tooOld(event);
      return;
    }
    if (at < joinedAt(room, me)) return;
    if (!this.#seen.first(`${room.roomId} ${id}`)) return;
    const work = this.#read(event, room)
      .catch((error: unknown) => this.#lost(error, id, room))
      .finally(() => this.#begun.delete(work));
    this.#begun.add(work);
  }

  #tooOld(event: MatrixEvent): void {
    if (event.getType() === 'm.room.message')
      this.#needs.start.watch.count('events_too_old_total', { platform: PLATFORM });
  }

  #lost(error: unknown, id: string, { roomId }: Room): void {
    const { log, watch } = this.#needs.start;
    watch.count('replies_lost_total', { platform: PLATFORM });
    // Where it was not allowed, that has been said already.
    if (!(error instanceof Refused))
      log.error({ ...brings(error), event: id, room: roomId }, 'a reply could not be sent');
  }

  async #read(event: MatrixEvent, room: Room): Promise<void> {
    if (event.isEncrypted() && !(await this.#unreadable.isReadable(event, room))) return;
    const said = saidIn(event, room);
    if (said.type === 'm.room.redaction') return this.#takenAway(said);
    if (said.type === 'm.reaction') return this.#pressed(said, room);
    const { start } = this.#needs;
    const name = room.getMember(start.user)?.rawDisplayName ?? start.user;
    const words = askedIn(said, { user: start.user, name, prefix: start.prefix, alone: isAlone(room) });
    if (words && !this.#isLoop(said, words)) await this.#asked(said, words, room);
  }

  /** A bot that answers whatever we say would keep us talking for ever. */
  #isLoop({ sender, at, room }: Said, { byName }: Words): boolean {
    if (!byName) return false;
    const key = `${room} ${sender}`;
    const lately = [...(this.#inARow.get(key) ?? []).filter((one) => at - one < 60_000), at];
    this.#inARow.set(key, lately);
    if (lately.length === MOST_IN_A_ROW + 1)
      this.#needs.start.log.warn(
        { room, sender },
        'this many questions by name within a minute: not answered',
      );
    return lately.length > MOST_IN_A_ROW;
  }

  #asked(event: Said, { words, asked, edit, thread }: Words, room: Room): Promise<void> {
    return this.#turns.take(asked, () => this.#answer({ event, words, asked, edit, thread }, room));
  }

  async #pressed(event: Said, room: Room): Promise<void> {
    const pressed = pressedIn(event, REACTIONS);
    if (!pressed) return;
    const choices = await this.#needs.memory.choicesUnder(pressed.on);
    const choice = choices?.asks[pressed.at];
    if (!choices || !choice || (!choice.open && choices.meantFor !== event.sender)) return;
    const asked = {
      event,
      words: choice.ask,
      asked: pressed.on,
      edit: false,
      thread: choices.thread ?? undefined,
    };
    await this.#turns.take(event.id, () => this.#answer(asked, room));
  }

  /** Whoever takes her ask away takes our answer away too; whoever takes a number away changes nothing. */
  async #takenAway({ id, redacts }: Said): Promise<void> {
    if (!redacts) return;
    await this.#turns.take(redacts, async () => {
      const { memory, messages } = this.#needs;
      const sent = await memory.answerTo(redacts);
      if (!sent?.main) return;
      await messages.takeBack(sent, id);
      await memory.keepAnswer(redacts, NOTHING_SENT, { guild: '', member: '' });
    });
  }

  async #answer(asked: Asked, room: Room): Promise<void> {
    const { start, memory } = this.#needs;
    const { event } = asked;
    const { watch } = start;
    if (await memory.answerTo(event.id))
      return watch.count('events_seen_again_total', { platform: PLATFORM });
    watch.count('asks_total', { platform: PLATFORM });
    const from = performance.now();
    const client = await this.#needs.client();
    const guild = isAlone(room) ? null : guildOf(room, (id) => client.getRoom(id));
    const whose: Whose = { guild: guild?.roomId ?? `alone:${event.sender}`, member: event.sender };
    const said = await start.room.answer({
      who: {
        id: event.sender,
        name: room.getMember(event.sender)?.rawDisplayName ?? event.sender,
        organiser: isOrganiser(guild ?? room, event.sender),
      },
      guild: whose.guild,
      place: room.roomId,
      event: `matrix:${event.id}`,
      onlyEffects: true,
      words: asked.words,
      now: start.now(),
    });
    await this.#give(said, asked, room, whose);
    watch.took(PLATFORM, (performance.now() - from) / 1000);
    if (said.standing) await keepStanding(said, room.roomId, event.id, this.#needs);
  }

  /** Sends the answer; where it is not allowed the ask is done with too. */
  async #give(said: Reply, asked: Asked, room: Room, whose: Whose): Promise<void> {
    const { memory, messages } = this.#needs;
    const { event } = asked;
    let sent: Answered = NOTHING_SENT;
    try {
      const was = asked.edit ? await memory.answerTo(asked.asked) : undefined;
      const target = { room: room.roomId, to: asked.asked, thread: asked.thread };
      if (said.audience === 'asker' && !said.error && !isAlone(room))
        sent = await this.#alone(said, asked, target, whose);
      else if (was?.room && was.main)
        sent = await messages.replace(
          said,
          { ...was, room: was.room, main: was.main },
          target,
          event.id,
          whose,
        );
      else sent = await messages.send(said, target, event.id, whose);
    } catch (error) {
      if (!(error instanceof Refused)) throw error;
      this.#needs.start.watch.count('replies_lost_total', { platform: PLATFORM });
    }
    // First what an edit of the ask, or its going, will look for; then that this very event is done.
    if (asked.edit) await memory.keepAnswer(asked.asked, sent, whose);
    await memory.keepAnswer(event.id, sent, whose);
  }

  /** To her alone, with a pointer where she asked; or where that cannot be, a word on how she gets it. */
  async #alone(said: Reply, { event }: Asked, target: Target, whose: Whose): Promise<Answered> {
    const { messages } = this.#needs;
    const direct = await directRoomWith(event.sender, this.#needs);
    const pointer = { ...target, mentions: [event.sender] };
    const point = (words: string, part: string) =>
      messages.send(reply({ lines: [words] }), pointer, transactionOf(event.id, part), whose);
    if (!direct)
      return point(
        'That answer is for you alone, and I cannot open a room with you. Invite me to a direct room and ask there.',
        'pointer',
      );
    try {
      await messages.send(said, { room: direct }, event.id, whose);
      return await point('That answer is for you alone: I sent it to our direct room.', 'pointer');
    } catch (error) {
      if (!(error instanceof Refused)) throw error;
      return point(
        'That answer is for you alone, and I may not write to our direct room. Invite me to a new one.',
        'pointer',
      );
    }
  }
}

/** The event as it was said, not as it was edited later; what it hangs on stands outside what is encrypted. */
export function saidIn(event: MatrixEvent, { roomId }: Room): Said {
  const content = event.getOriginalContent();
  const relation = event.getWireContent()['m.relates_to'] ?? content['m.relates_to'];
  const redacts = event.event.redacts ?? (content.redacts as string | undefined);
  return {
    ...{ id: event.getId() ?? '', room: roomId, sender: event.getSender() ?? '', at: event.getTs() },
    type: event.getType(),
    content: { ...content, ...(relation ? { 'm.relates_to': relation } : {}) },
    ...(redacts ? { redacts } : {}),
  };
}
