import { ok, type Result } from '../../measure/result.ts';
import { type ClothNeed, clothNeed } from '../fabric/cloth-need.ts';
import { type Purchase, purchase, type SoldBy } from '../fabric/purchase.ts';
import { cutPatch } from '../shapes/cut.ts';
import type { CutPatch, ShapeName } from '../shapes/shape.ts';
import type { PlanRole } from './top.ts';
import type { PlanWish } from './wish.ts';

/** One thing that is cut from a cloth, and the length of cloth that it takes, inches. */
export interface ClothUse {
  /** The roles that it serves, or `backing`, `binding`, `border`. */
  readonly roles: readonly string[];
  /** Patches, the spare ones included; null of strips and panels. */
  readonly pieces: number | null;
  readonly length: number;
}

/** One cloth and all that is cut from it. */
export interface PlanCloth {
  readonly name: string;
  /** Named as scraps: cut from what there is, not bought. */
  readonly scraps: boolean;
  readonly uses: readonly ClothUse[];
  /** All uses one after another, inches. */
  readonly length: number;
}

/** A role with its cloth and what it would take by itself. */
export interface RoleNeed extends PlanRole {
  readonly cloth: string;
  readonly need: ClothNeed;
}

/** What is not bought but cut from the pile. */
const SCRAPS = /\b(?:scraps?|stash|leftovers?)\b/i;

export const isScraps = (cloth: string): boolean => SCRAPS.test(cloth);

/** The patch of a role, cut. */
export const patchOf = (shape: ShapeName, { edge, seam }: Pick<PlanWish, 'edge' | 'seam'>): CutPatch =>
  cutPatch(shape, { edge }, seam, 'pointed');

const same = (one: string, other: string): boolean => one.toLowerCase() === other.toLowerCase();

/** The cloth that a role was given, or one of its own, called as the role is. */
export const clothOf = (role: string, { cloths }: Pick<PlanWish, 'cloths'>): string =>
  cloths.find((one) => one.role === role)?.cloth ?? cloths.find((one) => one.role === 'all')?.cloth ?? role;

/** The cloth that so many patches of a shape take, as /yardage has it. */
export const needOf = (shape: ShapeName, pieces: number, wish: PlanWish): Result<ClothNeed> =>
  clothNeed(patchOf(shape, wish), pieces, wish.width, { spare: wish.spare, shrink: wish.shrink });

/** What so many patches of a shape need. */
export type Needed = (shape: ShapeName, pieces: number) => Result<ClothNeed>;

/** The needs of one wish, each searched for once: parts of the same number, and a part alone on its cloth, are alike. */
export function neededBy(wish: PlanWish): Needed {
  const found = new Map<string, Result<ClothNeed>>();
  return (shape, pieces) => {
    const key = `${shape} ${pieces}`;
    const need = found.get(key) ?? needOf(shape, pieces, wish);
    found.set(key, need);
    return need;
  };
}

/** Each role with its cloth and what it would take by itself. */
export function roleNeeds(roles: readonly PlanRole[], wish: PlanWish, needed: Needed): Result<RoleNeed[]> {
  const needs: RoleNeed[] = [];
  for (const role of roles) {
    const need = needed(role.shape, role.pieces);
    if (!need.ok) return need;
    needs.push({ ...role, cloth: clothOf(role.role, wish), need: need.value });
  }
  return ok(needs);
}

/**
 * The cloths of the patches, in the order in which they are first needed. Patches of one shape from one cloth
 * are cut together, so they may take less than the roles one by one.
 */
export function topCloths(needs: readonly RoleNeed[], needed: Needed): Result<PlanCloth[]> {
  const cloths: PlanCloth[] = [];
  for (const name of names(needs)) {
    const uses: ClothUse[] = [];
    const mine = needs.filter(({ cloth }) => same(cloth, name));
    for (const shape of new Set(mine.map((need) => need.shape))) {
      const together = mine.filter((need) => need.shape === shape);
      const need = needed(
        shape,
        together.reduce((sum, { pieces }) => sum + pieces, 0),
      );
      if (!need.ok) return need;
      uses.push({
        roles: together.map(({ role }) => role),
        pieces: need.value.pieces,
        length: need.value.buy,
      });
    }
    cloths.push(clothFrom(name, uses));
  }
  return ok(cloths);
}

const names = (needs: readonly RoleNeed[]): string[] =>
  needs.map(({ cloth }) => cloth).filter((name, i, all) => all.findIndex((one) => same(one, name)) === i);

const clothFrom = (name: string, uses: readonly ClothUse[]): PlanCloth => ({
  name,
  scraps: isScraps(name),
  uses,
  length: uses.reduce((sum, { length }) => sum + length, 0),
});

/** The same cloths with one more use: added to the cloth of that name, or as a cloth of its own. */
export function withUse(cloths: readonly PlanCloth[], name: string, use: ClothUse): PlanCloth[] {
  const at = cloths.findIndex((one) => same(one.name, name));
  if (at < 0) return [...cloths, clothFrom(name, [use])];
  return cloths.map((one, i) => (i === at ? clothFrom(one.name, [...one.uses, use]) : one));
}

/** What is bought of a cloth: nothing where it is cut from scraps. */
export const buyOf = ({ scraps, length }: PlanCloth, soldBy: SoldBy): Purchase | null =>
  scraps ? null : purchase(length, soldBy);

/** All that is bought, in yards or metres, each cloth rounded up as the shop does. */
export const totalBought = (cloths: readonly PlanCloth[], soldBy: SoldBy): number => {
  const perUnit = soldBy === 'yard' ? 8 : 10;
  const steps = cloths.reduce(
    (sum, cloth) => sum + Math.round((buyOf(cloth, soldBy)?.amount ?? 0) * perUnit),
    0,
  );
  return steps / perUnit;
};
