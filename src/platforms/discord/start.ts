import { createHash } from 'node:crypto';
import {
  Client,
  type ClientOptions,
  DiscordAPIError,
  GatewayIntentBits,
  Options,
  Partials,
  Routes,
} from 'discord.js';
import type { Reply } from '../../chat/reply.ts';
import { CannotStart, type Platform, type PlatformNeeds } from '../platform.ts';
import { PLATFORM } from './choices.ts';
import { Events } from './events.ts';
import { keepRegistered, keepToOneScope } from './keep-registered.ts';
import { forgetLeft, noteChanges, noteJoined, noteLeft } from './left.ts';
import { LIMITS } from './limits.ts';
import { messageAnyway } from './message.ts';
import { patiently } from './network.ts';
import { sendTo } from './send.ts';
import { accountOf, endedBy } from './trouble.ts';

export interface DiscordStart extends PlatformNeeds {
  readonly token: string;
  /** The REST address without its version. */
  readonly api?: string | undefined;
  /** Register the commands in this guild alone. */
  readonly testGuild?: string | undefined;
  /** How many shards; "auto" lets the platform say. */
  readonly shards?: number | 'auto' | undefined;
}

/** The least that lets the bot be asked in a guild: no reading of what is said to others. */
export const INTENTS = [GatewayIntentBits.Guilds, GatewayIntentBits.GuildMessages];

const DAY = 24 * 60 * 60 * 1000;

function optionsFor({ api, shards = 'auto' }: DiscordStart): ClientOptions {
  return {
    intents: INTENTS,
    ...shardsOf(shards),
    partials: [Partials.Channel],
    allowedMentions: { parse: [] },
    failIfNotExists: false,
    // Nothing is looked up in old messages or members: keeping them would only fill the memory.
    makeCache: Options.cacheWithLimits({
      ...Options.DefaultMakeCacheSettings,
      MessageManager: 0,
      GuildMemberManager: { maxSize: 200, keepOverLimit: (member) => member.id === member.client.user.id },
      UserManager: { maxSize: 200, keepOverLimit: (user) => user.id === user.client.user.id },
      PresenceManager: 0,
      ReactionManager: 0,
      GuildEmojiManager: 0,
      GuildStickerManager: 0,
      VoiceStateManager: 0,
    }),
    rest: { ...(api ? { api } : {}), rejectOnRateLimit: null, retries: 5, makeRequest: patiently() },
  };
}

/** All shards in this process: as many as the platform says, or as the settings do. */
const shardsOf = (shards: number | 'auto'): Pick<ClientOptions, 'shards' | 'shardCount'> =>
  shards === 'auto' ? { shards } : { shards: [...Array(shards).keys()], shardCount: shards };

/** Connects, registers the commands where they differ, and answers until it is stopped. */
export async function startDiscord(needs: DiscordStart): Promise<Platform> {
  const client = new Client(optionsFor(needs));
  const events = new Events(client.rest, needs);
  listen(client, events, needs);
  const ready = new Promise<void>((done) => client.once('clientReady', () => done()));
  try {
    await client.login(needs.token);
    await Promise.race([ready, refused(client)]);
    await keepRegistered(client, needs);
  } catch (error) {
    await client.destroy();
    throw new CannotStart(endedBy(error), error);
  }
  let stopping = false;
  refused(client).catch((error: unknown) => {
    if (!stopping) needs.ended(endedBy(error));
  });
  await aside(keepToOneScope(client, needs), needs);
  await aside(noteChanges(new Set(client.guilds.cache.keys()), needs), needs);
  const tidying = setInterval(() => void aside(tidy(needs), needs), DAY).unref();
  void aside(tidy(needs), needs);
  return {
    name: PLATFORM,
    tell: (place, reply, once) => tell(client, place, reply, once, needs),
    async stop() {
      stopping = true;
      clearInterval(tidying);
      await events.finish();
      await client.destroy();
    },
  };
}

/** Rejects when the gateway refuses us for good. */
const refused = (client: Client) =>
  new Promise<never>((_, no) => {
    client.once('invalidated', () => no(new Error('session invalidated')));
    client.once('shardDisconnect', ({ code }) =>
      no(Object.assign(new Error(`closed with ${code}`), { code })),
    );
  });

/** What is done beside the answers: what goes wrong with it is told to the operator and stops nothing. */
const aside = (work: Promise<void>, { log }: Pick<PlatformNeeds, 'log'>): Promise<void> =>
  work.catch((error: unknown) => log.error(accountOf(error), 'something was not kept'));

function listen(client: Client, events: Events, needs: DiscordStart): void {
  const { watch, log } = needs;
  client.on('interactionCreate', (event) => events.interaction(event));
  client.on('messageCreate', (message) => events.message(message, client.user?.id ?? ''));
  client.on('guildCreate', (guild) => void aside(noteJoined(guild.id, needs), needs));
  // One that is only out of reach for now is told of otherwise.
  client.on('guildDelete', (guild) => void aside(noteLeft(guild.id, needs), needs));
  client.on('error', (error) => log.warn(accountOf(error), 'the connection failed'));
  client.on('warn', (words) => log.warn({ words }, 'the library warns'));
  client.on('shardResume', () => watch.count('reconnects_total', { platform: PLATFORM }));
  client.on('shardReconnecting', () => watch.count('reconnects_total', { platform: PLATFORM }));
  client.on('shardError', (error) => log.warn(accountOf(error), 'the gateway failed'));
  client.rest.on('rateLimited', ({ route, timeToReset }) => {
    log.info({ route, wait: timeToReset }, 'waiting as the platform asks');
  });
  client.rest.on('response', (_, response) => {
    if (response.status === 429) watch.count('rate_limited_total', { platform: PLATFORM });
    if (response.status >= 500) watch.count('server_errors_total', { platform: PLATFORM });
  });
}

/** Forgets the guilds left long ago, and buttons nobody will press. */
async function tidy(needs: DiscordStart): Promise<void> {
  const { facts, now } = needs;
  const old = new Date(now().getTime() - 30 * DAY);
  for (const kind of ['choice:', 'pages:', 'fill:']) await facts.notes.prune(PLATFORM, kind, old);
  await forgetLeft(old, needs);
}

/**
 * Says something of itself in a channel. The platform drops a second message with the same nonce. A channel that
 * is gone, or in which it may not speak, is told to the operator: trying again would change nothing.
 */
async function tell(
  { rest }: Client,
  place: string,
  reply: Reply,
  once: string,
  needs: DiscordStart,
): Promise<void> {
  const { facts, draw, watch, log } = needs;
  try {
    const { guild_id: guild = '' } = (await rest.get(Routes.channel(place))) as { guild_id?: string };
    const made = await messageAnyway(
      reply,
      { whose: { guild, member: '' }, notes: facts.notes, draw },
      needs,
    );
    const nonce = createHash('sha256').update(once).digest('base64url').slice(0, LIMITS.nonce);
    await sendTo(rest, place, made, { nonce });
    watch.count('reminders_total', { platform: PLATFORM });
  } catch (error) {
    if (!(error instanceof DiscordAPIError) || ![403, 404].includes(error.status)) throw error;
    watch.count('sends_refused_total', { platform: PLATFORM });
    log.warn({ ...accountOf(error), place }, 'nothing may be said here');
  }
}
