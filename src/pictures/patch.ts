import { CATALOGUE } from '../calculator/shapes/catalogue.ts';
import { FINISHED, laidOut } from '../calculator/shapes/face.ts';
import { flatten } from '../calculator/shapes/flatten.ts';
import type { Point } from '../calculator/shapes/outline.ts';
import { type Measured, read } from '../calculator/shapes/readings.ts';
import type {
  CornerAllowance,
  CornerStyle,
  Dimensions,
  MeasureName,
  ShapeName,
} from '../calculator/shapes/shape.ts';
import { type Reading, type Speech, speech } from '../measure/speech.ts';
import { arrows, badge, DASHES, line } from './dimension.ts';
import { legend, lineSample, swatch } from './legend.ts';
import { lettered, SIZE, widthOf } from './lettering.ts';
import { type Block, heading, page, ROOM } from './page.ts';
import { INK, lookOf, SEWN, SOFT_INK } from './palette.ts';
import { at, pathOf, type Scale } from './path.ts';
import { toPng } from './png.ts';
import { element, moved } from './svg.ts';
import { type Taken, takenAt } from './taken.ts';

/** One patch with its two lines and its measures. Lengths in inches. */
export interface PatchRecipe {
  readonly draw: 'patch';
  readonly title: string;
  readonly shape: ShapeName;
  readonly dimensions: Dimensions;
  readonly seam: number;
  readonly cornerStyle: CornerStyle;
  readonly reading: Reading;
  /** What each measure that is drawn is called, in the order in which they are told. */
  readonly measures: readonly { readonly name: MeasureName; readonly words: string }[];
}

export const drawPatch = (recipe: PatchRecipe): Promise<Uint8Array> => toPng(patchPicture(recipe));

/** Both faces of a patch, ready to be measured. */
interface Faces {
  readonly finished: Measured;
  readonly cut: Measured;
}

/** The picture of a patch as SVG: cutting line, sewing line, a dimension line for each measure, and a key. */
export function patchPicture(recipe: PatchRecipe): string {
  const { title, shape, dimensions, seam, cornerStyle, reading } = recipe;
  const faces: Faces = {
    finished: laidOut(CATALOGUE[shape], dimensions, FINISHED),
    cut: laidOut(CATALOGUE[shape], dimensions, { seam, cornerStyle }),
  };
  return page([heading(title), drawing(recipe, faces), lines(recipe), key(recipe, faces, speech(reading))]);
}

const ALLOWANCE = '#F6DDA6';
const INSIDE = lookOf(2).fill;

const CUT_LINE = { stroke: INK, 'stroke-width': 5, 'stroke-linejoin': 'round' } as const;
const SEWN_LINE = { stroke: SEWN, 'stroke-width': 4, 'stroke-dasharray': DASHES } as const;

const letter = (n: number): string => String.fromCharCode('A'.charCodeAt(0) + n);

/** The patch itself is drawn no larger than this, so that there is room about it for the dimensions. */
const LARGEST = { width: 600, height: 560 };

function drawing({ shape, measures }: PatchRecipe, { finished, cut }: Faces): Block {
  const { left, bottom, width, height } = cut.box;
  const perInch = Math.min(LARGEST.width / width, LARGEST.height / height);
  const scale: Scale = { perInch, x: -left * perInch, y: (bottom + height) * perInch, down: -1 };
  const spread = new Spread(flatten(cut.outline, 0.005).map((point) => at(scale, point)));
  const taken = measures.flatMap(({ name }, i) => {
    const reading = CATALOGUE[shape].measures[name]!;
    const [inner, outer] = [takenAt(reading, finished), takenAt(reading, cut)];
    return inner && outer ? [{ inner, outer, name: letter(i) }] : [];
  });
  const dimensions = taken
    .toSorted((a, b) => turnOf(a.outer) - turnOf(b.outer))
    .map(({ inner, outer, name }) => dimension(inner, outer, name, scale, spread));
  const dots = finished.frame.joints.map(({ leave }) => {
    const { x, y } = at(scale, leave);
    return element('circle', { cx: x, cy: y, r: 7, fill: SEWN });
  });
  const { box } = spread;
  const drawn = [
    element('path', { d: pathOf(cut.outline, scale), fill: ALLOWANCE, ...CUT_LINE }),
    element('path', { d: pathOf(finished.outline, scale), fill: INSIDE, ...SEWN_LINE }),
    ...dots,
    ...dimensions,
  ];
  const x = Math.max(-box.left, Math.min((ROOM - (box.right - box.left)) / 2 - box.left, ROOM - box.right));
  return { height: box.bottom - box.top, drawn: moved(x, -box.top, ...drawn) };
}

/** Those on the patch come first, then those along slanted sides, then those that stand level or upright. */
const turnOf = ({ beside }: Taken): number => {
  if (beside === null) return 0;
  return Math.abs(beside.x) < 1e-9 || Math.abs(beside.y) < 1e-9 ? 2 : 1;
};

/** How far the drawing reaches, and how far out each direction is taken already. */
class Spread {
  readonly box = { left: Infinity, right: -Infinity, top: Infinity, bottom: -Infinity };
  private readonly outline: readonly Point[];
  private readonly taken = new Map<string, number>();

  constructor(outline: readonly Point[]) {
    this.outline = outline;
    for (const point of outline) this.hold(point, 4);
  }

  hold({ x, y }: Point, about: number): void {
    const { box } = this;
    box.left = Math.min(box.left, x - about);
    box.right = Math.max(box.right, x + about);
    box.top = Math.min(box.top, y - about);
    box.bottom = Math.max(box.bottom, y + about);
  }

  /** How far out, along a direction, the next dimension goes: past the patch, and past those already there. */
  next(out: Point, tier: number): number {
    const way = `${out.x.toFixed(3)} ${out.y.toFixed(3)}`;
    const before = this.taken.get(way) ?? this.reach(out);
    this.taken.set(way, before + tier);
    return before;
  }

  /** Level and upright dimensions go past all that is drawn, slanted ones past the patch alone. */
  private reach(out: Point): number {
    const { left, right, top, bottom } = this.box;
    if (out.x > 1 - 1e-9) return right;
    if (out.x < 1e-9 - 1) return -left;
    if (out.y > 1 - 1e-9) return bottom;
    if (out.y < 1e-9 - 1) return -top;
    return Math.max(...this.outline.map((point) => along(point, out)));
  }
}

const along = (point: Point, way: Point): number => point.x * way.x + point.y * way.y;

/** From the patch, or the dimension before, to the finished line, the cut line, the letter; and to the next. */
const STEPS = { finished: 34, cut: 64, letter: 102, tier: 118 } as const;

function dimension(inner: Taken, outer: Taken, name: string, scale: Scale, spread: Spread): string {
  return outer.beside === null || inner.beside === null
    ? onThePatch(inner, outer, name, scale, spread)
    : besideThePatch(inner, outer, { x: outer.beside.x, y: -outer.beside.y }, name, scale, spread);
}

function besideThePatch(
  inner: Taken,
  outer: Taken,
  out: Point,
  name: string,
  scale: Scale,
  spread: Spread,
): string {
  const start = spread.next(out, STEPS.tier);
  const drawn = (taken: Taken, step: number, look: { colour: string; dashed?: boolean }): string => {
    const ends = [taken.from, taken.to].map((point) => at(scale, point));
    const [from, to] = ends.map((point) => outTo(point, out, start + step));
    const leads = ends.map((point) =>
      line(point, outTo(point, out, start + step + 10), { colour: SOFT_INK, width: 1.5 }),
    );
    return leads.join('') + arrows(from!, to!, { ...look, width: 3.5 });
  };
  const middle = at(scale, {
    x: (outer.from.x + outer.to.x) / 2,
    y: (outer.from.y + outer.to.y) / 2,
  });
  const place = outTo(middle, out, start + STEPS.letter);
  spread.hold(place, 32);
  for (const end of [outer.from, outer.to]) spread.hold(outTo(at(scale, end), out, start + STEPS.cut), 16);
  return (
    drawn(inner, STEPS.finished, { colour: SEWN, dashed: true }) +
    drawn(outer, STEPS.cut, { colour: INK }) +
    badge(name, place)
  );
}

/** The point moved along a direction until it is so far out. */
const outTo = (point: Point, out: Point, far: number): Point => {
  const step = far - along(point, out);
  return { x: point.x + out.x * step, y: point.y + out.y * step };
};

/** Two lines side by side through the patch, the letter a third of the way, clear of where diagonals cross. */
function onThePatch(inner: Taken, outer: Taken, name: string, scale: Scale, spread: Spread): string {
  const [a, b] = [at(scale, outer.from), at(scale, outer.to)];
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const aside = { x: (-(b.y - a.y) / length) * 9, y: ((b.x - a.x) / length) * 9 };
  const shift = (point: Point, sign: number): Point => ({
    x: point.x + sign * aside.x,
    y: point.y + sign * aside.y,
  });
  const [c, d] = [at(scale, inner.from), at(scale, inner.to)];
  const place = { x: a.x + (b.x - a.x) * 0.31, y: a.y + (b.y - a.y) * 0.31 };
  // A hollow curve's radius begins outside the patch.
  for (const point of [a, b, c, d]) spread.hold(point, 12);
  spread.hold(place, 32);
  return (
    arrows(shift(c, 1), shift(d, 1), { colour: SEWN, dashed: true, width: 3.5 }) +
    arrows(shift(a, -1), shift(b, -1), { width: 3.5 }) +
    badge(name, place)
  );
}

/** What the lines are. */
function lines({ seam, shape, cornerStyle, reading }: PatchRecipe): Block {
  const corners = CATALOGUE[shape].corners ?? cornerStyle;
  const told = [{ sample: lineSample(CUT_LINE), words: seam > 0 ? 'cut here' : 'cut here, nothing added' }];
  if (seam === 0) return legend(told);
  return legend([
    ...told,
    { sample: lineSample(SEWN_LINE), words: 'sew here: finished' },
    { sample: swatch(ALLOWANCE, INK), words: `${speech(reading).plain(seam)} seam` },
    {
      sample: element('path', { d: CORNERS[corners], fill: ALLOWANCE, ...CUT_LINE }),
      words: `${corners} corners`,
    },
  ]);
}

/** One corner of each style, in a sample. */
const CORNERS: Readonly<Record<CornerAllowance, string>> = {
  pointed: 'M8 52L42 6L76 52',
  blunt: 'M8 52L30 22H54L76 52',
  rounded: 'M8 52L26 26A19 19 0 0 1 58 26L76 52',
};

const LINE = 54;
const TEXT_AT = 76;

/** Each measure by its letter, finished and cut. */
function key({ measures, shape }: PatchRecipe, { finished, cut }: Faces, say: Speech): Block {
  let y = 0;
  const drawn = measures.map(({ name, words }, i) => {
    const reading = CATALOGUE[shape].measures[name]!;
    const values = [
      `finished ${say.length(read(reading, finished))}`,
      `cut ${say.length(read(reading, cut))}`,
    ];
    const together = values.join(' · ');
    const told = widthOf(together, SIZE.text) <= ROOM - TEXT_AT ? [together] : values;
    const entry = moved(
      0,
      y,
      badge(letter(i), { x: 30, y: LINE / 2 + 4 }),
      lettered(words, TEXT_AT, LINE / 2, { bold: true }),
      ...told.map((text, n) => lettered(text, TEXT_AT, LINE * (n + 1.5))),
    );
    y += LINE * (told.length + 1) + 14;
    return entry;
  });
  return { height: Math.max(0, y - 14), drawn: drawn.join('') };
}
