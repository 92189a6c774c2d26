import { CHANNEL, ORGANISERS, OWN } from './gateway.ts';
import { offeredFor } from './offered.ts';

let serial = 0;

/** An id as the platform makes them: the moment, and a serial number. */
export function snowflake(at = Date.now()): string {
  return String(((BigInt(at) - 1420070400000n) << 22n) | BigInt(serial++ % 4_194_304));
}

export interface Who {
  readonly id: string;
  readonly name: string;
  readonly organiser?: boolean;
  readonly bot?: boolean;
}

export const ADA: Who = { id: '600000000000000001', name: 'Ada' };
export const BEA: Who = { id: '600000000000000002', name: 'Bea', organiser: true };

type Value = string | number | boolean;

/** What a member does. */
export type EventNeeds = {
  readonly who: Who;
  readonly at?: number;
  readonly id?: string;
  readonly channel?: string;
} & (
  | {
      readonly does: 'slash';
      readonly name: string;
      readonly sub?: string;
      readonly options?: Readonly<Record<string, Value>>;
    }
  /** `apart`: in her own messages, outside of any guild. */
  | { readonly does: 'press'; readonly customId: string; readonly apart?: boolean }
  | {
      readonly does: 'typing';
      readonly name: string;
      readonly sub?: string;
      readonly options: Readonly<Record<string, Value>>;
      readonly focused: string;
    }
  | { readonly does: 'submit'; readonly customId: string; readonly values: Readonly<Record<string, string>> }
  | { readonly does: 'say'; readonly content: string; readonly bot: string }
);

export interface Event {
  readonly key: string;
  readonly token: string;
  readonly type: string;
  readonly payload: unknown;
}

const GUILD_ID = '100000000000000001';
const MANAGE_GUILD = 1n << 5n;
const BASE = 1n << 11n;

const userOf = ({ id, name, bot = false }: Who) => ({
  id,
  username: name.toLowerCase(),
  global_name: name,
  discriminator: '0',
  avatar: null,
  ...(bot ? { bot } : {}),
  public_flags: 0,
});

const memberOf = (who: Who) => ({
  user: userOf(who),
  roles: who.organiser ? [ORGANISERS] : [],
  nick: null,
  avatar: null,
  joined_at: '2026-01-01T00:00:00.000000+00:00',
  premium_since: null,
  deaf: false,
  mute: false,
  flags: 0,
  pending: false,
  communication_disabled_until: null,
  permissions: String(who.organiser ? BASE | MANAGE_GUILD : BASE),
});

const TYPES = { slash: 2, press: 3, typing: 4, submit: 5 } as const;

/** The event that the gateway delivers when a member does something. */
export function eventOf(needs: EventNeeds, commands: readonly unknown[] = []): Event {
  const id = needs.id ?? snowflake(needs.at);
  const { channel = CHANNEL } = needs;
  if (needs.does === 'say')
    return { key: id, token: '', type: 'MESSAGE_CREATE', payload: messageFor(id, needs) };
  const token = `token-${id}`;
  const payload = {
    id,
    application_id: '200000000000000001',
    type: TYPES[needs.does],
    data: dataFor(needs, commands),
    ...(needs.does === 'press' && needs.apart ? ownMessages(needs.who) : inGuild(needs.who, channel)),
    token,
    version: 1,
    app_permissions: '2147483647',
    locale: 'en-US',
    guild_locale: 'en-US',
    entitlements: [],
    authorizing_integration_owners: { '0': GUILD_ID },
    context: 0,
    attachment_size_limit: 10_485_760,
    ...(needs.does === 'press' ? { message: pressedMessage() } : {}),
  };
  return { key: id, token, type: 'INTERACTION_CREATE', payload };
}

const inGuild = (who: Who, channel: string) => ({
  ...{ guild_id: GUILD_ID, channel_id: channel, member: memberOf(who) },
  channel: { id: channel, type: 0, guild_id: GUILD_ID, name: 'sewing', permissions: '2048', flags: 0 },
});

const ownMessages = (who: Who) => ({
  ...{ channel_id: OWN, user: userOf(who), channel: { id: OWN, type: 1, flags: 0 } },
  context: 1,
});

function dataFor(needs: Exclude<EventNeeds, { does: 'say' }>, commands: readonly unknown[]): unknown {
  if (needs.does === 'press') return { custom_id: needs.customId, component_type: 2, id: 1 };
  if (needs.does === 'submit')
    return {
      custom_id: needs.customId,
      components: Object.entries(needs.values).map(([name, value], i) => ({
        type: 1,
        id: i,
        components: [{ type: 4, id: 100 + i, custom_id: name, value }],
      })),
    };
  const focused = needs.does === 'typing' ? needs.focused : undefined;
  const offered = offeredFor(commands, needs) ?? [];
  const given = Object.entries(needs.options ?? {}).map(([name, value]) => ({
    name,
    type: offered.find((one) => one.name === name)?.type ?? 3,
    value,
    ...(name === focused ? { focused: true } : {}),
  }));
  const options = needs.sub ? [{ name: needs.sub, type: 1, options: given }] : given;
  return { id: snowflake(), name: needs.name, type: 1, options, guild_id: GUILD_ID };
}

const pressedMessage = () => ({
  ...{
    id: snowflake(),
    channel_id: CHANNEL,
    type: 0,
    content: '',
    tts: false,
    pinned: false,
    mention_everyone: false,
  },
  ...{ mentions: [], mention_roles: [], attachments: [], embeds: [], components: [], flags: 0 },
  ...{ timestamp: new Date().toISOString(), edited_timestamp: null },
  author: { id: '200000000000000001', username: 'bee', discriminator: '0', avatar: null, bot: true },
});

const messageFor = (id: string, { who, content, bot, channel }: Extract<EventNeeds, { does: 'say' }>) => ({
  ...{
    id,
    channel_id: channel ?? CHANNEL,
    guild_id: GUILD_ID,
    type: 0,
    content,
    tts: false,
    pinned: false,
    mention_everyone: false,
  },
  ...{
    mention_roles: [],
    attachments: [],
    embeds: [],
    components: [],
    flags: 0,
    timestamp: new Date().toISOString(),
  },
  edited_timestamp: null,
  mentions: content.includes(bot)
    ? [{ id: bot, username: 'bee', discriminator: '0', avatar: null, bot: true }]
    : [],
  author: userOf(who),
  member: { ...memberOf(who), user: undefined },
});
