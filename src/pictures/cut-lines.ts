import type { BestPlan } from '../calculator/fabric/best-plan.ts';
import { rowsFor } from '../calculator/fabric/lay.ts';
import type { Repeat } from '../calculator/fabric/motif.ts';
import type { CuttingPlan } from '../calculator/fabric/plan.ts';
import type { Region } from '../calculator/fabric/search/block.ts';
import type { Point } from '../calculator/shapes/outline.ts';

/** A line along or up the cloth, in inches from its near left corner. */
export interface Line {
  readonly from: Point;
  readonly to: Point;
}

/** The lines that are drawn over a piece of cloth. */
export interface CutLines {
  readonly straight: readonly Line[];
  readonly repeat: readonly Line[];
}

/** The cuts from edge to edge that part strips, or rows of squares; rows that share lines have none. */
export function stripLines(plan: CuttingPlan, pieces: number): CutLines {
  const { cloth, perRow } = plan;
  return { straight: linesIn(plan, rowsFor(pieces, perRow), { x: 0, y: 0, ...cloth }), repeat: [] };
}

/** The cuts that part the blocks of the best plan, and those that part the strips within each. */
export function blockLines({ blocks }: BestPlan): CutLines {
  const apart = blocks.length > 1 ? blocks.flatMap(edgesOf) : [];
  const within = blocks.flatMap((block) =>
    block.cut.as === 'lay' ? linesIn(block.cut.plan, block.cut.plan.rows, block) : [],
  );
  return { straight: [...apart, ...within], repeat: [] };
}

/** Where a print repeats, from its corner on. */
export function repeatLines({ width, height }: Repeat, cloth: Pick<Region, 'width' | 'length'>): CutLines {
  const along = stepsTo(cloth.length, height).map((y) => ({ from: { x: 0, y }, to: { x: cloth.width, y } }));
  const across = stepsTo(cloth.width, width).map((x) => ({ from: { x, y: 0 }, to: { x, y: cloth.length } }));
  return { straight: [], repeat: [...along, ...across] };
}

/** More lines than this would only make the picture grey. */
const MOST_REPEATS = 400;

function stepsTo(length: number, step: number): number[] {
  const many = Math.floor(length / step);
  return many > MOST_REPEATS ? [] : Array.from({ length: many }, (_, i) => (i + 1) * step);
}

function linesIn(plan: CuttingPlan, rows: number, { x, y, width, length }: Region): Line[] {
  const { method, direction, rowHeight, rowSteps, margin } = plan;
  if (method !== 'strips' && method !== 'squares') return [];
  const levels = new Set<number>();
  let start = margin;
  for (let row = 0; row < rows; row++) {
    for (const level of [start, start + rowHeight]) levels.add(Math.round(level * 1e6) / 1e6);
    start += rowSteps[row % 2]!;
  }
  return [...levels].map((level) =>
    direction === 'across'
      ? { from: { x, y: y + level }, to: { x: x + width, y: y + level } }
      : { from: { x: x + level, y }, to: { x: x + level, y: y + length } },
  );
}

function edgesOf({ x, y, width, length }: Region): Line[] {
  const corners = [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + length },
    { x, y: y + length },
  ];
  return corners.map((from, i) => ({ from, to: corners[(i + 1) % 4]! }));
}
