import { motifYield, type Repeat } from '../src/calculator/fabric/motif.ts';
import type { ClothSize } from '../src/calculator/fabric/plan.ts';
import type { CutPatch } from '../src/calculator/shapes/shape.ts';
import type { Here } from '../src/chat/command.ts';
import { count, inches, type Reply, reply } from '../src/chat/reply.ts';
import { grouped } from '../src/measure/ruler.ts';
import { many } from '../src/measure/speech.ts';
import type { Selvage } from '../src/pictures/cloth.ts';
import { assumedNote } from './assumed.ts';
import { bladeCaution } from './cautions.ts';
import { cuttingPictures } from './pictures.ts';

/** What is asked of a print: which patch, from what piece, how it repeats. */
interface Fussy {
  readonly patch: CutPatch;
  readonly size: ClothSize;
  readonly margin: number;
  readonly motif: Repeat;
  readonly title: string;
  readonly here: Here & { readonly assumed: readonly string[]; readonly selvage: Selvage };
}

/** How many patches a print gives, one round each motif; undefined where not even one fits. */
export function motifAnswer({ patch, size, margin, motif, title, here }: Fussy): Reply | undefined {
  const found = motifYield(patch, size, motif, { margin });
  if (found.count === 0) return undefined;
  const repeat = here.say.size(motif.width, motif.height);
  const turned = found.turnDegrees === 0 ? '' : ` Each patch is turned ${found.turnDegrees}°.`;
  return reply({
    title: `${title}, a motif every ${repeat}`,
    lines: [
      found.every
        ? `${many(found.count, 'patch', 'patches')}, one round each motif.`
        : `At least ${many(found.count, 'patch', 'patches')}; larger than the repeat, so some motifs are left out.`,
      `${wholeWords(found)}${turned}`,
      `Wherever the print begins: at least ${grouped(found.anyhow)}.`,
    ],
    figures: {
      best: count(found.count),
      motifs: count(found.motifs),
      anyhow: count(found.anyhow),
      clothWidth: inches(size.width),
      clothLength: inches(size.length),
    },
    notes: assumedNote([...here.assumed, 'the piece begins with a whole motif at one corner']),
    cautions: bladeCaution(here),
    pictures: cuttingPictures(
      {
        ...{ title: `${title}, a motif every ${repeat}`, patch, selvage: here.selvage },
        plan: { ...found, motif },
        words: `One patch round each motif.${turned}`,
      },
      here,
    ),
  });
}

/** How many motifs lie whole on the piece, and how many more have room enough round their middle. */
function wholeWords({ count: patches, motifs }: { readonly count: number; readonly motifs: number }): string {
  const whole = `${many(motifs, 'whole motif', 'whole motifs')} on the piece`;
  return patches > motifs
    ? `${whole}; of ${grouped(patches - motifs)} more there is enough round the middle.`
    : `${whole}.`;
}
