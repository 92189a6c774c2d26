import { placeOutline } from '../shapes/place.ts';
import { type Cuts, cutsFor } from './cuts.ts';
import { type CuttingPlan, planOf } from './plan.ts';
import { startOf } from './spacing.ts';

/** From this many rows, or patches in a row, on every two more add the same number of cuts. */
const FEW = 3;

/** Cloth narrower than this, in inches, is no rest. */
const SPARE = 1e-6;

/**
 * What it takes to cut a plan of the trade. Large plans are counted on a piece with fewer rows and fewer
 * patches in a row, and carried on, for the cuts grow evenly: by the same for every two rows, for every two
 * patches in a row, and for both together.
 */
export function planCuts(plan: CuttingPlan): Cuts {
  const { rows, perRow } = plan;
  if (plan.count === 0) return { straight: 0, traced: 0 };
  if (plan.method === 'squares') return gridCuts(plan);
  const [across, along] = [carried(rows), carried(Math.min(...perRow.filter((n) => n > 0)))];
  const counted = (fewerRows: number, fewerPatches: number) => countedOn(plan, fewerRows, fewerPatches);
  const least = counted(across.fewer, along.fewer);
  if (across.pairs === 0 && along.pairs === 0) return least;
  const moreRows = across.pairs === 0 ? least : counted(across.fewer - 2, along.fewer);
  const longerRows = along.pairs === 0 ? least : counted(across.fewer, along.fewer - 2);
  const both =
    across.pairs === 0
      ? longerRows
      : along.pairs === 0
        ? moreRows
        : counted(across.fewer - 2, along.fewer - 2);
  const carriedOn = (of: keyof Cuts) =>
    least[of] +
    across.pairs * (moreRows[of] - least[of]) +
    along.pairs * (longerRows[of] - least[of]) +
    across.pairs * along.pairs * (both[of] - moreRows[of] - longerRows[of] + least[of]);
  return { straight: carriedOn('straight'), traced: carriedOn('traced') };
}

/** How many are left out of the count, in pairs, so that few are left. */
function carried(many: number): { fewer: number; pairs: number } {
  const pairs = Math.max(0, Math.floor((many - FEW) / 2));
  return { fewer: 2 * pairs, pairs };
}

/** The cuts of the same lay on a piece that is just so many rows and patches smaller. */
function countedOn(
  { lay, direction, cloth, margin, rows, perRow }: CuttingPlan,
  fewerRows: number,
  fewer: number,
) {
  const narrower = startOf(lay.stack, rows) - startOf(lay.stack, rows - fewerRows);
  const { patches } = lay.rows[0];
  const shorter = startOf(patches, perRow[0]) - startOf(patches, perRow[0] - fewer);
  const [width, length] = [cloth.width, cloth.length];
  const smaller =
    direction === 'across'
      ? { width: width - shorter, length: length - narrower }
      : { width: width - narrower, length: length - shorter };
  const { patch, placements } = planOf(lay, direction, smaller, margin);
  return cutsFor(
    placements().map((place) => placeOutline(patch.cut.outline, place)),
    smaller.width,
    smaller.length,
  );
}

/**
 * Squares are cut apart: a cut between each two, and one along each end where some cloth is left over. For
 * papers that is all; a pointed patch is then cut out of its square along each of its sides.
 */
function gridCuts({ patch, cloth, margin, rows, perRow, rowHeight, direction, count }: CuttingPlan): Cuts {
  const [along, deep] = direction === 'across' ? [cloth.width, cloth.length] : [cloth.length, cloth.width];
  const ends = margin > 0 ? 1 : 0;
  const lines = (many: number, side: number) =>
    many - 1 + ends + (side - margin - many * rowHeight > SPARE ? 1 : 0);
  const within = patch.cornerStyle === 'blunt' ? 0 : count * patch.cut.outline.length;
  return { straight: lines(rows, deep) + lines(perRow[0], along) + within, traced: 0 };
}
