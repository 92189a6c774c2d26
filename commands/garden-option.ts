import type { Arrangement } from '../src/calculator/layouts/arrangement.ts';
import type { Path } from '../src/calculator/layouts/garden.ts';
import type { Option } from '../src/chat/option.ts';
import { ok } from '../src/measure/result.ts';
import { arrangement } from './arrangement.ts';

/** A garden in a few words: how many rosettes, of how many rounds, with which path between. */
export interface GardenWords {
  readonly arrangement: Arrangement;
  readonly rounds: number;
  readonly path: Path;
}

const rosettes = arrangement('How many rosettes');

const ROSETTES = /^[\s,]*(?:rosettes?|flowers?)\b/i;
const ROUNDS = /^[\s,]*(?:of\s+)?(\d{1,2})[\s-]*rounds?\b/i;
const PATH = /^[\s,]*(?:with\s+)?(?:(no)\s+path|path\s+(none|one|own)|(own|one)\s+path)\b/i;

/** `7 of 2 rounds`, `6x5 of 2 rounds, own path`: one round and one path, shared, where nothing is said. */
export const gardenOption: Option<GardenWords, false> = {
  kind: 'garden',
  summary: 'Rosettes set together, how many, of how many rounds, and the path between them',
  example: '7 of 2 rounds',
  bounds: 'such as 7 of 2 rounds, 6x5 of 1 round, own path',
  shape: { as: 'words', longest: 60 },
  take(text, context) {
    const taken = rosettes.take(text, context);
    if (!taken?.ok) return taken;
    let rest = taken.value.rest.replace(ROSETTES, '');
    const rounds = ROUNDS.exec(rest);
    rest = rest.slice(rounds?.[0].length ?? 0);
    const path = PATH.exec(rest);
    const said = (path?.[1] ? 'none' : (path?.[2] ?? path?.[3]))?.toLowerCase() as Path | undefined;
    return ok({
      value: { arrangement: taken.value.value, rounds: Number(rounds?.[1] ?? 1), path: said ?? 'one' },
      rest: rest.slice(path?.[0].length ?? 0),
    });
  },
  write: ({ arrangement: stand, rounds, path }) =>
    `${rosettes.write(stand)} of ${rounds} ${rounds === 1 ? 'round' : 'rounds'}${path === 'one' ? '' : `, path ${path}`}`,
};
