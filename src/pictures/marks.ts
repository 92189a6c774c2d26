import { outlineOf, type PatchList } from '../calculator/layouts/patches.ts';
import type { Outline, Point } from '../calculator/shapes/outline.ts';
import { lettered, SIZE, widthOf } from './lettering.ts';
import type { Look } from './palette.ts';
import { at, type Scale } from './path.ts';
import { element } from './svg.ts';

const ROUND = /^round (\d+)$/;

/** Whether a layout's roles are rounds about a centre. */
export const inRounds = (roles: readonly string[]): boolean =>
  roles.length > 1 && roles.every((role) => role === 'centre' || ROUND.test(role));

/**
 * What patches of each role carry: the number of their round where the roles are rounds, a letter where they
 * are not. The centre of rounds carries none.
 *
 * @example
 * marksFor(['centre', 'round 1', 'round 2']) // ["","1","2"]
 * marksFor(['centre', 'petal']) // ["A","B"]
 */
export const marksFor = (roles: readonly string[]): string[] =>
  roles.map((role, i) =>
    inRounds(roles) ? (ROUND.exec(role)?.[1] ?? '') : String.fromCharCode('A'.charCodeAt(0) + (i % 26)),
  );

/** One role as it is drawn. */
export interface Marked {
  readonly look: Look;
  readonly mark: string;
}

export interface Ground {
  readonly list: PatchList;
  readonly edge: number;
  readonly scale: Scale;
}

/** More letters than this are a rash, not a help. */
const MOST = 130;

/** Whether every patch has room for its mark. */
export function roomForMarks({ list, edge, scale }: Ground, roles: readonly Marked[]): boolean {
  if (list.count > MOST) return false;
  const inside = new Map<number, number>();
  for (let i = 0; i < list.count; i++) {
    const form = list.form[i]!;
    if (!inside.has(form)) inside.set(form, widestCircle(outlineOf(list, i, edge)) * scale.perInch);
    if (wide(roles[list.role[i]!]!.mark) > inside.get(form)!) return false;
  }
  return true;
}

/** The diameter that a mark needs. */
const wide = (mark: string): number => Math.hypot(widthOf(mark, SIZE.small, true), SIZE.small * 0.73);

/** The mark on every patch. */
export const everyMark = ({ list, edge, scale }: Ground, roles: readonly Marked[]): string =>
  Array.from({ length: list.count }, (_, i) =>
    lettering(roles[list.role[i]!]!, at(scale, middleOf(outlineOf(list, i, edge)))),
  ).join('');

/** The numbers of rounds along one line from the centre, as many as stand clear of each other. */
export function marksAlong({ list, edge, scale }: Ground, roles: readonly Marked[]): string {
  const outermost = new Map<number, Point>();
  for (let i = 0; i < list.count; i++) {
    const role = list.role[i]!;
    const middle = middleOf(outlineOf(list, i, edge));
    const kept = outermost.get(role);
    if (!kept || rightward(middle) > rightward(kept) + 1e-6) outermost.set(role, middle);
  }
  let last: Point | undefined;
  const shown: string[] = [];
  for (const [i, role] of roles.entries()) {
    const point = outermost.get(i);
    if (role.mark === '' || !point) continue;
    const here = at(scale, point);
    if (last && Math.hypot(here.x - last.x, here.y - last.y) < wide(role.mark) + 14) continue;
    shown.push(lettering(role, here));
    last = here;
  }
  return shown.join('');
}

/** How far to the right, less how far from the middle line, so that of a column the level one is taken. */
const rightward = ({ x, y }: Point): number => x - Math.abs(y) / 100;

const lettering = ({ look, mark }: Marked, { x, y }: Point): string =>
  mark === '' ? '' : onGround(mark, look, { x, y });

/** A mark on a plain ground, so that no texture runs through it. */
export const onGround = (mark: string, { fill, mark: ink, texture }: Look, { x, y }: Point): string =>
  (texture === 'plain' ? '' : element('circle', { cx: x, cy: y, r: wide(mark) / 2, fill })) +
  lettered(mark, x, y, { size: SIZE.small, bold: true, anchor: 'middle', fill: ink });

/** The middle of a patch's corners. */
const middleOf = (outline: Outline): Point => ({
  x: outline.reduce((sum, { x }) => sum + x, 0) / outline.length,
  y: outline.reduce((sum, { y }) => sum + y, 0) / outline.length,
});

/** The diameter of the widest circle about the middle that stays inside the sides. */
function widestCircle(outline: Outline): number {
  const middle = middleOf(outline);
  const distances = outline.map((from, i) => {
    const to = outline[i + 1] ?? outline[0]!;
    const cross = (to.x - from.x) * (middle.y - from.y) - (to.y - from.y) * (middle.x - from.x);
    return Math.abs(cross) / Math.hypot(to.x - from.x, to.y - from.y);
  });
  return 2 * Math.min(...distances);
}
