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
import { referenceOf } from '../../chat/reference.ts';
import type { Reply } from '../../chat/reply.ts';
import type { PlatformNeeds } from '../platform.ts';
import { Seen } from '../seen.ts';
import { askInMessage, askOf, asksFor, optionsOf, wordsTo } from './asked.ts';
import { fillingOf, PLATFORM, pressedBy } from './choices.ts';
import { type Made, messageAnyway, messageOf, plainMessage } from './message.ts';
import { openModal } from './modal.ts';
import { gone, lost, NO_MESSAGES, notYours } from './own-words.ts';
import { type Answerable, codeOf, respond, respondByChange } from './respond.ts';
import { answer, sendTo } from './send.ts';
import { StandingMessages } from './standing.ts';
import { suggest } from './suggest.ts';
import { accountOf } from './trouble.ts';

/** An event older than this is not answered any more: nobody is waiting for it. */
const TOO_OLD = 15 * 60 * 1000;

/** Takes the platform's events in, and sees to it that each is answered once. */
export class Events {
  readonly #needs: PlatformNeeds;
  readonly #seen = new Seen();
  readonly #begun = new Set<Promise<void>>();
  #finishing = false;

  readonly #standing: StandingMessages;

  constructor(rest: REST, needs: PlatformNeeds) {
    this.#needs = { ...needs, commands: loadedOnce(needs.commands) };
    this.#standing = new StandingMessages(rest, needs);
  }

  /** Takes no more, and waits for the answers that have been begun. */
  async finish(): Promise<void> {
    this.#finishing = true;
    await Promise.allSettled(this.#begun);
  }

  interaction(event: Interaction): void {
    const apologise = event.isAutocomplete() ? undefined : (words: Reply) => this.#apologise(event, words);
    this.#begin(event.id, () => this.#interacted(event), apologise);
  }

  message(event: Message, botId: string): void {
    if (event.author.bot || event.system || event.webhookId) return;
    const words = wordsTo(botId, event.content);
    if (words === null) return;
    this.#begin(event.id, () => this.#said(event, words));
  }

  /** Begins what an event asks for, once; what goes wrong with it is told to the operator, and where that can be to her. */
  #begin(id: string, work: () => Promise<void>, apologise?: (words: Reply) => Promise<void>): void {
    const { watch, log, now } = this.#needs;
    if (this.#finishing) return;
    if (!this.#seen.first(id)) return void watch.count('events_seen_again_total', { platform: PLATFORM });
    const asked = SnowflakeUtil.timestampFrom(id);
    if (now().getTime() - asked > TOO_OLD)
      return void watch.count('events_too_old_total', { platform: PLATFORM });
    watch.count('asks_total', { platform: PLATFORM });
    const from = performance.now();
    const begun = work()
      .then(() => watch.took(PLATFORM, (performance.now() - from) / 1000))
      .catch(async (error: unknown) => {
        const reference = referenceOf(now());
        watch.count('replies_lost_total', { platform: PLATFORM });
        log.error({ ...accountOf(error), event: id, reference }, 'a reply could not be sent');
        await apologise?.(lost(reference));
      })
      .finally(() => this.#begun.delete(begun));
    this.#begun.add(begun);
  }

  async #interacted(event: Interaction): Promise<void> {
    if (event.isAutocomplete()) return suggest(event, this.#needs);
    if (event.isChatInputCommand()) return this.#command(event);
    if (event.isButton()) return this.#button(event);
    if (event.isModalSubmit()) return this.#filledIn(event);
  }

  /** Where the platform still waits for an answer, she shall not wait for nothing. */
  async #apologise(event: Interaction, words: Reply): Promise<void> {
    const whose = { guild: event.guildId ?? '', member: event.user.id };
    const { facts, draw } = this.#needs;
    try {
      const made = await messageOf(words, { whose, notes: facts.notes, draw });
      await answer(event.client.rest, event, made, true);
    } catch {
      // Answered already, or nobody can be reached: the operator has been told.
    }
  }

  async #command(event: ChatInputCommandInteraction): Promise<void> {
    const options = optionsOf(event);
    const form = await this.#formOf(options.command, options.form);
    await this.#answer(event, askOf(event, asksFor(options), this.#needs.now()), form?.audience === 'asker');
  }

  async #button(event: ButtonInteraction): Promise<void> {
    const { facts } = this.#needs;
    const pressed = await pressedBy(event.customId, facts.notes);
    if (!pressed) return this.#sayAlone(event, gone());
    if (pressed.meantFor !== null && pressed.meantFor !== event.user.id)
      return this.#sayAlone(event, notYours(pressed.kind === 'page' ? null : pressed.ask));
    if (pressed.kind === 'page') return this.#turn(event, pressed.reply, pressed.page);
    if (pressed.names.length === 0) return this.#asked(event, pressed.ask, pressed.ask, pressed.guild);
    const form = await this.#formAsked(pressed.ask);
    return form ? openModal(event, pressed, form, facts.notes) : this.#sayAlone(event, gone());
  }

  /** An ask in words, behind a button or a form: whether it is for her alone is known by what it asks. */
  async #asked(event: Answerable, ask: string, words: Ask['words'], guild?: string): Promise<void> {
    const form = await this.#formAsked(ask);
    const asked = askOf(event, words, this.#needs.now(), guild);
    await this.#answer(event, asked, form?.audience === 'asker');
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
    await respondByChange(event, messageOf(kept, { whose, notes: facts.notes, draw }, { page, key }));
  }

  async #filledIn(event: ModalSubmitInteraction): Promise<void> {
    const filling = await fillingOf(event.customId, this.#needs.facts.notes);
    if (!filling) return this.#sayAlone(event, gone());
    const filled = Object.fromEntries(
      filling.names.map((name) => [name, textIn(event, name)]).filter(([, value]) => value !== ''),
    );
    await this.#asked(event, filling.ask, { ask: filling.ask, filled });
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
    // A mistake in plain words is mended where it was made; her settings and exports are hers alone.
    const apart = said.audience === 'asker' && !said.error && event.guildId !== null;
    const whose = { guild: ask.guild, member: ask.who.id, apart };
    const made = await messageAnyway(said, { whose, notes: facts.notes, draw }, this.#needs);
    if (apart) return tellAlone(event, made);
    await sendTo(event.client.rest, event.channelId, made, { answering: event.id, nonce: event.id });
    await this.#standing.after(said, ask.guild, ask.place);
  }

  /** The form that an ask in words means: its first two words name it. */
  async #formAsked(ask: string): Promise<Form | undefined> {
    const [command = '', form = ''] = ask.replace(/^\//, '').split(/[\s:]+/);
    return (await this.#formOf(command, form)) ?? this.#formOf(command);
  }

  /** A form by its name; without one, the form that the command alone means. */
  async #formOf(name: string, form?: string): Promise<Form | undefined> {
    const { commands } = this.#needs;
    const command = Object.hasOwn(commands, name) ? await commands[name]?.() : undefined;
    return command?.forms.find((one) => one.name === (form ?? command.standing ?? ''));
  }
}

/** What was filled in under a name; '' where it was left out. */
function textIn({ fields }: ModalSubmitInteraction, name: string): string {
  const field = fields.fields.get(name);
  return field && 'value' in field && typeof field.value === 'string' ? field.value.trim() : '';
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
