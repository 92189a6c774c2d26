import { type Result, wrong } from '../../measure/result.ts';
import { BACKING_OVER, type Backing, backing } from '../finishing/backing.ts';
import { type Batting, batting } from '../finishing/batting.ts';
import { BINDING_EXTRA, type StraightBinding, straightBinding } from '../finishing/binding.ts';
import { type Border, border } from '../finishing/border.ts';
import { outlineLength } from '../finishing/outline.ts';
import type { PlanSize, PlanWish } from './wish.ts';

/** The strip of a double binding, inches: common practice, no source. */
export const PLAN_STRIP = 2.5;

/** What a quilt of a known size is finished with. */
export interface PlanFinishing {
  /** The finished quilt, its border included. */
  readonly size: PlanSize;
  readonly border: Border | null;
  readonly backing: Backing;
  readonly batting: Batting;
  readonly binding: StraightBinding;
  /** The binding's length, inches. */
  readonly bindingLength: number;
}

/** Backing, batting and straight binding of a quilt, and its border where one is wished for, as /finish has them. */
export function finishingOf(top: PlanSize, wish: PlanWish): Result<PlanFinishing> {
  const { width: usable, seam } = wish;
  if (usable <= PLAN_STRIP) return wrong('plan-cloth-narrow', { width: usable });
  if (wish.border !== undefined && wish.border + 2 * seam > usable)
    return wrong('plan-cloth-narrow', { width: usable });
  const bordered =
    wish.border === undefined
      ? null
      : border({ width: top.width, height: top.height, border: wish.border, seam, usable, join: 'butted' });
  const size = bordered ? { width: bordered.newWidth, height: bordered.newHeight } : top;
  const { width, height } = size;
  const bindingLength = outlineLength({ edge: 'straight', width, height }) + BINDING_EXTRA;
  return {
    ok: true,
    value: {
      size,
      border: bordered,
      backing: backing({ width, height, over: BACKING_OVER, usable, grain: 'any' }),
      batting: batting(width, height, BACKING_OVER),
      binding: straightBinding(bindingLength, PLAN_STRIP, usable),
      bindingLength,
    },
  };
}
