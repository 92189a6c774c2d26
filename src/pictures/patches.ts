import { FORMS } from '../calculator/layouts/forms.ts';
import type { Rectangle } from '../calculator/layouts/layout.ts';
import { type PatchList, pointOf } from '../calculator/layouts/patches.ts';
import { at, type Scale } from './path.ts';
import { px } from './svg.ts';

/** A form's first corner from its spot, in inches, and the path from there round its outline, in pixels. */
interface Drawn {
  readonly x: number;
  readonly y: number;
  readonly round: string;
}

function formsOn({ rows }: PatchList, edge: number, perInch: number): Drawn[] {
  return FORMS.map(({ corners }) => {
    const points = corners.filter(({ sixths }) => sixths < 3).map((corner) => pointOf(corner, rows, edge));
    const [first, ...others] = points;
    let from = first!;
    const steps = others.map((to) => {
      const step = `${px((to.x - from.x) * perInch)} ${px((to.y - from.y) * perInch)}`;
      from = to;
      return step;
    });
    return { x: first!.x, y: first!.y, round: `l${steps.join(' ')}z` };
  });
}

/** All patches of each role as one path, in the order of the roles: thousands of patches are drawn in one go. */
export function rolePaths(list: PatchList, edge: number, scale: Scale, part: Rectangle): string[] {
  const forms = formsOn(list, edge, scale.perInch);
  const paths: string[][] = list.roles.map(() => []);
  const reach = 2 * edge;
  for (let i = 0; i < list.count; i++) {
    const spot = pointOf({ u: list.u[i]!, v: list.v[i]! }, list.rows, edge);
    if (outside(spot, part, reach)) continue;
    const form = forms[list.form[i]!]!;
    const start = at(scale, { x: spot.x + form.x, y: spot.y + form.y });
    paths[list.role[i]!]!.push(`M${px(start.x)} ${px(start.y)}${form.round}`);
  }
  return paths.map((path) => path.join(''));
}

const outside = (
  { x, y }: { x: number; y: number },
  { left, top, width, height }: Rectangle,
  reach: number,
): boolean => x < left - reach || x > left + width + reach || y < top - reach || y > top + height + reach;
