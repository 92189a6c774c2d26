import { blocksApart } from '../calculator/layouts/blocks.ts';
import type { Layout } from '../calculator/layouts/layout.ts';
import { rosette } from '../calculator/layouts/rosette.ts';
import { star } from '../calculator/layouts/star.ts';
import { tally } from '../calculator/layouts/tally.ts';
import type { Result } from '../measure/result.ts';

/** What a challenge counts. */
export type Counting = 'rosette' | 'block' | 'star' | 'patch';

/** One of what is counted: its kind, and of a rosette its rounds, of a star the diamonds along a side. */
export interface Counted {
  readonly counting: Counting;
  readonly rounds: number;
}

/** What one of them holds. A seam is one finished side long. */
export interface Worth {
  readonly pieces: number;
  readonly seams: number;
}

const HEXAGONS = ['hexagon', 'hexagons'] as const;
const DIAMONDS = ['diamond', 'diamonds'] as const;
const PATCHES = ['patch', 'patches'] as const;

const MADE_OF: Readonly<Record<Counting, readonly [one: string, many: string]>> = {
  rosette: HEXAGONS,
  block: DIAMONDS,
  star: DIAMONDS,
  patch: PATCHES,
};

/**
 * What they are pieced of, in the right number.
 *
 * @example
 * piecesFor('rosette', 19) // "hexagons"
 * piecesFor('block', 1) // "diamond"
 */
export const piecesFor = (counting: Counting, count: number): string =>
  MADE_OF[counting][count === 1 ? 0 : 1];

/**
 * The pieces and seams of one, read from its layout. A patch by itself has no seam yet.
 *
 * @example
 * worthOf({ counting: 'rosette', rounds: 2 }) // {"pieces":19,"seams":42}
 * worthOf({ counting: 'block', rounds: 0 }) // {"pieces":3,"seams":3}
 * worthOf({ counting: 'star', rounds: 2 }) // {"pieces":24,"seams":36}
 * worthOf({ counting: 'patch', rounds: 0 }) // {"pieces":1,"seams":0}
 */
export function worthOf({ counting, rounds }: Counted): Worth {
  switch (counting) {
    case 'rosette':
      return inside(rosette(rounds));
    case 'star':
      return inside(star(rounds));
    case 'block':
      return inside(blocksApart(1));
    case 'patch':
      return { pieces: 1, seams: 0 };
  }
}

function inside(made: Result<Layout>): { pieces: number; seams: number } {
  if (!made.ok) throw new Error(`one of what is counted is ${made.problem.code}`);
  const { total, seams } = tally(made.value.patches);
  return { pieces: total, seams };
}

const NAMES: Readonly<Record<Counting, readonly [one: string, many: string]>> = {
  rosette: ['rosette', 'rosettes'],
  block: ['block', 'blocks'],
  star: ['star', 'stars'],
  patch: PATCHES,
};

/**
 * The noun for so many.
 *
 * @example
 * nounFor('rosette', 1) // "rosette"
 * nounFor('patch', 12) // "patches"
 */
export const nounFor = (counting: Counting, count: number): string => NAMES[counting][count === 1 ? 0 : 1];

/**
 * What is counted, said in full.
 *
 * @example
 * countedWords({ counting: 'rosette', rounds: 2 }) // "rosettes of 2 rounds"
 * countedWords({ counting: 'star', rounds: 4 }) // "stars, 4 a side"
 * countedWords({ counting: 'block', rounds: 0 }) // "blocks of three"
 */
export function countedWords({ counting, rounds }: Counted): string {
  if (counting === 'rosette') return `rosettes of ${rounds} ${rounds === 1 ? 'round' : 'rounds'}`;
  if (counting === 'star') return `stars, ${rounds} a side`;
  return counting === 'block' ? 'blocks of three' : 'patches';
}
