import Database from 'better-sqlite3';
import { openStore } from '../../src/store/open.ts';
const s = await openStore(':memory:'); if (!s.ok) throw 1;
const T = { name: 'S', counting: 'rosette', rounds: 2, size: 1, goal: 200, each: null, first: '2026-12-01', last: '2026-12-31', place: 'home', who: 'everyone' } as never;
await s.value.challenges.add('g', T);
const m = async (n: string, w: () => unknown) => { for (let r=0;r<3;r++){const t=process.cpuUsage(); for (let i=0;i<3000;i++) await w(); const u=process.cpuUsage(t); if(r==2)console.log(n,((u.user+u.system)/3000).toFixed(1));} };
await m('all', () => s.value.challenges.all('g'));
await m('one', () => s.value.challenges.one('g', 1));
await m('defaults', () => s.value.defaults.read('g', 'ada'));
await m('answered', () => s.value.answered.find('g', 'e'));
await m('part', () => s.value.challenges.part({guild:'g',number:1}, 'x'));
const d = new Database(':memory:'); d.exec('create table c(guild text, number integer, a text,b text,c text,d text,e text,f text,g integer,h integer, open integer, primary key(guild,number)); insert into c values(\'g\',1,\'a\',\'b\',\'c\',\'d\',\'e\',\'f\',1,2,1)');
const st = d.prepare('select * from c where guild=? order by open desc, number desc limit ?'); await m('raw all sort', () => st.all('g',200));
const st2 = d.prepare('select * from c where guild=? order by number desc limit ?'); await m('raw all nosort', () => st2.all('g',200));
const st3 = d.prepare('select * from c where guild=? and number=?'); await m('raw get', () => st3.get('g',1));
for (const [n, q, a] of [['all pk', 'select * from c where guild=?', ['g']], ['all pk limit', 'select * from c where guild=? limit ?', ['g', 200]], ['all pk desc', 'select * from c where guild=? order by number desc', ['g']], ['all open', 'select * from c where guild=? and open=1', ['g']], ['all one', 'select * from c where guild=? and number=?', ['g',1]],['all none', 'select * from c where guild=? and number=?', ['g',2]]] as const) { const st = d.prepare(q); await m(n, () => st.all(...a)); }
