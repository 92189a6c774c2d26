import { DiscordAPIError, type REST, RESTJSONErrorCodes, Routes } from 'discord.js';
import { NOBODY } from '../../chat/command.ts';
import type { Renewal, Reply } from '../../chat/reply.ts';
import type { PlatformNeeds } from '../platform.ts';
import { keepPages, PLATFORM } from './choices.ts';
import { keptStanding } from './kept.ts';
import { messageOf } from './message.ts';
import { changeIn, sendTo } from './send.ts';

const keyOf = (place: string, name: string): string => `standing:${place}:${name}`;

/** The message may not be changed, sent or pinned there: told to the operator, and nothing to try again. */
const NOT_ALLOWED: ReadonlySet<unknown> = new Set([
  RESTJSONErrorCodes.MissingAccess,
  RESTJSONErrorCodes.MissingPermissions,
  RESTJSONErrorCodes.UnknownChannel,
  RESTJSONErrorCodes.MaximumNumberOfPinsReachedForTheChannel,
]);

/**
 * Messages that stand pinned in a place, one of a name, and are changed, not repeated. What is in them is
 * nobody's own: it is asked anew as nobody.
 */
export class StandingMessages {
  readonly #rest: REST;
  readonly #needs: PlatformNeeds;
  readonly #renewing = new Map<string, { again: boolean }>();

  constructor(rest: REST, needs: PlatformNeeds) {
    this.#rest = rest;
    this.#needs = needs;
  }

  /** Sees to what stands, after an answer was given: it may belong there, or what is there may be out of date. */
  async after(said: Reply, guild: string, place: string): Promise<void> {
    try {
      if (said.standing) await this.#stand(said, guild, place);
      else if (said.renews && (await this.#anyIn(said.renews.place))) await this.#renew(said.renews, guild);
    } catch (error) {
      if (!NOT_ALLOWED.has(codeOf(error))) throw error;
      const { watch, log } = this.#needs;
      watch.count('sends_refused_total', { platform: PLATFORM });
      log.warn({ place, code: codeOf(error) }, 'a standing message may not be kept here');
    }
  }

  async #stand(said: Reply, guild: string, place: string): Promise<void> {
    const stands = said.renews ? await this.#asked(said.renews, guild) : said;
    if (!stands.standing || (await this.#changed(stands, guild, place))) return;
    const made = await this.#made(stands, guild, place);
    const message = await sendTo(this.#rest, place, made);
    const key = keyOf(place, stands.standing);
    await this.#needs.facts.notes.keep(PLATFORM, key, { message }, { guild, member: '' });
    await this.#rest.put(Routes.channelMessagesPin(place, message));
  }

  /** However many changes come while it is being renewed, it is renewed once more. */
  async #renew(renewal: Renewal, guild: string): Promise<void> {
    const which = `${renewal.place} ${renewal.ask}`;
    const going = this.#renewing.get(which);
    if (going) {
      going.again = true;
      return;
    }
    const state = { again: true };
    this.#renewing.set(which, state);
    try {
      while (state.again) {
        state.again = false;
        const stands = await this.#asked(renewal, guild);
        if (stands.standing) await this.#changed(stands, guild, renewal.place);
      }
    } finally {
      this.#renewing.delete(which);
    }
  }

  /** Changes the message that stands there; false where there is none, or somebody has deleted it. */
  async #changed(stands: Reply, guild: string, place: string): Promise<boolean> {
    const { notes } = this.#needs.facts;
    const key = keyOf(place, stands.standing ?? '');
    const kept = keptStanding(await notes.find(PLATFORM, key));
    if (!kept) return false;
    try {
      await changeIn(this.#rest, place, kept.message, await this.#made(stands, guild, place));
      return true;
    } catch (error) {
      if (codeOf(error) !== RESTJSONErrorCodes.UnknownMessage) throw error;
      await notes.remove(PLATFORM, key);
      return false;
    }
  }

  async #made(stands: Reply, guild: string, place: string) {
    const { facts, draw } = this.#needs;
    const whose = { guild, member: '' };
    // Its pages are kept under one key, however often it changes.
    const key = `${place}-${stands.standing}`;
    const keep = (of: Reply) => keepPages(of, whose, facts.notes, key);
    return messageOf(stands, { whose, notes: facts.notes, draw, keep });
  }

  #asked({ ask, place }: Renewal, guild: string): Promise<Reply> {
    const { room, now } = this.#needs;
    return room.answer({ who: NOBODY, guild, place, event: null, words: ask, now: now() });
  }

  async #anyIn(place: string): Promise<boolean> {
    const { facts, now } = this.#needs;
    const soon = new Date(now().getTime() + 60_000);
    return (await facts.notes.before(PLATFORM, keyOf(place, ''), soon)).length > 0;
  }
}

const codeOf = (error: unknown): unknown => (error instanceof DiscordAPIError ? error.code : undefined);
