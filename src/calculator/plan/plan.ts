import { ok, type Result } from '../../measure/result.ts';
import { type MinutesSpan, minutesBefore } from '../stitching/before.ts';
import { type FinishDates, finishDates } from '../stitching/finish-dates.ts';
import { type StitchingTime, stitchingTime } from '../stitching/time.ts';
import { clothOf, neededBy, type PlanCloth, type RoleNeed, roleNeeds, topCloths, withUse } from './cloths.ts';
import { finishingOf, type PlanFinishing } from './finishing.ts';
import { papersFor, type ShapePapers, type SheetName } from './papers.ts';
import { type Top, topOf } from './top.ts';
import type { PlanSize, PlanWish } from './wish.ts';

/** A quilt worked out from a wish: every number by the same rules as the single commands. */
export interface Plan {
  readonly wish: PlanWish;
  readonly top: Top;
  readonly roles: readonly RoleNeed[];
  /** The patches' cloths. */
  readonly topCloths: readonly PlanCloth[];
  /** All cloths, with what finishing adds to them. */
  readonly cloths: readonly PlanCloth[];
  /** Papers by shape; none where nothing is sewn over paper. */
  readonly papers: readonly ShapePapers[];
  /** Null where no seam is known. */
  readonly sewing: StitchingTime | null;
  /** The days it may be done; null where that is past the calendar, or no seam is known. */
  readonly done: FinishDates | null;
  /** Cutting, and basting over papers, which the sewing does not hold. */
  readonly before: MinutesSpan;
  /** Null where the quilt's size is not known. */
  readonly finishing: PlanFinishing | null;
}

/**
 * Works a wish out. Problems are those of its parts: `plan-needs`, `too-many-patches`, `patch-wider-than-cloth`,
 * `plan-cloth-narrow`.
 */
export function planFrom(wish: PlanWish, sheet: SheetName = 'letter'): Result<Plan> {
  const top = topOf(wish);
  if (!top.ok) return top;
  const needed = neededBy(wish);
  const roles = roleNeeds(top.value.roles, wish, needed);
  if (!roles.ok) return roles;
  const cloths = topCloths(roles.value, needed);
  if (!cloths.ok) return cloths;
  const size = quiltSize(top.value, wish);
  const finishing = size ? finishingOf(size, wish) : null;
  if (finishing && !finishing.ok) return finishing;
  const sewing = sewingOf(top.value.seams, wish);
  const over = wish.method === 'whip';
  return ok({
    wish,
    top: top.value,
    roles: roles.value,
    topCloths: cloths.value,
    cloths: finishing ? withFinishing(cloths.value, finishing.value, wish) : cloths.value,
    papers: over ? papersFor(top.value.roles, wish.edge, sheet) : [],
    sewing,
    done: sewing ? doneOn(sewing, wish) : null,
    before: minutesBefore(top.value.total, over),
    finishing: finishing?.value ?? null,
  });
}

/** What is finished: the top as it comes out, or the quilt that so many rosettes or stars are sewn on. */
function quiltSize({ size, joined }: Top, wish: PlanWish): PlanSize | null {
  if (wish.quilt && !fillsQuilt(wish)) return wish.quilt;
  return joined ? size : null;
}

/** Whether the quilt's size says how much is laid out; otherwise the layout's own numbers do. */
export const fillsQuilt = ({ layout, rosettes, stars, blocks, side }: PlanWish): boolean =>
  layout === 'field' ||
  (layout === 'garden' && rosettes === undefined) ||
  (layout === 'stars' && stars === undefined) ||
  (layout === 'blocks' && blocks === undefined && side === undefined);

/** The sewing of so many seams; null where none is known. */
export function sewingOf(seams: number, wish: PlanWish): StitchingTime | null {
  if (seams === 0) return null;
  const { edge, method, stitches, pace, hours } = wish;
  return stitchingTime({
    ...{ seams, seamLengthInches: edge, method, stitchesPerInch: stitches, hoursPerWeek: hours },
    ...(pace === undefined ? {} : { minutesPerSeam: pace }),
  });
}

function doneOn({ weeksLow, weeks, weeksHigh }: StitchingTime, { start }: PlanWish): FinishDates | null {
  const dates = finishDates(start, weeksLow, weeks, weeksHigh);
  return dates.ok ? dates.value : null;
}

function withFinishing(
  cloths: readonly PlanCloth[],
  { backing, binding, border }: PlanFinishing,
  wish: PlanWish,
): PlanCloth[] {
  const uses: [string, number][] = [
    ...(border ? [['border', border.length] as [string, number]] : []),
    ['backing', backing.best.length],
    ['binding', binding.length],
  ];
  return uses.reduce<PlanCloth[]>(
    (all, [role, length]) =>
      withUse(all, clothOf(role, finishOnly(wish)), { roles: [role], pieces: null, length }),
    [...cloths],
  );
}

/** A cloth said for everything is said for the patches; the back has its own unless it is named. */
const finishOnly = ({ cloths }: PlanWish): Pick<PlanWish, 'cloths'> => ({
  cloths: cloths.filter(({ role }) => role !== 'all'),
});
