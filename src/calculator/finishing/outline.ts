/** What the quilt's edge follows: straight sides, the hexagons of a field, or one large rosette. */
export type EdgeAsk =
  | { readonly edge: 'straight'; readonly width: number; readonly height: number }
  | {
      readonly edge: 'hexagons';
      readonly width: number;
      readonly height: number;
      /** Rows across have their points up, rows down have them sideways. */
      readonly rows: 'across' | 'down';
    }
  | { readonly edge: 'rosette'; readonly rounds: number; readonly side: number };

/** Along the ends of the points: two sides of a hexagon for each flat to flat of straight edge. */
const OVER_POINTS = 2 / Math.sqrt(3);

/** Along the ends of the rows: four sides for each two rows, which are three sides high. */
const OVER_ROW_ENDS = 4 / 3;

/**
 * The length of a quilt's edge, inches, followed in and out. Derived from the outlines; a rosette of R rounds
 * has 12R + 6 sides on the outside, as the layout's own tally counts.
 *
 * @example
 * outlineLength({ edge: 'straight', width: 60, height: 72 }) // 264
 * outlineLength({ edge: 'hexagons', width: 60, height: 72, rows: 'across' }) // 330.5641
 * outlineLength({ edge: 'rosette', rounds: 3, side: 1 }) // 42
 */
export function outlineLength(ask: EdgeAsk): number {
  if (ask.edge === 'rosette') return (12 * ask.rounds + 6) * ask.side;
  if (ask.edge === 'straight') return 2 * (ask.width + ask.height);
  const [along, over] = ask.rows === 'across' ? [ask.width, ask.height] : [ask.height, ask.width];
  return 2 * (OVER_POINTS * along + OVER_ROW_ENDS * over);
}
