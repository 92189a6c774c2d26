/** One other process of the store's tests: what it does is its first word, the database its second. */
import { createInterface } from 'node:readline';
import { setTimeout as wait } from 'node:timers/promises';
import { openStore } from '../../../src/store/open.ts';
import { peekDefaults } from '../../../src/store/peek.ts';
import { storeSentence } from '../../../src/store/sentences.ts';

const [, , act, file = ''] = process.argv;

const open = async () => {
  const store = await openStore(file);
  if (!store.ok) throw new Error(JSON.stringify(store.problem));
  return store.value;
};

const acts: Record<string, () => Promise<void>> = {
  /** Opens, keeps one thing, closes. */
  async start() {
    const store = await open();
    await store.defaults.set('guild', String(process.pid), { seam: 0.25 });
    await store.close();
  },

  /** Runs as the bot until it is killed. */
  async bot() {
    const store = await openStore(file, {}, 'bot');
    if (!store.ok) throw new Error(JSON.stringify(store.problem));
    console.log('up');
    setInterval(() => {}, 1000);
  },

  /** Writes without end and says each number that is safely kept. */
  async write() {
    const store = await open();
    for (let i = 1; ; i++) {
      await store.together(async (facts) => {
        await facts.defaults.set('guild', 'ada', { hours: i, pace: i });
        await facts.answered.keep('guild', `e${i}`, { member: 'ada', command: 'log', reply: i });
      });
      process.stdout.write(`${i}\n`);
    }
  },

  /** Reads until the writer is at 200; hours and pace are written together, so they must be read together. */
  async read() {
    const store = await open();
    await watch(() => store.defaults.read('guild', 'ada'));
    await store.close();
  },

  async peek() {
    await watch(async () => {
      const { own, problems } = await peekDefaults(file, 'guild', 'ada');
      if (problems.length > 0) throw new Error(JSON.stringify(problems));
      return own;
    });
  },

  /** Loads everything, gives up the rights of root, and tries to use each database that it is told of. */
  async stranger() {
    const warm = await openStore(':memory:');
    if (warm.ok) await warm.value.close();
    await peekDefaults(process.execPath, '', '');
    if (process.getuid?.() === 0) {
      process.setgroups?.([]);
      process.setgid?.(65534);
      process.setuid?.(65534);
    }
    for await (const told of createInterface({ input: process.stdin })) {
      const store = await openStore(told);
      const problem = store.ok ? null : store.problem;
      const peek = await peekDefaults(told, 'guild', 'ada');
      console.log(JSON.stringify({ problem, sentence: problem && storeSentence(problem), peek }));
    }
  },
};

async function watch(read: () => Promise<{ hours?: number; pace?: number }>): Promise<void> {
  let reads = 0;
  for (let at = 0; at < 200; reads++) {
    const { hours = 0, pace = 0 } = await read();
    if (hours !== pace) throw new Error(`read in the middle of a write: ${hours} and ${pace}`);
    if (hours < at) throw new Error(`went back from ${at} to ${hours}`);
    at = hours;
    await wait(0);
  }
  console.log(reads);
}

await acts[act ?? '']?.();
