import { type Ball, ball, type SpacePoint } from '../calculator/layouts/ball.ts';
import type { Point } from '../calculator/shapes/outline.ts';
import { type Reading, speech } from '../measure/speech.ts';
import { arrows, badge } from './dimension.ts';
import { legend, MIDDLE, swatch } from './legend.ts';
import { type Block, heading, page, ROOM } from './page.ts';
import { INK, lookOf, PAPER, tile } from './palette.ts';
import { toPng } from './png.ts';
import { element, px } from './svg.ts';

/** The ball of pentagons as it is seen. Lengths in inches. */
export interface BallRecipe {
  readonly draw: 'ball';
  readonly title: string;
  readonly edge: number;
  readonly reading: Reading;
}

export const drawBall = (recipe: BallRecipe): Promise<Uint8Array> => toPng(ballPicture(recipe));

/** How wide each view of the ball is drawn, corner to corner, and the room about it for letters. */
const ACROSS = 440;
const ABOUT = 70;

const dot = (a: SpacePoint, b: SpacePoint): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: SpacePoint, b: SpacePoint): SpacePoint => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const unit = (a: SpacePoint): SpacePoint => {
  const length = Math.sqrt(dot(a, a));
  return [a[0] / length, a[1] / length, a[2] / length];
};
const opposite = ([x, y, z]: SpacePoint): SpacePoint => [-x, -y, -z];

function middleOf(piece: readonly SpacePoint[]): SpacePoint {
  const sum = (k: 0 | 1 | 2) => piece.reduce((total, corner) => total + corner[k], 0) / piece.length;
  return [sum(0), sum(1), sum(2)];
}

/** A way to look at the ball: what is towards the eye, and what is up. */
interface View {
  readonly towards: SpacePoint;
  readonly up: SpacePoint;
  readonly centre: Point;
  readonly perInch: number;
}

function seen(point: SpacePoint, { towards, up, centre, perInch }: View): Point {
  const right = cross(up, towards);
  return { x: centre.x + dot(point, right) * perInch, y: centre.y - dot(point, up) * perInch };
}

/** Nearer to the rim than this, of an inch's size, a piece is seen edge on. */
const HAIR = 1e-9;

/** The pieces that face the eye; the foremost are one look, those beside them the other. */
function drawn(made: Ball, view: View): string {
  const front = made.pieces.map((piece) => ({ piece, near: dot(middleOf(piece), view.towards) }));
  const foremost = Math.max(...front.map(({ near }) => near));
  return front
    .filter(({ near }) => near > HAIR)
    .map(({ piece, near }) => {
      const corners = piece.map((corner) => seen(corner, view)).map(({ x, y }) => `${px(x)} ${px(y)}`);
      const look = near > foremost - HAIR ? 0 : 1;
      return element('path', {
        d: `M${corners.join('L')}Z`,
        fill: `url(#piece${look})`,
        stroke: lookOf(look).mark,
        'stroke-width': 5,
        'stroke-linejoin': 'round',
      });
    })
    .join('');
}

/** From a point on the rim to the one that faces it, pale beneath so that it is seen on dark pieces too. */
function through(point: SpacePoint, name: string, view: View): string {
  const [near, far] = [seen(point, view), seen(opposite(point), view)];
  const length = Math.hypot(near.x - far.x, near.y - far.y);
  const out = { x: (near.x - far.x) / length, y: (near.y - far.y) / length };
  const line = arrows(near, far, { colour: PAPER, width: 9 }) + arrows(near, far, { width: 4 });
  return line + badge(name, { x: near.x + out.x * 36, y: near.y + out.y * 36 });
}

/**
 * The picture of the ball as SVG, seen twice: on the left towards the middle of a piece, one and five about it;
 * on the right towards the middle of a seam, where four corners and four pieces edge on make the rim, so that
 * both of its sizes can be measured.
 */
export function ballPicture({ title, edge, reading }: BallRecipe): string {
  const made = ball(edge);
  const say = speech(reading);
  const perInch = ACROSS / made.cornerToCorner;
  const y = ACROSS / 2 + ABOUT;
  const [first] = made.pieces;
  const towards = unit(middleOf(first!));
  const corner = first![0]!;
  const aside = dot(corner, towards);
  const up = unit([0, 1, 2].map((k) => corner[k]! - aside * towards[k]!) as unknown as SpacePoint);
  const piece: View = { towards, up, centre: { x: ROOM / 4, y }, perInch };
  const seam: View = { towards: [0, 0, 1], up: [0, 1, 0], centre: { x: (3 * ROOM) / 4, y }, perInch };
  const onRim = (points: readonly SpacePoint[]) => points.filter(([, , z]) => Math.abs(z) < HAIR);
  const farRight = onRim(made.pieces.flat()).toSorted((a, b) => b[0] - a[0] || b[1] - a[1])[0]!;
  const upperLeft = onRim(made.pieces.map(middleOf)).toSorted((a, b) => b[1] - a[1] || a[0] - b[0])[0]!;
  const views: Block = {
    height: ACROSS + 2 * ABOUT,
    drawn:
      drawn(made, piece) + drawn(made, seam) + through(farRight, 'A', seam) + through(upperLeft, 'B', seam),
  };
  const told = legend([
    { sample: badge('A', MIDDLE), words: `corner to corner ${say.length(made.cornerToCorner)}` },
    { sample: badge('B', MIDDLE), words: `flat to flat ${say.length(made.flatToFlat)}` },
    { sample: swatch('url(#piece0)', INK), words: `pentagons: ${made.total}` },
    {
      sample: element('path', { d: 'M0 28h84', stroke: INK, 'stroke-width': 5 }),
      words: `seams: ${made.seams}`,
    },
  ]);
  return page([heading(title), views, told], [0, 1].map((n) => tile(`piece${n}`, lookOf(n))).join(''));
}
