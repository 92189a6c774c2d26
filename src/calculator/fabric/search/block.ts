import type { Placement } from '../../shapes/place.ts';
import type { CuttingPlan, Direction } from '../plan.ts';

/** A part of a piece of cloth that is cut in one way. Inches; x along the cloth's width, y along its length. */
export interface Block {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly length: number;
  readonly count: number;
  readonly cut: BlockCut;
  /** Where each patch's cut outline lies on the whole piece of cloth. */
  placements(): Placement[];
}

/** How a block is cut: in one of the trade's ways, in rows at some turn, or each patch in its own place. */
export type BlockCut =
  | { readonly as: 'lay'; readonly plan: CuttingPlan }
  | {
      readonly as: 'rows';
      readonly direction: Direction;
      readonly rows: number;
      /** Degrees that each patch is turned by, from lying on its base along the row. */
      readonly turnDegrees: number;
      /** Whether patches in a row lie head to tail, or the rows do by turns. */
      readonly topAndTail: boolean;
      /** From a patch to the next one of its row that lies alike. */
      readonly step: number;
      /** How much further along each second row starts, or each next one: from 0 up to a step. */
      readonly lead: number;
      readonly leads: 'each second' | 'each next';
      readonly rowHeight: number;
      readonly rowSteps: readonly [number, number];
    }
  | { readonly as: 'placed' };

/** A rectangle of cloth: where its corner lies and how large it is. */
export interface Region {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly length: number;
}

export const moved = (places: readonly Placement[], x: number, y: number): Placement[] =>
  places.map((place) => ({ ...place, x: place.x + x, y: place.y + y }));

/** A quarter turn clockwise of a region so wide along its rows: what ran along x runs along y. */
export const aQuarterTurned = (places: readonly Placement[], along: number): Placement[] =>
  places.map(({ x, y, turnDegrees }) => ({ x: y, y: along - x, turnDegrees: turnDegrees - 90 }));
