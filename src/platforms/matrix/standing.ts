import type { MatrixClient } from 'matrix-js-sdk';
import { NOBODY } from '../../chat/command.ts';
import type { Renewal, Reply } from '../../chat/reply.ts';
import type { Memory } from './answered.ts';
import type { Messages } from './messages.ts';
import { type Outbox, Refused, transactionOf } from './outbox.ts';
import type { MatrixStart } from './settings.ts';

interface StandingNeeds {
  readonly start: Pick<MatrixStart, 'room' | 'now'>;
  readonly outbox: Outbox;
  readonly memory: Memory;
  readonly messages: Messages;
  client(): Promise<MatrixClient>;
}

/** Where an answer was given, and to which event. */
interface Given {
  readonly guild: string;
  readonly place: string;
  readonly event: string;
}

/**
 * Sees to what stands pinned, after an answer was given: it may belong there, or what is there may be out of
 * date. One message of a name is changed, not repeated; what is in it is nobody's own, so it is asked anew as
 * nobody.
 */
export async function seeToStanding(said: Reply, given: Given, needs: StandingNeeds): Promise<void> {
  const place = said.standing ? given.place : said.renews?.place;
  if (!place || !(said.standing || (await needs.memory.anyStanding(place)))) return;
  const stands = said.renews ? await askedAnew(said.renews, given.guild, needs) : said;
  const words = { ...stands, choices: [], pictures: [] };
  const name = stands.standing;
  if (!name) return;
  const known = await needs.memory.standing(place, name);
  if (known)
    return void (await needs.messages.edit(
      words,
      { room: place, main: known },
      transactionOf(given.event, 'standing'),
    ));
  if (!said.standing) return;
  const whose = { guild: given.guild, member: '' };
  const { main } = await needs.messages.send(words, { room: place }, `${given.event} standing`, whose);
  await needs.memory.keepStanding(place, name, main);
  await pin(place, main, needs);
}

const askedAnew = ({ ask, place }: Renewal, guild: string, { start }: StandingNeeds): Promise<Reply> =>
  start.room.answer({ who: NOBODY, guild, place, event: null, words: ask, now: start.now() });

async function pin(room: string, message: string, { outbox, client }: StandingNeeds): Promise<void> {
  const state = (await client()).getRoom(room)?.currentState.getStateEvents('m.room.pinned_events', '');
  const pinned = state?.getContent().pinned;
  const before = Array.isArray(pinned) ? pinned : [];
  try {
    await outbox.call(room, (now) =>
      now.sendStateEvent(room, 'm.room.pinned_events' as never, { pinned: [...before, message] } as never),
    );
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
  }
}
