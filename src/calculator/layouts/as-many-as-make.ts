import { ok, type Result, TOLERANCE, wholeAbove, wholeBelow, wrong } from '../../measure/result.ts';
import { type Arrangement, howMany } from './arrangement.ts';
import { type Spot, turned } from './lattice.ts';
import type { Layout, Rectangle } from './layout.ts';
import { centredIn, type Outside, outsideOf, patchedIn, reachesInto, valleysOf } from './outside.ts';
import { pointOf } from './patches.ts';

/** Rosettes or stars that can stand in staggered rows. */
export interface Standing<L extends Layout> {
  /** From one to the next, on the patches' lattice; rows run along it turned 60°. */
  readonly step: Spot;
  readonly make: (arrangement: Arrangement) => Result<L>;
}

/** Rows of so many, by turns of so many. Sizes in edges, the rows level (which the patches' own lines need not be). */
export interface Stood<L extends Layout> {
  readonly layout: L;
  readonly arrangement: InRows;
  readonly count: number;
  /** The box round all the patches. */
  readonly box: Rectangle;
  /** What the valleys of the four sides and the gaps of the stagger leave. */
  readonly valleys: Rectangle;
  readonly outside: Outside;
}

type InRows = Extract<Arrangement, { kind: 'rows' }>;

/** Straight sides: at the ends of the rows halves, cut upright through their middles, in place of the gaps. */
export interface StraightSides {
  readonly rows: number;
  readonly wholes: number;
  readonly halves: number;
  /** Edges. */
  readonly width: number;
}

export interface AsManyAsMake<L extends Layout> {
  /** The fewest that cover it, to be trimmed. */
  readonly cover: Stood<L>;
  /** The quilt where it is trimmed to, in the same frame as the box of what covers it. */
  readonly trim: Rectangle;
  /** The most that lie inside it; null where not one does. */
  readonly inside: Stood<L> | null;
  readonly straight: StraightSides;
  /** Whether the rows are level in the layout's own frame too. */
  readonly level: boolean;
  /** How many it is by area: a check, never the number to make. */
  readonly byArea: number;
}

/** From one place to the next along a row, and from one row to the next, in edges. */
function pitchesOf({ u, v }: Spot): { along: number; over: number } {
  const along = Math.sqrt(u * u + u * v + v * v);
  return { along, over: (along * Math.sqrt(3)) / 2 };
}

const inRows = (rows: number, perRow: number, second?: 1 | -1): InRows => ({
  kind: 'rows',
  rows,
  perRow,
  ...(second === undefined ? {} : { second }),
});

function stand<L extends Layout>(of: Standing<L>, arrangement: InRows): Result<Stood<L>> {
  const made = of.make(arrangement);
  if (!made.ok) return made;
  const outside = outsideOf(made.value.patches, turned(of.step));
  // A little more than the pitch, so that a valley at the very end of the stretch is seen.
  const valleys = valleysOf(outside, 1.01 * pitchesOf(of.step).along);
  return ok({
    ...{ layout: made.value, arrangement, count: howMany(arrangement) },
    ...{ box: outside.box, valleys, outside },
  });
}

interface Size {
  readonly width: number;
  readonly height: number;
}

/** Enough rows of enough to have a middle: what more of them add is the same each time. */
const SAMPLE = { rows: 4, perRow: 3 };

/** The fewest rows of the fewest whose valleys leave enough; the corners may be cut deeper than the middle. */
function leastRows<L extends Layout>(of: Standing<L>, wish: Size, second?: 1): Result<InRows> {
  const sample = stand(of, inRows(SAMPLE.rows, SAMPLE.perRow, second));
  if (!sample.ok) return sample;
  const { along, over } = pitchesOf(of.step);
  const { valleys } = sample.value;
  const rows = SAMPLE.rows + wholeAbove((wish.height - valleys.height) / over);
  const perRow = SAMPLE.perRow + wholeAbove((wish.width - valleys.width) / along);
  return ok(inRows(Math.max(1, rows), Math.max(1, perRow), second));
}

interface Covering<L extends Layout> {
  readonly cover: Stood<L>;
  readonly trim: Rectangle;
}

/** More than enough: a row or a place more than the valleys ask for makes good what the corners lack. */
const TRIES = 12;

/**
 * The fewest that cover: of the arrangements whose middle is large enough the smallest is laid, and where its
 * corners leave some of the quilt bare, one with a row more and one with a place more take its turn.
 */
function leastCover<L extends Layout>(of: Standing<L>, wish: Size): Result<Covering<L>> {
  const { width, height } = wish;
  const even = leastRows(of, wish);
  if (!even.ok) return even;
  const byTurns = leastRows(of, wish, 1);
  if (!byTurns.ok) return byTurns;
  const one = stand(of, inRows(1, 1));
  if (!one.ok) return one;
  const middle = centredIn(one.value.box, width, height);
  if (!reachesInto(one.value.outside, middle)) return ok({ cover: one.value, trim: middle });
  const waiting = [even.value, byTurns.value];
  for (let tried = 0; tried < TRIES; tried++) {
    waiting.sort((a, b) => howMany(a) - howMany(b));
    const next = waiting.shift()!;
    const stood = stand(of, next);
    if (!stood.ok) return stood;
    const trim = patchedIn(stood.value.outside, stood.value.valleys, width, height);
    if (trim !== null) return ok({ cover: stood.value, trim });
    waiting.push({ ...next, rows: next.rows + 1 }, { ...next, perRow: next.perRow + 1 });
  }
  return wrong('not-covered', { rows: even.value.rows, perRow: even.value.perRow });
}

/** The most that lie inside: in even rows, in rows with one fewer by turns, or in one row alone. */
function mostInside<L extends Layout>(of: Standing<L>, wish: Size): Stood<L> | null {
  const sample = stand(of, inRows(SAMPLE.rows, SAMPLE.perRow));
  if (!sample.ok) return null;
  const { along, over } = pitchesOf(of.step);
  const { box } = sample.value;
  const rows = SAMPLE.rows + wholeBelow((wish.height - box.height) / over);
  const roomFor = (spare: number) => SAMPLE.perRow + wholeBelow((wish.width - box.width + spare) / along);
  // Without a shifted row that sticks out at one end, half a pitch less.
  const [staggered, flush] = [roomFor(0), roomFor(along / 2)];
  const ways = [
    ...(rows >= 2 && staggered >= 1 ? [inRows(rows, staggered)] : []),
    ...(rows >= 2 && flush >= 2 ? [inRows(rows, flush, -1)] : []),
    ...(rows >= 1 && flush >= 1 ? [inRows(1, flush)] : []),
  ];
  const most = ways.toSorted((a, b) => howMany(b) - howMany(a))[0];
  const stood = most && stand(of, most);
  return stood?.ok ? stood.value : null;
}

/** As with single hexagons: an odd number of half pitches has one half to each row, an even one two to each second. */
function straightSides(width: number, rows: number, pitch: number): StraightSides {
  const steps = Math.max(1, wholeAbove((2 * width) / pitch));
  const wholes = Math.floor(steps / 2);
  const short = Math.floor(rows / 2);
  const odd = steps % 2 === 1;
  return {
    rows,
    wholes: odd ? rows * wholes : rows * wholes - short,
    halves: odd ? rows : 2 * short,
    width: (steps * pitch) / 2,
  };
}

/**
 * As many rosettes or stars as make a quilt of a width and a height, in edges: enough to cover it, and the most
 * that lie inside. Found from placed patches: what a few rows measure, and what each more adds. Refused with
 * `too-many-patches` past the largest layout.
 */
export function asManyAsMake<L extends Layout>(
  of: Standing<L>,
  width: number,
  height: number,
): Result<AsManyAsMake<L>> {
  const wish = { width, height };
  const { along, over } = pitchesOf(of.step);
  const found = leastCover(of, wish);
  if (!found.ok) return found;
  const { cover, trim } = found.value;
  return ok({
    cover,
    trim,
    inside: mostInside(of, wish),
    straight: straightSides(width, cover.arrangement.rows, along),
    level: Math.abs(pointOf(turned(of.step), cover.layout.patches.rows, 1).y) < TOLERANCE,
    byArea: (width * height) / (along * over),
  });
}
