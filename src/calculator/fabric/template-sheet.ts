import type { CutPatch } from '../shapes/shape.ts';
import { bestPlan } from './best-plan.ts';
import type { ClothSize, LaidPlan } from './plan.ts';

/**
 * Patches nested on a sheet of paper, with a band left free for the check bars and the words. All in inches;
 * the sheet's near left corner is (0, 0).
 */
export interface TemplateSheet {
  readonly sheet: ClothSize;
  /** Left free along every edge, as most printers need. */
  readonly margin: number;
  /** The band runs along the foot of the sheet, or up its right side. */
  readonly band: 'foot' | 'side';
  /** The plan on the rest of the sheet; its placements are raised by `up` to lie on the sheet. */
  readonly plan: LaidPlan;
  readonly up: number;
}

/** How wide the band is: two lines of small print, a bar with its figure. */
export const BAND = 0.6;

/** The band goes where more patches are left; at the foot where it makes no difference. Undefined where none fits. */
export function templateSheet(patch: CutPatch, sheet: ClothSize, margin: number): TemplateSheet | undefined {
  const parts = [
    { band: 'foot', up: BAND, left: { width: sheet.width, length: sheet.length - BAND } },
    { band: 'side', up: 0, left: { width: sheet.width - BAND, length: sheet.length } },
  ] as const;
  const [foot, side] = parts.map(({ band, up, left }) => {
    const plan = bestPlan(patch, left, { margin });
    return plan && { sheet, margin, band, plan, up };
  });
  return (side?.plan.count ?? 0) > (foot?.plan.count ?? 0) ? side : foot;
}
