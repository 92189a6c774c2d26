import type { Arrangement } from '../layouts/arrangement.ts';
import type { Sides } from '../layouts/field.ts';
import type { Path } from '../layouts/garden.ts';
import type { Rows } from '../layouts/lattice.ts';
import type { StarSet } from '../layouts/stars.ts';
import type { ShapeName } from '../shapes/shape.ts';
import type { StitchMethod } from '../stitching/method.ts';

/** What the top of a quilt may be laid out as. `pieces` is so many loose patches of one shape. */
export const PLAN_LAYOUTS = [
  'field',
  'rosette',
  'garden',
  'star',
  'stars',
  'diamonds',
  'blocks',
  'pieces',
] as const;

export type PlanLayout = (typeof PLAN_LAYOUTS)[number];

/** A finished size in inches, and the name of the bed it was given by. */
export interface PlanSize {
  readonly width: number;
  readonly height: number;
  readonly bed?: string;
}

/** The cloth for one role, as a member named it. */
export interface RoleCloth {
  readonly role: string;
  readonly cloth: string;
}

/**
 * A quilt as it is wished for, with everything settled that its numbers depend on, so that the same wish gives
 * the same plan whoever asks. Lengths in inches. What a layout has no use for is not there.
 */
export interface PlanWish {
  readonly layout: PlanLayout;
  /** The finished side of every patch. */
  readonly edge: number;
  /** The size to fill, or the size of the quilt that rosettes or stars are sewn on. */
  readonly quilt?: PlanSize;
  /** Of loose pieces. */
  readonly shape?: ShapeName;
  /** So many pieces, or so many rosettes or stars that are not joined. */
  readonly number?: number;
  readonly rosettes?: Arrangement;
  readonly stars?: Arrangement;
  readonly blocks?: number;
  readonly rounds?: number;
  readonly path?: Path | 'diamonds';
  readonly outer?: boolean;
  readonly set?: StarSet;
  /** Diamonds along a side: of a star's point, of a diamond, of a hexagon of blocks. */
  readonly side?: number;
  readonly sides?: Sides;
  readonly rows?: Rows;
  readonly cloths: readonly RoleCloth[];
  readonly seam: number;
  /** Usable width of every cloth. */
  readonly width: number;
  /** Parts of one: 0.05 is five in a hundred. */
  readonly spare: number;
  readonly shrink: number;
  readonly method: StitchMethod;
  readonly stitches: number;
  /** Minutes a seam, where the asker has a pace of her own. */
  readonly pace?: number;
  /** Told from her logs, and so for a seam of this side; where nothing stands here, for any seam. */
  readonly paceFrom?: 'logs';
  /** Hours of stitching a week. */
  readonly hours: number;
  /** The day it starts, YYYY-MM-DD. */
  readonly start: string;
  /** The finished width of a border, where there is one. */
  readonly border?: number;
}
