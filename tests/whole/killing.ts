import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';
import { createInterface } from 'node:readline';
import { setTimeout as wait } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { ENTRY, newFolder } from './program.ts';

/** What was found after one guild's program had been killed so many times. */
export interface Survived {
  /** Events that were answered before a kill. */
  readonly acknowledged: number;
  /** What went wrong, in sentences; nothing where nothing did. */
  readonly wrongs: readonly string[];
}

const NOW = '2026-12-02T10:00:00Z';

/** What must be there first; delivered again after every kill, as a platform would. */
const FIRST = [
  {
    ask: '/challenge open name:Spring counting:rosette rounds:1 first:2026-12-01',
    event: 'first1',
    now: NOW,
  },
  { ask: '/swap open name:Stash first:2026-12-01', event: 'first2', now: NOW },
];

/** The n-th event: in turn a log and an offer, each with its number in it. A member has forty of them. */
const eventOf = (n: number) => ({
  ask: n % 2 === 1 ? `/log 1 note:n${n}` : `/swap offer 1 fat quarter n${n}`,
  as: `m${Math.floor(n / 40)}`,
  event: `e${n}`,
  now: NOW,
});

/** So many lines are waiting for the program at once: more than it can answer before it is killed. */
const WAITING = 250;
/** So many answered events are delivered once more after a kill. */
const AGAIN = 3;

/**
 * One guild whose program is killed outright, again and again, in the middle of answering a stream of logs and
 * offers, at moments that `random` chooses: while it starts, opens, makes its tables, answers. After each kill
 * it is started on what is left, and what was not answered is delivered again.
 */
export async function killAndKill(kills: number, random: () => number): Promise<Survived> {
  const file = join(newFolder(), 'data', 'guild.sqlite');
  const answers = new Map<string, string>();
  const wrongs: string[] = [];
  let next = 1;
  for (let kill = 0; kill < kills; kill++) {
    const events = [
      ...FIRST,
      ...numbers(Math.max(1, next - AGAIN), next - 1),
      ...numbers(next, next + WAITING),
    ];
    const life = live(file, events);
    const early = random() < 0.25;
    if (!early) await life.firstAnswer;
    await wait(random() * 450);
    for (const { event, reply } of await life.kill()) {
      const before = answers.get(event);
      if (before !== undefined && before !== reply)
        wrongs.push(`${event} was answered otherwise the second time`);
      answers.set(event, reply);
    }
    while (answers.has(`e${next}`)) next++;
    // Now and then somebody looks first, where there is anything yet; else the program itself must find its way.
    if (random() < 0.3 && existsSync(file)) wrongs.push(...looked(file));
  }
  wrongs.push(...looked(file), ...counted(file, answers));
  return { acknowledged: answers.size, wrongs };
}

const numbers = (from: number, to: number) =>
  Array.from({ length: Math.max(0, to - from + 1) }, (_, i) => eventOf(from + i));

interface Answered {
  readonly event: string;
  readonly reply: string;
}

/** The program with a stream of events before it, until it is killed. */
function live(file: string, events: readonly { readonly event: string }[]) {
  const child = spawn(process.execPath, [ENTRY, 'ask', '--json', '--data', file, '-'], {
    env: { PATH: process.env.PATH, HOME: process.env.HOME },
    stdio: ['pipe', 'pipe', 'pipe'],
  });
  const said: Answered[] = [];
  let errors = '';
  child.stderr.on('data', (part) => (errors += part));
  child.stdin.on('error', () => {});
  child.stdin.write(events.map((event) => `${JSON.stringify(event)}\n`).join(''));
  const first = Promise.withResolvers<void>();
  const lines = createInterface({ input: child.stdout });
  lines.on('line', (reply) => {
    // The last line before the kill may be half a line: then nothing was told.
    if (!isWhole(reply)) return;
    said.push({ event: events[said.length]!.event, reply });
    first.resolve();
  });
  const closed = once(child, 'close');
  child.once('close', () => first.resolve());
  return {
    firstAnswer: first.promise,
    async kill(): Promise<Answered[]> {
      child.kill('SIGKILL');
      const [status, signal] = await closed;
      if (signal !== 'SIGKILL') throw new Error(`ended by itself with ${status}: ${errors}`);
      return said;
    },
  };
}

function isWhole(line: string): boolean {
  try {
    const reply = JSON.parse(line) as { error: { message: string } | null };
    if (reply.error) throw new Error(`a mistake: ${reply.error.message}`);
    return true;
  } catch (thrown) {
    if (thrown instanceof SyntaxError) return false;
    throw thrown;
  }
}

/** Whether the database is sound, as another program sees it. */
function looked(file: string): string[] {
  const database = new Database(file);
  try {
    const found = database.pragma('integrity_check', { simple: true });
    return found === 'ok' ? [] : [`the database is not sound: ${found}`];
  } finally {
    database.close();
  }
}

/** Whether all that was acknowledged is there, nothing twice, and the totals are what they add up to. */
function counted(file: string, answers: ReadonlyMap<string, string>): string[] {
  const database = new Database(file, { readonly: true });
  const column = (sql: string) => database.prepare(sql).pluck().all() as string[];
  const logged = column("SELECT note FROM challenge_lines WHERE kind = 'log'");
  const offered = column('SELECT typed FROM swap_entries').map((typed) => typed.replace(/^.* /, ''));
  const kept = column("SELECT event FROM answered WHERE event LIKE 'e%'");
  const [total] = column('SELECT total FROM challenges');
  const opened = column('SELECT count(*) FROM challenges UNION ALL SELECT count(*) FROM swaps');
  database.close();
  const there = [...logged, ...offered];
  const wrongs: string[] = [];
  const twice = there.filter((one, i) => there.indexOf(one) !== i);
  if (twice.length > 0) wrongs.push(`there twice: ${twice.join(', ')}`);
  const lost = [...answers.keys()].filter(
    (event) => event.startsWith('e') && !there.includes(event.replace('e', 'n')),
  );
  if (lost.length > 0) wrongs.push(`acknowledged and lost: ${lost.join(', ')}`);
  const apart = there.filter((one) => !kept.includes(one.replace('n', 'e')));
  if (apart.length > 0 || kept.length !== there.length)
    wrongs.push(`effect without its answer: ${apart.join(', ')}`);
  if (Number(total) !== logged.length) wrongs.push(`the total is ${total}, the logs are ${logged.length}`);
  if (opened.some((many) => Number(many) !== 1)) wrongs.push(`opened more than once: ${opened.join(', ')}`);
  return wrongs;
}
