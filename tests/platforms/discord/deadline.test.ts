import { describe, expect, test } from 'vitest';
import { reply } from '../../../src/chat/reply.ts';
import { CannotStart } from '../../../src/platforms/platform.ts';
import { ADA, BEA, snowflake } from '../../standin/discord/events.ts';
import { CHANNEL } from '../../standin/discord/gateway.ts';
import { BOT, type Request, TOKEN } from '../../standin/discord/standin.ts';
import { memoryFacts } from '../../standin/memory-facts.ts';
import { embedOf, standIn as openStandIn, running, until } from './bot.ts';
import { fakeCommands } from './fake-commands.ts';

const callback = ({ path }: Request) => path.endsWith('/callback');
const slow = (ms: number) => ({ who: ADA, does: 'slash', name: 'slow', options: { ms } }) as const;

describe('the three seconds', () => {
  test('a slow answer is promised and then filled in', async () => {
    const { commands } = fakeCommands();
    const { standIn } = await running({ commands });
    const seen = await standIn.deliver(slow(1400));
    expect(seen.kind).toBe('edit');
    expect(embedOf(seen).title).toBe('Done');
    expect(standIn.faults).toEqual([]);
  });

  test('a slow mistake, promised to all, is told to the asker alone', async () => {
    const { commands } = fakeCommands();
    const { standIn } = await running({ commands });
    const seen = await standIn.deliver(slow(1307));
    expect(seen.kind).toBe('follow-up');
    expect(seen.alone).toBe(true);
    expect(
      standIn.requests.some(({ method, path }) => method === 'DELETE' && path.endsWith('@original')),
    ).toBe(true);
  });

  test('an acknowledgement that came after the deadline: the answer arrives all the same', async () => {
    const { commands } = fakeCommands();
    const { standIn } = await running({ commands });
    standIn.deadline = 0;
    const seen = await standIn.deliver(slow(30));
    expect(seen.kind).toBe('message');
    expect(embedOf(seen).title).toBe('Done');
    const promised = await standIn.deliver(slow(1200));
    expect(embedOf(promised).title).toBe('Done');
    expect(standIn.faults).toEqual([]);
  });

  test('an acknowledgement whose own answer is lost is not given twice', async () => {
    const { commands } = fakeCommands();
    const { standIn } = await running({ commands });
    standIn.next(callback, { status: 500, body: {}, done: true });
    const seen = await standIn.deliver(slow(10));
    expect(embedOf(seen).title).toBe('Done');
    await until(() =>
      standIn.requests.some(({ method, path }) => method === 'PATCH' && path.endsWith('@original')),
    );
    expect(standIn.faults).toEqual([]);
  });
});

describe('what goes wrong between us', () => {
  test('429 and 5xx are waited out, and counted', async () => {
    const { commands } = fakeCommands();
    const { standIn, counts } = await running({ commands });
    standIn.next(callback, {
      status: 429,
      body: { message: 'slow down', retry_after: 0.05, global: false },
      headers: { 'retry-after': '0.05', 'x-ratelimit-scope': 'user' },
    });
    const limited = await standIn.deliver(slow(10));
    expect(embedOf(limited).title).toBe('Done');
    standIn.next(callback, { status: 503, body: {} });
    const failed = await standIn.deliver(slow(20));
    expect(embedOf(failed).title).toBe('Done');
    expect(counts.get('server_errors_total')).toBe(1);
    expect(counts.get('rate_limited_total')).toBeGreaterThanOrEqual(1);
  });

  test('an event delivered again has one effect and one answer', async () => {
    const { commands, logged } = fakeCommands();
    const { standIn, counts } = await running({ commands });
    await standIn.deliver({ who: ADA, does: 'slash', name: 'enter', options: { pieces: 2 } }, 3);
    await until(() => counts.get('events_seen_again_total') === 2);
    expect(logged).toHaveLength(1);
    expect(standIn.seen).toHaveLength(1);
  });

  test('after a dropped socket it resumes, and what was missed is answered once', async () => {
    const { commands, logged } = fakeCommands();
    const { standIn } = await running({ commands });
    await standIn.deliver({ who: ADA, does: 'slash', name: 'enter', options: { pieces: 1 } });
    standIn.gateway.drop();
    await until(() => standIn.gateway.connected === 0);
    const missed = standIn.deliver({ who: ADA, does: 'slash', name: 'enter', options: { pieces: 2 } });
    expect(embedOf(await missed).description).toContain('2');
    expect(standIn.gateway.resumed).toBe(1);
    expect(standIn.gateway.identified).toBe(1);
    expect(standIn.faults).toEqual([]);
    expect(logged.map(({ pieces }) => pieces)).toEqual([1, 2]);
  }, 20_000);

  test('an event delivered again after a restart has one effect, and the same answer', async () => {
    const { commands, logged } = fakeCommands();
    const standIn = await openStandIn();
    const facts = memoryFacts();
    const first = await running({ standIn, facts, commands });
    const event = {
      who: ADA,
      does: 'slash',
      name: 'enter',
      options: { pieces: 2 },
      id: snowflake(),
    } as const;
    const answered = await standIn.deliver(event);
    await first.platform.stop();
    await running({ standIn, facts, commands });
    const again = await standIn.deliver(event);
    expect(logged).toHaveLength(1);
    expect(embedOf(again)).toEqual(embedOf(answered));
    expect(standIn.faults).toEqual([]);
  });

  test('the gateway hears heartbeats, with the number of the last event', async () => {
    const { commands } = fakeCommands();
    const standIn = await openStandIn();
    standIn.gateway.heartbeat = 60;
    await running({ standIn, commands });
    await standIn.deliver(slow(10));
    const beats = standIn.gateway.beats.length;
    await until(() => standIn.gateway.beats.length > beats + 1);
    // READY, the guild and the event.
    expect(standIn.gateway.beats.at(-1)).toBe(3);
    expect(standIn.faults).toEqual([]);
  });

  test('an event that is too old is not answered late', async () => {
    const { commands } = fakeCommands();
    const { standIn, counts } = await running({ commands });
    const old = Date.now() - 16 * 60 * 1000;
    standIn.tell({ ...slow(1), at: old });
    await until(() => counts.get('events_too_old_total') === 1);
    expect(standIn.seen).toHaveLength(0);
  });

  test('a bad token is one sentence and a status that says not to start again', async () => {
    const standIn = await openStandIn();
    const refused = running({ standIn, token: 'wrong' });
    await expect(refused).rejects.toThrow(/does not take the token/);
    await expect(refused).rejects.toSatisfy((error: CannotStart) => error.ended.status === 78);
    expect(standIn.gateway.identified).toBe(1);
  });

  test('an intent that is not allowed is one sentence, without spinning', async () => {
    const standIn = await openStandIn();
    standIn.gateway.refuseWith = 4014;
    const refused = running({ standIn });
    await expect(refused).rejects.toBeInstanceOf(CannotStart);
    await expect(refused).rejects.toThrow(/intent/);
    expect(standIn.gateway.identified).toBe(1);
  });

  test('commands that may not be registered are one sentence', async () => {
    const standIn = await openStandIn();
    standIn.next(({ method }) => method === 'PUT', {
      status: 403,
      body: { code: 50001, message: 'Missing Access' },
    });
    await expect(running({ standIn })).rejects.toThrow(/Missing Access/);
  });

  test('a token refused later ends the platform once, in a sentence', async () => {
    const { standIn, ended } = await running();
    standIn.gateway.close(4004);
    await until(() => ended.length > 0);
    expect(ended[0]?.sentence).toMatch(/token/);
    expect(ended[0]?.status).toBe(78);
  });

  test('a place that refuses the bot’s words loses one reply, told in the log and counted', async () => {
    const { standIn, counts, logged } = await running();
    standIn.next(({ path }) => path === `/channels/${CHANNEL}/messages`, {
      status: 403,
      body: { code: 50013, message: 'Missing Permissions' },
    });
    standIn.tell({ who: BEA, does: 'say', content: `<@${BOT.id}> /help`, bot: BOT.id });
    await until(() => counts.get('replies_lost_total') === 1);
    expect(logged.some(({ level }) => level === 'error')).toBe(true);
    expect(JSON.stringify(logged)).not.toContain(TOKEN);
  });
});

describe('of itself', () => {
  test('a reminder is sent with a nonce, the same one for the same reminder', async () => {
    const { standIn, platform } = await running();
    const words = reply({ title: 'Block 3 opens', lines: ['today'] });
    await platform.tell(CHANNEL, words, 'block:3');
    await platform.tell(CHANNEL, words, 'block:3');
    await platform.tell(CHANNEL, words, 'block:4');
    const sent = standIn.requests.filter(
      ({ method, path }) => method === 'POST' && path.endsWith('/messages'),
    );
    const [one, two, other] = sent.map(({ body }) => body as { nonce: string; enforce_nonce: boolean });
    expect(one?.enforce_nonce).toBe(true);
    expect(one?.nonce).toBe(two?.nonce);
    expect(one?.nonce).not.toBe(other?.nonce);
    expect(one?.nonce.length).toBeLessThanOrEqual(25);
    expect(standIn.seen.filter(({ kind }) => kind === 'message')).toHaveLength(2);
    expect(standIn.faults).toEqual([]);
  });

  test.each([
    ['is gone', 'GET', { status: 404, body: { code: 10003, message: 'Unknown Channel' } }],
    ['lets it say nothing', 'POST', { status: 403, body: { code: 50013, message: 'Missing Permissions' } }],
  ])('a channel that %s is told to the operator, and not tried again', async (_, method, outcome) => {
    const { standIn, platform, counts, logged } = await running();
    standIn.next((request) => request.method === method && request.path.startsWith('/channels/'), outcome);
    await platform.tell(CHANNEL, reply({ title: 'Block 3 opens' }), 'block:3');
    expect(counts.get('sends_refused_total')).toBe(1);
    expect(counts.get('reminders_total')).toBeUndefined();
    expect(logged.filter(({ level }) => level === 'warn')).toHaveLength(1);
  });

  test('a platform that fails is no such channel: the reminder is tried again', async () => {
    const { standIn, platform } = await running();
    standIn.next(({ path }) => path.startsWith('/channels/'), { status: 500, body: {} }, 20);
    await expect(platform.tell(CHANNEL, reply({ title: 'Block 3 opens' }), 'block:3')).rejects.toThrow();
  });

  test('ids survive a round trip', () => {
    expect(snowflake(Date.UTC(2026, 11, 1))).toMatch(/^\d{18,19}$/);
  });
});
