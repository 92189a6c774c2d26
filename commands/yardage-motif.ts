import { motifLength, type Repeat } from '../src/calculator/fabric/motif.ts';
import type { CutPatch } from '../src/calculator/shapes/shape.ts';
import type { Here } from '../src/chat/command.ts';
import { count, inches, type Reply, reply } from '../src/chat/reply.ts';
import { assumedNote } from './assumed.ts';
import { bought, purchaseFigures, purchaseFor, roundDown, roundUp, tightWords } from './bought.ts';
import { bladeCaution } from './cautions.ts';

interface Fussy {
  readonly patch: CutPatch;
  readonly pieces: number;
  readonly motif: Repeat;
  readonly width: number;
  readonly shrink: number;
  readonly title: string;
  readonly assumed: readonly string[];
  readonly here: Here;
}

/**
 * How much of a print to buy for so many patches, one round each motif: enough wherever in its repeat it is
 * cut, or else of a piece that begins with a whole motif. Undefined where not one patch fits the width.
 */
export function motifYardage({
  patch,
  pieces,
  motif,
  width,
  shrink,
  title,
  assumed,
  here,
}: Fussy): Reply | undefined {
  const { say } = here;
  const found = motifLength(patch, pieces, width, motif);
  if (!found) return undefined;
  const isSure = Number.isFinite(found.anyhow);
  const [needed, begun] = [
    (isSure ? found.anyhow : found.length) / (1 - shrink),
    found.length / (1 - shrink),
  ];
  const buy = purchaseFor(needed, say);
  return reply({
    title: `${title}, a motif every ${say.size(motif.width, motif.height)}`,
    lines: [
      `Buy ${bought(needed, say)}: ${say.plain(roundUp(needed, say))} needed, ${say.plain(roundDown(buy.spare, say))} to spare.`,
      isSure
        ? `That is enough wherever the print begins. A piece that begins with a whole motif: ${say.plain(roundUp(begun, say))}.`
        : 'The width must begin with a whole motif, or none lies whole on it.',
      ...(buy.tight ? [tightWords(needed, say)] : []),
    ],
    figures: { pieces: count(pieces), ...purchaseFigures('best', needed), begunLength: inches(begun) },
    notes: assumedNote([...assumed, 'one patch round each motif']),
    cautions: bladeCaution(here),
  });
}
