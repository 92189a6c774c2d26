import { ok, type Result, wrong } from '../../measure/result.ts';
import type { CutPatch } from '../shapes/shape.ts';
import { bestLength } from './best-length.ts';
import { type YardageOptions, yardage } from './yardage.ts';

/** The least cloth for some patches, whichever way they are cut. Inches. */
export interface ClothNeed {
  /** Patches to cut, the spare ones included. */
  readonly pieces: number;
  /** Of cloth, as cut. */
  readonly length: number;
  /** To buy, before the cloth shrinks. */
  readonly buy: number;
}

/** How much cloth of a usable width so many patches need at the least. */
export function clothNeed(
  patch: CutPatch,
  pieces: number,
  usableWidth: number,
  options: YardageOptions = {},
): Result<ClothNeed> {
  const trade = yardage(patch, pieces, usableWidth, options);
  if (!trade.ok) return trade;
  const { pieces: wanted, best } = trade.value;
  const least = bestLength(patch, wanted, usableWidth, best.length);
  if (!least) return wrong('patch-wider-than-cloth', { shape: patch.shape, width: usableWidth });
  return ok({ pieces: wanted, length: least.length, buy: least.length / (1 - (options.shrink ?? 0)) });
}
