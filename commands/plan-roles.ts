import { howMany } from '../src/calculator/layouts/arrangement.ts';
import type { RoleNeed } from '../src/calculator/plan/cloths.ts';
import type { Plan } from '../src/calculator/plan/plan.ts';
import type { PlanRole } from '../src/calculator/plan/top.ts';
import type { PlanWish } from '../src/calculator/plan/wish.ts';
import { CATALOGUE } from '../src/calculator/shapes/catalogue.ts';
import type { ShapeName } from '../src/calculator/shapes/shape.ts';
import { stripFor } from '../src/calculator/shapes/strip.ts';
import { grouped } from '../src/measure/ruler.ts';
import { capital, many, type Speech } from '../src/measure/speech.ts';
import { measureWords } from './patch-words.ts';

/** What a part is called when its patches are counted; a part that is not here is called as it is. */
const PARTS: Readonly<Record<string, readonly [one: string, more: string]>> = {
  centre: ['centre', 'centres'],
  petal: ['petal', 'petals'],
  path: ['for the path', 'for the path'],
  half: ['half', 'halves'],
  star: ['for stars', 'for stars'],
  between: ['between', 'between'],
  diamond: ['diamond', 'diamonds'],
  triangle: ['triangle', 'triangles'],
};

/** "126 petals", "24 of round 3", "1,739 hexagons". */
export function partWords({ role, shape, pieces }: PlanRole): string {
  const known = PARTS[role];
  if (known) return many(pieces, ...known);
  if (role === 'field' || role === 'pieces') return shapeWords(shape, pieces);
  return `${grouped(pieces)} ${role.startsWith('round') ? `of ${role}` : role}`;
}

/** Behind a number no angle may stand: "42 diamonds", the usual ones, or "42 diamonds of 45°". */
const behindNumber = (shape: ShapeName, title: string): string =>
  shape === 'diamond' ? title.replace(/^60° /, '') : title.replace(/^(\d+°) (.*)$/, '$2 of $1');

export const shapeWords = (shape: ShapeName, pieces: number): string =>
  many(pieces, behindNumber(shape, CATALOGUE[shape].title), behindNumber(shape, CATALOGUE[shape].titles));

/** The patches by shape: "1,691 hexagons and 48 half-hexagons". */
export function shapesWords(roles: readonly PlanRole[]): string {
  const shapes = [...new Set(roles.map(({ shape }) => shape))];
  const counts = shapes.map((shape) =>
    shapeWords(
      shape,
      roles.reduce((sum, one) => (one.shape === shape ? sum + one.pieces : sum), 0),
    ),
  );
  return counts.length < 2 ? (counts[0] ?? '') : `${counts.slice(0, -1).join(', ')} and ${counts.at(-1)}`;
}

/** The strip that patches of a shape are cut from: its height, and what that measures on the patch. */
export const stripOf = (shape: ShapeName, { edge, seam }: PlanWish): { height: number; words: string } => ({
  height: stripFor(shape, { edge }, seam).height,
  words: measureWords(shape, CATALOGUE[shape].strip.height),
});

/** How each shape is cut: "Cut hexagons 2 1/4 in (2.232) flat to flat." */
export function cutWords({ roles, wish }: Pick<Plan, 'roles' | 'wish'>, say: Speech): string {
  const shapes = [...new Set(roles.map(({ shape }) => shape))];
  const cuts = shapes.map((shape) => {
    const { height, words } = stripOf(shape, wish);
    const several = shapes.length > 1;
    const named = several ? `${CATALOGUE[shape].titles} ` : '';
    return words === 'height'
      ? `${named}${several ? 'from ' : ''}strips ${say.length(height)} high`
      : `${named}${say.length(height)} ${words}`;
  });
  return `Cut ${cuts.join(', ')}.`;
}

/** The name of a part's figures: `round1`, `centre`; with its shape where one part has two. */
export function figureName(role: PlanRole, all: readonly PlanRole[]): string {
  const plain = role.role
    .split(/[^\p{L}\d]+/u)
    .map((word, i) => (i === 0 ? word : capital(word)))
    .join('');
  const twice = all.filter((one) => one.role === role.role).length > 1;
  return twice ? `${plain}${role.shape.split('-').map(capital).join('')}` : plain;
}

/** The part that a cloth's use is for, in words: "7 centres and 84 for the path", "2 panels". */
export const usedFor = (roles: readonly string[], needs: readonly RoleNeed[]): string =>
  needs
    .filter(({ role }) => roles.includes(role))
    .map(partWords)
    .join(', ');

/** What is planned: "7 rosettes of 2 rounds, shared path, 1 in side"; without a top, as far as the wish alone tells. */
export function layoutWords(
  { wish, top }: { readonly wish: PlanWish; readonly top?: Plan['top'] },
  say: Speech,
): string {
  const { quilt } = wish;
  const size = quilt ? ` for ${say.size(quilt.width, quilt.height)}` : '';
  return `${LAYOUTS[wish.layout](wish, top?.many ?? numberIn(wish))}${size}, ${say.plain(wish.edge)} side`;
}

/** How many rosettes, stars or blocks a wish says; null where they are to fill a size. */
function numberIn({ layout, rosettes, stars, blocks, side, number }: PlanWish): number | null {
  if (layout === 'garden') return rosettes ? howMany(rosettes) : null;
  if (layout === 'stars') return stars ? howMany(stars) : null;
  if (layout === 'blocks') return blocks ?? (side === undefined ? null : side * side);
  return number ?? 1;
}

const PATHS = {
  none: 'no path',
  one: 'shared path',
  own: 'a path to each',
  diamonds: 'set with diamonds',
} as const;

const rounds = ({ rounds: r = 1 }: PlanWish): string => many(r, 'round', 'rounds');

/** "7 rosettes", or "rosettes" where their number is not said. */
const counted = (number: number | null, one: string, more: string): string =>
  number === null ? more : many(number, one, more);

const LAYOUTS: Readonly<Record<PlanWish['layout'], (wish: PlanWish, number: number | null) => string>> = {
  field: ({ sides = 'cover' }) =>
    `field of hexagons${{ whole: ', whole inside', cover: '', straight: ', straight sides' }[sides]}`,
  rosette: (wish, number) =>
    number === 1
      ? `rosette of ${rounds(wish)}`
      : `${counted(number, '', 'rosettes')} of ${rounds(wish)}, apart`,
  garden: (wish, number) =>
    `${counted(number, 'rosette', 'rosettes')} of ${rounds(wish)}, ${PATHS[wish.path ?? 'one']}`,
  star: ({ side = 1 }, number) =>
    `${number === 1 ? 'star' : `${counted(number, '', 'stars')}, apart`}, ${grouped(side)} a side`,
  stars: ({ set = 'diamonds' }, number) => `${counted(number, 'star', 'stars')} set with ${set}`,
  diamonds: ({ side = 1 }) => `large diamond, ${grouped(side)} a side`,
  blocks: (_, number) => `${counted(number, 'block', 'blocks')} of three`,
  pieces: ({ shape = 'hexagon', number = 1 }) => shapeWords(shape, number),
};
