import { existsSync, readFileSync } from 'node:fs';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { guildAlone } from '../../src/chat/facts.ts';
import type { Problem } from '../../src/measure/result.ts';
import { whereaboutsIn } from '../../src/run/whereabouts.ts';
import { heldTables } from '../../src/store/tables.ts';
import { ANSWERS_KEPT_DAYS } from '../../src/store/upkeep.ts';
import { newFile, opened } from './places.ts';

const HER = 'ada-of-the-hexagons';
const WORDS = 'blue hexagons from grandmother';
const HERS = [HER, WORDS, 'ada', 'Ada'];

const membersTables = heldTables.filter(({ of }) => of === 'member');

interface Column {
  readonly name: string;
  readonly type: string;
}

/** Puts a row in every table that declares to hold something of a member: hers, in somebody else's, and a bystander's. */
function everywhere(file: string): void {
  const database = new Database(file);
  let n = 0;
  for (const held of membersTables) {
    const columns = database
      .prepare('SELECT name, type FROM pragma_table_info(?)')
      .all(held.table) as Column[];
    const plain = ({ name, type }: Column): unknown =>
      /int|real/i.test(type) ? ++n : name === held.guild ? 'guild' : `plain ${++n}`;
    const keep = (named: Readonly<Record<string, unknown>>) => {
      const values = columns.map((column) => named[column.name] ?? plain(column));
      database.prepare(`INSERT INTO ${held.table} VALUES (${columns.map(() => '?').join()})`).run(values);
    };
    const own = String(held.member);
    const words = Object.fromEntries((held.words ?? []).map((column) => [column, WORDS]));
    const freely = held.forget === 'disown' ? words : wordsEverywhere(columns, held);
    keep({ ...freely, [own]: HER, ...Object.fromEntries((held.others ?? []).map((other) => [other, HER])) });
    for (const other of held.others ?? []) keep({ [own]: 'bea', [other]: HER });
    for (const mention of held.mentions ?? [])
      keep({ [own]: 'bea', [mention]: JSON.stringify({ lines: [`said of ${HER}`] }) });
    for (const writer of held.writers ?? []) keep({ [own]: 'bea', [writer]: HER, ...words });
    for (const quote of held.quotes ?? []) keep({ [own]: 'bea', [quote]: `said by ${HER}: ${WORDS}` });
    keep({ [own]: 'bea' });
  }
  database.close();
}

/** Where her rows go, every text in them may be hers. */
const wordsEverywhere = (columns: readonly Column[], held: (typeof membersTables)[number]) =>
  Object.fromEntries(
    columns
      .filter(({ name, type }) => /text/i.test(type) && name !== held.guild)
      .map(({ name }) => [name, `${WORDS} ${name}`]),
  );

const bytesOf = (file: string): string =>
  ['', '-wal', '-shm']
    .map((end) => file + end)
    .filter((path) => existsSync(path))
    .map((path) => readFileSync(path).toString('latin1'))
    .join('');

const rowsOf = (file: string, table: string): number => {
  const database = new Database(file, { readonly: true });
  const rows = database.prepare(`SELECT count(*) FROM ${table}`).pluck().get() as number;
  database.close();
  return rows;
};

describe('what is kept of a member', () => {
  it('is exported from every table that declares it', async () => {
    const file = newFile();
    const store = await opened(file);
    everywhere(file);
    const kept = await store.keptOf.read(HER);
    expect(kept.map(({ table }) => table)).toEqual(membersTables.map(({ table }) => table));
    for (const { table, columns, rows } of kept) {
      const held = membersTables.find((one) => one.table === table)!;
      expect(rows).toHaveLength(1 + (held.others?.length ?? 0) + (held.writers?.length ?? 0));
      expect(Object.keys(columns).sort()).toEqual(Object.keys(rows[0]!).sort());
      expect(JSON.stringify(rows)).toContain(HER);
    }
    expect(await store.keptOf.read('nobody-at-all')).toEqual([]);
  });

  it('is gone from the files when she is forgotten, and nothing of others with it', async () => {
    const file = newFile();
    const store = await opened(file);
    everywhere(file);
    const before = membersTables.map(({ table }) => rowsOf(file, table));
    for (const hers of [HER, WORDS]) expect(bytesOf(file)).toContain(hers);
    const { gone, nobodys } = await store.keptOf.forget(HER);
    for (const hers of HERS) expect(bytesOf(file)).not.toContain(hers);
    expect(await store.keptOf.read(HER)).toEqual([]);
    const removing = membersTables.filter(({ forget }) => forget !== 'disown');
    expect([gone, nobodys]).toEqual([removing.length, membersTables.length - removing.length]);
    membersTables.forEach(({ table, forget, mentions = [] }, i) => {
      expect(rowsOf(file, table)).toBe(before[i]! - (forget === 'disown' ? 0 : 1) - mentions.length);
    });
    expect(bytesOf(file)).toContain('bea');
    await store.close();
    for (const hers of HERS) expect(bytesOf(file)).not.toContain(hers);
  });

  it('is gone after a year of changes too, when pages were split and rows moved', async () => {
    const file = newFile();
    const store = await opened(file);
    const random = seeded(7);
    await store.together(async (facts) => {
      for (let i = 0; i < 1500; i++) {
        const member = random() < 0.2 ? HER : `member ${Math.floor(random() * 40)}`;
        const reply = member === HER ? WORDS.repeat(Math.floor(random() * 30)) : 'x'.repeat(random() * 800);
        await facts.answered.keep('guild', `${random().toString(36)}`, { member, command: 'cut', reply });
        await facts.defaults.set(`guild ${Math.floor(random() * 300)}`, member, { hours: i + 1 });
      }
    });
    expect(bytesOf(file)).toContain(WORDS);
    await store.keptOf.forget(HER);
    for (const hers of HERS) expect(bytesOf(file)).not.toContain(hers);
  });

  it('an event that was answered stays answered, for her and for others', async () => {
    const store = await opened(newFile());
    const answer = { command: 'log', reply: { title: `Thank you, ${HER}` } };
    await store.answered.keep('guild', 'e1', { member: HER, ...answer });
    await store.answered.keep('guild', 'e2', { member: 'bea', ...answer });
    await store.answered.keep('elsewhere', 'e3', { member: 'bea', ...answer });
    await store.keptOf.forget(HER);
    expect(await store.answered.find('guild', 'e1')).toEqual({ member: '', command: 'log', reply: null });
    expect(await store.answered.find('guild', 'e2')).toEqual({ member: 'bea', command: 'log', reply: null });
    expect(await store.answered.find('elsewhere', 'e3')).toEqual({ member: 'bea', ...answer });
  });

  it('a guild of hers alone goes with her', async () => {
    const file = newFile();
    const store = await opened(file);
    const guild = guildAlone(HER);
    const terms = {
      counting: 'rosette',
      rounds: 2,
      size: 1,
      goal: 3,
      each: null,
      first: '2026-12-01',
    } as const;
    const of = { name: WORDS, last: null, place: 'here', who: 'everyone', plan: null, ...terms } as const;
    const challenge = await store.challenges.add(guild, of);
    const ada = { id: HER, name: 'Ada' };
    await store.challenges.write(challenge, {
      ...{ kind: 'log', member: ada, by: ada, day: '2026-12-01', pieces: 1, at: new Date() },
    });
    await whereaboutsIn(store).heard('matrix', guild);
    await store.keptOf.forget(HER);
    for (const hers of HERS) expect(bytesOf(file)).not.toContain(hers);
  });

  it('after a crash before the file was swept, the next work sweeps it', async () => {
    const file = newFile();
    const store = await opened(file);
    await store.defaults.set('guild', HER, { seam: 0.375 });
    await store.close();
    // As a process leaves it that ends between forgetting her and sweeping.
    const crashed = new Database(file);
    crashed.exec(`PRAGMA secure_delete = OFF; BEGIN; DELETE FROM defaults; PRAGMA user_version = 1; COMMIT`);
    crashed.close();
    expect(bytesOf(file)).toContain(HER);
    const again = await opened(file);
    await again.defaults.set('guild', 'bea', { seam: 0.25 });
    expect(bytesOf(file)).not.toContain(HER);
  });

  it('a forgetting that was taken back leaves all as it was', async () => {
    const store = await opened(newFile());
    await store.defaults.set('guild', HER, { seam: 0.375 });
    const work = store.together(async (facts) => {
      await facts.keptOf.forget(HER);
      throw new Error('taken back');
    });
    await expect(work).rejects.toThrow('taken back');
    expect(await store.defaults.read('guild', HER)).toEqual({ seam: 0.375 });
  });

  it('somebody who is still reading is told to the operator, and the file is swept after the next work', async () => {
    const file = newFile();
    const reports: Problem[] = [];
    const store = await opened(file, { report: (problem) => reports.push(problem) });
    await store.defaults.set('guild', HER, { seam: 0.375 });
    const reader = new Database(file);
    reader.exec('BEGIN; SELECT * FROM defaults');
    await store.keptOf.forget(HER);
    expect(reports).toMatchObject([{ code: 'store-trace-left', path: file }]);
    expect(bytesOf(file)).toContain(HER);
    reader.exec('ROLLBACK');
    await store.defaults.set('guild', 'bea', { seam: 0.25 });
    expect(bytesOf(file)).not.toContain(HER);
    reader.close();
  });
});

describe('answers', () => {
  it('are kept so many days and no longer', async () => {
    let now = new Date('2026-12-01T10:00:00Z');
    const later = (days: number) => new Date(now.getTime() + days * 24 * 60 * 60 * 1000);
    const store = await opened(newFile(), { now: () => now });
    const keep = (event: string) =>
      store.together((facts) =>
        facts.answered.keep('guild', event, { member: 'ada', command: 'cut', reply: event }),
      );
    await keep('e1');
    now = later(ANSWERS_KEPT_DAYS);
    await keep('e2');
    expect(await store.answered.find('guild', 'e1')).toMatchObject({ reply: 'e1' });
    now = later(1.1);
    await keep('e3');
    expect(await store.answered.find('guild', 'e1')).toBeUndefined();
    expect(await store.answered.find('guild', 'e2')).toMatchObject({ reply: 'e2' });
  });
});

/** The same numbers in every run. */
function seeded(seed: number): () => number {
  let at = seed;
  return () => {
    at = (at * 1_103_515_245 + 12_345) % 2_147_483_648;
    return at / 2_147_483_648;
  };
}
