import { bestPlan } from '../src/calculator/fabric/best-plan.ts';
import { largestThat } from '../src/calculator/fabric/largest.ts';
import type { ClothSize } from '../src/calculator/fabric/plan.ts';
import { CATALOGUE } from '../src/calculator/shapes/catalogue.ts';
import { stripFor } from '../src/calculator/shapes/strip.ts';
import type { Answer, Here } from '../src/chat/command.ts';
import { LONGEST } from '../src/chat/option-kinds.ts';
import { count, inches, reply } from '../src/chat/reply.ts';
import { INCHES } from '../src/measure/length.ts';
import { wrong } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';
import { capital, many } from '../src/measure/speech.ts';
import { assumedNote } from './assumed.ts';
import { bladeCaution } from './cautions.ts';
import { type AskedPatch, askedPatch } from './patch.ts';
import type { PatchValues } from './patch-options.ts';
import { measureWords, sizeWords } from './patch-words.ts';

/** So many patches of a size that is still to be found, and the cloth that they are to come from. */
export interface LargestAsk {
  readonly values: PatchValues;
  readonly pieces: number;
  readonly cloths: readonly { readonly size: ClothSize; readonly count: number }[];
  readonly margin: number;
  /** What the cloth is called in the title. */
  readonly from: string;
  assumed(patch: readonly string[]): readonly string[];
}

/** Papers and rulers come in eighths; on a metric ruler a millimetre is as easy. */
const stepOf = ({ say }: Here): number => (say.reading === 'metric' ? INCHES.mm : 1 / 8);

/** Whether a size has been said in any of the ways there are. */
export const isSized = ({ size, edge, flats, height, side, corners }: PatchValues): boolean =>
  [size, edge, flats, height, side].some((one) => one !== undefined) || typeof corners === 'object';

/** The largest size, in steps of the ruler, at which so many patches come out of the cloth. */
export function largestAnswer(ask: LargestAsk, here: Here): Answer {
  const { values, pieces, cloths, margin } = ask;
  const { title, titles, second } = CATALOGUE[values.shape];
  if (second !== undefined) return wrong('needs-two-measures');
  const step = stepOf(here);
  const at = (steps: number): AskedPatch | null => {
    const sized = { ...values, measure: 'edge', given: 'finished', size: { value: steps * step } } as const;
    const asked = askedPatch(sized, here, () => '');
    return 'asks' in asked || !asked.ok ? null : asked.value;
  };
  const gives = (steps: number): number => {
    const asked = at(steps);
    if (!asked) return 0;
    return cloths.reduce(
      (sum, { size, count: of }) => sum + of * (bestPlan(asked.patch, size, { margin })?.count ?? 0),
      0,
    );
  };
  const area = cloths.reduce((sum, { size, count: of }) => sum + of * size.width * size.length, 0);
  // Curves close up where the seam is large beside the patch: the least size is not always one step.
  const none = largestThat((steps) => at(steps) === null, Math.floor(LONGEST / step));
  const beyond = (serves: (steps: number) => boolean, most: number) =>
    none + largestThat((steps) => serves(none + steps), most - none);
  const most = beyond(
    (steps) => (at(steps)?.patch.cut.area ?? 0) * pieces <= area,
    Math.floor(LONGEST / step),
  );
  const found = beyond((steps) => gives(steps) >= pieces, most);
  const patch = at(found);
  if (!patch || found === none)
    return wrong('too-many-for-cloth', {
      count: grouped(pieces),
      what: pieces === 1 ? title : titles,
      least: here.say.plain((none + 1) * step),
    });
  const { say, again } = here;
  const { height } = stripFor(patch.patch.shape, patch.patch.dimensions, patch.patch.seam);
  const words = measureWords(values.shape, CATALOGUE[values.shape].strip.height);
  const next = gives(found + 1);
  const size = { value: found * step };
  return reply({
    title: `${capital(many(pieces, title, titles))} from ${ask.from}`,
    lines: [
      `Up to ${say.plain(size.value)} ${measureWords(values.shape, 'edge')}, finished: at least ${grouped(gives(found))} this way.`,
      words === 'height' ? `Cut strips ${say.length(height)} high.` : `Cut ${say.length(height)} ${words}.`,
      `In steps of ${say.plain(step)}: at ${say.plain(size.value + step)} ${next === 0 ? 'none is' : `${grouped(next)} are`} found.`,
    ],
    figures: {
      finishedEdge: inches(size.value),
      pieces: count(pieces),
      best: count(gives(found)),
      nextBest: count(next),
    },
    notes: assumedNote(
      ask.assumed(patch.assumed.filter((one) => one !== `the size is ${sizeWords(values.shape)}`)),
    ),
    cautions: bladeCaution(here),
    choices: [{ label: 'How to cut them', ask: again({ size, measure: null, given: null }) }],
  });
}
