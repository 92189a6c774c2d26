import { type ChildProcess, spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import { setTimeout as after } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { Bot } from '../whole/matrix/bot.ts';
import { Homeserver, type Reach, register } from '../whole/matrix/homeserver.ts';
import { LightMember } from './matrix-member.ts';
import { middle, shown } from './measure.ts';

const ECHO = fileURLToPath(new URL('echo-bot.js', import.meta.url));
/** A question that is answered in words alone, as the echo does. */
const ASK = '!time rosette:2';
const MEMBERS = 8;
const ROUNDS = 5;
/** How many asks are in flight at a time, and how many are asked in a round. */
const ONE_BY_ONE = { atOnce: 1, asks: 24 };
const BUSY = { atOnce: 2 * MEMBERS, asks: 80 };
const ROOMS = 200;

/** Asks answered per second through a real homeserver, and how soon after a start, beside the least bot there can be. */
export async function benchMatrix(): Promise<void> {
  const homeserver = await Homeserver.open();
  try {
    console.log('\nMatrix: asks answered through a real homeserver, beside a bot that says all back');
    await benchRate(homeserver.reach);
    await benchStart(homeserver.reach);
  } catch (error) {
    // What goes on meanwhile would fail too, for want of a homeserver.
    console.error(error);
    process.exit(1);
  } finally {
    await homeserver.close();
  }
}

/** Turn by turn, so that both have the same machine. */
async function benchRate(reach: Reach): Promise<void> {
  const ours = new Bot(reach, await register(reach, 'bee'), {}, 'info');
  const echo = new Echo(reach, await LightMember.logIn(reach, await register(reach, 'echo')));
  await ours.start();
  await echo.start();
  const members = await Promise.all(
    Array.from({ length: MEMBERS }, async () => LightMember.logIn(reach, await register(reach, 'ada'))),
  );
  const [mine, theirs] = [await roomFor(members, ours.account.user), await roomFor(members, echo.user, echo)];
  const [ear] = members as [LightMember];
  const listening = ear.listen();
  for (const way of [BUSY, ONE_BY_ONE]) {
    await answered(members, mine, way);
    await answered(members, theirs, way);
    const [rates, ratios]: [number[], number[]] = [[], []];
    for (let round = 0; round < ROUNDS; round++) {
      const our = await answered(members, mine, way);
      const their = await answered(members, theirs, way);
      rates.push(our);
      ratios.push(our / their);
    }
    console.log(
      `${way.atOnce} at a time: ${middle(rates).toFixed(1)} a second, x ${middle(ratios).toFixed(2)} of the echo's (at least x 0.8)`,
    );
  }
  ear.stop();
  await listening;
  await ours.end('SIGTERM');
  await echo.end();
}

async function roomFor(members: readonly LightMember[], bot: string, echo?: Echo): Promise<string> {
  const [first, ...others] = members as [LightMember, ...LightMember[]];
  const room = await first.makeRoom([bot, ...others.map(({ user }) => user)]);
  await echo?.member.join(room);
  for (const other of others) await other.join(room);
  await first.meets(room, bot);
  return room;
}

/** Asks answered a second. Members ask by turns, and one of them hears all answers. */
async function answered(
  members: readonly LightMember[],
  room: string,
  { atOnce, asks }: typeof BUSY,
): Promise<number> {
  const [ear] = members as [LightMember];
  const from = performance.now();
  let next = 0;
  const one = async () => {
    while (next < asks) {
      const member = members[next++ % members.length] ?? ear;
      await ear.answerTo(await member.say(room, ASK));
    }
  };
  await Promise.all(Array.from({ length: atOnce }, one));
  return (asks / (performance.now() - from)) * 1000;
}

/** From the start of a process to the first answer, with many rooms joined, a third of them encrypted. */
async function benchStart(reach: Reach): Promise<void> {
  const account = await register(reach, 'bee');
  const inside = await LightMember.logIn(reach, account);
  const ada = await LightMember.logIn(reach, await register(reach, 'ada'));
  const room = await inside.makeRoom([ada.user]);
  await ada.join(room);
  let left = ROOMS - 1;
  const fill = async () => {
    while (left-- > 0) {
      const made = await inside.makeRoom([], { initial_state: left % 3 === 0 ? [ENCRYPTION] : [] });
      await inside.say(made, 'We begin on Monday.');
    }
  };
  await Promise.all([fill(), fill(), fill(), fill()]);
  const listening = ada.listen();
  const ours = new Bot(reach, account, {}, 'info');
  const once = async () => {
    const took = await firstAnswer(ada, room, () => ours.start());
    await ours.end('SIGTERM');
    return took;
  };
  const first = await once();
  const again = await once();
  const echo = new Echo(reach, inside);
  const theirs = await firstAnswer(ada, room, () => echo.start());
  await echo.end();
  ada.stop();
  await listening;
  console.log(
    `${shown(again)} from a start to the first answer with ${ROOMS} rooms (the very first start: ${shown(first)}; the echo: ${shown(theirs)})`,
  );
}

const ENCRYPTION = {
  type: 'm.room.encryption',
  state_key: '',
  content: { algorithm: 'm.megolm.v1.aes-sha2' },
};

/** Asks again and again until one ask is answered. */
async function firstAnswer(
  member: LightMember,
  room: string,
  start: () => Promise<unknown>,
): Promise<number> {
  const from = performance.now();
  const first = Promise.withResolvers<number>();
  const starting = start();
  const answers: Promise<void>[] = [];
  let over = false;
  const asking = (async () => {
    for (; !over; await after(200)) {
      const answer = member.answerTo(await member.say(room, ASK));
      answer.then(() => first.resolve(performance.now()), first.reject);
      answers.push(answer);
    }
  })();
  const took = (await first.promise) - from;
  over = true;
  await Promise.all([asking, starting]);
  // All that was asked is answered, so that nothing is left to do for the next start.
  await Promise.all(answers);
  return took;
}

/** The echo as a process of its own. */
class Echo {
  readonly user: string;
  readonly member: LightMember;
  readonly #env: Record<string, string>;
  #child: ChildProcess | undefined;

  constructor({ address }: Reach, member: LightMember) {
    this.member = member;
    this.user = member.user;
    this.#env = { ADDRESS: address, USER: member.user, TOKEN: member.token };
  }

  async start(): Promise<void> {
    const child = spawn(process.execPath, [ECHO], {
      env: { ...process.env, ...this.#env },
      stdio: ['ignore', 'pipe', 'ignore'],
    });
    this.#child = child;
    for await (const line of createInterface({ input: child.stdout })) if (line.includes('"ready"')) return;
    throw new Error('the echo ended');
  }

  async end(): Promise<void> {
    const child = this.#child;
    if (!child || child.exitCode !== null) return;
    const gone = new Promise((done) => child.once('exit', done));
    child.kill('SIGTERM');
    await gone;
  }
}
