import { type Growing, largestInside } from '../src/calculator/layouts/as-large-as.ts';
import { GROWING_ROSETTE, GROWING_STAR } from '../src/calculator/layouts/growing.ts';
import type { Layout } from '../src/calculator/layouts/layout.ts';
import type { PlanLayout, PlanWish } from '../src/calculator/plan/wish.ts';
import { many } from '../src/measure/speech.ts';

/** How one layout grows, and the number it grows by. */
interface Grows extends Pick<Growing<Layout>, 'least' | 'sizeOf'> {
  readonly by: 'side' | 'rounds';
}

const GROWS: Readonly<Partial<Record<PlanLayout, Grows>>> = {
  rosette: { by: 'rounds', ...GROWING_ROSETTE },
  star: { by: 'side', ...GROWING_STAR },
  diamonds: { by: 'side', least: 1, sizeOf: (side) => [side, Math.sqrt(3) * side] },
};

export interface PlanGrown {
  readonly said: Pick<PlanWish, 'side' | 'rounds'>;
  readonly words: readonly string[];
}

/** One rosette, star or diamond on a quilt, where nobody said how large: the largest that lies inside it. */
export function planGrown({ layout, quilt, edge, number, ...wish }: PlanWish): PlanGrown {
  const grows = GROWS[layout];
  if (!grows || !quilt || number !== undefined || wish[grows.by] !== undefined)
    return { said: {}, words: [] };
  const n = largestInside(grows, quilt.width / edge, quilt.height / edge);
  if (n === null) return { said: {}, words: [] };
  const words = grows.by === 'side' ? `${n} a side` : many(n, 'round', 'rounds');
  return { said: { [grows.by]: n }, words: [`the largest that lies inside, ${words}`] };
}
