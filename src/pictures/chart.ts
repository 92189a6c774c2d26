import { decimal } from '../measure/ruler.ts';
import { line } from './dimension.ts';
import { type Entry, legend, lineSample, MIDDLE, swatch } from './legend.ts';
import { lettered, SIZE, widthOf } from './lettering.ts';
import { type Block, footing, heading, page, ROOM } from './page.ts';
import { INK, lookOf, PAPER, SOFT_INK, tile, WASTE } from './palette.ts';
import { toPng } from './png.ts';
import { element, px } from './svg.ts';

/** Figures that belong together, one for each label; null where there is none. */
export interface Series {
  readonly name: string;
  readonly values: readonly (number | null)[];
  /** A line unless bars are asked for. Bars stand on 0. */
  readonly as?: 'line' | 'bars';
}

/** How far something went, or may go, over days or weeks. */
export interface ChartRecipe {
  readonly draw: 'chart';
  readonly title: string;
  /** What stands under each place, in order. */
  readonly labels: readonly string[];
  readonly series: readonly Series[];
  /** A level to reach. */
  readonly goal?: { readonly value: number; readonly words: string };
  /** Between a low and a high figure at each label, such as a forecast's. */
  readonly range?: {
    readonly words: string;
    readonly low: readonly (number | null)[];
    readonly high: readonly (number | null)[];
  };
  /** Lines of text below. */
  readonly words?: readonly string[];
}

export const drawChart = (recipe: ChartRecipe): Promise<Uint8Array> => toPng(chartPicture(recipe));

/** The picture of a chart as SVG. */
export function chartPicture(recipe: ChartRecipe): string {
  return page(
    [heading(recipe.title), drawing(recipe), legend(entries(recipe)), footing(recipe.words ?? [])],
    recipe.series.map((_, i) => tile(`series${i}`, barLook(i))).join('') + RANGE_TILE,
  );
}

const PLOT_HEIGHT = 620;
const LABELS_BELOW = 64;
const ABOVE = 30;

/** Looks whose colour is dark enough for a line on the page: night, rust, heather. */
const LINE_LOOKS = [1, 3, 5] as const;
const LINE_DASHES = [undefined, '18 12', '4 10'] as const;
const lineColour = (n: number): string => lookOf(LINE_LOOKS[n % LINE_LOOKS.length]!).fill;

const barLook = (n: number) => lookOf([0, 4, 2, 1][n % 4]!);

const RANGE_TILE = element(
  'pattern',
  { id: 'range', width: 16, height: 16, patternUnits: 'userSpaceOnUse' },
  element('rect', { width: 16, height: 16, fill: WASTE }),
  element('path', { d: 'M8 0V16', stroke: '#BDB4A0', 'stroke-width': 2 }),
);

/** Where figures come to lie in the plot. */
interface Axes {
  readonly left: number;
  readonly width: number;
  readonly places: number;
  readonly top: number;
}

const placeOf = ({ left, width, places }: Axes, i: number): number => left + (width * (i + 0.5)) / places;
const heightOf = ({ top }: Axes, value: number): number => ABOVE + PLOT_HEIGHT * (1 - value / top);

/**
 * The step between level lines: 1, 2 or 5 of some power of ten, so that there are no more than five.
 *
 * @example
 * stepFor(200) // 50
 * stepFor(7) // 2
 */
export function stepFor(highest: number): number {
  const power = 10 ** Math.floor(Math.log10(Math.max(highest, 1) / 5));
  return [1, 2, 5, 10].map((n) => n * power).find((step) => step >= 1 && highest / step <= 5) ?? 10 * power;
}

function drawing(recipe: ChartRecipe): Block {
  const { labels, series, goal, range } = recipe;
  const figures = [...series.flatMap(({ values }) => values), ...(range?.high ?? []), goal?.value ?? null];
  const highest = Math.max(1, ...figures.filter((value) => value !== null));
  const step = stepFor(highest);
  const top = Math.ceil(highest / step - 1e-9) * step;
  const levels = Array.from({ length: Math.round(top / step) + 1 }, (_, i) => i * step);
  const left = Math.max(...levels.map((level) => widthOf(decimal(level, 1), SIZE.small))) + 20;
  const axes: Axes = { left, width: ROOM - left, places: Math.max(1, labels.length), top };
  return {
    height: ABOVE + PLOT_HEIGHT + LABELS_BELOW,
    drawn: [
      ...levels.map((level) => levelLine(axes, level)),
      range ? band(axes, range.low, range.high) : '',
      bars(axes, series),
      ...series
        .filter(({ as = 'line' }) => as === 'line')
        .map(({ values }, n) => run(axes, values, lineLook(n), n)),
      goal ? goalLine(axes, goal.value) : '',
      under(axes, labels),
    ].join(''),
  };
}

function levelLine(axes: Axes, level: number): string {
  const y = heightOf(axes, level);
  const look = level === 0 ? { colour: INK, width: 4 } : { colour: '#D8D2C4', width: 2 };
  return (
    line({ x: axes.left, y }, { x: ROOM, y }, look) +
    lettered(decimal(level, 1), axes.left - 16, y, { size: SIZE.small, anchor: 'end', fill: SOFT_INK })
  );
}

function goalLine(axes: Axes, value: number): string {
  const y = heightOf(axes, value);
  return element('path', { d: `M${px(axes.left)} ${px(y)}H${ROOM}`, ...GOAL });
}

const GOAL = { fill: 'none', stroke: INK, 'stroke-width': 5, 'stroke-dasharray': '30 12 6 12' };

function bars(axes: Axes, series: readonly Series[]): string {
  const barred = series.flatMap((one, i) => (one.as === 'bars' ? [{ ...one, look: i }] : []));
  const each = (axes.width / axes.places) * 0.8;
  const wide = each / Math.max(1, barred.length);
  return barred
    .map(({ values, look }, n) => {
      const d = values
        .map((value, i) => {
          if (value === null || value <= 0) return '';
          const x = placeOf(axes, i) - each / 2 + n * wide;
          const y = heightOf(axes, value);
          return `M${px(x)} ${px(y)}h${px(wide)}V${px(heightOf(axes, 0))}h${px(-wide)}z`;
        })
        .join('');
      return d === ''
        ? ''
        : element('path', { d, fill: `url(#series${look})`, stroke: INK, 'stroke-width': 2 });
    })
    .join('');
}

const lineLook = (n: number) => ({
  fill: 'none',
  stroke: lineColour(n),
  'stroke-width': 7,
  'stroke-linejoin': 'round',
  'stroke-dasharray': LINE_DASHES[n % LINE_DASHES.length],
});

/** A line through the figures, broken where there is none; a figure between two gaps is a dot alone. */
function run(
  axes: Axes,
  values: readonly (number | null)[],
  look: ReturnType<typeof lineLook>,
  n: number,
): string {
  let d = '';
  const dots: string[] = [];
  values.forEach((value, i) => {
    if (value === null) return;
    const [x, y] = [placeOf(axes, i), heightOf(axes, value)];
    d += `${(values[i - 1] ?? null) === null ? 'M' : 'L'}${px(x)} ${px(y)}`;
    dots.push(dot(x, y, n));
  });
  if (d === '') return '';
  const few = axes.width / axes.places > 36;
  return element('path', { d, ...look }) + (few ? dots.join('') : dots.at(-1)!);
}

/** The dot of each line has its own form: round, square, standing on its point. */
function dot(x: number, y: number, n: number): string {
  const look = { fill: lineColour(n), stroke: PAPER, 'stroke-width': 3 };
  if (n % 3 === 0) return element('circle', { cx: x, cy: y, r: 12, ...look });
  const square = { x: x - 11, y: y - 11, width: 22, height: 22, ...look };
  return element('rect', n % 3 === 1 ? square : { ...square, transform: `rotate(45 ${px(x)} ${px(y)})` });
}

/** From the low figures to the high ones, wherever both are known; over gaps it does not reach. */
function band(axes: Axes, low: readonly (number | null)[], high: readonly (number | null)[]): string {
  const parts: number[][] = [];
  low.forEach((value, i) => {
    if (value === null || (high[i] ?? null) === null) return;
    if (parts.at(-1)?.at(-1) === i - 1) parts.at(-1)!.push(i);
    else parts.push([i]);
  });
  const point = (value: number, i: number): string => `${px(placeOf(axes, i))} ${px(heightOf(axes, value))}`;
  const d = parts
    .map((part) => {
      const there = part.map((i) => point(high[i]!, i));
      const back = part.toReversed().map((i) => point(low[i]!, i));
      return `M${[...there, ...back].join('L')}Z`;
    })
    .join('');
  return d === ''
    ? ''
    : element('path', {
        d,
        fill: 'url(#range)',
        stroke: SOFT_INK,
        'stroke-width': 2,
        'stroke-linejoin': 'round',
      });
}

/** The labels, as many as stand clear of each other; the last one always does. */
function under(axes: Axes, labels: readonly string[]): string {
  const widest = Math.max(0, ...labels.map((label) => widthOf(label, SIZE.small))) + 30;
  const every = Math.max(1, Math.ceil((widest * axes.places) / axes.width));
  const y = ABOVE + PLOT_HEIGHT + LABELS_BELOW / 2 + 8;
  return labels
    .map((label, i) => {
      if ((labels.length - 1 - i) % every !== 0) return '';
      const half = widthOf(label, SIZE.small) / 2;
      const x = Math.min(ROOM - half, Math.max(half, placeOf(axes, i)));
      return lettered(label, x, y, { size: SIZE.small, anchor: 'middle' });
    })
    .join('');
}

function entries({ series, goal, range }: ChartRecipe): Entry[] {
  let lines = 0;
  const told: Entry[] = series.map(({ name, as = 'line' }, i) => {
    if (as === 'bars') return { sample: swatch(`url(#series${i})`, INK), words: name };
    const n = lines++;
    return { sample: lineSample(lineLook(n)) + dot(MIDDLE.x, MIDDLE.y, n), words: name };
  });
  if (range) told.push({ sample: swatch('url(#range)', SOFT_INK), words: range.words });
  if (goal) told.push({ sample: lineSample(GOAL), words: goal.words });
  return told;
}
