import { centreOf } from '../../shapes/centre.ts';
import type { Placement } from '../../shapes/place.ts';
import type { CutPatch } from '../../shapes/shape.ts';
import type { Choice, Chosen } from '../search/choice.ts';
import { HEXAGONS_IN_SQUARES } from './hexagons-in-squares.ts';
import type { KnownSquare } from './square.ts';

/** What is known of one patch: arrangements in squares by their count, and the length that they are told in. */
export interface KnownSquares {
  readonly squares: readonly KnownSquare[];
  readonly edge: number;
  readonly centre: { readonly x: number; readonly y: number };
}

/**
 * The arrangements that a long search has found for a patch with pointed corners, if there are any. They are
 * told for a patch that at turn 0 has a corner to the right of its centre.
 */
export function knownFor({ shape, cut }: CutPatch): KnownSquares | undefined {
  if (shape !== 'hexagon') return undefined;
  return { squares: HEXAGONS_IN_SQUARES, edge: cut.measures.edge!, centre: centreOf(cut.outline) };
}

/** The most patches known to fit a square that fits the piece of cloth. */
export function inSquares(
  known: KnownSquares,
  width: number,
  length: number,
  beat: number,
): Chosen | undefined {
  const { squares, edge } = known;
  const room = Math.min(width, length) / edge;
  const best = squares.filter(({ side }) => side <= room).at(-1);
  if (!best || best.places.length <= beat) return undefined;
  return { count: best.places.length, choice: squareChoice(known, best) };
}

function squareChoice({ edge, centre }: KnownSquares, { side, places }: KnownSquare): Choice {
  const fits = (width: number, length: number) => side * edge <= Math.min(width, length);
  return {
    count: (width, length) => (fits(width, length) ? places.length : 0),
    blocks: ({ x, y, width, length }) => {
      if (!fits(width, length)) return [];
      const placements = () =>
        places.map((place) => aboutCentre(centre, x + place[0] * edge, y + place[1] * edge, place[2]));
      return [{ x, y, width, length, count: places.length, cut: { as: 'placed' }, placements }];
    },
  };
}

/** The place of a patch whose own centre, turned, is to lie at a point. */
function aboutCentre(centre: KnownSquares['centre'], x: number, y: number, turnDegrees: number): Placement {
  const turn = (turnDegrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return {
    x: x - (centre.x * cos - centre.y * sin),
    y: y - (centre.x * sin + centre.y * cos),
    turnDegrees,
  };
}
