import { afterEach } from 'vitest';
import { commands as real } from '../../../commands/index.ts';
import type { CommandList } from '../../../src/chat/command.ts';
import { openRoom, type Room } from '../../../src/chat/dispatch.ts';
import type { Facts } from '../../../src/chat/facts.ts';
import type { Counted } from '../../../src/chat/watch.ts';
import { draw } from '../../../src/pictures/draw.ts';
import { startDiscord } from '../../../src/platforms/discord/start.ts';
import type { Ended, Platform } from '../../../src/platforms/platform.ts';
import { DiscordStandIn, TOKEN } from '../../standin/discord/standin.ts';
import { memoryFacts } from '../../standin/memory-facts.ts';

const open: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const close of open.splice(0).reverse()) await close();
});

export interface Running {
  readonly standIn: DiscordStandIn;
  readonly platform: Platform;
  readonly counts: Map<Counted, number>;
  readonly logged: { level: string; message: string; details: object }[];
  readonly ended: Ended[];
}

export interface BotNeeds {
  readonly standIn?: DiscordStandIn;
  readonly facts?: Facts;
  readonly commands?: CommandList;
  readonly token?: string;
  readonly room?: Room;
}

/** A stand-in platform, closed after the test. */
export async function standIn(): Promise<DiscordStandIn> {
  const opened = await DiscordStandIn.open();
  open.push(() => opened.close());
  return opened;
}

/** The bot on a stand-in platform, stopped after the test. */
export async function running(needs: BotNeeds = {}): Promise<Running> {
  const { facts = memoryFacts(), commands = real, token = TOKEN } = needs;
  const place = needs.standIn ?? (await standIn());
  const counts = new Map<Counted, number>();
  const logged: Running['logged'] = [];
  const ended: Ended[] = [];
  const logger = (level: string) => (details: object, message: string) =>
    logged.push({ level, message, details });
  const platform = await startDiscord({
    ...{ commands, facts, draw, token, api: place.api },
    room:
      needs.room ??
      openRoom({
        commands,
        facts,
        onFault: (error) => logged.push({ level: 'fault', message: String(error), details: {} }),
      }),
    watch: { count: (what) => counts.set(what, (counts.get(what) ?? 0) + 1), took: () => {} },
    log: { debug: logger('debug'), info: logger('info'), warn: logger('warn'), error: logger('error') },
    now: () => new Date(),
    ended: (why) => ended.push(why),
  });
  open.push(() => platform.stop());
  return { standIn: place, platform, counts, logged, ended };
}

interface Embed {
  readonly title?: string;
  readonly description?: string;
  readonly fields?: readonly { name: string; value: string }[];
  readonly image?: { url: string };
  readonly footer?: { text: string };
}

interface Button {
  readonly label: string;
  readonly custom_id: string;
  readonly disabled?: boolean;
}

/** What a member reads of a message. */
export const embedOf = (seen: { body: Record<string, unknown> }): Embed =>
  ((seen.body.embeds ?? []) as Embed[])[0] ?? {};

export const buttonsOf = (seen: { body: Record<string, unknown> }): Button[] =>
  ((seen.body.components ?? []) as { components: Button[] }[]).flatMap((row) => row.components);

/** Waits until something holds, a few seconds at most. */
export async function until(holds: () => boolean): Promise<void> {
  for (let i = 0; i < 400 && !holds(); i++) await new Promise((done) => setTimeout(done, 10));
  if (!holds()) throw new Error('it did not come to hold');
}
