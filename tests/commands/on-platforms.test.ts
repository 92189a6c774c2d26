import { describe, expect, test } from 'vitest';
import { commands } from '../../commands/index.ts';
import { NOBODY } from '../../src/chat/command.ts';
import type { Reply } from '../../src/chat/reply.ts';
import { type GuildRoom, guildRoom } from '../standin/guild-room.ts';

/** What a platform with buttons, forms and standing messages does with a reply. */

const OPEN =
  '/challenge open name:Spring counting:rosette rounds:2 goal:200 first:2026-12-01 last:2026-12-31';

async function opened(...more: string[]): Promise<GuildRoom> {
  const guild = await guildRoom();
  for (const words of [OPEN, ...more]) expect((await guild.ask(words)).error, words).toBeNull();
  return guild;
}

const choiceOf = ({ choices }: Reply, label: string) => choices.find((one) => one.label === label);

describe('the choice to log', () => {
  test.each(['/challenge show', '/standings', '/challenge join'])('is under %s', async (words) => {
    const guild = await opened();
    const log = choiceOf(await guild.ask(words), 'Log');
    expect(log?.open).toBe(true);
    const form = (await commands.log?.())?.forms[0];
    for (const name of log?.fillIn ?? []) expect(Object.keys(form?.options ?? {})).toContain(name);
    expect(log?.fillIn).toContain('note');
  });

  test('logs one where nothing can be filled in', async () => {
    const guild = await opened();
    const { ask } = choiceOf(await guild.ask('/standings'), 'Log')!;
    expect((await guild.ask(ask, { as: 'Bea' })).figures.total?.value).toBe(1);
  });

  test('logs what was filled in, word for word', async () => {
    const guild = await opened();
    const { ask } = choiceOf(await guild.ask('/standings'), 'Log')!;
    const filled = { pieces: '3', minutes: '95', day: 'yesterday', note: 'challenge:9 pieces: 5, blue' };
    const reply = await guild.room.answer({
      who: { id: 'bea', name: 'Bea', organiser: false },
      ...{ guild: 'guild', place: 'home', event: null, now: new Date('2026-12-08T12:00:00Z') },
      words: { ask, filled },
    });
    expect(reply.error).toBeNull();
    const [line] = await guild.facts.challenges.lastLogs('guild', 'bea', 1);
    expect(line).toMatchObject({ pieces: 3, minutes: 95, day: '2026-12-07', note: filled.note });
  });

  test('is not offered before, after, or when it is closed', async () => {
    const guild = await opened();
    for (const now of ['2026-11-30T12:00:00Z', '2027-01-01T12:00:00Z'])
      expect(choiceOf(await guild.ask('/standings', { now }), 'Log')).toBeUndefined();
    await guild.ask('/challenge close');
    expect(choiceOf(await guild.ask('/standings'), 'Log')).toBeUndefined();
  });
});

describe('the standing message', () => {
  const CHANGES = ['/log 3', '/fix pieces:2', '/undo', '/challenge edit goal:100', '/challenge close'];

  test('is renewed by whatever changes a challenge, from wherever it is said', async () => {
    const guild = await guildRoom();
    for (const words of [OPEN, ...CHANGES]) {
      const reply = await guild.ask(words, words === OPEN ? {} : { place: 'kitchen' });
      expect(reply.error, words).toBeNull();
      expect(reply.renews, words).toEqual({ ask: '/standings challenge:1', place: 'home' });
      expect(reply.standing, words).toBeUndefined();
    }
  });

  test('says nothing of one member alone', async () => {
    const guild = await opened('/log 3');
    const hers = await guild.ask('/standings');
    const { ask = '', place = '' } = hers.renews ?? {};
    const [stands] = [
      await guild.room.answer({
        ...{ who: NOBODY, guild: 'guild', place, event: null, words: ask },
        now: new Date('2026-12-08T12:00:00Z'),
      }),
    ];
    expect(stands.standing).toBe(hers.standing);
    expect(stands.standing).toBe('challenge-1');
    expect(hers.lines).toContain('Yours: 3.');
    expect(stands.lines.join(' ')).not.toContain('Yours');
    expect(stands.choices.every(({ open }) => open)).toBe(true);
  });

  test('stands in its own place alone', async () => {
    const guild = await opened();
    expect((await guild.ask('/standings', { place: 'kitchen' })).standing).toBeUndefined();
  });
});

describe('what is suggested while she types', () => {
  async function suggested(
    guild: GuildRoom,
    command: string,
    form: string,
    option: string,
    member = 'ada',
  ): Promise<readonly string[]> {
    const declared = (await commands[command]?.())?.forms.find((one) => one.name === form)?.options[option];
    const words = await declared?.suggest?.({ guild: 'guild', place: 'home', member, facts: guild.facts });
    // Each is read back whole.
    for (const one of words ?? [])
      expect(declared?.take(one, { unit: 'in', today: '2026-12-08' })).toMatchObject({
        ok: true,
        value: { rest: '' },
      });
    return words ?? [];
  }

  async function busy(): Promise<GuildRoom> {
    const guild = await opened(
      '/log 3 blue one',
      '/challenge close',
      '/challenge open name:Stars counting:star side:3',
      '/log 2 challenge:Stars day:2026-12-08',
      '/month open name:Garden rosettes:7 rounds:2 parts:6',
      '/plan keep name:Queen quilt:queen size:1in',
      '/swap open name:Stash',
      '/swap offer 6 fat quarters florals, 20 5in squares',
    );
    await guild.ask('/swap want 4 fat quarters', { as: 'Bea' });
    return guild;
  }

  test.each([
    ['challenge', 'show', 'challenge', ['Stars', 'Spring']],
    ['log', '', 'challenge', ['Stars', 'Spring']],
    ['standings', '', 'challenge', ['Stars', 'Spring']],
    ['undo', '', 'line', ['2: 2 stars on 8 Dec 2026, Stars']],
    ['fix', '', 'line', ['2: 2 stars on 8 Dec 2026, Stars']],
    ['month', 'show', 'month', ['Garden']],
    ['plan', 'show', 'name', ['Queen']],
    ['plan', 'change', 'name', ['Queen']],
    ['kit', '', 'plan', ['Queen']],
    ['swap', 'offer', 'swap', ['Stash']],
    ['swap', 'edit', 'line', ['1: 6 fat quarters florals', '2: 20 5in squares']],
    ['swap', 'withdraw', 'line', ['1: 6 fat quarters florals', '2: 20 5in squares']],
    ['swap', 'sent', 'to', ['Bea']],
    ['swap', 'no-show', 'who', ['Bea']],
  ])('/%s %s %s: %s', async (command, form, option, words) => {
    expect(await suggested(await busy(), command, form, option)).toEqual(words);
  });

  test('a line that was suggested is the one that is meant', async () => {
    const guild = await busy();
    const gone = await guild.room.answer({
      who: { id: 'ada', name: 'Ada', organiser: false },
      ...{ guild: 'guild', place: 'home', event: null, now: new Date('2026-12-08T12:00:00Z') },
      words: { command: 'swap', form: 'withdraw', options: { line: '2: 20 5in squares' } },
    });
    expect(gone.lines[0]).toBe('1 line is taken out: 20 5in squares.');
  });
});
