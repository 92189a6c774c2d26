import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect } from 'vitest';
import { commands as real } from '../../../commands/index.ts';
import type { CommandList } from '../../../src/chat/command.ts';
import { openRoom, type Room } from '../../../src/chat/dispatch.ts';
import type { Facts } from '../../../src/chat/facts.ts';
import type { Counted } from '../../../src/chat/watch.ts';
import { draw } from '../../../src/pictures/draw.ts';
import type { MatrixStart } from '../../../src/platforms/matrix/settings.ts';
import { startMatrix } from '../../../src/platforms/matrix/start.ts';
import type { Ended, Platform } from '../../../src/platforms/platform.ts';
import type { WireEvent } from '../../standin/matrix/place.ts';
import { BOT, MatrixStandIn, PASSWORD, SERVER } from '../../standin/matrix/standin.ts';
import { memoryFacts } from '../../standin/memory-facts.ts';

const open: (() => Promise<unknown>)[] = [];
afterEach(async () => {
  for (const close of open.splice(0).reverse()) await close();
});

export interface Logged {
  readonly level: string;
  readonly message: string;
  readonly details: Readonly<Record<string, unknown>>;
}

export interface Running {
  readonly standIn: MatrixStandIn;
  readonly platform: Platform;
  readonly facts: Facts;
  readonly folder: string;
  readonly counts: Map<Counted, number>;
  readonly logged: Logged[];
  readonly ended: Ended[];
  stop(): Promise<void>;
}

export interface BotNeeds extends Partial<MatrixStart> {
  readonly standIn?: MatrixStandIn;
  readonly room?: Room;
  readonly commands?: CommandList;
}

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
  const { facts = memoryFacts(), commands = real, folder = folderForBot() } = needs;
  const place = given ?? (await standIn());
  const counts = new Map<Counted, number>();
  const logged: Logged[] = [];
  const ended: Ended[] = [];
  const logger = (level: string) => (details: object, message: string) =>
    void logged.push({ level, message, details: { ...details } });
  const platform = await startMatrix({
    ...{ commands, facts, draw, folder, homeserver: place.address, user: BOT, password: PASSWORD },
    ...{ storeKey: 'a key of the test', prefix: '!', inviteFrom: [SERVER], now: () => new Date() },
    room: openRoom({
      commands,
      facts,
      onFault: (error) => logged.push({ level: 'fault', message: String(error), details: {} }),
    }),
    watch: { count: (what) => void counts.set(what, (counts.get(what) ?? 0) + 1), took: () => {} },
    log: { debug: logger('debug'), info: logger('info'), warn: logger('warn'), error: logger('error') },
    ended: (why) => void ended.push(why),
    ...needs,
  });
  let stopping: Promise<void> | undefined;
  const stop = () => {
    stopping ??= platform.stop();
    return stopping;
  };
  open.push(stop);
  return { standIn: place, platform, facts, folder, counts, logged, ended, stop };
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
