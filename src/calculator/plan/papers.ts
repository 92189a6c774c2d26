import { MM_PER_INCH } from '../../measure/length.ts';
import { wholeAbove } from '../../measure/result.ts';
import { templateSheet } from '../fabric/template-sheet.ts';
import { cutPatch } from '../shapes/cut.ts';
import type { ShapeName } from '../shapes/shape.ts';
import type { PlanRole } from './top.ts';

/** Sheets of paper, in inches: letter, and A4 of ISO 216. */
export const SHEETS = {
  letter: { width: 8.5, length: 11 },
  a4: { width: 210 / MM_PER_INCH, length: 297 / MM_PER_INCH },
} as const;

export type SheetName = keyof typeof SHEETS;

/** Most home printers leave this much blank at the edge, inches: common practice, no source. */
const MARGIN = 1 / 4;

/** The papers of one shape. */
export interface ShapePapers {
  readonly shape: ShapeName;
  readonly papers: number;
  readonly perSheet: number;
  /** Sheets; none where one paper is larger than the sheet. */
  readonly sheets: number;
}

/**
 * One paper a patch, at the finished size, as many to a sheet as /template prints. A paper may be used again when
 * its patch is sewn all round, so this is the most that are wanted.
 *
 * @example
 * papersFor([{ role: 'petal', shape: 'hexagon', pieces: 84 }], 1, 'letter')[0].perSheet // 25
 */
export function papersFor(roles: readonly PlanRole[], edge: number, sheet: SheetName): ShapePapers[] {
  return [...new Set(roles.map(({ shape }) => shape))].map((shape) => {
    const papers = roles.reduce((sum, one) => (one.shape === shape ? sum + one.pieces : sum), 0);
    const paper = cutPatch(shape, { edge }, 0, 'pointed');
    const perSheet = templateSheet(paper, SHEETS[sheet], MARGIN)?.plan.count ?? 0;
    return { shape, papers, perSheet, sheets: perSheet === 0 ? 0 : wholeAbove(papers / perSheet) };
  });
}
