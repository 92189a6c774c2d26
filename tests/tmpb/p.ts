import { rmSync } from 'node:fs';
import { openStore } from '../../src/store/open.ts';
import { openRoom } from '../../src/chat/dispatch.ts';
import { commands } from '../../commands/index.ts';
const dir = process.argv[3] ?? '/dev/shm/hcb'; rmSync(dir, { recursive: true, force: true });
const s = await openStore(`${dir}/a.sqlite`); if (!s.ok) throw 1;
const store = s.value;
const c = await store.challenges.add('g', { name: 'S', counting: 'rosette', rounds: 2, size: 1, goal: 200, each: null, first: '2026-12-01', last: '2026-12-31', place: 'home', who: 'everyone' });
const p = { id: 'ada', name: 'Ada' };
const room = openRoom({ commands, facts: store, onFault: (e) => { throw e; } });
const N = 2000;
let e = 0;
const works: Record<string, () => Promise<unknown>> = {
  kept: () => store.together((f) => f.challenges.write(c, { kind: 'log', member: p, by: p, day: '2026-12-03', pieces: 2, note: 'blue', at: new Date() })),
  asked: () => room.answer({ who: { id: 'ada', name: 'Ada', organiser: true }, guild: 'g', place: 'home', event: `e${e++}`, words: '/log 2 day:2026-12-03 note:blue', now: new Date('2026-12-08T10:00:00Z') }),
};
for (const [n, w] of Object.entries(works)) if (!process.argv[2] || process.argv[2] === n) for (let r = 0; r < 4; r++) { const t = process.cpuUsage(); for (let i = 0; i < N; i++) await w(); const u = process.cpuUsage(t); console.log(n, ((u.user + u.system) / N).toFixed(0), 'µs cpu'); }
await store.close();
