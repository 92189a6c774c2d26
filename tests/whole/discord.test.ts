import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { ADA } from '../standin/discord/events.ts';
import { BOT, DiscordStandIn, GUILD, TOKEN } from '../standin/discord/standin.ts';
import { begin, newFolder, run } from './program.ts';

const open: DiscordStandIn[] = [];
afterAll(async () => {
  for (const standIn of open.splice(0)) await standIn.close();
});

/** A stand-in platform, and settings that name it. */
async function settled(more: object = {}) {
  const standIn = await DiscordStandIn.open();
  open.push(standIn);
  const folder = newFolder();
  const config = join(folder, 'config.json');
  const discord = { token: { env: 'BEE_TOKEN' }, api: standIn.api, ...more };
  writeFileSync(config, JSON.stringify({ data: folder, discord, health: { port: 0 } }));
  return { standIn, folder, args: ['start', '--config', config], config };
}

const linesOf = (text: string): Record<string, unknown>[] =>
  text
    .split('\n')
    .filter((line) => line.startsWith('{'))
    .map((line) => JSON.parse(line) as Record<string, unknown>);

describe.concurrent('the program with a Discord bot', () => {
  test('says when it is up, answers, and ends cleanly; the token is in no log', async () => {
    const { standIn, args } = await settled();
    const running = begin(args, { env: { BEE_TOKEN: TOKEN } });
    await running.says('"ready":"discord"');
    const seen = await standIn.deliver({
      ...{ who: ADA, does: 'slash', name: 'cut' },
      options: { shape: 'hexagon', size: '1in' },
    });
    expect(seen.files[0]?.name).toBe('hexagon-1-in-side.png');
    running.child.kill('SIGTERM');
    const ended = await running.ended;
    expect(ended).toMatchObject({ status: 0, err: '' });
    expect(ended.out + ended.err).not.toContain(TOKEN);
    expect(linesOf(ended.out)).toContainEqual(expect.objectContaining({ ready: 'discord' }));
    expect(standIn.faults).toEqual([]);
  });

  test('takes the token from a file, and registers in the test guild alone where one is set', async () => {
    const { standIn, folder, args } = await settled({ token: { file: 'token' }, testGuild: GUILD.id });
    writeFileSync(join(folder, 'token'), `${TOKEN}\n`, { mode: 0o600 });
    const running = begin(args);
    await running.says('"ready":"discord"');
    const puts = standIn.requests.filter(({ method }) => method === 'PUT');
    expect(puts.map(({ path }) => path)).toEqual([`/applications/${BOT.id}/guilds/${GUILD.id}/commands`]);
    running.child.kill('SIGTERM');
    expect((await running.ended).status).toBe(0);
  });

  test.each([
    [
      'a token that is not taken',
      { token: { env: 'OTHER_TOKEN' } },
      78,
      /^Discord does not take the token\./,
    ],
    [
      'an address where nobody is',
      { api: 'http://127.0.0.1:9/api' },
      75,
      /^Discord cannot be reached: .*Try again later\.$/,
    ],
  ])('%s is one sentence and a status for a service manager', async (_, more, status, sentence) => {
    const { standIn, args } = await settled(more);
    const ended = await run(args, { env: { BEE_TOKEN: TOKEN, OTHER_TOKEN: 'wrong' } });
    expect(ended.status).toBe(status);
    expect(ended.err.trim()).toMatch(sentence);
    expect(ended.err.trim().split('\n')).toHaveLength(1);
    expect(standIn.gateway.identified).toBeLessThanOrEqual(1);
  });

  test('commands that it may not register are one sentence too', async () => {
    const { standIn, args } = await settled({ testGuild: '999999999999999999' });
    standIn.next(({ path }) => path.includes('/commands'), {
      status: 403,
      body: { code: 50001, message: 'Missing Access' },
    });
    const ended = await run(args, { env: { BEE_TOKEN: TOKEN } });
    expect(ended.status).toBe(77);
    expect(ended.err).toMatch(/^Discord refused: Missing Access\. Is the bot in the guild [^\n]*\n$/);
  });

  test('a token that is refused while it runs ends it, in a sentence', async () => {
    const { standIn, args } = await settled();
    const running = begin(args, { env: { BEE_TOKEN: TOKEN } });
    await running.says('"ready":"discord"');
    standIn.gateway.close(4004);
    const ended = await running.ended;
    expect(ended.status).toBe(78);
    expect(ended.err).toMatch(/^Discord does not take the token\.[^\n]*\n$/);
  });

  test('prints the link of an invitation that asks for the least', async () => {
    const { config } = await settled();
    const ended = await run(['invite', '--config', config], { env: { BEE_TOKEN: TOKEN } });
    expect(ended.status).toBe(0);
    const link = new URL(ended.out.trim());
    expect(link.searchParams.get('client_id')).toBe(BOT.id);
    expect(link.searchParams.get('scope')).toBe('bot applications.commands');
    // View, send, in threads, embed, attach, read history, pin: the bits of the documentation's table.
    const least = [10n, 11n, 38n, 14n, 15n, 16n, 51n].reduce((all, bit) => all | (1n << bit), 0n);
    expect(BigInt(link.searchParams.get('permissions') ?? 0)).toBe(least);
  });
});
