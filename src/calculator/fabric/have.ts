import type { CutPatch } from '../shapes/shape.ts';
import { bestLength } from './best-length.ts';
import { bestPlan } from './best-plan.ts';
import { type Handful, leastCloth } from './least-cloth.ts';

/** So many pieces of cloth that are alike. Inches. */
export interface Pile {
  readonly count: number;
  readonly width: number;
  readonly length: number;
  /** A length off the bolt: it is cut from one end and may serve several parts; other pieces serve one each. */
  readonly isLength: boolean;
  /** What it is kept for; empty where it may serve anything. */
  readonly role: string;
}

/** What one part of a layout needs. */
export interface Need {
  readonly role: string;
  readonly pieces: number;
  readonly patch: CutPatch;
}

/** Some pieces of a pile, or a part of a length, cut for one need. Piles and needs by their places in the lists. */
export interface Share {
  readonly pile: number;
  readonly need: number;
  readonly pieces: number;
  /** Patches that come of it: as many as are needed, or a few more. */
  readonly gives: number;
  /** Inches, of a length. */
  readonly length?: number;
}

export interface Allotment {
  readonly shares: readonly Share[];
  /** Patches still wanting, for each need. */
  readonly missing: readonly number[];
}

/** With so many needs every order of serving them is tried. */
const ALL_ORDERS = 4;

/**
 * What can be cut from what. Each need is served first from what is kept for it, then from pieces that may
 * serve anything, the least cloth that covers it, and last from lengths, a part of which stays whole. The
 * needs are served in the order that leaves the fewest parts and the fewest patches wanting, and then cuts
 * the least cloth.
 */
export function allot(piles: readonly Pile[], needs: readonly Need[]): Allotment {
  const yields = yieldsOf(piles, needs);
  const [first, ...others] = ordersOf(needs).map((order) => servedIn(order, piles, needs, yields));
  return others.reduce((best, one) => (isBetter(one, best) ? one : best), first!);
}

/** Patches of each need from one piece of each pile. */
function yieldsOf(piles: readonly Pile[], needs: readonly Need[]): number[][] {
  const known = new Map<CutPatch, Map<string, number>>();
  return needs.map(({ patch }) => {
    const sizes = known.get(patch) ?? new Map<string, number>();
    known.set(patch, sizes);
    return piles.map(({ width, length }) => {
      const size = [width, length].sort((a, b) => a - b).join();
      const count = sizes.get(size) ?? bestPlan(patch, { width, length })?.count ?? 0;
      sizes.set(size, count);
      return count;
    });
  });
}

function ordersOf(needs: readonly Need[]): number[][] {
  const all = needs.map((_, i) => i);
  if (all.length <= ALL_ORDERS) return permuted(all);
  return [all, all.toSorted((a, b) => needs[b]!.pieces - needs[a]!.pieces)];
}

const permuted = (all: readonly number[]): number[][] =>
  all.length <= 1
    ? [[...all]]
    : all.flatMap((first) => permuted(all.filter((one) => one !== first)).map((rest) => [first, ...rest]));

interface Served extends Allotment {
  readonly cloth: number;
}

/** Fewer parts with something wanting, then fewer patches wanting, then less cloth cut. */
function isBetter(one: Served, other: Served): boolean {
  const [parts, otherParts] = [one, other].map(({ missing }) => missing.filter((n) => n > 0).length);
  if (parts !== otherParts) return parts! < otherParts!;
  const [wanting, otherWanting] = [one, other].map(({ missing }) => missing.reduce((sum, n) => sum + n, 0));
  if (wanting !== otherWanting) return wanting! < otherWanting!;
  return one.cloth < other.cloth - 1e-6;
}

function servedIn(
  order: readonly number[],
  piles: readonly Pile[],
  needs: readonly Need[],
  yields: readonly (readonly number[])[],
): Served {
  const left = new Left(piles);
  const missing = needs.map(({ pieces }) => pieces);
  const shares: Share[] = [];
  for (const need of order) {
    for (const kept of [true, false]) {
      const served = serve(left, need, missing[need]!, kept, needs[need]!, yields[need]!);
      shares.push(...served);
      missing[need] = Math.max(0, missing[need]! - served.reduce((sum, { gives }) => sum + gives, 0));
    }
  }
  return { shares, missing, cloth: left.cut };
}

/** What is left of each pile while needs are served: whole pieces, and inches of each length. */
class Left {
  readonly piles: readonly Pile[];
  readonly pieces: number[];
  readonly lengths: number[][];
  /** Square inches cut so far. */
  cut = 0;

  constructor(piles: readonly Pile[]) {
    this.piles = piles;
    this.pieces = piles.map(({ count, isLength }) => (isLength ? 0 : count));
    this.lengths = piles.map(({ count, isLength, length }) =>
      isLength ? new Array<number>(count).fill(length) : [],
    );
  }
}

function serve(
  left: Left,
  need: number,
  wanted: number,
  kept: boolean,
  { role, patch }: Need,
  yields: readonly number[],
) {
  const suits = ({ role: keptFor }: Pile) => (kept ? keptFor !== '' && keptFor === role : keptFor === '');
  const shares: Share[] = [];
  let wanting = wanted;
  if (wanting <= 0) return shares;
  const handfuls = left.piles.flatMap((pile, at): Handful[] =>
    suits(pile) && left.pieces[at]! > 0 && yields[at]! > 0
      ? [{ at, count: left.pieces[at]!, gives: yields[at]!, cloth: pile.width * pile.length }]
      : [],
  );
  for (const { at, count } of leastCloth(handfuls, wanting)) {
    left.pieces[at]! -= count;
    left.cut += count * left.piles[at]!.width * left.piles[at]!.length;
    shares.push({ pile: at, need, pieces: count, gives: count * yields[at]! });
  }
  wanting -= shares.reduce((sum, { gives }) => sum + gives, 0);
  left.piles.forEach((pile, at) => {
    if (!suits(pile)) return;
    left.lengths[at]!.forEach((length, piece) => {
      if (wanting <= 0) return;
      const part = fromLength(patch, wanting, pile.width, length);
      if (part.gives === 0) return;
      left.lengths[at]![piece] = length - part.length;
      left.cut += part.length * pile.width;
      wanting -= part.gives;
      shares.push({ pile: at, need, pieces: 1, ...part });
    });
  });
  return shares;
}

/** As much of a length as so many patches take, or all of it. */
function fromLength(patch: CutPatch, pieces: number, width: number, length: number) {
  const all = bestPlan(patch, { width, length })?.count ?? 0;
  if (all <= pieces) return { gives: all, length: all === 0 ? 0 : length };
  const part = bestLength(patch, pieces, width);
  if (!part || part.length > length) return { gives: all, length };
  return { gives: pieces, length: part.length };
}
