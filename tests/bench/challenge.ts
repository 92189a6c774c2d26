import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import { commands } from '../../commands/index.ts';
import { openRoom } from '../../src/chat/dispatch.ts';
import type { Challenge, ChallengeTerms } from '../../src/guild/challenge-facts.ts';
import { openStore, type Store, settle } from '../../src/store/open.ts';
import { median, middle, shown } from './measure.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const NOW = new Date('2026-12-31T10:00:00Z');
const GUILD = 'bench';

const TERMS: ChallengeTerms = {
  ...{ name: 'Spring', counting: 'rosette', rounds: 2, size: 1, goal: 2_000_000_000, each: null },
  ...{ first: '2026-01-01', last: '2027-12-31', place: 'home', who: 'everyone', plan: null },
};

/** What a guild does together: logs kept, standings of a large challenge, a long book written out. */
export async function benchChallenges(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'honeycount-bench-'));
  try {
    await benchLogs(folder);
    const small = await filled(join(folder, 'small.sqlite'), 10_000);
    const large = await filled(join(folder, 'large.sqlite'), 1_000_000);
    await benchStandings(small, large);
    for (const { store } of [small, large]) await store.close();
    await benchExport(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function opened(file: string): Promise<Store> {
  const store = await openStore(file);
  if (!store.ok) throw new Error(store.problem.code);
  return store.value;
}

const roomOver = (facts: Store) =>
  openRoom({
    commands,
    facts,
    onFault: (error) => {
      throw error;
    },
  });

const ask = (words: string, event: string | null = null) => ({
  ...{ who: { id: 'ada', name: 'Ada', organiser: true }, guild: GUILD, place: 'home', event, words },
  now: NOW,
});

const BATCH = 100;
const TURNS = 15;

/** Turn by turn, so that all three meet the same disk: a bare INSERT of the same line, a log kept, a log asked. */
async function benchLogs(folder: string): Promise<void> {
  const store = await opened(join(folder, 'logs.sqlite'));
  const of = await store.challenges.add(GUILD, TERMS);
  const room = roomOver(store);
  const bare = await bareInsert(join(folder, 'bare.sqlite'));
  const ada = { id: 'ada', name: 'Ada' };
  const line = {
    kind: 'log',
    member: ada,
    by: ada,
    day: '2026-12-30',
    pieces: 2,
    note: 'blue',
    at: NOW,
  } as const;
  let events = 0;
  const works = {
    bare: async () => bare.insert(),
    kept: () => store.together((facts) => facts.challenges.write(of, line)),
    asked: () => room.answer(ask('/log 2 day:2026-12-30 note:blue', `e${events++}`)),
  };
  const rates: Record<keyof typeof works, number[]> = { bare: [], kept: [], asked: [] };
  for (let turn = 0; turn < TURNS + 1; turn++)
    for (const [name, work] of Object.entries(works) as [keyof typeof works, () => Promise<unknown>][]) {
      const from = performance.now();
      for (let i = 0; i < BATCH; i++) await work();
      // The first turn warms up.
      if (turn > 0) rates[name].push((BATCH * 1000) / (performance.now() - from));
    }
  const ratio = (name: 'kept' | 'asked') =>
    middle(rates[name].map((rate, i) => rate / (rates.bare[i] ?? Number.NaN)));
  console.log(
    '\nLogs kept, each on the disk before it is told, against a bare prepared INSERT of the same line (at least x 0.5)',
  );
  console.log(`bare INSERT                  ${perSecond(middle(rates.bare))}`);
  console.log(
    `log kept, totals with it     ${perSecond(middle(rates.kept))}   x ${ratio('kept').toFixed(2)}`,
  );
  console.log(
    `/log asked, read to reply    ${perSecond(middle(rates.asked))}   x ${ratio('asked').toFixed(2)}`,
  );
  bare.close();
  await store.close();
}

const perSecond = (rate: number): string => `${Math.round(rate)} a second`.padStart(16);

/** The same line into the same table with its indexes, nothing else: one prepared statement, the same durability. */
async function bareInsert(file: string) {
  await (await opened(file)).close();
  const database = new Database(file);
  settle(database);
  const insert = database.prepare(
    "INSERT INTO challenge_lines VALUES (?, 1, ?, 'log', 'ada', 'ada', '2026-12-30', 2, NULL, 'blue', '', NULL, ?)",
  );
  let number = 0;
  return {
    insert: () => insert.run(GUILD, ++number, NOW.toISOString()),
    close: () => database.close(),
  };
}

interface Filled {
  readonly store: Store;
  readonly of: Challenge;
  readonly entries: number;
}

const MEMBERS = 10_000;

/** A challenge with so many entries by 10,000 members over a year, written as the store writes them. */
async function filled(file: string, entries: number): Promise<Filled> {
  const made = await opened(file);
  const of = await made.challenges.add(GUILD, TERMS);
  await made.close();
  const database = new Database(file);
  database.pragma('synchronous = OFF');
  database.exec(`INSERT INTO challenge_lines
    WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < ${entries})
    SELECT '${GUILD}', 1, i, 'log', 'm' || (i * 7919 % ${MEMBERS}), 'm' || (i * 7919 % ${MEMBERS}),
      date('2026-01-01', (i * 365 / ${entries + 1}) || ' days'), 1 + i % 3, NULL, '', '', NULL, '2026-12-01T10:00:00.000Z'
    FROM n`);
  database.exec(`INSERT INTO challenge_parts
    SELECT guild, challenge, member, min(number), 'Member ' || member, 1, sum(pieces), count(*) FROM challenge_lines
    GROUP BY guild, challenge, member`);
  database.exec(`INSERT INTO challenge_days
    SELECT guild, challenge, day, sum(pieces) FROM challenge_lines GROUP BY guild, challenge, day`);
  database.exec(
    `UPDATE challenges SET lines = ${entries}, total = (SELECT sum(pieces) FROM challenge_lines)`,
  );
  database.close();
  return { store: await opened(file), of, entries };
}

async function benchStandings(small: Filled, large: Filled): Promise<void> {
  console.log(
    '\n/standings by 10,000 members (under 20 ms, and at most x 2 from 10,000 entries to 1,000,000)',
  );
  for (const way of ['unranked', 'ranked']) {
    const took: number[] = [];
    for (const { store, entries } of [small, large]) {
      const room = roomOver(store);
      await room.answer(ask(`/guild set standings:${way}`));
      const ms = await median(() => room.answer(ask('/standings')), { runs: 101, warm: 30 });
      took.push(ms);
      const verdict = ms <= 20 ? 'within' : 'OVER';
      console.log(
        `${way.padEnd(10)} ${String(entries).padStart(9)} entries ${shown(ms).padStart(10)}   ${verdict} 20 ms`,
      );
    }
    console.log(`${way.padEnd(10)} grows   x ${((took[1] ?? 0) / (took[0] ?? 1)).toFixed(2)}`);
  }
}

/** The verb as `npm run export` starts it, a process of its own; its greatest memory as the system has it. */
async function benchExport(folder: string): Promise<void> {
  console.log('\nA book written out by npm run export: the most memory that it took (flat)');
  for (const [name, entries] of [
    ['small', 10_000],
    ['large', 1_000_000],
  ] as const)
    for (const format of ['csv', 'json']) {
      const out = join(folder, `${name}.${format}`);
      const verb = ['--max-semi-space-size=1', 'src/entry.js', 'export'];
      const args = [...verb, '--data', join(folder, `${name}.sqlite`), '--guild', GUILD];
      const from = performance.now();
      const most = await mostMemory([...args, '--challenge', '1', '--format', format, '--out', out]);
      const took = performance.now() - from;
      const size = (statSync(out).size / 1e6).toFixed(1);
      const memory = most === null ? 'not told here' : `${Math.round(most / 1024)} MB`;
      console.log(
        `${format.padEnd(5)} ${String(entries).padStart(9)} entries ${size.padStart(7)} MB file   ${memory}   ${shown(took)}`,
      );
    }
}

/** Runs it to its end; the most memory it had, in kB, where the system tells. */
async function mostMemory(args: readonly string[]): Promise<number | null> {
  const child = spawn(process.execPath, args, { cwd: ROOT, stdio: ['ignore', 'inherit', 'inherit'] });
  const file = `/proc/${child.pid}/status`;
  let most: number | null = null;
  const look = setInterval(() => {
    if (!existsSync(file)) return;
    try {
      most = Number(/VmHWM:\s+(\d+)/.exec(readFileSync(file, 'utf8'))?.[1] ?? most);
    } catch {
      // It ended between the two looks.
    }
  }, 20);
  const status = await new Promise((done) => child.once('exit', done));
  clearInterval(look);
  if (status !== 0) throw new Error(`${args.join(' ')} ended with ${status}`);
  return most;
}

if (import.meta.main) await benchChallenges();
