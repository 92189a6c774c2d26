import { describe, expect, test } from 'vitest';
import { ADA, BEA, type Who } from '../../standin/discord/events.ts';
import { CHANNEL, KITCHEN } from '../../standin/discord/gateway.ts';
import { BOT, type Seen } from '../../standin/discord/standin.ts';
import { memoryFacts } from '../../standin/memory-facts.ts';
import { type BotNeeds, buttonsOf, embedOf, standIn as openStandIn, running, until } from './bot.ts';

const NOW = new Date('2026-12-04T18:00:00Z');
const at = NOW.getTime();
const MESSAGES = `/channels/${CHANNEL}/messages`;

/** A guild with a challenge in its one channel, and who does what in it. */
async function guild(needs: BotNeeds = {}) {
  const bot = await running({ now: () => NOW, ...needs });
  const { standIn } = bot;
  const say = (who: Who, words: string, channel = CHANNEL) =>
    standIn.deliver({ who, does: 'say', content: `<@${BOT.id}> ${words}`, bot: BOT.id, at, channel });
  return {
    ...bot,
    say,
    press: (who: Who, seen: Seen, label: string, channel = CHANNEL) => {
      const customId = buttonsOf(seen).find((one) => one.label === label)?.custom_id ?? `no ${label}`;
      return standIn.deliver({ who, does: 'press', customId, at, channel });
    },
    submit: (who: Who, modal: Seen, values: Readonly<Record<string, string>>, channel = CHANNEL) =>
      standIn.deliver({ who, does: 'submit', customId: String(modal.body.custom_id), values, at, channel }),
    typing: async (name: string, sub: string | undefined, focused: string, typed: string, who = BEA) => {
      const seen = await standIn.deliver({
        ...{ who, does: 'typing', name, ...(sub ? { sub } : {}), focused, at },
        options: { [focused]: typed },
      });
      return (seen.body.choices as unknown as { value: string }[]).map(({ value }) => value);
    },
    /** The standing message as it reads now. */
    standing: () => standIn.seen.findLast(({ id }) => id === standIn.pinned.at(-1)),
    open: () => say(BEA, '/challenge open name:Spring counting:rosette rounds:2 goal:200 first:2026-12-01'),
  };
}

const textOf = (seen: Seen | undefined): string =>
  seen ? [embedOf(seen).title, embedOf(seen).description].join('\n') : '';

describe('a challenge in its channel', () => {
  test('anybody logs with a note by its button; the standings stand pinned and follow', async () => {
    const { standIn, open, say, press, submit, standing } = await guild();
    await open();
    await say(BEA, '/log 1');
    const asked = await say(BEA, '/standings');
    await until(() => standIn.pinned.length === 1);
    expect(textOf(asked)).toContain('Yours: 1');
    expect(textOf(standing())).not.toContain('Yours');
    const modal = await press(ADA, standing() as Seen, 'Log');
    expect(modal.kind).toBe('modal');
    const inputs = (modal.body.components as unknown as { components: { custom_id: string }[] }[]).map(
      ({ components }) => components[0]?.custom_id,
    );
    expect(inputs).toEqual(['pieces', 'minutes', 'day', 'note']);
    const done = await submit(ADA, modal, {
      pieces: '3',
      minutes: '95',
      day: '',
      note: 'goal:9 **blue** one',
    });
    expect(textOf(done)).toContain('3 rosettes kept, 95 min');
    expect(textOf(done)).toContain('goal:9 \\*\\*blue\\*\\* one');
    await until(() => textOf(standing()).includes('4 of 200'));
    expect(standIn.pinned).toHaveLength(1);
    expect(standIn.faults).toEqual([]);
  });

  test('what is said elsewhere changes what stands; nothing is pinned elsewhere', async () => {
    const { standIn, open, say, standing } = await guild();
    await open();
    await say(BEA, '/standings');
    await until(() => standIn.pinned.length === 1);
    await say(ADA, '/log 5', KITCHEN);
    await until(() => textOf(standing()).includes('5 of 200'));
    await say(ADA, '/standings', KITCHEN);
    await say(BEA, '/challenge edit goal:50', KITCHEN);
    await until(() => textOf(standing()).includes('5 of 50'));
    expect(standing()?.channel).toBe(CHANNEL);
    expect(standIn.pinned).toHaveLength(1);
    expect(standIn.faults).toEqual([]);
  });

  test('the button logs after a restart, and for as long as it stands: nothing is kept for it', async () => {
    const standIn = await openStandIn();
    const facts = memoryFacts();
    const first = await guild({ standIn, facts });
    await first.open();
    await first.say(BEA, '/standings');
    await until(() => standIn.pinned.length === 1);
    const board = first.standing() as Seen;
    await first.platform.stop();
    await facts.notes.prune('discord', '', new Date(at + 100_000_000));
    const { press, submit } = await guild({ standIn, facts });
    const modal = await press(ADA, board, 'Log');
    expect(textOf(await submit(ADA, modal, { pieces: '2' }))).toContain('2 rosettes kept');
    expect(standIn.faults).toEqual([]);
  });

  test('many logs at once change it a few times, and the last time to the whole', async () => {
    const { standIn, open, say, standing } = await guild();
    await open();
    await say(BEA, '/standings');
    await until(() => standIn.pinned.length === 1);
    const LOGS = 20;
    await Promise.all(Array.from({ length: LOGS }, () => say(ADA, '/log 1')));
    await until(() => textOf(standing()).includes(`${LOGS} of 200`));
    const edits = standIn.requests.filter(
      ({ method, path }) => method === 'PATCH' && path.startsWith(MESSAGES),
    );
    expect(edits.length).toBeLessThan(LOGS);
  });

  test('one that somebody has deleted comes back when it is asked for, not before', async () => {
    const { standIn, open, say } = await guild();
    await open();
    await say(BEA, '/standings');
    await until(() => standIn.pinned.length === 1);
    standIn.next(({ method, path }) => method === 'PATCH' && path.startsWith(MESSAGES), {
      status: 404,
      body: { code: 10008, message: 'Unknown Message' },
    });
    await say(ADA, '/log 1');
    await until(() =>
      standIn.requests.some(({ method, path }) => method === 'PATCH' && path.startsWith(MESSAGES)),
    );
    await say(ADA, '/log 1');
    expect(standIn.pinned).toHaveLength(1);
    await say(ADA, '/standings');
    await until(() => standIn.pinned.length === 2);
  });

  test('where nothing may be pinned or changed the answer comes all the same, and the operator is told', async () => {
    const { standIn, open, say, counts, logged } = await guild();
    const forbidden = { status: 403, body: { code: 50013, message: 'Missing Permissions' } };
    standIn.next(({ method, path }) => method === 'PUT' && path.includes('/pins/'), forbidden);
    await open();
    expect(textOf(await say(BEA, '/standings'))).toContain('Spring');
    await until(() => counts.get('sends_refused_total') === 1);
    standIn.next(({ method, path }) => method === 'PATCH' && path.startsWith(MESSAGES), forbidden);
    expect(textOf(await say(ADA, '/log 1'))).toContain('1 rosette kept');
    await until(() => counts.get('sends_refused_total') === 2);
    expect(logged.filter(({ level }) => level === 'warn')).toHaveLength(2);
    expect(counts.get('replies_lost_total')).toBeUndefined();
  });
});

describe('what is completed while she types', () => {
  async function busy() {
    const bot = await guild();
    await bot.open();
    await bot.say(BEA, '/challenge open name:Stars counting:star side:3 first:2026-12-01');
    await bot.say(BEA, '/log 2 challenge:Stars');
    await bot.say(BEA, '/plan keep name:Queen quilt:queen size:1in');
    await bot.say(BEA, '/month open name:Garden rosettes:7 rounds:2 parts:6');
    await bot.say(BEA, '/swap open name:Stash');
    await bot.say(BEA, '/swap offer 6 fat quarters florals, 20 5in squares');
    return bot;
  }

  test.each([
    ['yield', undefined, 'cloth', 'fat', ['fat-quarter', 'fat-eighth']],
    ['count', 'field', 'quilt', 'qu', ['queen']],
    ['challenge', 'show', 'challenge', 'st', ['Stars']],
    ['log', undefined, 'challenge', '', ['Stars', 'Spring']],
    ['undo', undefined, 'line', '', ['2: 2 stars on 4 Dec 2026, Stars']],
    ['plan', 'show', 'name', 'q', ['Queen']],
    ['kit', undefined, 'plan', '', ['Queen']],
    ['month', 'show', 'month', 'gar', ['Garden']],
    ['swap', 'withdraw', 'line', 'squares', ['2: 20 5in squares']],
    ['swap', 'edit', 'line', '', ['1: 6 fat quarters florals', '2: 20 5in squares']],
  ] as const)('/%s %s %s: ‘%s’ gives %s', async (name, sub, focused, typed, words) => {
    const { standIn, typing } = await busy();
    expect(await typing(name, sub, focused, typed)).toEqual(words);
    expect(standIn.faults).toEqual([]);
  });

  test('shapes and layouts are choices of the platform itself', async () => {
    const { standIn } = await running();
    const registered = JSON.stringify(standIn.commands);
    for (const value of ['half-hexagon-flats', 'apple-core', 'garden', 'rosette'])
      expect(registered).toContain(`"value":"${value}"`);
  });

  test('nobody else’s lines are suggested, and a guild’s names to no other guild', async () => {
    const { typing } = await busy();
    expect(await typing('swap', 'edit', 'line', '', ADA)).toEqual([]);
  });

  test('a completion that came too late is left alone: nobody waits for it', async () => {
    const { standIn, counts, typing, logged } = await guild();
    standIn.next(({ path }) => path.endsWith('/callback'), {
      status: 404,
      body: { code: 10062, message: 'Unknown interaction' },
    });
    void typing('yield', undefined, 'cloth', 'fa');
    await until(() => standIn.requests.some(({ path }) => path.endsWith('/callback')));
    expect(await typing('yield', undefined, 'cloth', 'fat')).toHaveLength(2);
    expect(counts.get('replies_lost_total')).toBeUndefined();
    expect(logged.filter(({ level }) => level === 'error')).toEqual([]);
  });
});
