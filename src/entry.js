// Plain JavaScript on purpose: it runs before any TypeScript is read, so that Node keeps the stripped and
// compiled form of everything after it (a cold start takes half the time), and so that an older Node gets a
// sentence in place of a syntax error.
import module from 'node:module';
import process from 'node:process';
import { fileURLToPath } from 'node:url';

const major = Number(process.versions.node.split('.')[0]);
if (major < 24) {
  process.stderr.write(
    `Honeycount runs on Node 24; this is ${process.versions.node}. Start it with npm (npm start, npm run -s ask -- '/help'): the install brings Node 24 for most machines. On others, install Node 24 first.\n`,
  );
  process.exit(1);
}
module.enableCompileCache(fileURLToPath(new URL('../node_modules/.cache/honeycount', import.meta.url)));
const { main } = await import('./main.ts');
process.exitCode = await main(process.argv.slice(2));
