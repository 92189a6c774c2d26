import { readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { CannotStart } from '../../../src/platforms/platform.ts';
import { BOT } from '../../standin/matrix/standin.ts';
import { memoryFacts } from '../../standin/memory-facts.ts';
import { ADA, BEA, bodyOf, folderForBot, running, said, standIn, until, Voice } from './bot.ts';
import type { BotNeeds } from './started.ts';

/** Why it does not start. */
async function refused(needs: BotNeeds): Promise<CannotStart['ended']> {
  const started = await running(needs).then(
    () => 'it started',
    (error: CannotStart) => error,
  );
  if (typeof started === 'string') throw new Error(started);
  if (!started.ended) throw started;
  return started.ended;
}

const answers = async (place: Awaited<ReturnType<typeof standIn>>) => {
  const room = place.makeRoom({ members: [ADA, BEA] });
  expect(bodyOf(await new Voice(place, room, ADA).ask('!help'))).toMatch(/What I can work out/);
};

test('with the password it makes a device of its own', async () => {
  const bot = await running();
  await answers(bot.standIn);
  expect(bot.standIn.asked('login').map(({ body }) => body)).toEqual([
    expect.objectContaining({ type: 'm.login.password', identifier: { type: 'm.id.user', user: BOT } }),
  ]);
});

test('with a token it is the device of that token', async () => {
  const place = await standIn();
  const { token, device } = place.giveToken();
  const folder = folderForBot();
  await running({ standIn: place, folder, password: undefined, accessToken: token });
  await answers(place);
  expect(place.asked('login')).toEqual([]);
  const session = JSON.parse(readFileSync(join(folder, 'matrix', 'session.json'), 'utf8'));
  expect(session).toMatchObject({ user: BOT, deviceId: device, accessToken: token });
});

test('what it keeps is for its owner alone, and the keys are not to be read in it', async () => {
  const bot = await running();
  const place = bot.standIn.makeRoom({ members: [ADA, BEA], encrypted: true });
  const ada = new Voice(bot.standIn, place, ADA);
  ada.say('!help cut');
  await until(() => ada.sent().length > 0, 'an answer');
  const folder = join(bot.folder, 'matrix');
  expect(statSync(folder).mode & 0o777).toBe(0o700);
  for (const file of ['session.json', 'keys.sqlite', 'keys.sqlite-wal'])
    expect(statSync(join(folder, file)).mode & 0o777, file).toBe(0o600);
  const bytes = ['keys.sqlite', 'keys.sqlite-wal'].map((file) =>
    readFileSync(join(folder, file)).toString('latin1'),
  );
  for (const word of ['ed25519', 'curve25519', 'megolm', place, BOT])
    expect(bytes.join('')).not.toContain(word);
});

test('neither token nor password nor key is ever in the log, at whatever level', async () => {
  const kept = { standIn: await standIn(), facts: memoryFacts(), folder: folderForBot() };
  const { token } = kept.standIn.giveToken();
  const bot = await running({ ...kept, accessToken: token, recoveryKey: undefined });
  await answers(kept.standIn);
  // The ways on which a token may slip into words: refusals, failures, a new login.
  kept.standIn.next('sendMessage', { status: 403, body: { errcode: 'M_FORBIDDEN', error: token } });
  kept.standIn.next('sendMessage', 'no answer');
  await answers(kept.standIn).catch(() => {});
  for (const one of kept.standIn.devices.values()) one.standing = 'soft-logout';
  await until(() => kept.standIn.asked('login').length === 2, 'a new login');
  await answers(kept.standIn);
  console.error('the library says', { Authorization: `Bearer ${token}` });
  const all = JSON.stringify(bot.logged);
  expect(bot.logged.length).toBeGreaterThan(50);
  for (const secret of [...kept.standIn.devices.keys(), 'a password of the stand-in', 'a key of the test'])
    expect(all).not.toContain(secret);
});

test('what the library says on the console goes to the log at debug', async () => {
  const bot = await running();
  for (const say of ['trace', 'debug', 'log', 'info', 'warn', 'error'] as const)
    console[say]('%s by %s', 'said', say);
  const words = bot.logged.filter(({ level }) => level === 'debug').map(({ details }) => details.words);
  for (const say of ['trace', 'debug', 'log', 'info', 'warn', 'error'])
    expect(words).toContain(`said by ${say}`);
  await bot.stop();
  const before = bot.logged.length;
  const was = process.stdout.write;
  const written: string[] = [];
  process.stdout.write = ((text: string) => written.push(String(text)) > 0) as never;
  console.log('said afterwards');
  process.stdout.write = was;
  expect(bot.logged).toHaveLength(before);
});

test.each<[what: string, needs: Partial<BotNeeds>, sentence: RegExp, status: number]>([
  [
    'a wrong password',
    { password: 'wrong' },
    /does not take the password of @bee:bees\.test \(M_FORBIDDEN\)/,
    78,
  ],
  [
    'a token that is not known',
    { password: undefined, accessToken: 'unknown' },
    /"matrix\.accessToken" is not taken by the homeserver \(M_UNKNOWN_TOKEN\)/,
    78,
  ],
  [
    'a token of somebody else',
    { user: '@other:bees.test', password: undefined, accessToken: 'given' },
    /belongs to @bee:bees\.test, not to @other:bees\.test/,
    78,
  ],
  [
    'a recovery key that is none',
    { recoveryKey: 'twelve groups' },
    /"matrix\.recoveryKey" is no recovery key.*npm run -s recovery-key/,
    78,
  ],
  [
    'a homeserver that is not there',
    { homeserver: 'http://127.0.0.1:9' },
    /http:\/\/127\.0\.0\.1:9 cannot be reached/,
    75,
  ],
])('it does not start with %s, and says what to look at', async (_what, needs, sentence, status) => {
  const place = await standIn();
  const given = needs.accessToken === 'given' ? { accessToken: place.giveToken().token } : {};
  const ended = await refused({ standIn: place, ...needs, ...given });
  expect(ended.sentence).toMatch(sentence);
  expect(ended.status).toBe(status);
});

test('busy at the door: it waits as it is told, says so once, counts it, and comes in', async () => {
  const place = await standIn();
  place.next(
    'login',
    { status: 429, body: { errcode: 'M_LIMIT_EXCEEDED', error: 'x', retry_after_ms: 300 } },
    3,
  );
  const bot = await running({ standIn: place });
  await answers(place);
  expect(said(bot)).toEqual(['the homeserver makes us wait before it lets us in']);
  expect(bot.counts.get('rate_limited_total')).toBe(3);
});

test('busy for too long, or failing: another time', async () => {
  const place = await standIn();
  place.next(
    'login',
    { status: 429, body: { errcode: 'M_LIMIT_EXCEEDED', error: 'x', retry_after_ms: 1 } },
    5,
  );
  expect(await refused({ standIn: place })).toMatchObject({ status: 75 });
  place.next('login', { status: 502, body: {} });
  expect(await refused({ standIn: place })).toMatchObject({ status: 75 });
});

test('something that is no homeserver', async () => {
  const server = createServer((_request, response) => response.end('<html>hello</html>'));
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const homeserver = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  const ended = await refused({ homeserver });
  expect(ended.status).toBe(78);
  expect(ended.sentence).toMatch(/no Matrix homeserver/);
  await new Promise((done) => server.close(done));
});

test('what answers in the homeserver’s place for a while does not cost the bot its device', async () => {
  const kept = { standIn: await standIn(), facts: memoryFacts(), folder: folderForBot() };
  await (await running(kept)).stop();
  kept.standIn.next('getTokenOwner', { status: 200, body: { please: 'log in to this network' } });
  expect(await refused(kept)).toMatchObject({ status: 78 });
  kept.standIn.next('getTokenOwner', { status: 404, body: {} });
  expect(await refused(kept)).toMatchObject({ status: 75 });
  kept.standIn.next('getTokenOwner', { status: 403, body: { errcode: 'M_FORBIDDEN', error: 'no' } });
  expect(await refused(kept)).toMatchObject({ status: 75 });
  await running(kept);
  await answers(kept.standIn);
  expect(kept.standIn.asked('login')).toHaveLength(1);
});

test('the same homeserver at another address is the same device there', async () => {
  const kept = { standIn: await standIn(), facts: memoryFacts(), folder: folderForBot() };
  await (await running(kept)).stop();
  await running({ ...kept, homeserver: `${kept.standIn.address.replace('127.0.0.1', 'localhost')}/` });
  await answers(kept.standIn);
  expect(kept.standIn.asked('login')).toHaveLength(1);
});

test('an account that the homeserver calls by another name', async () => {
  const place = await standIn();
  place.next('login', {
    status: 200,
    body: { user_id: '@bee:bees.test', device_id: 'D', access_token: 'T' },
  });
  const ended = await refused({ standIn: place, user: '@Bee:bees.test' });
  expect(ended.sentence).toMatch(/calls the account @bee:bees\.test\. Write that in "matrix\.user"/);
});

test.each<[what: string, spoil: (file: string) => void, told: number]>([
  ['is gone', (file: string) => rmSync(file), 1],
  ['cannot be read', (file: string) => writeFileSync(file, '{"half'), 1],
  [
    'is of another account',
    (file: string) =>
      writeFileSync(
        file,
        JSON.stringify({ ...JSON.parse(readFileSync(file, 'utf8')), user: '@other:bees.test' }),
      ),
    0,
  ],
])(
  'where the kept session %s it begins a new device, and tells encrypted rooms',
  async (_what, spoil, told) => {
    const kept = { standIn: await standIn(), facts: memoryFacts(), folder: folderForBot() };
    const room = kept.standIn.makeRoom({ members: [ADA, BEA], encrypted: true });
    const bot = await running(kept);
    await answers(kept.standIn);
    await bot.stop();
    spoil(join(kept.folder, 'matrix', 'session.json'));
    await (await running(kept)).stop();
    expect(kept.standIn.asked('login')).toHaveLength(2);
    await running(kept);
    expect(kept.standIn.asked('login')).toHaveLength(2);
    expect(new Voice(kept.standIn, room, ADA).sent().map(({ type }) => type)).toEqual(
      Array.from({ length: told }, () => 'm.room.encrypted'),
    );
    await answers(kept.standIn);
  },
);

test('a bot that is started for the first time has lost nothing, and tells nobody', async () => {
  const place = await standIn();
  const room = place.makeRoom({ members: [ADA, BEA], encrypted: true });
  await running({ standIn: place });
  await answers(place);
  expect(new Voice(place, room, ADA).sent()).toEqual([]);
});

/** A bot at a token, stopped; its homeserver then wants a new login, or knows the token no more. */
async function tokenGone(standing: 'soft-logout' | 'gone') {
  const kept = {
    standIn: await standIn(),
    facts: memoryFacts(),
    folder: folderForBot(),
    password: undefined,
  };
  const { token, device } = kept.standIn.giveToken();
  await (await running({ ...kept, accessToken: token })).stop();
  for (const one of kept.standIn.devices.values()) one.standing = standing;
  const session = () =>
    JSON.parse(readFileSync(join(kept.folder, 'matrix', 'session.json'), 'utf8')) as { deviceId: string };
  return { kept, token, device, session };
}

test.each(['soft-logout', 'gone'] as const)(
  'with tokens alone, the old one %s: a new one in the settings is taken, for the same device with its keys',
  async (standing) => {
    const { kept, token, device, session } = await tokenGone(standing);
    expect(await refused({ ...kept, accessToken: token })).toMatchObject({
      sentence: expect.stringContaining('"matrix.accessToken"'),
      status: 78,
    });
    const keys = kept.standIn.asked('uploadKeys').length;
    const again = kept.standIn.giveToken(device);
    await (await running({ ...kept, accessToken: again.token })).stop();
    expect(session()).toMatchObject({ deviceId: device, accessToken: again.token });
    // The device's keys are there already, so it shows no others.
    expect(
      kept.standIn
        .asked('uploadKeys')
        .slice(keys)
        .filter(({ body }) => (body as { device_keys?: object }).device_keys),
    ).toEqual([]);
    const other = kept.standIn.giveToken();
    for (const [one, at] of kept.standIn.devices) if (one !== other.token) at.standing = standing;
    await running({ ...kept, accessToken: other.token });
    expect(session()).toMatchObject({ deviceId: other.device, accessToken: other.token });
    await answers(kept.standIn);
  },
);

test('with a token alone and its keys lost, it says what a new device needs', async () => {
  const kept = {
    standIn: await standIn(),
    facts: memoryFacts(),
    folder: folderForBot(),
    password: undefined,
  };
  const { token } = kept.standIn.giveToken();
  await (await running({ ...kept, accessToken: token })).stop();
  for (const tail of ['', '-wal', '-shm'])
    rmSync(join(kept.folder, 'matrix', `keys.sqlite${tail}`), { force: true });
  const ended = await refused({ ...kept, accessToken: token });
  expect(ended.sentence).toMatch(/keys\.sqlite are lost, and a new device needs a "password", or a new/);
  expect(ended.status).toBe(78);
});

test('where the homeserver has put the device away meanwhile it begins a new one; softly, the same', async () => {
  const kept = { standIn: await standIn(), facts: memoryFacts(), folder: folderForBot() };
  await (await running(kept)).stop();
  kept.standIn.devices.clear();
  const second = await running(kept);
  const device = [...kept.standIn.devices.values()][0]?.id;
  await second.stop();
  for (const one of kept.standIn.devices.values()) one.standing = 'soft-logout';
  await running(kept);
  expect(kept.standIn.asked('login').map(({ body }) => (body as { device_id?: string }).device_id)).toEqual([
    undefined,
    undefined,
    device,
  ]);
  await answers(kept.standIn);
});
