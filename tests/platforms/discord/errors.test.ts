import { describe, expect, test } from 'vitest';
import type { CommandList } from '../../../src/chat/command.ts';
import { form } from '../../../src/chat/command.ts';
import type { Facts, NotesKept } from '../../../src/chat/facts.ts';
import { FactsTrouble } from '../../../src/chat/facts.ts';
import { words } from '../../../src/chat/option-kinds.ts';
import { reply } from '../../../src/chat/reply.ts';
import { ADA, BEA } from '../../standin/discord/events.ts';
import { CHANNEL, OWN } from '../../standin/discord/gateway.ts';
import { BOT, GUILD, type Request, type Seen } from '../../standin/discord/standin.ts';
import { memoryFacts } from '../../standin/memory-facts.ts';
import { buttonsOf, embedOf, standIn as openStandIn, running, until } from './bot.ts';
import { fakeCommands } from './fake-commands.ts';

const callback = ({ path }: Request) => path.endsWith('/callback');
const toChannel = ({ method, path }: Request) =>
  method === 'POST' && path === `/channels/${CHANNEL}/messages`;
const slow = { who: ADA, does: 'slash', name: 'slow', options: { ms: 10 } } as const;
const cut = { who: ADA, does: 'slash', name: 'cut', options: { shape: 'hexagon', size: '1in' } } as const;
const said = (words: string) =>
  ({ who: BEA, does: 'say', content: `<@${BOT.id}> ${words}`, bot: BOT.id }) as const;

const textOf = (seen: Seen): string => [embedOf(seen).title, embedOf(seen).description].join('\n');
const referenceIn = (seen: Seen) => /reference (\w{5}-\w{3})/.exec(textOf(seen))?.[1];

/** One command that does this. */
const doing = (run: () => never): CommandList => ({
  fail: async () => ({
    name: 'fail',
    summary: 'Fails',
    forms: [form({ name: '', summary: 'Fails', options: {}, examples: ['/fail'], run })],
  }),
});

/** What is for her alone, after the promise is due. */
const slowlyHers: CommandList = {
  own: async () => ({
    name: 'own',
    summary: 'Hers',
    forms: [
      form({
        ...{ name: '', summary: 'Hers', examples: ['/own'], audience: 'asker' },
        options: { note: words('A note', 20, 'x') },
        run: async () => {
          await new Promise((done) => setTimeout(done, 1100));
          return reply({ title: 'Hers' });
        },
      }),
    ],
  }),
};

describe('a fault of ours', () => {
  test('in a command is said to the asker alone, with the reference that the log has', async () => {
    const { standIn, logged } = await running({
      commands: doing(() => {
        throw new Error('out of order');
      }),
    });
    const seen = await standIn.deliver({ who: ADA, does: 'slash', name: 'fail' });
    expect(seen.alone).toBe(true);
    expect(textOf(seen)).toContain('Nothing was changed');
    expect(textOf(seen)).not.toContain('out of order');
    expect(referenceIn(seen)).toBeDefined();
    expect(logged).toContainEqual(
      expect.objectContaining({ level: 'fault', message: 'Error: out of order' }),
    );
    expect(standIn.faults).toEqual([]);
  });

  test('before a command is even reached is answered too', async () => {
    let loads = 0;
    const [, load] = Object.entries(fakeCommands().commands)[0] ?? [];
    const { standIn, logged } = await running({
      // Loaded for the registration, and not again.
      commands: { slow: async () => (loads++ > 0 ? Promise.reject(new Error('gone')) : load!()) },
    });
    const seen = await standIn.deliver(slow);
    expect(seen.alone).toBe(true);
    expect(textOf(seen)).toContain('It may be done all the same');
    const [{ details } = { details: {} }] = logged.filter(({ level }) => level === 'error');
    expect(details).toMatchObject({ reference: referenceIn(seen), why: 'gone' });
    expect(standIn.faults).toEqual([]);
  });

  test('facts that are out of reach are said, and nothing is done', async () => {
    const facts = memoryFacts();
    const both = () => Promise.reject(new FactsTrouble({ code: 'store-busy' }));
    const { standIn } = await running({ facts: { ...facts, defaults: { ...facts.defaults, both } } });
    const seen = await standIn.deliver(cut);
    expect(textOf(seen)).toContain('Ask again in a moment');
    expect(seen.alone).toBe(true);
  });

  test('a picture that cannot be drawn does not take the answer with it', async () => {
    const { standIn, logged } = await running({ draw: () => Promise.reject(new Error('no ink')) });
    for (const deliver of [cut, said('/cut hexagon 1in')]) {
      const seen = await standIn.deliver(deliver);
      expect(textOf(seen)).toContain('Cut 2 1/4 in');
      expect(seen.files).toEqual([]);
      const reference = referenceIn(seen);
      expect(logged.some(({ details }) => (details as { reference?: string }).reference === reference)).toBe(
        true,
      );
    }
    expect(standIn.faults).toEqual([]);
  });

  test('a button whose ask cannot be kept does not either', async () => {
    const facts = memoryFacts();
    const keep: NotesKept['keep'] = () => Promise.reject(new FactsTrouble({ code: 'store-full' }));
    const notes = {
      ...{ find: (...of: [string, string]) => facts.notes.find(...of), keep },
      ...{ remove: async () => {}, before: async () => [], prune: async () => 0 },
    };
    const { commands } = fakeCommands();
    const { standIn } = await running({ commands, facts: { ...facts, notes } as Facts });
    const seen = await standIn.deliver({ who: ADA, does: 'slash', name: 'long', options: { rows: 60 } });
    expect(embedOf(seen).fields?.length).toBeGreaterThan(5);
    expect(textOf(seen)).toContain('line 0');
    expect(buttonsOf(seen).map(({ label }) => label)).not.toContain('choice 0');
    expect(standIn.faults).toEqual([]);
  });
});

describe('a fault on the way', () => {
  test('a connection that breaks before we are heard is taken up again', async () => {
    const { commands } = fakeCommands();
    const { standIn } = await running({ commands });
    standIn.next(callback, { status: 0, broken: true });
    expect(textOf(await standIn.deliver(slow))).toContain('Done');
    expect(standIn.faults).toEqual([]);
  });

  test('one that breaks after we were heard does not answer twice', async () => {
    const { commands, logged } = fakeCommands();
    const { standIn } = await running({ commands });
    standIn.next(callback, { status: 0, broken: true, done: true });
    const seen = await standIn.deliver({ who: ADA, does: 'slash', name: 'enter', options: { pieces: 2 } });
    await until(() => standIn.requests.some(({ method }) => method === 'PATCH'));
    expect(logged).toHaveLength(1);
    expect(new Set(standIn.seen.map(({ id }) => id))).toEqual(new Set([seen.id]));
    expect(standIn.faults).toEqual([]);
  });

  test('a message in answer to words is sent once, however often its sending fails', async () => {
    const { standIn } = await running();
    standIn.next(toChannel, { status: 502, body: {}, done: true });
    standIn.next(toChannel, { status: 0, broken: true, done: true });
    await standIn.deliver(said('/help'));
    await until(() => standIn.requests.filter(toChannel).length === 3);
    expect(standIn.seen).toHaveLength(1);
    expect(standIn.faults).toEqual([]);
  });

  test('a platform that fails for good loses one reply, counted, and the bot goes on', async () => {
    const { commands } = fakeCommands();
    const { standIn, counts, logged } = await running({ commands });
    standIn.next(callback, { status: 500, body: {} }, 20);
    standIn.tell(slow);
    await until(() => counts.get('replies_lost_total') === 1);
    expect(counts.get('server_errors_total')).toBeGreaterThan(5);
    // Neither what was said nor the event's token is in the log.
    expect(JSON.stringify(logged)).not.toMatch(/Done|token-/);
  }, 20_000);
});

describe('what is for her alone', () => {
  test('goes to her own messages when it was asked in a channel', async () => {
    const { standIn } = await running();
    const seen = await standIn.deliver(said('/me'));
    expect(seen.channel).not.toBe(CHANNEL);
    expect(embedOf(seen).title).toBe('Set for Bea');
    expect(standIn.faults).toEqual([]);
  });

  test('a button in her own messages is asked of the guild that it is about', async () => {
    const { standIn, facts } = await running();
    const asked = await standIn.deliver(said('/me forget'));
    expect(asked.channel).toBe(OWN);
    expect(embedOf(asked).title).toBe('Nothing to forget');
    await standIn.deliver(said('/me set unit:cm'));
    const again = await standIn.deliver(said('/me forget'));
    const { custom_id } = buttonsOf(again).find(({ label }) => label.startsWith('No')) ?? { custom_id: '' };
    expect(custom_id).toContain(GUILD.id);
    const pressed = await standIn.deliver({ who: BEA, does: 'press', customId: custom_id, apart: true });
    expect(embedOf(pressed).title).toBe('Kept');
    expect(await facts.defaults.read(GUILD.id, BEA.id)).toEqual({ unit: 'cm' });
    expect(standIn.faults).toEqual([]);
  });

  test('where she takes none, the channel is told how to ask, and not what', async () => {
    const { standIn } = await running();
    standIn.next(({ method, path }) => method === 'POST' && path.startsWith('/channels/5'), {
      status: 403,
      body: { code: 50007, message: 'Cannot send messages to this user' },
    });
    const seen = await standIn.deliver(said('/me export'));
    expect(seen.channel).toBe(CHANNEL);
    expect(seen.body.content).toContain('slash command');
    expect(seen.files).toEqual([]);
    expect(standIn.faults).toEqual([]);
  });

  test.each([
    ['asked with the slash command', { who: ADA, does: 'slash', name: 'own' }],
    ['behind a button', { who: ADA, does: 'press', customId: `ask:${ADA.id}::/own` }],
    ['behind a form', { who: ADA, does: 'submit', customId: 'form:note:/own', values: { note: 'x' } }],
  ] as const)('%s, a promise for her alone is hers alone too', async (_, event) => {
    const { standIn } = await running({ commands: slowlyHers });
    expect(await standIn.deliver(event)).toMatchObject({ kind: 'edit', alone: true });
    expect(standIn.faults).toEqual([]);
  });
});

describe('shards', () => {
  test.each([
    ['auto', 3, 3],
    [2, 3, 2],
  ] as const)('%s, where %i are recommended, makes %i', async (shards, recommended, made) => {
    const { commands } = fakeCommands();
    const place = await openStandIn();
    place.shards = recommended;
    const { standIn } = await running({ standIn: place, commands, shards });
    const ids = Array.from({ length: made }, (_, i) => `${i} of ${made}`);
    expect([...standIn.gateway.shards].sort()).toEqual(ids);
    // The stand-in tells every connection of the event; it is answered once.
    await standIn.deliver(slow);
    expect(standIn.seen).toHaveLength(1);
  });
});
