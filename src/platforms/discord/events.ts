import {
  type ButtonInteraction,
  type ChatInputCommandInteraction,
  type Interaction,
  type Message,
  type ModalSubmitInteraction,
  type REST,
  RESTJSONErrorCodes,
  SnowflakeUtil,
} from 'discord.js';
import type { Ask, Form } from '../../chat/command.ts';
import { loadedOnce } from '../../chat/loaded-once.ts';
import type { Reply } from '../../chat/reply.ts';
import type { PlatformNeeds } from '../platform.ts';
import { askInMessage, askOf, asksFor, optionsOf, wordsTo } from './asked.ts';
import { fillingOf, PLATFORM, pressedBy } from './choices.ts';
import { type Made, messageOf, plainMessage } from './message.ts';
import { openModal } from './modal.ts';
import { gone, NO_MESSAGES, notYours } from './own-words.ts';
import { type Answerable, codeOf, respond } from './respond.ts';
import { Seen } from './seen.ts';
import { change, sendTo } from './send.ts';
import { StandingMessages } from './standing.ts';
import { suggest } from './suggest.ts';

/** An event older than this is not answered any more: nobody is waiting for it. */
const TOO_OLD = 15 * 60 * 1000;

/** Takes the platform's events in, and sees to it that each is answered once. */
export class Events {
  readonly #needs: PlatformNeeds;
  readonly #seen = new Seen();
  readonly #begun = new Set<Promise<void>>();

  readonly #standing: StandingMessages;

  constructor(rest: REST, needs: PlatformNeeds) {
    this.#needs = { ...needs, commands: loadedOnce(needs.commands) };
    this.#standing = new StandingMessages(rest, needs);
  }

  /** Waits for the answers that have been begun. */
  async finish(): Promise<void> {
    await Promise.allSettled(this.#begun);
  }

  interaction(event: Interaction): void {
    this.#begin(event.id, async () => {
      if (event.isAutocomplete()) return suggest(event, this.#needs);
      if (event.isChatInputCommand()) return this.#command(event);
      if (event.isButton()) return this.#button(event);
      if (event.isModalSubmit()) return this.#filledIn(event);
    });
  }

  message(event: Message, botId: string): void {
    if (event.author.bot || event.system || event.webhookId) return;
    const words = wordsTo(botId, event.content);
    if (words === null) return;
    this.#begin(event.id, () => this.#said(event, words));
  }

  #begin(id: string, work: () => Promise<void>): void {
    const { watch, log, now } = this.#needs;
    if (!this.#seen.first(id)) return void watch.count('events_seen_again_total', { platform: PLATFORM });
    const asked = SnowflakeUtil.timestampFrom(id);
    if (now().getTime() - asked > TOO_OLD)
      return void watch.count('events_too_old_total', { platform: PLATFORM });
    watch.count('asks_total', { platform: PLATFORM });
    const from = performance.now();
    const begun = work()
      .then(() => watch.took(PLATFORM, (performance.now() - from) / 1000))
      .catch((error: unknown) => {
        watch.count('replies_lost_total', { platform: PLATFORM });
        log.error({ err: error, event: id }, 'a reply could not be sent');
      })
      .finally(() => this.#begun.delete(begun));
    this.#begun.add(begun);
  }

  async #command(event: ChatInputCommandInteraction): Promise<void> {
    const options = optionsOf(event);
    const form = await this.#formOf(options.command, options.form);
    await this.#answer(event, askOf(event, asksFor(options), this.#needs.now()), form?.audience === 'asker');
  }

  async #button(event: ButtonInteraction): Promise<void> {
    const { facts, now } = this.#needs;
    const pressed = await pressedBy(event.customId, facts.notes);
    if (!pressed) return this.#sayAlone(event, gone());
    if (pressed.meantFor !== null && pressed.meantFor !== event.user.id)
      return this.#sayAlone(event, notYours(pressed.kind === 'page' ? null : pressed.ask));
    if (pressed.kind === 'page') return this.#turn(event, pressed.reply, pressed.page);
    if (pressed.names.length === 0) return this.#answer(event, askOf(event, pressed.ask, now()), false);
    const form = await this.#formAsked(pressed.ask);
    return form ? openModal(event, pressed, form, facts.notes) : this.#sayAlone(event, gone());
  }

  #sayAlone(event: Answerable, words: Reply): Promise<void> {
    const whose = { guild: event.guildId ?? '', member: event.user.id };
    return respond(event, { reply: Promise.resolve(words), alone: true, whose }, this.#needs);
  }

  /** Another page takes the place of the one that is shown. */
  async #turn(event: ButtonInteraction, kept: Reply, page: number): Promise<void> {
    const key = event.customId.split(':')[1] ?? '';
    const { facts, draw } = this.#needs;
    const whose = { guild: event.guildId ?? '', member: event.user.id };
    const made = await messageOf(kept, { whose, notes: facts.notes, draw }, { page, key });
    await change(event.client.rest, event, made);
  }

  async #filledIn(event: ModalSubmitInteraction): Promise<void> {
    const filling = await fillingOf(event.customId, this.#needs.facts.notes);
    if (!filling) return this.#sayAlone(event, gone());
    const filled = Object.fromEntries(
      filling.names
        .map((name) => [name, event.fields.getTextInputValue(name).trim()])
        .filter(([, value]) => value !== ''),
    );
    await this.#answer(event, askOf(event, { ask: filling.ask, filled }, this.#needs.now()), false);
  }

  async #answer(event: Answerable, ask: Ask, alone: boolean): Promise<void> {
    const whose = { guild: ask.guild, member: ask.who.id };
    const answered = this.#needs.room.answer(ask);
    await respond(event, { reply: answered, alone, whose }, this.#needs);
    await this.#standing.after(await answered, ask.guild, ask.place);
  }

  /** A plain question, answered in the place it was asked; what is for her alone goes to her alone. */
  async #said(event: Message, words: string): Promise<void> {
    const { room, facts, draw, now } = this.#needs;
    const ask = askInMessage(event, words, now());
    const said = await room.answer(words === '' ? { ...ask, words: '/help' } : ask);
    const whose = { guild: ask.guild, member: ask.who.id };
    const made = await messageOf(said, { whose, notes: facts.notes, draw });
    // A mistake in plain words is mended where it was made; her settings and exports are hers alone.
    if (said.audience === 'asker' && !said.error && event.guildId) return tellAlone(event, made);
    await sendTo(event.client.rest, event.channelId, made, { answering: event.id, nonce: event.id });
    await this.#standing.after(said, ask.guild, ask.place);
  }

  /** The form that an ask in words means: its first two words name it. */
  async #formAsked(ask: string): Promise<Form | undefined> {
    const [command = '', form = ''] = ask.replace(/^\//, '').split(/[\s:]+/);
    return (await this.#formOf(command, form)) ?? this.#formOf(command, '');
  }

  async #formOf(command: string, form: string) {
    const { commands } = this.#needs;
    const load = Object.hasOwn(commands, command) ? commands[command] : undefined;
    return (await load?.())?.forms.find((one) => one.name === form);
  }
}

/** To her alone; where she takes no such messages, a pointer to the command that answers alone. */
async function tellAlone(event: Message, made: Made): Promise<void> {
  const { rest } = event.client;
  try {
    const { id } = await event.author.createDM();
    await sendTo(rest, id, made, { nonce: event.id });
  } catch (error) {
    if (codeOf(error) !== RESTJSONErrorCodes.CannotSendMessagesToThisUser) throw error;
    const pointer = plainMessage(NO_MESSAGES);
    await sendTo(rest, event.channelId, pointer, { answering: event.id, nonce: event.id });
  }
}
