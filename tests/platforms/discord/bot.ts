import { afterEach } from 'vitest';
import { commands as real } from '../../../commands/index.ts';
import type { CommandList } from '../../../src/chat/command.ts';
import { openRoom, type Room } from '../../../src/chat/dispatch.ts';
import type { Facts } from '../../../src/chat/facts.ts';
import type { Counted } from '../../../src/chat/watch.ts';
import { IN_WORDS } from '../../../src/platforms/discord/register.ts';
import { startDiscord } from '../../../src/platforms/discord/start.ts';
import type { Ended, Platform, PlatformNeeds } from '../../../src/platforms/platform.ts';
import { offeredFor } from '../../standin/discord/offered.ts';
import { DiscordStandIn, TOKEN } from '../../standin/discord/standin.ts';
import { memoryFacts } from '../../standin/memory-facts.ts';

const open: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const close of open.splice(0).reverse()) await close();
});

export interface Running {
  readonly standIn: DiscordStandIn;
  readonly platform: Platform;
  readonly facts: Facts;
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
  /** Makes the pictures; without it they are quick ones of one dot. */
  readonly draw?: PlatformNeeds['draw'];
  readonly now?: () => Date;
  readonly shards?: number | 'auto';
  readonly testGuild?: string;
}

/** A PNG of one dot: what is in a picture is looked at elsewhere. */
const DOT = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAQAAAC1HAwCAAAAC0lEQVR42mNk+A8AAQUBAScY42YAAAAASUVORK5CYII=',
  'base64',
);

/** A stand-in platform, closed after the test. */
export async function standIn(): Promise<DiscordStandIn> {
  const opened = await DiscordStandIn.open();
  open.push(() => opened.close());
  return opened;
}

/** The bot on a stand-in platform, stopped after the test. */
export async function running(needs: BotNeeds = {}): Promise<Running> {
  const { facts = memoryFacts(), commands = real, token = TOKEN, draw = async () => DOT } = needs;
  const place = needs.standIn ?? (await standIn());
  const counts = new Map<Counted, number>();
  const logged: Running['logged'] = [];
  const ended: Ended[] = [];
  const logger = (level: string) => (details: object, message: string) =>
    logged.push({ level, message, details });
  const platform = await startDiscord({
    ...{ commands, facts, draw, token, api: place.api, shards: needs.shards, testGuild: needs.testGuild },
    room:
      needs.room ??
      openRoom({
        commands,
        facts,
        onFault: (error) => logged.push({ level: 'fault', message: String(error), details: {} }),
      }),
    watch: { count: (what) => counts.set(what, (counts.get(what) ?? 0) + 1), took: () => {} },
    log: { debug: logger('debug'), info: logger('info'), warn: logger('warn'), error: logger('error') },
    now: needs.now ?? (() => new Date()),
    ended: (why) => ended.push(why),
  });
  open.push(() => platform.stop());
  return { standIn: place, platform, facts, counts, logged, ended };
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

/** Options written in words as a member would give them: each in the type that it is offered in. */
export function givenAs(
  { commands }: DiscordStandIn,
  command: { readonly name: string; readonly sub?: string },
  words: Readonly<Record<string, string>>,
): Record<string, string | number> {
  const offered = offeredFor(commands, command) ?? [];
  const given: Record<string, string | number> = {};
  const others: string[] = [];
  for (const [name, value] of Object.entries(words)) {
    const type = offered.find((one) => one.name === name)?.type;
    if (type === undefined) others.push(`${name}:${value}`);
    else given[name] = type === 3 ? value : Number.parseFloat(value);
  }
  return others.length > 0 ? { ...given, [IN_WORDS]: others.join(' ') } : given;
}
