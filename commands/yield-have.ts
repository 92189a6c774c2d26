import { bestPlan } from '../src/calculator/fabric/best-plan.ts';
import { fewestCuts } from '../src/calculator/fabric/fewest.ts';
import type { CuttingMethod } from '../src/calculator/fabric/lay.ts';
import { motifYield, type Repeat } from '../src/calculator/fabric/motif.ts';
import type { ClothSize } from '../src/calculator/fabric/plan.ts';
import { yieldFrom } from '../src/calculator/fabric/yield.ts';
import { CATALOGUE } from '../src/calculator/shapes/catalogue.ts';
import type { Here } from '../src/chat/command.ts';
import { count, type Reply, type ReplyChoice, reply } from '../src/chat/reply.ts';
import { type Cloth, pieceTitle } from '../src/measure/cloth.ts';
import type { ClothPile } from '../src/measure/cloth-list.ts';
import { grouped } from '../src/measure/ruler.ts';
import { many } from '../src/measure/speech.ts';
import { assumedNote } from './assumed.ts';
import { bladeCaution } from './cautions.ts';
import { type AskedPatch, titled } from './patch.ts';
import { inRosettes } from './yield-rosettes.ts';

/** What is to be cut from what she has, and how. */
export interface Cutting {
  readonly piles: readonly ClothPile[];
  readonly width: number;
  readonly margin: number;
  readonly method: 'best' | 'fewest' | CuttingMethod;
  readonly motif: Repeat | undefined;
  readonly assumed: readonly string[];
  /** So many patches that are wanted, where that was said. */
  readonly wanted: number | undefined;
  /** Of how many rounds the rosettes are that were asked for. */
  readonly rounds: number | undefined;
}

/** More choices than this are a list, not a help. */
const MOST_CHOICES = 4;

/** What all the pieces that she has give, each by itself and together; undefined where none gives a patch. */
export function yieldOfAll(asked: AskedPatch, cutting: Cutting, here: Here): Reply | undefined {
  const { piles, assumed, wanted, rounds } = cutting;
  const gives = piles.map((pile) => fromOne(asked, pile, cutting));
  const all = piles.map(({ count: pieces }, at) => pieces * gives[at]!);
  const total = all.reduce((sum, patches) => sum + patches, 0);
  if (total === 0) return undefined;
  const { title, titles } = CATALOGUE[asked.shape];
  const rosettes = inRosettes(total, rounds);
  return reply({
    title: `${titled(asked, here)}, from what you have`,
    lines: [
      ...rosettes.lines,
      `At least ${many(total, title, titles)} in all.`,
      ...(wanted === undefined
        ? []
        : [
            total < wanted
              ? `${grouped(wanted - total)} short of ${grouped(wanted)}.`
              : `Enough for ${grouped(wanted)}.`,
          ]),
      ...nothingFrom(piles, gives),
    ],
    table: {
      columns: ['from', 'each gives', 'in all'],
      rows: piles.map((pile, at) => [pileTitle(pile), grouped(gives[at]!), grouped(all[at]!)]),
    },
    figures: {
      total: count(total),
      pieces: count(total),
      perPiece: count(gives),
      fromEach: count(all),
      ...rosettes.figures,
    },
    notes: assumedNote(assumed),
    cautions: bladeCaution(here),
    choices: [...howToCut(piles, gives, here), ...asked.otherwise],
  });
}

/** How many patches one piece of a pile gives, the way that was asked for. */
function fromOne({ patch }: AskedPatch, { cloth }: ClothPile, cutting: Cutting): number {
  const { width, margin, method, motif } = cutting;
  const size: ClothSize = { width: cloth.width ?? width, length: cloth.length };
  if (motif) return motifYield(patch, size, motif, { margin }).count;
  if (method === 'best') return bestPlan(patch, size, { margin })?.count ?? 0;
  const { plans } = yieldFrom(patch, size, { margin });
  if (method !== 'fewest') return plans.find((plan) => plan.method === method)?.count ?? 0;
  const serving = plans.filter((plan) => plan.patch.cornerStyle === patch.cornerStyle);
  return fewestCuts(serving, (plan) => plan)?.of.count ?? 0;
}

/** "3 fat quarters", "1 1/2yd" */
const pileTitle = ({ count: pieces, cloth, words }: ClothPile): string =>
  pieces === 1
    ? words
    : cloth.kind === 'yardage'
      ? `${grouped(pieces)} x ${words}`
      : `${grouped(pieces)} ${words}`;

function nothingFrom(piles: readonly ClothPile[], gives: readonly number[]): string[] {
  const without = piles.filter((_, at) => gives[at] === 0).map(({ words }) => words);
  return without.length === 0 ? [] : [`Too small for even one: ${without.join(', ')}.`];
}

const nameOf = ({ name }: Cloth): string | null => {
  const title = pieceTitle(name);
  return title && `a ${title}`;
};

/** How one piece of each pile is cut. */
const howToCut = (piles: readonly ClothPile[], gives: readonly number[], { again }: Here): ReplyChoice[] =>
  piles
    .filter((_, at) => gives[at]! > 0)
    .slice(0, MOST_CHOICES)
    .map(({ cloth, words }) => ({
      label: `How to cut ${nameOf(cloth) ?? words.replace(/^an? /i, '')}`,
      ask: again({ have: null, cloth }),
    }));
