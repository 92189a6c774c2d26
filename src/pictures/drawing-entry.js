// Draws for another process, one picture after another, and ends with it. Plain JavaScript, so that Node's compile
// cache is on before the first TypeScript file is read.
import module from 'node:module';
import process from 'node:process';
import { fileURLToPath } from 'node:url';

module.enableCompileCache(fileURLToPath(new URL('../../node_modules/.cache/honeycount', import.meta.url)));
// What ends the program at a keyboard is told to all its processes; this one ends when the other has let go.
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => {});
process.once('disconnect', () => process.exit());

let last = Promise.resolve();
process.on('message', ({ id, recipe }) => {
  last = last.then(() => drawn(id, recipe));
});

async function drawn(id, recipe) {
  try {
    const { draw } = await import('./draw.ts');
    process.send({ id, picture: await draw(recipe) });
  } catch (error) {
    process.send({ id, failed: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
}
