import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { madeTrue } from './made.ts';

/** `npm run readme`: writes the README's replies and its table of commands anew. */
const file = fileURLToPath(new URL('../../README.md', import.meta.url));
writeFileSync(file, await madeTrue(readFileSync(file, 'utf8')));
