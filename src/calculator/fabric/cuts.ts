import type { Outline, Point } from '../shapes/outline.ts';
import { SHARED_LINE } from '../shapes/place.ts';

/**
 * What it takes to cut some patches out of a piece of cloth.
 *
 * A straight cut goes with ruler and rotary cutter along a side of a patch and right across the cloth at
 * hand, through no patch. The cloth at hand is at first the whole piece, and then each part that earlier
 * cuts have set free; nothing is stacked, and the edges of the piece need no cut. What no such cut can reach
 * is traced and cut with scissors: each side counts once, also where two patches share it, and so does each
 * arc. Our own definition, no source.
 */
export interface Cuts {
  readonly straight: number;
  readonly traced: number;
}

/** Straight cuts and traced sides together. */
export const cutsInAll = ({ straight, traced }: Cuts): number => straight + traced;

/** A straight line: the points where `x·nx + y·ny = at`. */
interface Line {
  readonly nx: number;
  readonly ny: number;
  readonly at: number;
}

interface Side {
  readonly line: Line;
  readonly from: Point;
  readonly to: Point;
  readonly isArc: boolean;
}

interface Patch {
  readonly corners: Outline;
  readonly sides: readonly Side[];
}

/** Lines, ends and edges nearer than this, in inches, are one. */
const SAME = 10 * SHARED_LINE;

/**
 * Counts the cuts for outlines that lie on a piece of cloth with its corner at (0, 0).
 *
 * @example
 * cutsFor([[{ x: 0, y: 0 }, { x: 1, y: 0 }, { x: 1, y: 1 }, { x: 0, y: 1 }]], 3, 1) // {"straight":1,"traced":0}
 */
export function cutsFor(outlines: readonly Outline[], width: number, length: number): Cuts {
  const isEdge = ({ from, to }: Side): boolean =>
    [from.x, to.x].every((x) => Math.abs(x) < SAME) ||
    [from.x, to.x].every((x) => Math.abs(x - width) < SAME) ||
    [from.y, to.y].every((y) => Math.abs(y) < SAME) ||
    [from.y, to.y].every((y) => Math.abs(y - length) < SAME);
  const patches = outlines.map((corners) => ({
    corners,
    sides: sidesOf(corners).filter((side) => side.isArc || !isEdge(side)),
  }));
  return cutApart(patches);
}

function sidesOf(corners: Outline): Side[] {
  return corners.map((from, i) => {
    const to = corners[i + 1] ?? corners[0]!;
    return { line: lineThrough(from, to), from, to, isArc: (from.bulge ?? 0) !== 0 };
  });
}

/** One line for both directions: its normal points right, or straight up. */
function lineThrough(from: Point, to: Point): Line {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const [x, y] = [(to.y - from.y) / length, (from.x - to.x) / length];
  const way = x < -1e-9 || (Math.abs(x) <= 1e-9 && y < 0) ? -1 : 1;
  const [nx, ny] = [x * way, y * way];
  return { nx, ny, at: from.x * nx + from.y * ny };
}

/** Cuts along every line that may be cut, then each part by itself. */
function cutApart(patches: readonly Patch[]): Cuts {
  const cuttable = linesOf(patches).filter((line) => patches.every((patch) => isClear(line, patch.corners)));
  if (cuttable.length === 0) return { straight: 0, traced: tracedIn(patches) };
  const isCut = lineSet(cuttable);
  const left = patches.map(({ corners, sides }) => ({
    corners,
    sides: sides.filter((side) => side.isArc || !isCut(side.line)),
  }));
  let [straight, traced] = [cuttable.length, 0];
  for (const part of partsBy(left, cuttable)) {
    const cuts = cutApart(part);
    straight += cuts.straight;
    traced += cuts.traced;
  }
  return { straight, traced };
}

/** The lines that straight sides lie on, each once. */
function linesOf(patches: readonly Patch[]): Line[] {
  const lines = new LineBook();
  for (const { sides } of patches) for (const { line, isArc } of sides) if (!isArc) lines.add(line);
  return lines.all;
}

function lineSet(lines: readonly Line[]): (line: Line) => boolean {
  const book = new LineBook();
  for (const line of lines) book.add(line);
  return (line) => book.has(line);
}

/** Lines filed by their place, found again within a hair. */
class LineBook {
  readonly all: Line[] = [];
  readonly #filed = new Map<number, Line[]>();

  has(line: Line): boolean {
    const file = Math.round(line.at / FILE);
    return this.#isIn(file, line) || this.#isIn(file - 1, line) || this.#isIn(file + 1, line);
  }

  add(line: Line): void {
    if (this.has(line)) return;
    this.all.push(line);
    const file = Math.round(line.at / FILE);
    const filed = this.#filed.get(file);
    if (filed) filed.push(line);
    else this.#filed.set(file, [line]);
  }

  #isIn(file: number, line: Line): boolean {
    const filed = this.#filed.get(file);
    if (filed) for (const other of filed) if (isSame(line, other)) return true;
    return false;
  }
}

/** Places nearer than this, in inches, are filed together, or next to each other. */
const FILE = 1e-3;

const isSame = (a: Line, b: Line): boolean =>
  Math.abs(a.at - b.at) < SAME && Math.abs(a.nx * b.ny - a.ny * b.nx) < 1e-8;

/** Whether a line goes through no part of a patch. An arc keeps within the box on its chord, as high as it swells. */
function isClear(line: Line, corners: Outline): boolean {
  const { nx, ny, at } = line;
  let [below, above] = [false, false];
  const look = (x: number, y: number): void => {
    const off = x * nx + y * ny - at;
    if (off < -SAME) below = true;
    if (off > SAME) above = true;
  };
  for (let i = 0; i < corners.length; i++) {
    const from = corners[i]!;
    look(from.x, from.y);
    if (from.bulge) {
      const to = corners[i + 1] ?? corners[0]!;
      const [x, y] = [((to.y - from.y) * from.bulge) / 2, ((from.x - to.x) * from.bulge) / 2];
      look(from.x + x, from.y + y);
      look(to.x + x, to.y + y);
    }
    if (below && above) return false;
  }
  return true;
}

/** The patches that lie on the same side of every line. */
function partsBy(patches: readonly Patch[], lines: readonly Line[]): Patch[][] {
  let parts: Patch[][] = [[...patches]];
  for (const { nx, ny, at } of lines) {
    parts = parts.flatMap((part) => {
      if (part.length === 1) return [part];
      const isBeyond = ({ corners }: Patch) => {
        const { x, y } = middleOf(corners);
        return x * nx + y * ny > at;
      };
      const beyond = part.filter(isBeyond);
      return beyond.length === 0 || beyond.length === part.length
        ? [part]
        : [part.filter((patch) => !isBeyond(patch)), beyond];
    });
  }
  return parts;
}

function middleOf(corners: Outline): Point {
  let [x, y] = [0, 0];
  for (const corner of corners) {
    x += corner.x;
    y += corner.y;
  }
  return { x: x / corners.length, y: y / corners.length };
}

/** Sides that are left, those with the same two ends once. */
function tracedIn(patches: readonly Patch[]): number {
  const book = new SideBook();
  let arcs = 0;
  for (const { sides } of patches) {
    for (const side of sides) {
      if (side.isArc) arcs++;
      else book.add(side);
    }
  }
  return arcs + book.count;
}

/** Sides filed by their middles. */
class SideBook {
  count = 0;
  readonly #filed = new Map<number, { x: number; y: number; length: number }[]>();

  add({ from, to }: Side): void {
    const side = {
      x: (from.x + to.x) / 2,
      y: (from.y + to.y) / 2,
      length: Math.hypot(to.x - from.x, to.y - from.y),
    };
    const file = Math.round(side.x / FILE);
    for (const near of [file, file - 1, file + 1])
      if (this.#filed.get(near)?.some((other) => isSameSide(other, side))) return;
    this.count++;
    const filed = this.#filed.get(file);
    if (filed) filed.push(side);
    else this.#filed.set(file, [side]);
  }
}

const isSameSide = (a: { x: number; y: number; length: number }, b: typeof a): boolean =>
  Math.abs(a.x - b.x) < SAME && Math.abs(a.y - b.y) < SAME && Math.abs(a.length - b.length) < SAME;
