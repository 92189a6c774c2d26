import { placeOutline } from '../shapes/place.ts';
import type { CutPatch } from '../shapes/shape.ts';
import { type Cuts, cutsFor } from './cuts.ts';
import type { ClothSize, LaidPlan } from './plan.ts';
import { planCuts } from './plan-cuts.ts';
import type { Block } from './search/block.ts';
import type { Choice } from './search/choice.ts';
import { searched } from './search/search.ts';
import { waysOf } from './search/ways.ts';

/** The plan that wastes least, of all that the search looks at. Lengths in inches. */
export interface BestPlan extends LaidPlan {
  /** The parts that the cloth is cut into, each cut in its own way; one where it is cut in one way. */
  readonly blocks: readonly Block[];
  /** What it takes to cut it, the cuts between the blocks included; counted when it is asked for. */
  cuts(): Cuts;
}

/**
 * The plan that gives the most patches from a piece of cloth, as far as the search knows: at least so many
 * can be cut, perhaps more. Undefined where not even one patch fits. Never less than any way of the trade,
 * never less from more cloth, and the same when width and length change places.
 */
export function bestPlan(patch: CutPatch, cloth: ClothSize, { margin = 0 } = {}): BestPlan | undefined {
  const [width, length] = [cloth.width - 2 * margin, cloth.length - 2 * margin];
  const found = searched(waysOf(patch), width, length);
  return found && planFrom(patch, cloth, margin, found.choice);
}

/** A choice as a plan on a piece of cloth. */
export function planFrom(patch: CutPatch, cloth: ClothSize, margin: number, choice: Choice): BestPlan {
  const region = { x: margin, y: margin, width: cloth.width - 2 * margin, length: cloth.length - 2 * margin };
  const blocks = choice.blocks(region);
  return {
    patch,
    cloth,
    margin,
    count: blocks.reduce((sum, block) => sum + block.count, 0),
    blocks,
    cuts: () => cutsOf(patch, blocks),
    placements: () => blocks.flatMap((block) => block.placements()),
  };
}

/** Each block is cut free first, by one straight cut between each two. */
function cutsOf(patch: CutPatch, blocks: readonly Block[]): Cuts {
  let [straight, traced] = [blocks.length - 1, 0];
  for (const block of blocks) {
    const cuts = block.cut.as === 'lay' ? planCuts(block.cut.plan) : placedCuts(patch, block);
    straight += cuts.straight;
    traced += cuts.traced;
  }
  return { straight, traced };
}

function placedCuts({ cut }: CutPatch, { x, y, width, length, placements }: Block): Cuts {
  const outlines = placements().map((place) =>
    placeOutline(cut.outline, { ...place, x: place.x - x, y: place.y - y }),
  );
  return cutsFor(outlines, width, length);
}
