import type { Outline, Point } from '../calculator/shapes/outline.ts';
import { arcBetween } from '../calculator/shapes/sides.ts';
import { px } from './svg.ts';

/**
 * Where inches come to lie on a page: so many pixels (or points) an inch, from a corner. The calculator's
 * patches have y upward; a page has it downward.
 */
export interface Scale {
  readonly perInch: number;
  /** Where (0, 0) comes to lie. */
  readonly x: number;
  readonly y: number;
  /** 1 where y runs down in both, −1 where it must be turned over. */
  readonly down: 1 | -1;
}

export const at = ({ perInch, x, y, down }: Scale, point: Point): Point => ({
  x: x + point.x * perInch,
  y: y + down * point.y * perInch,
});

/**
 * An outline as path data, its arcs as arcs.
 *
 * @example
 * pathOf([{ x: 0, y: 0 }, { x: 1, y: 0 }, { x: 0, y: 1 }], { perInch: 10, x: 0, y: 20, down: -1 }) // "M0 20L10 20L0 10Z"
 * pathOf([{ x: 0, y: 0, bulge: 1 }, { x: 2, y: 0 }], { perInch: 10, x: 0, y: 0, down: -1 }) // "M0 0A10 10 0 0 0 20 0Z"
 */
export function pathOf(outline: Outline, scale: Scale): string {
  const start = at(scale, outline[0]!);
  const parts = [`M${px(start.x)} ${px(start.y)}`];
  outline.forEach((corner, i) => {
    const next = outline[i + 1] ?? outline[0]!;
    const { bulge = 0 } = corner;
    const last = i === outline.length - 1;
    if (bulge !== 0) parts.push(arc(corner, next, bulge, scale));
    else if (!last) {
      const to = at(scale, next);
      parts.push(`L${px(to.x)} ${px(to.y)}`);
    }
  });
  return `${parts.join('')}Z`;
}

function arc(from: Point, next: Point, bulge: number, scale: Scale): string {
  const { radius, sweep } = arcBetween(from, next, bulge);
  const r = px(radius * scale.perInch);
  const large = Math.abs(sweep) > Math.PI ? 1 : 0;
  // On a page whose y runs down, a turn that was counter-clockwise still looks so, which SVG calls sweep 0.
  const clockwise = sweep * scale.down > 0 ? 1 : 0;
  const to = at(scale, next);
  return `A${r} ${r} 0 ${large} ${clockwise} ${px(to.x)} ${px(to.y)}`;
}
