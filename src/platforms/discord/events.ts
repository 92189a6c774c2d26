import {
  type ButtonInteraction,
  type Interaction,
  type Message,
  RESTJSONErrorCodes,
  SnowflakeUtil,
} from 'discord.js';
import type { Ask } from '../../chat/command.ts';
import { type Reply, reply } from '../../chat/reply.ts';
import type { PlatformNeeds } from '../platform.ts';
import { askInMessage, askOf, optionsOf, wordsTo } from './asked.ts';
import { fillingOf, pressedBy } from './choices.ts';
import { type Message as Made, messageOf } from './message.ts';
import { openModal } from './modal.ts';
import { type Answerable, codeOf, respond } from './respond.ts';
import { Seen } from './seen.ts';
import { keepStanding } from './standing.ts';
import { suggest } from './suggest.ts';

/** An event older than this is not answered any more: nobody is waiting for it. */
const TOO_OLD = 15 * 60 * 1000;

const PLATFORM = 'discord';

/** Takes the platform's events in, and sees to it that each is answered once. */
export class Events {
  readonly #needs: PlatformNeeds;
  readonly #seen = new Seen();
  readonly #begun = new Set<Promise<void>>();

  constructor(needs: PlatformNeeds) {
    this.#needs = needs;
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

  async #command(event: Extract<Interaction, { commandName: string }> & { options: unknown }): Promise<void> {
    const asked = event as unknown as Parameters<typeof optionsOf>[0];
    const options = optionsOf(asked);
    const form = await this.#formOf(options.command, options.form);
    await this.#answer(asked, askOf(asked, options, this.#needs.now()), form?.audience === 'asker');
  }

  async #button(event: ButtonInteraction): Promise<void> {
    const pressed = await pressedBy(event.customId, this.#needs.facts.notes);
    const whose = { guild: event.guildId ?? '', member: event.user.id };
    const say = (words: Reply) =>
      respond(event, { reply: Promise.resolve(words), alone: true, whose }, this.#needs);
    if (!pressed) return say(gone());
    if (pressed.meantFor !== null && pressed.meantFor !== event.user.id)
      return say(notYours(pressed.kind === 'page' ? null : pressed.ask));
    if (pressed.kind === 'page') return this.#turn(event, pressed.reply, pressed.page);
    if (pressed.kind === 'fill') {
      const [command = '', form = ''] = pressed.ask.replace(/^\//, '').split(/[\s:]+/);
      const declared = (await this.#formOf(command, form)) ?? (await this.#formOf(command, ''));
      if (!declared) return say(gone());
      return openModal(
        event,
        { ask: pressed.ask, form: declared, names: pressed.names },
        this.#needs.facts.notes,
      );
    }
    await this.#answer(event, askOf(event, pressed.ask, this.#needs.now()), false);
  }

  /** Another page takes the place of the one that is shown. */
  async #turn(event: ButtonInteraction, kept: Reply, page: number): Promise<void> {
    const key = event.customId.split(':')[1] ?? '';
    const { facts, draw } = this.#needs;
    const whose = { guild: event.guildId ?? '', member: event.user.id };
    const made = await messageOf(kept, { whose, notes: facts.notes, draw }, { page, key });
    await event.update({ ...made, attachments: [] });
  }

  async #filledIn(event: Extract<Interaction, { fields: unknown }>): Promise<void> {
    const modal = event as unknown as Extract<Answerable, { fields: unknown }>;
    const filling = await fillingOf(modal.customId, this.#needs.facts.notes);
    const whose = { guild: modal.guildId ?? '', member: modal.user.id };
    if (!filling) return respond(modal, { reply: Promise.resolve(gone()), alone: true, whose }, this.#needs);
    const filled = Object.fromEntries(
      filling.names
        .map((name) => [name, modal.fields.getTextInputValue(name).trim()])
        .filter(([, value]) => value !== ''),
    );
    await this.#answer(modal, askOf(modal, { ask: filling.ask, filled }, this.#needs.now()), false);
  }

  async #answer(event: Answerable, ask: Ask, alone: boolean): Promise<void> {
    const whose = { guild: ask.guild, member: ask.who.id };
    const answered = this.#needs.room.answer(ask);
    await respond(event, { reply: answered, alone, whose }, this.#needs);
    const said = await answered;
    if (said.standing && event.channel) await keepStanding(event.channel, said, whose, this.#needs);
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
    await event.reply({ ...made, failIfNotExists: false });
  }

  async #formOf(command: string, form: string) {
    const { commands } = this.#needs;
    const load = Object.hasOwn(commands, command) ? commands[command] : undefined;
    return (await load?.())?.forms.find((one) => one.name === form);
  }
}

/** To her alone; where she takes no such messages, a pointer to the command that answers alone. */
async function tellAlone(event: Message, made: Made): Promise<void> {
  try {
    await event.author.send(made);
  } catch (error) {
    if (codeOf(error) !== RESTJSONErrorCodes.CannotSendMessagesToThisUser) throw error;
    const words =
      'That answer is for you alone, and you take no messages from me. Ask it with the slash command.';
    await event.reply({
      content: words,
      allowedMentions: { parse: [], repliedUser: false },
      failIfNotExists: false,
    });
  }
}

const gone = (): Reply =>
  reply({
    title: 'Too old',
    lines: ['That button is too old: I no longer have what it stood for. Ask again, please.'],
    audience: 'asker',
    error: { code: 'button-gone', message: 'That button is too old. Ask again.' },
  });

const notYours = (ask: string | null): Reply =>
  reply({
    title: 'Somebody else’s',
    lines: [
      'That button answers the member who asked.',
      ...(ask ? ['You can ask it too:', `\`${ask}\``] : []),
    ],
    audience: 'asker',
    error: { code: 'button-not-yours', message: 'That button answers the member who asked.' },
  });
