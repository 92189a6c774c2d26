import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect } from 'vitest';
import type { WireEvent } from '../../standin/matrix/place.ts';
import { BOT, MatrixStandIn, SERVER } from '../../standin/matrix/standin.ts';
import { type BotNeeds, type Running, startBot } from './started.ts';

export type { Running } from './started.ts';

const open: (() => Promise<unknown>)[] = [];
afterEach(async () => {
  for (const close of open.splice(0).reverse()) await close();
});

/** A stand-in homeserver, closed after the test; whatever the bot sent it must have been sound. */
export async function standIn(): Promise<MatrixStandIn> {
  const opened = await MatrixStandIn.open();
  open.push(async () => {
    await opened.close();
    expect(opened.faults).toEqual([]);
  });
  return opened;
}

/** A folder for what the bot keeps, removed after the test. */
export function folderForBot(): string {
  const folder = mkdtempSync(join(tmpdir(), 'honeycount-matrix-'));
  open.push(async () => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** The bot at a stand-in homeserver, stopped after the test. */
export async function running({ standIn: given, ...needs }: BotNeeds = {}): Promise<Running> {
  const bot = await startBot(given ?? (await standIn()), { folder: folderForBot(), ...needs });
  open.push(bot.stop);
  return bot;
}

export const userOf = (name: string): string => `@${name}:${SERVER}`;
export const ADA = userOf('ada');
export const BEA = userOf('bea');

/** What the operator reads: warnings and worse, but for the one about signing, which most tests do without. */
export const said = ({ logged }: Pick<Running, 'logged'>, least = ['warn', 'error', 'fault']): string[] =>
  logged
    .filter(({ level, message }) => least.includes(level) && !message.includes('recoveryKey'))
    .map(({ message }) => message);

/** Waits until something holds, a few seconds at most. */
export async function until(holds: () => boolean, what = 'that', seconds = 8): Promise<void> {
  const end = performance.now() + seconds * 1000;
  while (!holds()) {
    if (performance.now() > end) throw new Error(`waited ${seconds} s in vain: ${what}`);
    await new Promise((done) => setTimeout(done, 5));
  }
}

type More = Readonly<Record<string, unknown>>;

/** A member as she talks in one room of a stand-in. */
export class Voice {
  readonly standIn: MatrixStandIn;
  readonly room: string;
  readonly user: string;

  constructor(standIn: MatrixStandIn, room: string, user: string) {
    this.standIn = standIn;
    this.room = room;
    this.user = user;
  }

  put(type: string, content: More, more: { at?: number } = {}): string {
    return this.standIn.put(this.room, { type, sender: this.user, content: { ...content }, ...more })
      .event_id;
  }

  say(body: string, more: More = {}, at?: number): string {
    return this.put('m.room.message', { msgtype: 'm.text', body, ...more }, at === undefined ? {} : { at });
  }

  /** Says it to the bot by name, as clients do that state whom they mean. */
  sayTo(words: string): string {
    return this.say(`bee: ${words}`, { 'm.mentions': { user_ids: [BOT] } });
  }

  edit(event: string, body: string): string {
    return this.say(`* ${body}`, {
      'm.new_content': { msgtype: 'm.text', body },
      'm.relates_to': { rel_type: 'm.replace', event_id: event },
    });
  }

  react(event: string, key: string): string {
    return this.put('m.reaction', { 'm.relates_to': { rel_type: 'm.annotation', event_id: event, key } });
  }

  redact(event: string): string {
    return this.standIn.put(this.room, {
      ...{ type: 'm.room.redaction', sender: this.user, redacts: event, content: { redacts: event } },
    }).event_id;
  }

  /** What the bot has sent into the room, in order. */
  sent(): WireEvent[] {
    return this.standIn
      .room(this.room)
      .timeline.map(({ event }) => event)
      .filter(({ sender }) => sender === BOT);
  }

  /** The bot's messages in answer to another. */
  answersTo(event: string): WireEvent[] {
    return this.sent().filter(({ content }) => answeredIn(content) === event);
  }

  async answerTo(event: string): Promise<WireEvent> {
    await until(() => this.answersTo(event).length > 0, `an answer to ${event}`);
    return this.answersTo(event)[0] as WireEvent;
  }

  async ask(body: string, more: More = {}): Promise<WireEvent> {
    return this.answerTo(this.say(body, more));
  }

  /** The reactions of the bot under a message. */
  numbersUnder(event: string): string[] {
    return this.sent()
      .map(({ content }) => content['m.relates_to'] as Relation | undefined)
      .filter((relation) => relation?.rel_type === 'm.annotation' && relation.event_id === event)
      .map((relation) => relation?.key ?? '');
  }

  /** Everything that was said before has been dealt with when this, said after it, is answered. */
  async settled(): Promise<void> {
    await this.ask('!count rosette rounds:1');
  }
}

interface Relation {
  readonly rel_type?: string;
  readonly event_id?: string;
  readonly key?: string;
  readonly 'm.in_reply_to'?: { readonly event_id: string };
}

export const relationOf = ({ content }: WireEvent): Relation | undefined =>
  content['m.relates_to'] as Relation | undefined;

const answeredIn = (content: More): string | undefined =>
  (content['m.relates_to'] as Relation | undefined)?.['m.in_reply_to']?.event_id;

export const bodyOf = ({ content }: WireEvent): string => String(content.body ?? '');
