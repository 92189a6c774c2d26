import { type PlanRole, type Top, topOf } from '../calculator/plan/top.ts';
import type { PlanLayout, PlanWish } from '../calculator/plan/wish.ts';
import type { ChallengeTerms } from './challenge-facts.ts';
import { type Counted, worthOf } from './counted.ts';

/** Of what a layout is put together: what a challenge of it counts, and which of its parts are in one of those. */
interface Unit {
  counted(wish: PlanWish): Counted;
  holds(role: string): boolean;
}

const all = () => true;

const UNITS: Readonly<Partial<Record<PlanLayout, Unit>>> = {
  rosette: { counted: ({ rounds = 1 }) => ({ counting: 'rosette', rounds }), holds: all },
  garden: {
    counted: ({ rounds = 1 }) => ({ counting: 'rosette', rounds }),
    holds: (role) => role === 'centre' || role === 'petal',
  },
  star: { counted: ({ side = 1 }) => ({ counting: 'star', rounds: side }), holds: all },
  stars: { counted: () => ({ counting: 'star', rounds: 1 }), holds: (role) => role === 'star' },
  blocks: { counted: () => ({ counting: 'block', rounds: 0 }), holds: all },
};

/** The most rounds that a challenge counts rosettes of; a plan of larger ones, or of none, is counted in patches. */
const MOST_ROUNDS = 40;

const PATCHES: Counted = { counting: 'patch', rounds: 0 };

/**
 * What a challenge of a plan counts where nobody says: its rosettes, stars or blocks, else its patches.
 *
 * @example
 * countedOf({ layout: 'garden', rounds: 2 }) // {"counting":"rosette","rounds":2}
 * countedOf({ layout: 'field' }) // {"counting":"patch","rounds":0}
 */
export function countedOf(wish: PlanWish): Counted {
  const counted = UNITS[wish.layout]?.counted(wish) ?? PATCHES;
  const whole = counted.counting === 'block' || (counted.rounds >= 1 && counted.rounds <= MOST_ROUNDS);
  return whole ? counted : PATCHES;
}

/** How many of what is counted a plan takes; null where it is not put together of those. */
export function goalOf(wish: PlanWish, counted: Counted): number | null {
  const top = topFor(wish);
  if (!top) return null;
  if (counted.counting === 'patch') return top.total;
  return isUnitOf(wish, counted) ? top.many : null;
}

/** What is left of a plan's patches: in all, and by part where what is logged says which. */
export interface PiecesLeft {
  readonly left: number;
  readonly planned: number;
  readonly roles: readonly PlanRole[];
}

/** What a plan still takes after so many of what a challenge counts; null where the plan cannot be laid out. */
export function piecesLeft(
  wish: PlanWish,
  of: Pick<ChallengeTerms, 'counting' | 'rounds'> & { readonly total: number },
): PiecesLeft | null {
  const top = topFor(wish);
  if (!top) return null;
  const left = Math.max(0, top.total - worthOf(of).pieces * of.total);
  const unit = UNITS[wish.layout];
  if (!unit || !isUnitOf(wish, of)) return { left, planned: top.total, roles: [] };
  const roles = top.roles.map((role) => {
    const gone = unit.holds(role.role) ? (role.pieces / top.many) * Math.min(of.total, top.many) : 0;
    return { ...role, pieces: role.pieces - gone };
  });
  const sum = roles.reduce((pieces, role) => pieces + role.pieces, 0);
  return { left: sum, planned: top.total, roles };
}

function isUnitOf(wish: PlanWish, { counting, rounds }: Counted): boolean {
  const own = countedOf(wish);
  return own.counting === counting && own.rounds === rounds && counting !== 'patch';
}

/** Tops laid out lately: standings are asked for again and again, and a large one takes a while. */
const LAID_OUT = new Map<string, Top | null>();
const MOST_LAID_OUT = 16;

function topFor(wish: PlanWish): Top | null {
  const key = JSON.stringify(wish);
  const known = LAID_OUT.get(key);
  if (known !== undefined) return known;
  const made = topOf(wish);
  const top = made.ok ? { ...made.value, made: null } : null;
  if (LAID_OUT.size >= MOST_LAID_OUT) LAID_OUT.delete(LAID_OUT.keys().next().value ?? '');
  LAID_OUT.set(key, top);
  return top;
}
