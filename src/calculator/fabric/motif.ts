import { wholeAbove, wholeBelow } from '../../measure/result.ts';
import { centreOf } from '../shapes/centre.ts';
import { box } from '../shapes/extent.ts';
import { flatten } from '../shapes/flatten.ts';
import { hullOf } from '../shapes/hull.ts';
import type { Outline } from '../shapes/outline.ts';
import { type Placement, placeOutline } from '../shapes/place.ts';
import type { CutPatch } from '../shapes/shape.ts';
import { isApart, type Picking, picked, pickings } from './motif-grid.ts';
import type { ClothSize, LaidPlan } from './plan.ts';

/** How a print repeats: a motif in the middle of every rectangle so wide (along x) and so high (along y). Inches. */
export interface Repeat {
  readonly width: number;
  readonly height: number;
}

/** Patches cut so that each has a motif in its middle; round some that are not whole, too. */
export interface MotifYield extends LaidPlan {
  /** Whole motifs on a piece that begins with one. */
  readonly motifs: number;
  /** Patches at least, wherever in its repeat the print is cut. */
  readonly anyhow: number;
  /** How each patch is turned, from lying on its base. */
  readonly turnDegrees: number;
  /** Whether there is a patch round every motif; otherwise neighbours would overlap, and some are left out. */
  readonly every: boolean;
}

/** A patch at one turn: how far it reaches from its centre, and which motifs near it it would share cloth with. */
interface Round {
  readonly turnDegrees: number;
  readonly left: number;
  readonly below: number;
  readonly width: number;
  readonly height: number;
  readonly outline: Outline;
  readonly pickings: readonly Picking[];
}

/** Arcs are walked in steps that stray no further than this, in inches. */
const FINE = 1e-4;

/** Lying on its base, or standing on a side of it. */
const TURNS = [0, 90] as const;

/**
 * Fussy cutting: how many patches a print gives, one round each motif, its centre of gravity on the motif's.
 * All lie alike, so that all show the same. Where patches are larger than the repeat, an even choice of
 * motifs is taken whose patches do not overlap: at least so many.
 */
export function motifYield(
  patch: CutPatch,
  cloth: ClothSize,
  repeat: Repeat,
  { margin = 0 } = {},
): MotifYield {
  const rounds = TURNS.map((turn) => roundAt(patch, turn, repeat));
  const [best] = rounds
    .map((round) => ({ round, grid: gridOn(round, cloth, repeat, margin) }))
    .map(({ round, grid }) => ({ round, grid, choice: picked(round.pickings, grid.columns, grid.rows) }))
    .sort((a, b) => b.choice.count - a.choice.count);
  const { round, grid, choice } = best!;
  const sure = rounds.map((one) => {
    const { columns, rows } = surelyOn(one, cloth, repeat, margin);
    return picked(one.pickings, columns, rows).count;
  });
  return {
    ...{ patch, cloth, margin },
    motifs: wholeBelow(cloth.width / repeat.width) * wholeBelow(cloth.length / repeat.height),
    count: choice.count,
    anyhow: Math.max(...sure),
    turnDegrees: round.turnDegrees,
    every: round.pickings.some(({ every }) => every),
    placements: () =>
      choice
        .spots()
        .map(({ column, row }) =>
          placedAbout(
            round,
            (grid.firstColumn + column + 0.5) * repeat.width,
            (grid.firstRow + row + 0.5) * repeat.height,
          ),
        ),
  };
}

/** The cloth that so many patches round motifs need, of a usable width. */
export interface MotifLength {
  /** Inches of a piece that begins with a whole motif. */
  readonly length: number;
  /** Inches that are enough wherever in its repeat the print is cut. */
  readonly anyhow: number;
}

/** The least lengths that give so many patches; undefined where not one fits the width. */
export function motifLength(
  patch: CutPatch,
  pieces: number,
  width: number,
  repeat: Repeat,
): MotifLength | undefined {
  const lengths = TURNS.flatMap((turn) => {
    const round = roundAt(patch, turn, repeat);
    const { columns } = gridOn(round, { width, length: Number.POSITIVE_INFINITY }, repeat, 0);
    const sure = surelyOn(round, { width, length: 0 }, repeat, 0).columns;
    if (columns === 0) return [];
    const first = wholeAbove(round.below / repeat.height - 0.5);
    const rows = rowsFor(round, columns, pieces);
    const begins = (first + rows - 0.5) * repeat.height + round.height - round.below;
    const anyhow =
      sure === 0 ? Number.POSITIVE_INFINITY : rowsFor(round, sure, pieces) * repeat.height + round.height;
    return [{ length: begins, anyhow }];
  });
  if (lengths.length === 0) return undefined;
  return {
    length: Math.min(...lengths.map(({ length }) => length)),
    anyhow: Math.min(...lengths.map(({ anyhow }) => anyhow)),
  };
}

/** The least rows of motifs that hold so many patches. */
function rowsFor({ pickings }: Round, columns: number, pieces: number): number {
  let [few, enough] = [0, pieces * Math.max(...pickings.map(({ along, down }) => along * down))];
  while (enough - few > 1) {
    const middle = Math.floor((few + enough) / 2);
    if (picked(pickings, columns, middle).count >= pieces) enough = middle;
    else few = middle;
  }
  return enough;
}

function roundAt({ cut }: CutPatch, turnDegrees: number, repeat: Repeat): Round {
  const flat = flatten(cut.outline, FINE);
  const outline = placeOutline(flat, { x: 0, y: 0, turnDegrees });
  const centre = centreOf(outline);
  const { left, bottom, width, height } = box(placeOutline(cut.outline, { x: 0, y: 0, turnDegrees }));
  const about = { turnDegrees, left: centre.x - left, below: centre.y - bottom, width, height };
  const reach = { columns: Math.ceil(width / repeat.width), rows: Math.ceil(height / repeat.height) };
  const hull = hullOf(outline);
  const apart = (columns: number, rows: number) =>
    isApart(hull, columns * repeat.width, rows * repeat.height);
  return { ...about, outline: cut.outline, pickings: pickings(reach, apart) };
}

interface Grid {
  readonly firstColumn: number;
  readonly firstRow: number;
  readonly columns: number;
  readonly rows: number;
}

/** The motifs round which a patch lies on a piece of cloth that begins with a whole one. */
function gridOn(round: Round, { width, length }: ClothSize, repeat: Repeat, margin: number): Grid {
  const across = along(margin, width - margin, round.left, round.width, repeat.width);
  const up = along(margin, length - margin, round.below, round.height, repeat.height);
  return { firstColumn: across.first, columns: across.many, firstRow: up.first, rows: up.many };
}

function along(from: number, to: number, before: number, size: number, step: number) {
  const first = wholeAbove((from + before) / step - 0.5);
  const last = wholeBelow((to - (size - before)) / step - 0.5);
  return { first, many: Math.max(0, last - first + 1) };
}

/** How many rows and columns of motifs there are at least, wherever the print begins. */
function surelyOn(round: Round, { width, length }: ClothSize, repeat: Repeat, margin: number) {
  return {
    columns: Math.max(0, wholeBelow((width - 2 * margin - round.width) / repeat.width)),
    rows: Math.max(0, wholeBelow((length - 2 * margin - round.height) / repeat.height)),
  };
}

function placedAbout({ turnDegrees, left, below, outline }: Round, x: number, y: number): Placement {
  const held = box(placeOutline(outline, { x: 0, y: 0, turnDegrees }));
  return { x: x - left - held.left, y: y - below - held.bottom, turnDegrees };
}
