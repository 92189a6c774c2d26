import type { LaidPlan } from '../calculator/fabric/plan.ts';
import { box } from '../calculator/shapes/extent.ts';
import type { Outline } from '../calculator/shapes/outline.ts';
import { type Placement, placeOutline } from '../calculator/shapes/place.ts';
import type { Speech } from '../measure/speech.ts';
import type { CutLines, Line } from './cut-lines.ts';
import { across, roomBelow, roomLeftOf } from './dimension.ts';
import { lettered } from './lettering.ts';
import { type Block, ROOM } from './page.ts';
import { INK, lookOf, PAPER, SEWN, WASTE } from './palette.ts';
import { pathOf, type Scale } from './path.ts';
import { element, px } from './svg.ts';

/** Where a piece of cloth has its selvage: along both sides, along one end of its length, or nowhere known. */
export type Selvage = 'sides' | 'end' | 'none';

export interface LaidCloth {
  readonly plan: LaidPlan;
  /** The straight cuts, and the repeat of a print. */
  readonly lines: CutLines;
  /** So many of the plan's patches are cut, the first ones. */
  readonly pieces: number;
  /** Inches of cloth beyond the plan's. */
  readonly spare: number;
  readonly selvage: Selvage;
}

export const PATCH = lookOf(2).fill;
export const SPARE = PAPER;
export const SEWN_LINE = { fill: 'none', stroke: SEWN, 'stroke-width': 3, 'stroke-dasharray': '9 6' };
/** A cut from edge to edge. */
export const STRAIGHT = { stroke: INK, 'stroke-width': 5 };
/** Where a print repeats. */
export const REPEAT = { stroke: SEWN, 'stroke-width': 3, 'stroke-dasharray': '3 7' };

const FAINT = '#BDB4A0';

export const CLOTH_TILES =
  element(
    'pattern',
    { id: 'waste', width: 24, height: 24, patternUnits: 'userSpaceOnUse' },
    element('rect', { width: 24, height: 24, fill: WASTE }),
    element('path', { d: 'M-2 26L26 -2M-2 2L2 -2M22 26L26 22', stroke: FAINT, 'stroke-width': 2 }),
  ) +
  element(
    'pattern',
    { id: 'selvage', width: 12, height: 12, patternUnits: 'userSpaceOnUse' },
    element('rect', { width: 12, height: 12, fill: '#D9CFB8' }),
    ...[
      [3, 3],
      [9, 9],
    ].map(([cx, cy]) => element('circle', { cx, cy, r: 2, fill: INK })),
  );

/** Pixels: room at the left and below for the dimensions, and the width of a drawn selvage. */
const BESIDE = 92;
const BAND = 26;

/** A piece is drawn whole up to this height; a longer one in two parts, with a tear between. */
const TALLEST = 1500;
const TORN_FROM = 2.2;
const SMALLEST_PATCH = 40;
const TEAR = 76;
const LOWER_PART = 0.65;

/** How a piece of cloth lies on the page, in pixels. */
interface Place {
  readonly left: number;
  readonly perInch: number;
  readonly width: number;
  readonly high: number;
  readonly torn: boolean;
}

function placeFor(laid: LaidCloth, say: Speech): Place {
  const usual = placeBeside(laid, BESIDE);
  const more = roomLeftOf(say.side(laid.plan.cloth.length + laid.spare), usual.high);
  return more === 0 ? usual : placeBeside(laid, BESIDE + more);
}

function placeBeside({ plan, spare, selvage }: LaidCloth, beside: number): Place {
  const length = plan.cloth.length + spare;
  const { width } = plan.cloth;
  const side = selvage === 'sides' ? BAND : 0;
  const room = ROOM - beside - 2 * side;
  const whole = Math.min(room / width, TALLEST / length);
  const torn = length > TORN_FROM * width && Math.sqrt(plan.patch.cut.area) * whole < SMALLEST_PATCH;
  const perInch = torn ? room / width : whole;
  return {
    left: beside + side + (room - width * perInch) / 2,
    perInch,
    width: width * perInch,
    high: torn ? TALLEST + TEAR : length * perInch,
    torn,
  };
}

/** A piece of cloth with its patches, its selvage and its measures; the beginning of the plan is at the bottom. */
export function cloth(laid: LaidCloth, say: Speech): Block {
  const { plan, spare, selvage } = laid;
  const place = placeFor(laid, say);
  const { left, width, high, torn, perInch } = place;
  const length = plan.cloth.length + spare;
  const lower = (TALLEST * LOWER_PART) / perInch;
  const upper = (TALLEST * (1 - LOWER_PART)) / perInch;
  const windows: Window[] = torn
    ? [
        { from: 0, to: lower, bottom: high },
        { from: length - upper, to: length, bottom: upper * perInch },
      ]
    : [{ from: 0, to: length, bottom: high }];
  const below = high + (selvage === 'end' ? BAND : 0) + 52;
  const beside = left - (selvage === 'sides' ? BAND : 0) - 46;
  const between = { x: left + width / 2, y: upper * perInch + TEAR / 2 };
  return {
    height: below + 30 + roomBelow(say.side(plan.cloth.width), width),
    drawn: [
      ...windows.map((window, i) => part(laid, place, window, i)),
      torn ? lettered('and so on', between.x, between.y, { anchor: 'middle' }) : '',
      across({ x: left, y: below }, { x: left + width, y: below }, say.side(plan.cloth.width)),
      across({ x: beside, y: 0 }, { x: beside, y: high }, say.side(length)),
    ].join(''),
  };
}

/** A part of the cloth's length, in inches, and where its near edge lies on the page, in pixels. */
interface Window {
  readonly from: number;
  readonly to: number;
  readonly bottom: number;
}

function part(
  { plan, lines, pieces, spare, selvage }: LaidCloth,
  place: Place,
  { from, to, bottom }: Window,
  n: number,
): string {
  const { left, width, perInch, torn } = place;
  const height = (to - from) * perInch;
  const top = bottom - height;
  const scale: Scale = { perInch, x: left, y: bottom + from * perInch, down: -1 };
  const id = `part${n}`;
  const rect = (look: {
    x?: number;
    y?: number;
    width?: number;
    height?: number;
    fill: string;
    stroke?: string;
  }) => element('rect', { x: left, y: top, width, height, ...look });
  const seen = (outline: Outline): boolean => {
    const held = box(outline);
    return held.bottom + held.height > from && held.bottom < to;
  };
  const spareHigh =
    Math.max(0, Math.min(to, plan.cloth.length + spare) - Math.max(from, plan.cloth.length)) * perInch;
  const side = { width: BAND, fill: 'url(#selvage)', stroke: INK };
  const tear = !torn ? '' : n === 0 ? tornEdge(top, -1, left, width) : tornEdge(bottom, 1, left, width);
  return [
    element('clipPath', { id }, rect({ fill: '#000' })),
    rect({ fill: 'url(#waste)' }),
    rect({ height: spareHigh, fill: SPARE }),
    element(
      'g',
      { 'clip-path': `url(#${id})` },
      patches(plan, plan.placements().slice(0, pieces), seen, scale),
      drawn(lines.repeat, REPEAT, scale),
      drawn(lines.straight, STRAIGHT, scale),
    ),
    element('path', { d: `M${px(left)} ${px(top)}h${px(width)}v${px(height)}h${px(-width)}z`, ...FRAME }),
    selvage === 'sides' ? rect({ ...side, x: left - BAND }) + rect({ ...side, x: left + width }) : '',
    selvage === 'end' && n === 0 ? rect({ ...side, width, height: BAND, y: bottom }) : '',
    tear,
  ].join('');
}

const FRAME = { fill: 'none', stroke: INK, 'stroke-width': 4 };

/** Where the cloth goes on: its edge there is a zigzag, with bare page beyond (`out`: 1 downward, −1 upward). */
function tornEdge(y: number, out: number, left: number, width: number): string {
  const [from, to] = [left - BAND - 4, left + width + BAND + 4];
  const teeth = Math.round((to - from) / 40);
  const step = (to - from) / teeth;
  const zigzag = Array.from(
    { length: teeth },
    (_, i) =>
      `L${px(from + (i + 0.5) * step)} ${px(y - out * 26)}L${px(from + (i + 1) * step)} ${px(y - out * 2)}`,
  );
  const d = `M${px(from)} ${px(y - out * 2)}${zigzag.join('')}`;
  const beyond = `L${px(to)} ${px(y + out * 6)}L${px(from)} ${px(y + out * 6)}Z`;
  return (
    element('path', { d: d + beyond, fill: PAPER }) +
    element('path', { d, fill: 'none', stroke: INK, 'stroke-width': 2.5, 'stroke-linejoin': 'round' })
  );
}

/** Sewing lines nearer than this to the cutting line, in pixels, would only blur it. */
const FINEST_SEAM = 7;

/** Whether the sewing lines are drawn. */
export const sewnShows = (laid: LaidCloth, say: Speech): boolean =>
  laid.plan.patch.seam * placeFor(laid, say).perInch >= FINEST_SEAM;

function patches(
  { patch: { cut, finished, seam } }: LaidPlan,
  places: readonly Placement[],
  seen: (outline: Outline) => boolean,
  scale: Scale,
): string {
  const path = (outline: Outline): string =>
    places
      .map((place) => placeOutline(outline, place))
      .filter(seen)
      .map((placed) => pathOf(placed, scale))
      .join('');
  const line = Math.min(4, Math.max(1.2, Math.sqrt(cut.area) * scale.perInch * 0.05));
  const look = { fill: PATCH, stroke: INK, 'stroke-width': line, 'stroke-linejoin': 'round' };
  const sewn =
    seam * scale.perInch < FINEST_SEAM
      ? ''
      : element('path', { d: path(finished.outline), ...SEWN_LINE, 'stroke-width': Math.min(3, line) });
  return element('path', { d: path(cut.outline), ...look }) + sewn;
}

/** Lines along or up the cloth, each from end to end. */
function drawn(lines: readonly Line[], look: Readonly<Record<string, unknown>>, scale: Scale): string {
  if (lines.length === 0) return '';
  const { x, y, perInch } = scale;
  const d = lines.map(({ from, to }) => {
    const start = `M${px(x + from.x * perInch)} ${px(y - from.y * perInch)}`;
    const [along, up] = [(to.x - from.x) * perInch, (to.y - from.y) * perInch];
    return up === 0 ? `${start}h${px(along)}` : `${start}v${px(-up)}`;
  });
  return element('path', { d: d.join(''), fill: 'none', ...look });
}
