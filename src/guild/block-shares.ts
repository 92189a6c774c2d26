import { blocksApart } from '../calculator/layouts/blocks.ts';
import { finishedSize, type Layout } from '../calculator/layouts/layout.ts';
import { rosette } from '../calculator/layouts/rosette.ts';
import { star } from '../calculator/layouts/star.ts';
import { tally } from '../calculator/layouts/tally.ts';
import { sharedWhole } from '../calculator/sharing/bundles.ts';
import { type Groups, partsOf, rowsOf } from '../calculator/sharing/sewing-order.ts';
import { type Share, sharesOf } from '../calculator/sharing/shares.ts';
import { ok, type Result, wrong } from '../measure/result.ts';
import { type Counted, countedWords, nounFor } from './counted.ts';
import type { Undated } from './schedule.ts';

/** Blocks of one kind: four rosettes of three rounds. */
export interface Blocks extends Counted {
  readonly count: number;
}

/** A layout too large to share out is one for which nobody would cut a list. */
const MOST_PATCHES = 50_000;

/** A layout's sewing in equal shares, each described by where it lies and what it takes. Sizes in inches. */
export function sharedLayout(layout: Layout, size: number, parts: number): Result<Undated[]> {
  const { patches } = layout;
  if (patches.count > MOST_PATCHES)
    return wrong('too-many-patches', { count: patches.count, most: MOST_PATCHES });
  if (patches.count < parts) return wrong('more-parts-than-patches', { patches: patches.count, parts });
  let before = 0;
  return ok(
    sharesOf(patches, parts).map((share) => {
      const words = whereWords(layout, share, before);
      before += share.patches.length;
      const { pieces, inside, joining, width, height } = share;
      return { words, pieces, inside, joining, width: width * size, height: height * size };
    }),
  );
}

/** Which patches they are: by row, by rosette or star, else counted from the first that is sewn. */
function whereWords({ patches, name }: Layout, share: Share, before: number): string {
  if (name === 'field') return groupWords(rowsOf(patches), share, 'row');
  const parts = name === 'rosette' ? null : partsOf(patches);
  if (parts) return groupWords(parts, share, name.startsWith('star') ? 'star' : 'rosette');
  return `patches ${before + 1} to ${before + share.patches.length}`;
}

/** "8 of row 4, rows 5 to 7, 3 of row 8". */
function groupWords({ of, count }: Groups, share: Share, noun: string): string {
  const held = new Map<number, number>();
  for (const i of share.patches) held.set(of[i]!, (held.get(of[i]!) ?? 0) + 1);
  const groups = [...held].sort(([a], [b]) => a - b);
  const whole = groups.filter(([one, pieces]) => pieces === count[one]).map(([one]) => one);
  const some = (rest: typeof groups) => rest.map(([one, pieces]) => `${pieces} of ${noun} ${one}`);
  const [first, last] = [whole[0], whole.at(-1)];
  if (first === undefined || last === undefined) return some(groups).join(', ');
  const full = first === last ? `${noun} ${first}` : `${noun}s ${first} to ${last}`;
  return [
    ...some(groups.filter(([one]) => one < first)),
    full,
    ...some(groups.filter(([one]) => one > last)),
  ].join(', ');
}

/** Whole blocks shared out so that the shares are as equal in seam as whole blocks can be. */
export function sharedBlocks(blocks: readonly Blocks[], size: number, parts: number): Result<Undated[]> {
  const kinds = blocks.map((kind) => ({ ...kind, ...insideOf(kind) }));
  const each = kinds.flatMap((kind) =>
    Array.from({ length: kind.count }, () => ({ kind, seamLength: kind.inside * size })),
  );
  if (each.length < parts) return wrong('more-parts-than-blocks', { blocks: each.length, parts });
  const shares = sharedWhole(each, parts).map((share) => share.map(({ kind }) => kind));
  return ok(shares.map((share) => bundle(kinds, share)));
}

type Kind = Blocks & { readonly inside: number; readonly pieces: Undated['pieces'] };

function bundle(kinds: readonly Kind[], share: readonly Kind[]): Undated {
  const held = kinds
    .map((kind) => ({ kind, count: share.filter((one) => one === kind).length }))
    .filter(({ count }) => count > 0);
  return {
    words: held.map(({ kind, count }) => blocksWords({ ...kind, count })).join(', '),
    pieces: held.flatMap(({ kind, count }) =>
      kind.pieces.map((pieces) => ({ ...pieces, count: pieces.count * count })),
    ),
    inside: held.reduce((sum, { kind, count }) => sum + kind.inside * count, 0),
    joining: 0,
    width: 0,
    height: 0,
  };
}

/**
 * Blocks of one kind in words.
 *
 * @example
 * blocksWords({ counting: 'rosette', rounds: 3, count: 2 }) // "2 rosettes of 3 rounds"
 * blocksWords({ counting: 'star', rounds: 4, count: 1 }) // "1 star, 4 a side"
 */
export const blocksWords = (of: Blocks): string =>
  `${of.count} ${countedWords(of).replace(nounFor(of.counting, 2), nounFor(of.counting, of.count))}`;

const LAYOUTS: Readonly<Record<'rosette' | 'star' | 'block', (rounds: number) => Result<Layout>>> = {
  rosette: (rounds) => rosette(rounds),
  star: (side) => star(side),
  block: () => blocksApart(1),
};

/** Pieces and seams of one block, read from its layout. */
function insideOf({ counting, rounds }: Counted): Pick<Kind, 'inside' | 'pieces'> {
  if (counting === 'patch') return { inside: 0, pieces: [] };
  const made = LAYOUTS[counting](rounds);
  if (!made.ok) throw new Error(`one block is ${made.problem.code}`);
  const [share] = sharesOf(made.value.patches, 1);
  return { inside: share?.inside ?? 0, pieces: share?.pieces ?? [] };
}

/** How large a layout finishes, inches. */
export function sizeOf(layout: Layout, size: number): { width: number; height: number } {
  const { width, height } = finishedSize(layout, tally(layout.patches), size);
  return { width, height };
}
