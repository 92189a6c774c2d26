import { inRows, type Lay, perRow, rowsIn } from '../lay.ts';
import { type Direction, planOf } from '../plan.ts';
import { aQuarterTurned, type Block, moved, type Region } from './block.ts';
import { fitOf, type Pattern, standsOf } from './pattern.ts';

/** One way of cutting a rectangle of cloth, chosen for one size but told for any. */
export interface Choice {
  /** How many patches it gives on a piece so large. */
  count(width: number, length: number): number;
  /** How a region is cut by it. */
  blocks(region: Region): Block[];
}

/** A choice, and what it gives where it was chosen. */
export interface Chosen {
  readonly count: number;
  readonly choice: Choice;
}

/** How many patches a lay gives, its rows along the first length. */
export const laidIn = (lay: Lay, along: number, deep: number): number =>
  inRows(rowsIn(lay, deep), perRow(lay, along));

const alongAndDeep = (direction: Direction, width: number, length: number) =>
  direction === 'across' ? ([width, length] as const) : ([length, width] as const);

/** One of the trade's ways. */
export const layChoice = (lay: Lay, direction: Direction): Choice => ({
  count: (width, length) => laidIn(lay, ...alongAndDeep(direction, width, length)),
  blocks: (region) => {
    const { x, y, width, length } = region;
    const plan = planOf(lay, direction, { width, length });
    if (plan.count === 0) return [];
    const placements = () => moved(plan.placements(), x, y);
    return [{ ...region, count: plan.count, cut: { as: 'lay', plan }, placements }];
  },
});

/** Rows at some turn. */
export const patternChoice = (pattern: Pattern, direction: Direction): Choice =>
  fittedChoice(direction, () => pattern);

/** Rows that are made for the size of the cloth, of the patterns that suit it the one that gives the most. */
export function fittedChoice(
  direction: Direction,
  patternFor: (along: number, deep: number) => Pattern | undefined,
): Choice {
  return {
    count: (width, length) => {
      const [along, deep] = alongAndDeep(direction, width, length);
      const pattern = patternFor(along, deep);
      return pattern ? fitOf(pattern, along, deep).count : 0;
    },
    blocks: (region) => {
      const [along, deep] = alongAndDeep(direction, region.width, region.length);
      const pattern = patternFor(along, deep);
      return pattern ? rowsBlock(pattern, direction, region, along, deep) : [];
    },
  };
}

function rowsBlock(
  pattern: Pattern,
  direction: Direction,
  region: Region,
  along: number,
  deep: number,
): Block[] {
  const fit = fitOf(pattern, along, deep);
  if (fit.count === 0) return [];
  const { turnDegrees, period, height, rises, rows } = pattern;
  const upright = () => standsOf(pattern, fit, along);
  const placements = () =>
    moved(direction === 'across' ? upright() : aQuarterTurned(upright(), along), region.x, region.y);
  const topAndTail = rows.flat().some(({ tail }) => tail);
  return [
    {
      ...region,
      count: fit.count,
      cut: {
        ...{ as: 'rows', direction, turnDegrees, topAndTail, step: period, rowHeight: height },
        rows: fit.rows,
        rowSteps: fit.start === 0 ? rises : [rises[1], rises[0]],
        ...leadOf(pattern, fit.start),
      },
      placements,
    },
  ];
}

/** From a patch of a row to the one in the row above that it is told from. */
function leadOf({ rows, slide, period }: Pattern, start: 0 | 1) {
  const [first, second] = start === 0 ? rows : [rows[1], rows[0]];
  const lead = second[0]!.at - first[0]!.at + (start === 0 ? 0 : slide);
  const leads = slide === 0 ? ('each second' as const) : ('each next' as const);
  return { lead: ((lead % period) + period) % period, leads };
}

/** A cut straight through, at a length from the corner; each side by its own choice. */
export const splitChoice = (way: 'width' | 'length', at: number, first: Choice, second: Choice): Choice => ({
  count: (width, length) =>
    way === 'width'
      ? first.count(at, length) + second.count(width - at, length)
      : first.count(width, at) + second.count(width, length - at),
  blocks: ({ x, y, width, length }) =>
    way === 'width'
      ? [
          ...first.blocks({ x, y, width: at, length }),
          ...second.blocks({ x: x + at, y, width: width - at, length }),
        ]
      : [
          ...first.blocks({ x, y, width, length: at }),
          ...second.blocks({ x, y: y + at, width, length: length - at }),
        ],
});
