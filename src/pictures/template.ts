import { flatten } from '../calculator/shapes/flatten.ts';
import type { Outline, Point } from '../calculator/shapes/outline.ts';
import { type Placement, placeOutline } from '../calculator/shapes/place.ts';
import type { CutPatch } from '../calculator/shapes/shape.ts';
import { arcBetween } from '../calculator/shapes/sides.ts';
import { widthOf } from './lettering.ts';
import { INK, SEWN } from './palette.ts';
import { type Paper, PLAIN } from './paper.ts';
import { at, type Scale } from './path.ts';

/** No step of an arc is longer than this, in radians: its curve then strays less than a millionth of the radius. */
const ARC_STEP = Math.PI / 12;

/** An outline as a path on the paper, its arcs as curves. */
export function trace(paper: Paper, outline: Outline, scale: Scale): Paper {
  const start = at(scale, outline[0]!);
  paper.moveTo(start.x, start.y);
  outline.forEach((corner, i) => {
    const next = outline[i + 1] ?? outline[0]!;
    const { bulge = 0 } = corner;
    if (bulge !== 0) traceArc(paper, corner, next, bulge, scale);
    else if (i < outline.length - 1) {
      const to = at(scale, next);
      paper.lineTo(to.x, to.y);
    }
  });
  return paper.closePath();
}

function traceArc(paper: Paper, from: Point, to: Point, bulge: number, scale: Scale): void {
  const { centre, radius, sweep } = arcBetween(from, to, bulge);
  const steps = Math.max(1, Math.ceil(Math.abs(sweep) / ARC_STEP));
  const step = sweep / steps;
  const start = Math.atan2(from.y - centre.y, from.x - centre.x);
  const reach = (4 / 3) * Math.tan(step / 4) * radius;
  const on = (angle: number): Point => ({
    x: centre.x + radius * Math.cos(angle),
    y: centre.y + radius * Math.sin(angle),
  });
  const ahead = (angle: number, by: number): Point => {
    const point = on(angle);
    return at(scale, { x: point.x - Math.sin(angle) * by, y: point.y + Math.cos(angle) * by });
  };
  for (let i = 0; i < steps; i++) {
    const [a, b] = [start + i * step, start + (i + 1) * step];
    const [first, second] = [ahead(a, reach), ahead(b, -reach)];
    const end = at(scale, i === steps - 1 ? to : on(b));
    paper.bezierCurveTo(first.x, first.y, second.x, second.y, end.x, end.y);
  }
}

/** One template: the line to cut along, the line to sew along, a dot where each sewing line ends, the grain. */
export function template(
  paper: Paper,
  { cut, finished, seam }: CutPatch,
  place: Placement,
  scale: Scale,
  names: readonly string[],
): void {
  paper.lineWidth(0.75).lineJoin('miter').strokeColor(INK);
  trace(paper, placeOutline(cut.outline, place), scale).stroke();
  const sewn = placeOutline(finished.outline, place);
  if (seam > 0) {
    paper.lineWidth(0.6).dash(4, { space: 2.5 }).strokeColor(SEWN);
    trace(paper, sewn, scale).stroke().undash();
    dots(paper, sewn, scale);
  }
  inside(paper, finished.outline, sewn, place.turnDegrees, scale, names);
}

const DOT = 2.6;

/** Dots at the finished corners, where the seams begin and end: two patches are matched dot on dot. */
function dots(paper: Paper, sewn: Outline, scale: Scale): void {
  paper.lineCap('round').lineWidth(DOT).strokeColor(SEWN);
  for (const corner of sewn) {
    const { x, y } = at(scale, corner);
    // A line of next to no length with round ends is a dot, in far fewer signs than a circle.
    paper.moveTo(x, y).lineTo(x + 0.01, y);
  }
  paper.stroke().lineCap('butt');
}

/** The middle of a patch, and how far the nearest side is from there. Inches. */
function roomIn(outline: Outline): { middle: Point; reach: number } {
  const points = flatten(outline, 0.002);
  const middle = {
    x: points.reduce((sum, { x }) => sum + x, 0) / points.length,
    y: points.reduce((sum, { y }) => sum + y, 0) / points.length,
  };
  const distances = points.map((from, i) => distanceTo(from, points[i + 1] ?? points[0]!, middle));
  return { middle, reach: Math.min(...distances) };
}

/** From a point to the nearest point of a side. */
function distanceTo(from: Point, to: Point, { x, y }: Point): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const part = ((x - from.x) * dx + (y - from.y) * dy) / (dx * dx + dy * dy);
  const on = Math.min(1, Math.max(0, part));
  return Math.hypot(x - from.x - on * dx, y - from.y - on * dy);
}

const HEAD = 5;
const NAME_SIZE = 6.5;

/**
 * The grain arrow, along the side that the patch lies on (upright where that is a curve), and under it the name
 * where there is room.
 */
function inside(
  paper: Paper,
  own: Outline,
  placed: Outline,
  turnDegrees: number,
  scale: Scale,
  names: readonly string[],
): void {
  const { middle, reach } = roomIn(placed);
  const centre = at(scale, middle);
  const half = Math.min(reach * 0.72, 0.6) * scale.perInch;
  const upright = (own[0]?.bulge ?? 0) !== 0 ? 90 : 0;
  paper
    .save()
    .translate(centre.x, centre.y)
    .rotate(-(turnDegrees + upright));
  arrow(paper, half);
  const name = names.find((one) => widthOf(one, NAME_SIZE) <= half * 2 && half > 2.2 * NAME_SIZE);
  if (name !== undefined) {
    paper.font(PLAIN).fontSize(NAME_SIZE).fillColor(INK);
    paper.text(name, -widthOf(name, NAME_SIZE) / 2, 3, { lineBreak: false });
  }
  paper.restore();
}

function arrow(paper: Paper, half: number): void {
  const head = Math.min(HEAD, half / 2);
  paper.lineWidth(0.5).strokeColor(INK).fillColor(INK);
  paper.moveTo(-half, 0).lineTo(half, 0).stroke();
  for (const end of [-1, 1]) {
    const back = end * (half - head);
    paper
      .moveTo(end * half, 0)
      .lineTo(back, head * 0.4)
      .lineTo(back, -head * 0.4)
      .fill();
  }
}
