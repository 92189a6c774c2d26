import { ok, type Result } from '../../measure/result.ts';
import type { StitchingTime } from '../stitching/time.ts';
import { neededBy, type PlanCloth, type RoleNeed, roleNeeds, topCloths } from './cloths.ts';
import { papersFor, type ShapePapers, type SheetName } from './papers.ts';
import { sewingOf } from './plan.ts';
import { type Top, topOf } from './top.ts';
import type { PlanWish } from './wish.ts';

/** One part of a kit: for each member, for all of them, and the cloth for all with the spare ones. */
export interface KitRole extends RoleNeed {
  /** Patches in each kit. */
  readonly each: number;
}

/** The same plan for so many members. */
export interface Kit {
  readonly wish: PlanWish;
  readonly members: number;
  readonly top: Top;
  readonly roles: readonly KitRole[];
  /** Patches in each kit, in all kits, and with the spare ones. */
  readonly perKit: number;
  readonly needed: number;
  readonly pieces: number;
  readonly cloths: readonly PlanCloth[];
  /** Papers for all kits. */
  readonly papers: readonly ShapePapers[];
  /** What one member sews. */
  readonly sewing: StitchingTime | null;
}

/**
 * A plan times so many members. Spare patches are reckoned on the whole batch, so that a part with one patch
 * a kit is not doubled by five in a hundred; they stay with whoever packs, for late joiners.
 */
export function kitFrom(wish: PlanWish, members: number, sheet: SheetName = 'letter'): Result<Kit> {
  const one = topOf(wish);
  if (!one.ok) return one;
  const top = one.value;
  const needed = neededBy(wish);
  const batch = top.roles.map((role) => ({ ...role, pieces: role.pieces * members }));
  const needs = roleNeeds(batch, wish, needed);
  if (!needs.ok) return needs;
  const cloths = topCloths(needs.value, needed);
  if (!cloths.ok) return cloths;
  const roles = needs.value.map((need, i) => ({ ...need, each: top.roles[i]?.pieces ?? 0 }));
  return ok({
    wish,
    members,
    top,
    roles,
    perKit: top.total,
    needed: top.total * members,
    pieces: roles.reduce((sum, { need }) => sum + need.pieces, 0),
    cloths: cloths.value,
    papers: wish.method === 'whip' ? papersFor(batch, wish.edge, sheet) : [],
    sewing: sewingOf(top.seams, wish),
  });
}
