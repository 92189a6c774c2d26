import type { Point } from '../calculator/shapes/outline.ts';
import { lettered, SIZE, widthOf } from './lettering.ts';
import { INK, PAPER } from './palette.ts';
import { element, px } from './svg.ts';

export interface LineLook {
  readonly colour?: string;
  readonly width?: number;
  readonly dashed?: boolean;
}

/** The dashes of the sewing line. */
export const DASHES = '16 10';

const HEAD = 18;

/** A plain line from point to point. */
export const line = (
  a: Point,
  b: Point,
  { colour = INK, width = 3, dashed = false }: LineLook = {},
): string =>
  element('path', {
    d: `M${px(a.x)} ${px(a.y)}L${px(b.x)} ${px(b.y)}`,
    stroke: colour,
    'stroke-width': width,
    'stroke-dasharray': dashed ? DASHES : undefined,
    fill: 'none',
  });

/** A line with an arrowhead at both ends, which lie exactly where it measures. */
export function arrows(a: Point, b: Point, look: LineLook = {}): string {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  if (length < 1) return '';
  const along = { x: (b.x - a.x) / length, y: (b.y - a.y) / length };
  const head = Math.min(HEAD, length / 2);
  return (
    line(a, b, look) +
    arrowhead(a, along, head, look.colour) +
    arrowhead(b, { x: -along.x, y: -along.y }, head, look.colour)
  );
}

function arrowhead(tip: Point, along: Point, head: number, colour = INK): string {
  const back = { x: tip.x + along.x * head, y: tip.y + along.y * head };
  const aside = { x: -along.y * head * 0.4, y: along.x * head * 0.4 };
  return element('path', {
    d: `M${px(tip.x)} ${px(tip.y)}L${px(back.x + aside.x)} ${px(back.y + aside.y)}L${px(back.x - aside.x)} ${px(back.y - aside.y)}Z`,
    fill: colour,
  });
}

/** A length marked beside a drawing: the line with its heads, a tick at both ends, the words in its middle. */
export function across(a: Point, b: Point, label: string): string {
  const upright = Math.abs(b.x - a.x) < Math.abs(b.y - a.y);
  const tick = (point: Point): string =>
    upright
      ? line({ x: point.x - 14, y: point.y }, { x: point.x + 14, y: point.y })
      : line({ x: point.x, y: point.y - 14 }, { x: point.x, y: point.y + 14 });
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  const drawn = arrows(a, b) + tick(a) + tick(b);
  if (!isShort(label, Math.hypot(b.x - a.x, b.y - a.y))) return drawn + plate(label, middle, upright);
  const aside = upright ? { x: middle.x - 26, y: middle.y } : { x: middle.x, y: middle.y + 44 };
  return drawn + lettered(label, aside.x, aside.y, { size: SIZE.small, anchor: upright ? 'end' : 'middle' });
}

/** Whether a line has no room for its words, which then stand to its left or below it. */
const isShort = (label: string, length: number): boolean => length < widthOf(label, SIZE.small) + 70;

/** How much room, in pixels, the words of an upright line take to its left beyond the usual. */
export const roomLeftOf = (label: string, length: number): number =>
  isShort(label, length) ? widthOf(label, SIZE.small) + 8 : 0;

/** How much room, in pixels, the words of a level line take below it beyond the usual. */
export const roomBelow = (label: string, length: number): number => (isShort(label, length) ? 44 : 0);

/** Words on the page's own ground, so that no line runs through them. */
function plate(label: string, { x, y }: Point, upright: boolean): string {
  const [long, high] = [widthOf(label, SIZE.small) + 20, SIZE.small];
  const [width, height] = upright ? [high, long] : [long, high];
  return (
    element('rect', { x: x - width / 2, y: y - height / 2, width, height, fill: PAPER }) +
    lettered(label, x, y, { size: SIZE.small, anchor: 'middle', ...(upright ? { turned: -90 } : {}) })
  );
}

/** A letter in a ring, for what is told beside the drawing. */
export const badge = (letter: string, { x, y }: Point): string =>
  element('circle', { cx: x, cy: y, r: 27, fill: PAPER, stroke: INK, 'stroke-width': 3 }) +
  lettered(letter, x, y, { size: SIZE.small, bold: true, anchor: 'middle' });
