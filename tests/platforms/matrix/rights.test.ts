import { expect, test } from 'vitest';
import { BOT, MatrixStandIn } from '../../standin/matrix/standin.ts';
import { ADA, BEA, bodyOf, userOf, Voice } from './bot.ts';
import { startedBot } from './started.ts';

const bot = startedBot(() => MatrixStandIn.open());
const OLGA = userOf('olga');

const ORGANISERS_WORK = '!guild set seam:3/8in';
const may = async (voice: Voice): Promise<boolean> =>
  !/organiser/i.test(bodyOf(await voice.ask(ORGANISERS_WORK)));

type Levels = Record<string, unknown>;

/*
 * "m.room.power_levels" of the specification: users_default is 0 and state_default 50 where they are left out; in
 * a room without that event its maker has 100 and everybody else 0, and state may be sent by anybody.
 */
test.each<[what: string, levels: Levels | undefined, ada: boolean, bea: boolean]>([
  ['an admin and a member', { users: { [ADA]: 100 } }, true, false],
  ['a moderator and somebody just below', { users: { [ADA]: 50, [BEA]: 49 } }, true, false],
  [
    'where only admins may change the room',
    { users: { [ADA]: 100, [BEA]: 50 }, state_default: 100 },
    true,
    false,
  ],
  ['where less is needed', { users: { [ADA]: 25, [BEA]: 24 }, state_default: 25 }, true, false],
  ['where everybody may change everything', { users: { [ADA]: 50 }, state_default: 0 }, true, false],
  ['where everybody is a moderator', { users: { [ADA]: 100 }, users_default: 50 }, true, false],
  ['somebody lowered below the others', { users: { [ADA]: 100, [BEA]: -10 }, users_default: 0 }, true, false],
  [
    'levels written as text, as in older rooms',
    { users: { [ADA]: '100', [BEA]: ' 0 ' }, state_default: '50' },
    true,
    false,
  ],
  [
    'levels that are no levels',
    { users: { [ADA]: 100, [BEA]: { much: 1 } }, state_default: null },
    true,
    false,
  ],
  ['users that are no list', { users: 'everybody' }, false, false],
  ['no levels at all: the room’s maker', undefined, true, false],
])('who is an organiser: %s', async (_what, levels, ada, bea) => {
  const { standIn } = await bot();
  const room = standIn.makeRoom({
    members: [ADA, BEA, OLGA],
    ...(levels ? { powers: levels } : { powers: null }),
  });
  expect(await may(new Voice(standIn, room, ADA))).toBe(ada);
  expect(await may(new Voice(standIn, room, BEA))).toBe(bea);
});

test('rights change with the levels', async () => {
  const { standIn } = await bot();
  const room = standIn.makeRoom({ members: [ADA, BEA, OLGA] });
  const bea = new Voice(standIn, room, BEA);
  expect(await may(bea)).toBe(false);
  const content = { users: { [ADA]: 100, [BEA]: 50 } };
  standIn.put(room, { type: 'm.room.power_levels', sender: ADA, state_key: '', content });
  expect(await may(bea)).toBe(true);
});

test('in rooms of version 12 the makers have every right, whatever the levels say', async () => {
  const { standIn } = await bot();
  const room = standIn.makeRoom({
    members: [ADA, BEA, OLGA],
    version: '12',
    powers: { users: {}, state_default: 100 },
  });
  expect(await may(new Voice(standIn, room, ADA))).toBe(true);
  expect(await may(new Voice(standIn, room, BEA))).toBe(false);
});

test('there may be more makers than the one who made it, from version 12 on', async () => {
  const { standIn } = await bot();
  for (const [version, isMaker] of [
    ['11', false],
    ['12', true],
  ] as const) {
    const room = standIn.makeRoom({ members: [ADA, BEA, OLGA], version, powers: { users: {} } });
    const content = { room_version: version, additional_creators: [BEA] };
    standIn.put(room, { type: 'm.room.create', sender: ADA, state_key: '', content });
    expect(await may(new Voice(standIn, room, BEA)), version).toBe(isMaker);
    expect(await may(new Voice(standIn, room, OLGA)), version).toBe(false);
  }
});

test('alone with the bot everybody is a guild of one, and no organiser of any other', async () => {
  const { standIn } = await bot();
  const alone = standIn.makeRoom({ members: [BEA] });
  const room = standIn.makeRoom({ members: [ADA, BEA, OLGA] });
  await new Voice(standIn, alone, BEA).ask('!me set seam:3/8in');
  expect(bodyOf(await new Voice(standIn, room, BEA).ask('!cut hexagon 1in'))).toMatch(/1\/4 in seam/);
});

/** A space, as "Spaces" of the specification has it. */
async function space(child: boolean) {
  const { standIn } = await bot();
  const whole = standIn.makeRoom({ members: [OLGA, ADA, BEA] });
  const rooms = ['one', 'two'].map(() => standIn.makeRoom({ members: [ADA, BEA, OLGA] }));
  for (const room of rooms) {
    standIn.put(room, {
      type: 'm.space.parent',
      sender: ADA,
      state_key: whole,
      content: { via: ['bees.test'], canonical: true },
    });
    if (child)
      standIn.put(whole, {
        type: 'm.space.child',
        sender: OLGA,
        state_key: room,
        content: { via: ['bees.test'] },
      });
  }
  const [one = '', two = ''] = rooms;
  return { standIn, whole, inner: new Voice(standIn, one, ADA), other: new Voice(standIn, two, OLGA) };
}

test('rooms of one space are one guild, with the organisers of the space', async () => {
  const { inner, other } = await space(true);
  expect(await may(inner)).toBe(false);
  expect(await may(other)).toBe(true);
  expect(bodyOf(await inner.ask('!cut hexagon 1in'))).toMatch(/the guild’s 3\/8 in seam/);
});

test('a room that only claims to be of a space is its own guild', async () => {
  const { inner, other } = await space(false);
  expect(await may(inner)).toBe(true);
  expect(await may(other)).toBe(false);
  expect(bodyOf(await other.ask('!cut hexagon 1in'))).toMatch(/1\/4 in seam/);
});

test('once the bot is out of the space, each room is its own guild again', async () => {
  const { inner, standIn, whole } = await space(true);
  expect(await may(inner)).toBe(false);
  const content = { membership: 'leave' };
  standIn.put(whole, { type: 'm.room.member', sender: OLGA, state_key: BOT, content });
  expect(await may(inner)).toBe(true);
});
