import { writeSync } from 'node:fs';
import { openKept } from '../../../../../src/platforms/matrix/kept-indexeddb/open.ts';
import { sealWith } from '../../../../../src/platforms/matrix/kept-indexeddb/seal.ts';
import { numbers, opened, transact } from '../script.ts';

/* Runs the script of a seed until it is killed; tells the number of each transaction once it is told of it. */
const [file = '', seed = '1', from = '0'] = process.argv.slice(2);
const kept = await openKept(file, sealWith('a secret'), () => process.exit(9));
const database = await opened(kept.factory);
writeSync(1, 'open\n');
for (let at = Number(from); ; at++) {
  await transact(database, numbers(Number(seed) * 100_000 + at));
  writeSync(1, `${at}\n`);
}
