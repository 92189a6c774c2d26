import type { MatrixClient, Room } from 'matrix-js-sdk';
import { guildAlone } from '../../chat/facts.ts';
import { type Reply, reply } from '../../chat/reply.ts';
import { Seen } from '../seen.ts';
import type { Memory, Sent } from './answered.ts';
import { Apart } from './apart.ts';
import { type Asked, targetOf } from './ask.ts';
import type { Said } from './asked.ts';
import type { Direct } from './direct.ts';
import type { Messages, Whose } from './messages.ts';
import { OnTheirWay } from './on-their-way.ts';
import { type Outbox, Refused } from './outbox.ts';
import { guildOf, isAlone, isOrganiser } from './rights.ts';
import { type MatrixStart, PLATFORM } from './settings.ts';
import { seeToStanding } from './standing.ts';
import { Turns } from './turns.ts';

interface AnsweringNeeds {
  readonly start: MatrixStart;
  readonly outbox: Outbox;
  readonly memory: Memory;
  readonly messages: Messages;
  readonly direct: Direct;
  client(): Promise<MatrixClient>;
}

/** The answer is worked out, and what it keeps is kept: this sends it. */
export type Sending = () => Promise<void>;

const EDITED =
  'That was kept when you first sent it, and an edit does not change it. Send what you want now as a new message.';

/** Words that may forget somebody, and perhaps do not. */
const MAY_FORGET = /forget/i;

/** Whose it is when she was forgotten: what is kept after it is hers no more. */
const NOBODYS: Whose = { guild: '', member: '' };

/** Answers asks, and takes answers back. */
export class Answering {
  readonly #needs: AnsweringNeeds;
  /** Sendings and takings about one ask, one after another. */
  readonly #turns = new Turns();
  /** Asks taken away, perhaps before they were answered. */
  readonly #gone = new Seen();
  /** Asks that were edited. */
  readonly #edited = new Seen();

  readonly #onTheirWay = new OnTheirWay();
  readonly #apart: Apart;

  constructor(needs: AnsweringNeeds) {
    this.#needs = needs;
    this.#apart = new Apart(needs);
  }

  /** Works an answer out; undefined where the ask was answered before, or is not hers to edit. */
  async begin(given: Asked): Promise<Sending | undefined> {
    const { start, memory } = this.#needs;
    const { event } = given;
    if (await memory.answerTo(event.id)) {
      start.watch.count('events_seen_again_total', { platform: PLATFORM });
      return undefined;
    }
    // An edit that came before its ask has answered it.
    if (!given.edit && this.#edited.has(event.id)) return undefined;
    const asked = given.edit ? await this.#ownEdit(given) : given;
    if (!asked) return undefined;
    if (asked.edit) this.#edited.first(asked.asked);
    start.watch.count('asks_total', { platform: PLATFORM });
    const from = performance.now();
    if (isAlone(asked.room)) await this.#needs.direct.met(event.sender, asked.room);
    const whose = await this.#whose(asked);
    // What an answer keeps of her when it is sent must not come after she was forgotten.
    if (MAY_FORGET.test(asked.words)) await this.#onTheirWay.ended(event.sender);
    const did = asked.edit && ((await memory.answerTo(asked.asked))?.did ?? false);
    const said = did ? reply({ lines: [EDITED] }) : await this.#answer(asked, whose);
    const does = did || (await this.#isKept(said, asked, whose));
    const send = () =>
      this.#turns.take(asked.edit ? asked.asked : event.id, async () => {
        await this.#give(said, asked, said.forgets ? NOBODYS : whose, { did, does });
        start.watch.took(PLATFORM, (performance.now() - from) / 1000);
        if (!this.#isGone(asked))
          await seeToStanding(
            said,
            { guild: whose.guild, place: asked.room.roomId, event: event.id },
            this.#needs,
          );
      });
    return () => this.#onTheirWay.take(event.sender, send());
  }

  /** Whoever takes her ask away takes our answer away too. */
  takeAway(ask: string, redaction: string): Sending {
    this.#gone.first(ask);
    return () =>
      this.#turns.take(ask, async () => {
        const { memory, messages } = this.#needs;
        await memory.dropStanding(ask);
        await this.#apart.takeBack(ask, redaction);
        const known = await memory.answerTo(ask);
        if (known?.here) await messages.takeBack(known.here, redaction);
        if (known?.here) await memory.keepAnswer(ask, { ...known, here: null }, { guild: '', member: '' });
      });
  }

  /** An edit is its own sender's alone, and belongs where the edited message is. */
  async #ownEdit(asked: Asked): Promise<Asked | undefined> {
    const { room, event } = asked;
    try {
      const original = await this.#needs.outbox.call(room.roomId, (client) =>
        client.fetchRoomEvent(room.roomId, asked.asked),
      );
      if (original.sender !== event.sender) return undefined;
      const relation = original.content?.['m.relates_to'];
      const thread = relation?.rel_type === 'm.thread' ? relation.event_id : undefined;
      return { ...asked, thread };
    } catch (error) {
      if (error instanceof Refused) return undefined;
      throw error;
    }
  }

  async #whose({ event, home }: Asked): Promise<Whose & { room: Room }> {
    const client = await this.#needs.client();
    const guild = isAlone(home) ? null : guildOf(home, (id) => client.getRoom(id));
    return { guild: guild?.roomId ?? guildAlone(event.sender), member: event.sender, room: guild ?? home };
  }

  #answer({ event, words, room, home }: Asked, whose: Whose & { room: Room }): Promise<Reply> {
    const { start } = this.#needs;
    const name =
      (home.getMember(event.sender) ?? room.getMember(event.sender))?.rawDisplayName ?? event.sender;
    return start.room.answer({
      who: { id: event.sender, name, organiser: isOrganiser(whose.room, event.sender) },
      guild: whose.guild,
      place: home.roomId,
      event: keyOf(event),
      onlyEffects: true,
      words,
      now: start.now(),
    });
  }

  /** Only what keeps something is kept as an answer. */
  async #isKept(said: Reply, { event }: Asked, { guild }: Whose): Promise<boolean> {
    return (
      said.error === null && (await this.#needs.start.facts.answered.find(guild, keyOf(event))) !== undefined
    );
  }

  #isGone = ({ asked, event }: Asked): boolean => this.#gone.has(asked) || this.#gone.has(event.id);

  /** Sends the answer; where it is not allowed the ask is done with too. */
  async #give(said: Reply, asked: Asked, whose: Whose, { did, does }: { did: boolean; does: boolean }) {
    const { memory } = this.#needs;
    let here: Sent | null = null;
    try {
      if (!this.#isGone(asked))
        here = await (did ? this.#besides(said, asked, whose) : this.#send(said, asked, whose));
    } catch (error) {
      if (!(error instanceof Refused)) throw error;
      this.#needs.start.watch.count('replies_lost_total', { platform: PLATFORM });
    }
    // First what an edit of the ask, or its going, will look for; then that this very event is done.
    if (asked.edit) await memory.keepAnswer(asked.asked, { did: does, here }, whose);
    await memory.keepAnswer(asked.event.id, { did: does, here: asked.edit ? null : here }, whose);
  }

  /** An edit of what is done is answered beside the first answer, which stays. */
  async #besides(said: Reply, asked: Asked, whose: Whose): Promise<Sent | null> {
    const { memory, messages } = this.#needs;
    const known = (await memory.answerTo(asked.asked))?.here;
    const sent = await messages.send(said, targetOf(asked), asked.event.id, whose);
    return known ? { ...known, others: [...known.others, sent.main] } : sent;
  }

  async #send(said: Reply, asked: Asked, whose: Whose): Promise<Sent> {
    const { memory, messages } = this.#needs;
    const was = asked.edit ? (await memory.answerTo(asked.asked))?.here : undefined;
    if (said.audience === 'asker' && !said.error && !isAlone(asked.room))
      return this.#apart.send(said, asked, whose, was);
    const target = targetOf(asked);
    const here = was
      ? await messages.replace(said, was, target, asked.event.id, whose)
      : await messages.send(said, target, asked.event.id, whose);
    if (asked.edit) await this.#apart.takeBack(asked.asked, asked.event.id);
    return here;
  }
}

const keyOf = ({ id }: Said): string => `matrix:${id}`;
