import { type Result, wrong } from '../../measure/result.ts';
import type { PatchList } from './patches.ts';
import type { Tally } from './tally.ts';

/** Part of the layout's frame: inches, x to the right, y down. */
export interface Rectangle {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** A way to set patches together. What else is known of it, its own file says. */
export interface Layout {
  readonly name: string;
  readonly patches: PatchList;
  /** What is left when the edges have been trimmed; null where nothing is trimmed. */
  readonly trim: Rectangle | null;
}

/** The most patches that are placed for one question. */
export const LARGEST_LAYOUT = 1_000_000;

/** Refuses a count that is past the largest layout; null when it may be placed. */
export const tooMany = (count: number): Result<never> | null =>
  count > LARGEST_LAYOUT ? wrong('too-many-patches', { count, most: LARGEST_LAYOUT }) : null;

/** The finished size of a layout in inches: its trimmed rectangle, or else the box round its patches. */
export function finishedSize(layout: Layout, counted: Tally, edge: number): Rectangle {
  if (layout.trim !== null) return layout.trim;
  return {
    left: counted.left * edge,
    top: counted.top * edge,
    width: counted.width * edge,
    height: counted.height * edge,
  };
}
