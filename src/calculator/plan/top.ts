import { ok, type Result, wrong } from '../../measure/result.ts';
import { type Arrangement, howMany } from '../layouts/arrangement.ts';
import { asManyAsMake, type Standing } from '../layouts/as-many-as-make.ts';
import { blocks, blocksApart, blocksOver } from '../layouts/blocks.ts';
import { type Counted, countedFrom } from '../layouts/counted.ts';
import { diamonds } from '../layouts/diamonds.ts';
import { field } from '../layouts/field.ts';
import { garden, gardenStep } from '../layouts/garden.ts';
import { diamondGardenStep, gardenWithDiamonds } from '../layouts/garden-with-diamonds.ts';
import type { Layout } from '../layouts/layout.ts';
import { roleShapes } from '../layouts/role-shapes.ts';
import { rosette } from '../layouts/rosette.ts';
import { star } from '../layouts/star.ts';
import { stars, starsStep } from '../layouts/stars.ts';
import type { ShapeName } from '../shapes/shape.ts';
import type { PlanLayout, PlanSize, PlanWish } from './wish.ts';

/** Patches of one shape for one purpose. */
export interface PlanRole {
  readonly role: string;
  readonly shape: ShapeName;
  readonly pieces: number;
}

/** What the top takes, whichever layout it has. */
export interface Top {
  readonly roles: readonly PlanRole[];
  readonly total: number;
  /** Seams that are known: none of loose pieces; of separate blocks, those inside them. */
  readonly seams: number;
  /** Corners to be set in. */
  readonly setIns: number;
  /** Finished, inches: of the whole, or of one where there are several apart; null where it is not known. */
  readonly size: PlanSize | null;
  /** Whether the whole is one piece of sewing. */
  readonly joined: boolean;
  /** How many rosettes, stars or blocks, and how they stand where they are joined. */
  readonly many: number;
  readonly arrangement?: Arrangement;
  /** The layout itself, or that of one where there are several apart; null where patches are not placed. */
  readonly made: Counted | null;
}

type Maker = (wish: PlanWish) => Result<Top>;

const MAKERS: Readonly<Record<PlanLayout, Maker>> = {
  field: ({ quilt, edge, rows = 'across', sides = 'cover' }) =>
    quilt
      ? madeTop(countedFrom(field({ width: quilt.width, height: quilt.height, edge, rows, sides }), edge))
      : wrong('plan-needs', { needs: ['quilt'] }),
  rosette: ({ rounds = 1, edge, number = 1 }) => apart(countedFrom(rosette(rounds), edge), number),
  garden: (wish) => arranged(wish, wish.rosettes, gardenOf(wish)),
  star: ({ side = 1, edge, number = 1 }) => apart(countedFrom(star(side), edge), number),
  stars: (wish) => arranged(wish, wish.stars, starsOf(wish)),
  diamonds: ({ side, edge }) =>
    side === undefined
      ? wrong('plan-needs', { needs: ['side'] })
      : madeTop(countedFrom(diamonds(side % 2 === 0 ? 4 : 1, Math.floor((side - 1) / 2)), edge)),
  blocks: blocksTop,
  pieces: ({ shape = 'hexagon', number }) =>
    number === undefined
      ? wrong('plan-needs', { needs: ['number'] })
      : ok({ ...LOOSE, roles: [{ role: 'pieces', shape, pieces: number }], total: number }),
};

const LOOSE = { seams: 0, setIns: 0, size: null, joined: false, many: 1, made: null };

/**
 * The top that a wish describes: its patches by role and shape, its seams and its size, counted from the
 * layout itself. What is missing or cannot be is a problem: `plan-needs`, `too-many-patches`, `no-patch-fits`.
 */
export function topOf(wish: PlanWish): Result<Top> {
  const top = MAKERS[wish.layout](wish);
  if (!top.ok || top.value.total > 0) return top;
  return wrong('no-patch-fits', { width: wish.quilt?.width ?? 0, height: wish.quilt?.height ?? 0 });
}

/** Roles that are one and the same at the cutting table: a trimmed hexagon is cut whole. */
const SAME_ROLE: Readonly<Record<string, string>> = { whole: 'field', trimmed: 'field' };

/** The part of a plan that patches of a layout's role belong to. */
export const partOf = (role: string): string => SAME_ROLE[role] ?? role;

function rolesOf(layout: Layout, times = 1): PlanRole[] {
  const roles = new Map<string, PlanRole>();
  for (const { role, kind, pieces } of roleShapes(layout.patches)) {
    const named = partOf(role);
    const key = `${named} ${kind}`;
    roles.set(key, { role: named, shape: kind, pieces: (roles.get(key)?.pieces ?? 0) + pieces * times });
  }
  return [...roles.values()];
}

function madeTop(made: Result<Counted>, times = 1): Result<Top> {
  if (!made.ok) return made;
  const { layout, counted, width, height } = made.value;
  return ok({
    roles: rolesOf(layout, times),
    total: counted.total * times,
    seams: counted.seams * times,
    setIns: counted.setIns * times,
    size: { width, height },
    joined: times === 1,
    many: times,
    made: made.value,
  });
}

const apart = (made: Result<Counted>, number: number): Result<Top> => madeTop(made, number);

/** Rosettes or stars set together: as many as were said, or the fewest that cover the quilt, to be trimmed. */
function arranged(
  { layout, quilt, edge }: PlanWish,
  said: Arrangement | undefined,
  of: Standing<Layout>,
): Result<Top> {
  if (said) return stood(madeTop(countedFrom(of.make(said), edge)), said);
  if (!quilt) return wrong('plan-needs', { needs: ['quilt', layout === 'stars' ? 'stars' : 'rosettes'] });
  const { width, height } = quilt;
  const found = asManyAsMake(of, width / edge, height / edge);
  if (!found.ok) return found;
  const { layout: covering, arrangement } = found.value.cover;
  const top = stood(madeTop(countedFrom(ok(covering), edge)), arrangement);
  return top.ok ? ok({ ...top.value, size: { width, height } }) : top;
}

const stood = (top: Result<Top>, arrangement: Arrangement): Result<Top> =>
  top.ok ? ok({ ...top.value, many: howMany(arrangement), arrangement }) : top;

function gardenOf({ rounds = 1, path = 'one', outer = false }: PlanWish): Standing<Layout> {
  if (path === 'diamonds')
    return {
      step: diamondGardenStep(rounds),
      make: (arrangement) => gardenWithDiamonds({ arrangement, rounds, outer }),
    };
  return {
    step: gardenStep(rounds, path),
    make: (arrangement) => garden({ arrangement, rounds, path, outer }),
  };
}

const starsOf = ({ set = 'diamonds', outer = false }: PlanWish): Standing<Layout> => ({
  step: starsStep(set),
  make: (arrangement) => stars({ arrangement, set, edge: outer ? 'notches' : 'open' }),
});

/** Blocks of three: a hexagon of them, so many not yet joined, or as many as cover the quilt. */
function blocksTop({ blocks: many, side, quilt, edge }: PlanWish): Result<Top> {
  if (side !== undefined) return times(side * side, madeTop(countedFrom(blocks(side), edge)));
  if (many !== undefined) {
    const made = times(many, madeTop(countedFrom(blocksApart(many), edge)));
    return made.ok ? ok({ ...made.value, size: null, joined: false }) : made;
  }
  if (!quilt) return wrong('plan-needs', { needs: ['quilt', 'blocks', 'side'] });
  const over = blocksOver(quilt.width, quilt.height, edge);
  return over.ok ? times(over.value.blocks, madeTop(countedFrom(over, edge))) : over;
}

const times = (many: number, top: Result<Top>): Result<Top> => (top.ok ? ok({ ...top.value, many }) : top);
