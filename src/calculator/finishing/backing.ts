import { TOLERANCE, wholeAbove } from '../../measure/result.ts';

/** A backing to be pieced from one cloth. Lengths in inches. */
export interface BackingAsk {
  readonly width: number;
  readonly height: number;
  /** More than the top on every side. */
  readonly over: number;
  /** Usable width of the cloth. */
  readonly usable: number;
  /** Whether the print must run down the quilt, or may lie either way. */
  readonly grain: 'any' | 'lengthwise';
}

/** Which way the cloth's length lies, and with it the seams: down the quilt, or across it. */
export type BackingDirection = 'lengthwise' | 'crosswise';

/** Panels of the full usable width, side by side. Inches. */
export interface BackingWay {
  readonly direction: BackingDirection;
  readonly panels: number;
  /** How long each panel is cut. */
  readonly panelLength: number;
  /** All panels one after another. */
  readonly length: number;
}

export interface Backing {
  readonly needWidth: number;
  readonly needHeight: number;
  readonly best: BackingWay;
  /** The way that was not chosen. */
  readonly other: BackingWay;
}

/** What each panel gives to a seam, inches: half an inch, pressed open. Common practice, no source. */
export const PANEL_SEAM = 1 / 2;

/** More than the top on every side, inches. Common practice, no source: 2 to 6; longarm services ask 4 to 6. */
export const BACKING_OVER = 4;

/**
 * Panels for a backing: n of them, less the seams between, must reach across, so n = ⌈(across − 2e)/(U − 2e)⌉.
 * The way that takes less cloth is best; of equal ones that with fewer panels, then the one with seams down
 * the quilt. With a print that has an up and a down only the latter will do. Derived; allowances are common
 * practice, no source.
 *
 * @example
 * backing({ width: 60, height: 72, over: 4, usable: 40, grain: 'any' }).best // {"direction":"lengthwise","panels":2,"panelLength":80,"length":160}
 * backing({ width: 60, height: 72, over: 4, usable: 42, grain: 'any' }).best.length // 136
 * backing({ width: 60, height: 72, over: 4, usable: 42, grain: 'lengthwise' }).best.length // 160
 */
export function backing({ width, height, over, usable, grain }: BackingAsk): Backing {
  const needWidth = width + 2 * over;
  const needHeight = height + 2 * over;
  const lengthwise = wayOf('lengthwise', needWidth, needHeight, usable);
  const crosswise = wayOf('crosswise', needHeight, needWidth, usable);
  const turned = grain === 'any' && isBetter(crosswise, lengthwise);
  return {
    needWidth,
    needHeight,
    best: turned ? crosswise : lengthwise,
    other: turned ? lengthwise : crosswise,
  };
}

function wayOf(direction: BackingDirection, across: number, panelLength: number, usable: number): BackingWay {
  const panels = panelsAcross(across, usable);
  return { direction, panels, panelLength, length: panels * panelLength };
}

/**
 * How many widths of cloth reach across, the seams between them taken off.
 *
 * @example
 * panelsAcross(68, 40) // 2
 * panelsAcross(98, 106) // 1
 */
export function panelsAcross(across: number, usable: number): number {
  return Math.max(1, wholeAbove((across - 2 * PANEL_SEAM) / (usable - 2 * PANEL_SEAM)));
}

function isBetter(one: BackingWay, other: BackingWay): boolean {
  const less = other.length - one.length;
  return Math.abs(less) <= TOLERANCE ? one.panels < other.panels : less > 0;
}
