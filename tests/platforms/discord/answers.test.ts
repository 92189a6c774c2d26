import { describe, expect, test } from 'vitest';
import { commands } from '../../../commands/index.ts';
import { draw } from '../../../src/pictures/draw.ts';
import { ADA } from '../../standin/discord/events.ts';
import { BOT, GUILD } from '../../standin/discord/standin.ts';
import { buttonsOf, embedOf, running } from './bot.ts';
import { fakeCommands } from './fake-commands.ts';

describe('commands', () => {
  test('are registered once, and not again where nothing differs', async () => {
    const { standIn } = await running();
    expect(standIn.commands).toHaveLength(Object.keys(commands).length);
    const puts = () => standIn.requests.filter(({ method }) => method === 'PUT').length;
    expect(puts()).toBe(1);
    await running({ standIn });
    expect(puts()).toBe(1);
    standIn.unregister('cut');
    await running({ standIn });
    expect(puts()).toBe(2);
    expect(standIn.faults).toEqual([]);
  });

  test('are in one scope: where the setting changes they go from the other', async () => {
    const { standIn, facts } = await running();
    const putsSince = (from: number) =>
      standIn.requests
        .slice(from)
        .flatMap(({ method, path, body }) => (method === 'PUT' ? [[path, (body as []).length]] : []));
    const all = Object.keys(commands).length;
    let from = standIn.requests.length;
    await running({ standIn, facts, testGuild: GUILD.id });
    expect(putsSince(from)).toEqual([
      [`/applications/${BOT.id}/guilds/${GUILD.id}/commands`, all],
      [`/applications/${BOT.id}/commands`, 0],
    ]);
    from = standIn.requests.length;
    await running({ standIn, facts, testGuild: GUILD.id });
    expect(putsSince(from)).toEqual([]);
    await running({ standIn, facts });
    expect(putsSince(from)).toEqual([
      [`/applications/${BOT.id}/commands`, all],
      [`/applications/${BOT.id}/guilds/${GUILD.id}/commands`, 0],
    ]);
    expect(standIn.faults).toEqual([]);
  });

  test('those of organisers alone are not shown to others, and none is offered outside of a guild', async () => {
    const { standIn } = await running({ commands: fakeCommands().commands });
    const shown = standIn.commands as {
      name: string;
      default_member_permissions?: number;
      contexts: number[];
    }[];
    // Manage Server, by the documentation's table.
    expect(shown.filter((one) => one.default_member_permissions === 1 << 5).map(({ name }) => name)).toEqual([
      'organise',
    ]);
    for (const { contexts } of shown) expect(contexts).toEqual([0]);
  });

  test('every option that is a choice, a number or a length is offered as one', async () => {
    const { standIn } = await running();
    const cut = standIn.commands.find((one) => (one as { name: string }).name === 'cut') as {
      options: { name: string; type: number; choices?: unknown[] }[];
    };
    expect(cut.options.find(({ name }) => name === 'shape')?.choices?.length).toBeGreaterThan(8);
    expect(cut.options.find(({ name }) => name === 'size')?.type).toBe(3);
    const guild = standIn.commands.find((one) => (one as { name: string }).name === 'guild') as {
      options: { name: string; type: number }[];
    };
    expect(guild.options.map(({ type }) => type)).toEqual(guild.options.map(() => 1));
  });
});

describe('pictures and files', () => {
  test.each([
    ['cut', { shape: 'hexagon', size: '1in' }, 'png', '\x89PNG'],
    ['template', { shape: 'hexagon', size: '1in' }, 'pdf', '%PDF-'],
  ])(
    'of /%s are attached with words that would do without; a picture is shown',
    async (name, options, kind, begins) => {
      const { standIn } = await running({ draw });
      const seen = await standIn.deliver({ who: ADA, does: 'slash', name, options });
      const file = seen.files.find((one) => one.name.endsWith(`.${kind}`));
      expect(
        Buffer.from(file?.bytes ?? [])
          .toString('latin1')
          .slice(0, begins.length),
      ).toBe(begins);
      const attachments = seen.body.attachments as { id: string; description: string }[];
      expect(attachments).toHaveLength(seen.files.length);
      for (const { description } of attachments) expect(description.length).toBeGreaterThan(20);
      const picture = seen.files.find((one) => one.name.endsWith('.png'));
      expect(embedOf(seen).image?.url).toBe(picture && `attachment://${picture.name}`);
      expect(standIn.faults).toEqual([]);
    },
  );
});

describe('replies', () => {
  test('a mistake is for the asker alone, an answer for all', async () => {
    const { standIn } = await running();
    const good = await standIn.deliver({
      who: ADA,
      does: 'slash',
      name: 'cut',
      options: { shape: 'hexagon', size: '1in' },
    });
    expect(good.alone).toBe(false);
    const bad = await standIn.deliver({
      who: ADA,
      does: 'slash',
      name: 'cut',
      options: { shape: 'hexagon', size: '-1in' },
    });
    expect(bad.alone).toBe(true);
    expect(embedOf(bad).description).toContain('below zero');
    expect(standIn.faults).toEqual([]);
  });

  test('a member’s own settings are hers alone', async () => {
    const { standIn } = await running();
    const shown = await standIn.deliver({
      who: ADA,
      does: 'slash',
      name: 'me',
      sub: 'set',
      options: { unit: 'cm' },
    });
    expect(shown.alone).toBe(true);
    const cut = await standIn.deliver({
      who: ADA,
      does: 'slash',
      name: 'cut',
      options: { shape: 'hexagon', size: '2.5' },
    });
    expect(embedOf(cut).title).toContain('25 mm');
  });

  test('names and words of members are shown as they are, and mention nobody', async () => {
    const { standIn } = await running();
    const odd = { id: '600000000000000009', name: '@everyone **Éva** <@1> `x` ~~o~~ [a](http://b) 🧵' };
    const seen = await standIn.deliver({ who: odd, does: 'slash', name: 'me', sub: 'show' });
    expect(embedOf(seen).title).toContain('\\*\\*Éva\\*\\*');
    expect(seen.body.allowed_mentions).toMatchObject({ parse: [] });
    expect(standIn.faults).toEqual([]);
  });

  test('a size that may be meant two ways is asked back with buttons that answer', async () => {
    const { standIn } = await running();
    const asked = await standIn.deliver({
      who: ADA,
      does: 'say',
      content: `<@${BOT.id}> /cut hexagon 4in`,
      bot: BOT.id,
    });
    const [side] = buttonsOf(asked);
    const pressed = await standIn.deliver({ who: ADA, does: 'press', customId: side?.custom_id ?? '' });
    expect(embedOf(pressed).title).toBe('Hexagon, 4 in side');
  });

  test('a plain question to the bot is answered; words to others, of other bots and of itself are not', async () => {
    const { standIn, counts } = await running();
    const seen = await standIn.deliver({
      who: ADA,
      does: 'say',
      content: `<@!${BOT.id}> how many 1 inch hexagons from a fat quarter?`,
      bot: BOT.id,
    });
    expect(embedOf(seen).description).toContain('At least 77');
    standIn.tell({ who: ADA, does: 'say', content: 'how many hexagons?', bot: BOT.id });
    standIn.tell({ who: { ...ADA, bot: true }, does: 'say', content: `<@${BOT.id}> /help`, bot: BOT.id });
    standIn.tell({
      who: { id: BOT.id, name: 'bee', bot: true },
      does: 'say',
      content: `<@${BOT.id}> /help`,
      bot: BOT.id,
    });
    await standIn.deliver({ who: ADA, does: 'slash', name: 'help' });
    expect(counts.get('asks_total')).toBe(2);
    expect(standIn.faults).toEqual([]);
  });
});
