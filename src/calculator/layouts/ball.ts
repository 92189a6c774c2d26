/** A point in space, in inches, the ball's middle being (0, 0, 0). */
export type SpacePoint = readonly [x: number, y: number, z: number];

/** A ball pieced of pentagons: where each lies, and what is counted from that. */
export interface Ball {
  /** The corners of each piece, in order round it, seen from outside counter-clockwise. */
  readonly pieces: readonly (readonly SpacePoint[])[];
  readonly total: number;
  /** Sides that two pieces share. */
  readonly seams: number;
  readonly corners: number;
  /** Corners where three pieces meet with no gap: all of them. */
  readonly setIns: number;
  /** Inches of sewing. */
  readonly seamLength: number;
  /** Through two corners that face each other, inches: the ball that it fits inside. */
  readonly cornerToCorner: number;
  /** Through the middles of two pieces that face each other, inches: the ball that fits inside it. */
  readonly flatToFlat: number;
}

const GOLDEN = (1 + Math.sqrt(5)) / 2;

/** The twelve ways that the pieces face: the corners of the icosahedron inside. */
const FACINGS: readonly SpacePoint[] = [-1, 1].flatMap((a) =>
  [-GOLDEN, GOLDEN].flatMap((b): SpacePoint[] => [
    [0, a, b],
    [a, b, 0],
    [b, 0, a],
  ]),
);

/** The corners of a dodecahedron: those of a cube, and two before each of its faces. Its edge is 2 / GOLDEN. */
const CORNERS: readonly SpacePoint[] = [
  ...[-1, 1].flatMap((x) => [-1, 1].flatMap((y) => [-1, 1].map((z): SpacePoint => [x, y, z]))),
  ...[-1 / GOLDEN, 1 / GOLDEN].flatMap((a) =>
    [-GOLDEN, GOLDEN].flatMap((b): SpacePoint[] => [
      [0, b, a],
      [b, a, 0],
      [a, 0, b],
    ]),
  ),
];

const dot = (a: SpacePoint, b: SpacePoint): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: SpacePoint, b: SpacePoint): SpacePoint => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const lengthOf = (a: SpacePoint): number => Math.sqrt(dot(a, a));

/** The five corners that lie furthest out the way a piece faces, in order about that way. */
function pieceFacing(way: SpacePoint): number[] {
  const outward = CORNERS.map((corner, index) => ({ index, corner, reach: dot(corner, way) }));
  const five = outward.sort((a, b) => b.reach - a.reach).slice(0, 5);
  const first = five[0]!.corner;
  const aside = cross(way, first);
  const turn = ({ corner }: { corner: SpacePoint }) =>
    Math.atan2(dot(corner, aside) / lengthOf(way), dot(corner, cross(aside, way)) / dot(way, way));
  return five.toSorted((a, b) => turn(a) - turn(b)).map(({ index }) => index);
}

const PIECES = FACINGS.map(pieceFacing);

/** How often each side (by its two corners) and each corner comes. */
function tallied(): { sides: Map<string, number>; corners: Map<number, number> } {
  const sides = new Map<string, number>();
  const corners = new Map<number, number>();
  for (const piece of PIECES) {
    piece.forEach((corner, i) => {
      const side = [corner, piece[(i + 1) % piece.length]!].sort((a, b) => a - b).join(' ');
      sides.set(side, (sides.get(side) ?? 0) + 1);
      corners.set(corner, (corners.get(corner) ?? 0) + 1);
    });
  }
  return { sides, corners };
}

/**
 * The ball of twelve pentagons of a finished edge (inches): a regular dodecahedron, each piece placed in space
 * and the seams and corners counted from the pieces.
 *
 * @example
 * ball(1).seams // 30
 * ball(1).cornerToCorner // 2.8025
 * ball(1).flatToFlat // 2.227
 */
export function ball(edge: number): Ball {
  const scale = (edge * GOLDEN) / 2;
  const at = (index: number): SpacePoint => {
    const [x, y, z] = CORNERS[index]!;
    return [x * scale, y * scale, z * scale];
  };
  const pieces = PIECES.map((piece) => piece.map(at));
  const { sides, corners } = tallied();
  const seams = [...sides.values()].filter((times) => times === 2).length;
  const [first] = pieces;
  const way = FACINGS[0]!;
  return {
    pieces,
    total: pieces.length,
    seams,
    corners: corners.size,
    setIns: [...corners.values()].filter((times) => times === 3).length,
    seamLength: seams * edge,
    cornerToCorner: 2 * lengthOf(first![0]!),
    flatToFlat: (2 * dot(first![0]!, way)) / lengthOf(way),
  };
}
