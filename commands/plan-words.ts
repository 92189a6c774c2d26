import type { CuttingMethod } from '../src/calculator/fabric/lay.ts';
import type { CuttingPlan } from '../src/calculator/fabric/plan.ts';
import { CATALOGUE } from '../src/calculator/shapes/catalogue.ts';
import { grouped } from '../src/measure/ruler.ts';
import { many, type Speech } from '../src/measure/speech.ts';

/** What a way of cutting is called. */
export const METHOD: Readonly<Record<CuttingMethod, string>> = {
  strips: 'Strips',
  nested: 'Nested',
  turned: 'Turned grid',
  squares: 'Blunt squares',
};

/** How a plan is cut, in a line: rows, how many in each, which way they run. */
export function planWords(plan: CuttingPlan, say: Speech): string {
  const { rows, perRow, rowHeight, rowSteps, direction, method } = plan;
  const [first, second] = perRow;
  const each =
    first === second || rows < 2 ? grouped(first) : `${grouped(first)} and ${grouped(second)} by turns`;
  const way = direction === 'across' ? 'across' : 'lengthwise';
  const wide = say.length(rowHeight);
  switch (method) {
    case 'strips':
      return `${many(rows, 'strip', 'strips')} of ${wide}, ${way}, ${each} from each`;
    case 'nested':
      return `${grouped(rows)} rows ${way}, ${each}${first === second ? ' to a row' : ''}, ${close(plan)}, a new row every ${say.length(rowSteps[0])}`;
    case 'turned':
      return `a grid of ${grouped(rows)} x ${each}, every patch turned 15°, ${say.length(rowSteps[0])} apart`;
    case 'squares':
      return `${grouped(rows)} x ${each} squares of ${wide}, one patch in each`;
  }
}

/** Straight sides share their lines; curves reach into each other and share none. */
const close = ({ patch }: CuttingPlan): string =>
  CATALOGUE[patch.shape].corners === 'rounded' ? 'curve into curve' : 'lines shared';
