import { type BestPlan, bestPlan } from '../src/calculator/fabric/best-plan.ts';
import { type FewestCuts, fewestCuts, isEasier } from '../src/calculator/fabric/fewest.ts';
import type { CuttingMethod } from '../src/calculator/fabric/lay.ts';
import type { CuttingPlan } from '../src/calculator/fabric/plan.ts';
import { planCuts } from '../src/calculator/fabric/plan-cuts.ts';
import { type Yield, yieldFrom } from '../src/calculator/fabric/yield.ts';
import { CATALOGUE } from '../src/calculator/shapes/catalogue.ts';
import { type Answer, type Command, form, type Here } from '../src/chat/command.ts';
import { alsoNamed, bare, neededUnless, otherwise, usually, type Values } from '../src/chat/option.ts';
import { choice, cloth, length, whole } from '../src/chat/option-kinds.ts';
import { count, inches, type Reply, reply } from '../src/chat/reply.ts';
import { type Cloth, pieceTitle } from '../src/measure/cloth.ts';
import type { ClothPile } from '../src/measure/cloth-list.ts';
import { wrong } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';
import type { Selvage } from '../src/pictures/cloth.ts';
import { bladeCaution } from './cautions.ts';
import { blocksWords, cutsFigures, cutsOfBest, cutsWords, namedPlanWords } from './cutting-words.ts';
import { haveOption } from './have.ts';
import { motifOption } from './motif.ts';
import { type AskedPatch, askedPatch, assumedNote, cutSize, patchOptions, titled, whose } from './patch.ts';
import { cuttingPictures } from './pictures.ts';
import { METHOD, planWords } from './plan-words.ts';
import { yieldOfAll } from './yield-have.ts';
import { motifAnswer } from './yield-motif.ts';

const yieldOptions = {
  ...patchOptions,
  cloth: neededUnless(bare(cloth('The piece to cut from')), 'have'),
  width: usually(
    length('Usable width of cloth on the bolt', 4, 200, '42in'),
    'what /me and /guild keep, or 42in',
  ),
  margin: usually(
    length('Left free along every edge', 0, 6, '1/4in'),
    'none on cloth, 1/4in on a sheet of paper',
  ),
  method: otherwise(
    choice('Which way of cutting is told', [
      { name: 'best', title: 'least cloth', words: ['least cloth', 'most'] },
      { name: 'fewest', title: 'fewest cuts', words: ['fewest cuts', 'easiest'] },
      { name: 'strips', title: 'strips', words: ['strip'] },
      { name: 'nested', title: 'nested, shared lines', words: ['traced', 'honeycomb'] },
      { name: 'squares', title: 'blunt squares', words: ['blunt squares'] },
    ]),
    'best',
  ),
  motif: motifOption,
  have: haveOption,
  pieces: alsoNamed(
    whole('So many patches: how many pieces of that cloth they take', 1, 1_000_000, '240'),
    'patches',
  ),
};

const yieldCommand: Command = {
  name: 'yield',
  summary: 'How many patches a piece of cloth gives, and how to cut it',
  forms: [
    form({
      name: '',
      summary: 'How many patches a piece of cloth or a sheet of papers gives, by each way of cutting',
      examples: [
        '/yield hexagon 1in fat-quarter',
        '/yield diamond 2in 1 1/2yd width:40in',
        '/yield hexagon 1in 10in-square corners:blunt',
        '/yield hexagon 1in letter',
        '/yield hexagon 1in 1yd method:fewest',
        '/yield hexagon 1 1/2in 1yd motif:4x5in',
        '/yield hexagon 1in have:3 fat quarters, 12 5in squares, 1 1/2yd',
        '/yield hexagon 1in fat-quarter pieces:240',
      ],
      options: yieldOptions,
      run(values, here) {
        if (values.have) return fromAll({ ...values, have: values.have }, here);
        return fromOne({ ...values, cloth: values.cloth! }, here);
      },
    }),
  ],
};

export default yieldCommand;

type Asked = Values<typeof yieldOptions>;

/** One piece of cloth, and how it is cut. */
function fromOne(values: Asked & { readonly cloth: Cloth }, here: Here): Answer {
  const paper = values.cloth.kind === 'paper';
  // A paper is the finished patch: it has no seam unless one is asked for.
  const seam = values.seam ?? (paper ? 0 : undefined);
  const size = piece(values.cloth, values.width ?? here.defaults.width.value);
  const margin = values.margin ?? (paper ? 1 / 4 : 0);
  const asked = askedPatch(
    { ...values, ...(seam === undefined ? {} : { seam }) },
    here,
    (patch) => `at least ${grouped(bestPlan(patch, size, { margin })?.count ?? 0)} of them`,
  );
  if ('asks' in asked) return asked.asks;
  if (!asked.ok) return asked;
  const { patch } = asked.value;
  const assumed = assumptions(asked.value.assumed, values.cloth, margin, here);
  const told = { ...here, assumed, selvage: selvageOf(values.cloth), wanted: values.pieces };
  const title = `${titled(asked.value, here)}, from ${pieceName(values.cloth)}${here.say.size(size.width, size.length)}`;
  if (values.motif)
    return (
      motifAnswer({ patch, size, margin, motif: values.motif, title, here: told }) ??
      tooSmall(asked.value, size, here)
    );
  const best = bestPlan(patch, size, { margin });
  if (!best) return tooSmall(asked.value, size, here);
  return answer(asked.value, values.method, yieldFrom(patch, size, { margin }), best, {
    ...told,
    title,
  });
}

/** All the cloth that she has, piece by piece. */
function fromAll(values: Asked & { readonly have: readonly ClothPile[] }, here: Here): Answer {
  const { have: piles, cloth: one, method, motif, margin = 0 } = values;
  if (one) return wrong('one-of-these', { got: 'cloth, have' });
  const width = values.width ?? here.defaults.width.value;
  const sizes = piles.map(({ cloth }) => piece(cloth, width));
  const asked = askedPatch(values, here, (patch) => {
    const counts = piles.map(
      ({ count: pieces }, at) => pieces * (bestPlan(patch, sizes[at]!, { margin })?.count ?? 0),
    );
    return `at least ${grouped(counts.reduce((sum, patches) => sum + patches, 0))} of them`;
  });
  if ('asks' in asked) return asked.asks;
  if (!asked.ok) return asked;
  const lengths = piles.find(({ cloth }) => cloth.width === null)?.cloth ?? piles[0]!.cloth;
  const assumed = assumptions(asked.value.assumed, lengths, margin, here);
  const largest = sizes.toSorted((a, b) => b.width * b.length - a.width * a.length)[0]!;
  return (
    yieldOfAll(asked.value, { piles, width, margin, method, motif, assumed, wanted: values.pieces }, here) ??
    tooSmall(asked.value, largest, here)
  );
}

interface Size {
  readonly width: number;
  readonly length: number;
}

const piece = ({ width, length: long }: Cloth, usable: number): Size => ({
  width: width ?? usable,
  length: long,
});

function tooSmall({ patch }: AskedPatch, { width, length: long }: Size, { say }: Here) {
  return wrong('patch-wider-than-cloth', {
    patch: cutSize(patch, say),
    cloth: say.size(width, long),
  });
}

function assumptions(patch: readonly string[], { kind, width }: Cloth, margin: number, here: Here): string[] {
  const { defaults, given, say } = here;
  const taken = kind === 'paper' ? patch.filter((one) => !one.endsWith('seam')) : [...patch];
  if (kind === 'paper' && !given.has('seam')) taken.push('papers at the finished size');
  if (width === null && !given.has('width'))
    taken.push(`${whose(defaults.width.from)}${say.plain(defaults.width.value)} usable width`);
  if (kind === 'paper' && !given.has('margin')) taken.push(`${say.plain(margin)} free along each edge`);
  return taken;
}

type Method = 'best' | 'fewest' | CuttingMethod;

/** What is told of one way: how many it gives, how it is cut, what it takes. */
interface Way {
  readonly count: number;
  readonly words: readonly string[];
  readonly cuts: ReturnType<typeof cutsOfBest>;
  readonly plan?: CuttingPlan;
}

function answer(
  asked: AskedPatch,
  method: Method,
  found: Yield,
  best: BestPlan,
  here: Here & {
    readonly assumed: readonly string[];
    readonly title: string;
    readonly selvage: Selvage;
    readonly wanted: number | undefined;
  },
): Reply | ReturnType<typeof wrong> {
  const { say, assumed, title, selvage, wanted } = here;
  const fewest = fewestCuts(serving(found, best), (plan) => plan);
  const way = wayOf(method, found, best, fewest, here);
  if (!way) return wrong('method-not-for-shape', { method, shape: CATALOGUE[asked.shape].titles });
  const easier = fewest && isEasier(fewest, way.cuts, way.count) ? fewest : undefined;
  return reply({
    title,
    lines: [
      headline(way, found, best),
      ...wantedWords(wanted, way.count),
      ...withCuts(way.words, cutsWords(way.cuts), easier === undefined),
      ...(method === 'best' && easier ? [fewestLine(easier, say)] : []),
    ],
    table: otherWays(found, best, [way.plan, method === 'best' ? easier?.of : undefined], here),
    figures: {
      ...figuresOf(found, best, fewest),
      ...cutsFigures(way.cuts),
      ...(wanted === undefined
        ? {}
        : { pieces: count(wanted), clothPieces: count(Math.ceil(wanted / way.count)) }),
    },
    notes: assumedNote(assumed),
    cautions: bladeCaution(here),
    choices: asked.otherwise,
    pictures: cuttingPictures(
      {
        ...{ title, patch: asked.patch, plan: way.plan ?? best, selvage },
        words: way.words.join(' '),
      },
      here,
    ),
  });
}

/** The trade's plans that serve the patch as it was asked for, pointed or blunt. */
const serving = ({ plans }: Yield, { patch }: BestPlan): CuttingPlan[] =>
  plans.filter((plan) => plan.patch.cornerStyle === patch.cornerStyle);

function wayOf(
  method: Method,
  found: Yield,
  best: BestPlan,
  fewest: FewestCuts<CuttingPlan> | undefined,
  { say }: Here,
): Way | undefined {
  if (method === 'best') {
    const [block] = best.blocks;
    const plan = best.blocks.length === 1 && block?.cut.as === 'lay' ? block.cut.plan : undefined;
    const same = plan && found.plans.find((one) => isSame(one, plan));
    const words = blocksWords(best, say);
    return { count: best.count, words, cuts: cutsOfBest(best), ...(same && { plan: same }) };
  }
  const plan = method === 'fewest' ? fewest?.of : found.plans.find((one) => one.method === method);
  return plan && { count: plan.count, words: [`${namedPlanWords(plan, say)}.`], cuts: planCuts(plan), plan };
}

/** Whether two plans for one piece of cloth are the same one, made twice. */
const isSame = (one: CuttingPlan, other: CuttingPlan): boolean =>
  one.method === other.method &&
  one.direction === other.direction &&
  one.count === other.count &&
  one.rowHeight === other.rowHeight &&
  one.patch.cornerStyle === other.patch.cornerStyle;

function headline({ count: gives, plan }: Way, { ceiling }: Yield, best: BestPlan): string {
  if (gives < best.count) return `${grouped(gives)} this way; with the least cloth ${grouped(best.count)}.`;
  const blunt = plan && plan.patch.cornerStyle !== best.patch.cornerStyle ? ', blunt corners only' : '';
  if (gives === ceiling) return `${grouped(gives)}${blunt}, and no more can be cut.`;
  return `At least ${grouped(gives)} this way${blunt}; the area alone would allow ${grouped(ceiling)}.`;
}

/** Whether one piece of cloth is enough for so many patches, or how many are. */
function wantedWords(wanted: number | undefined, gives: number): string[] {
  if (wanted === undefined) return [];
  return wanted <= gives
    ? [`Enough for ${grouped(wanted)}.`]
    : [`${grouped(wanted)} take ${grouped(Math.ceil(wanted / gives))} of that piece.`];
}

/** The last line of how it is cut says what it takes. */
function withCuts(words: readonly string[], cuts: string, isFewest: boolean): string[] {
  if (cuts === '') return [...words];
  const none = isFewest ? '; no way of the trade takes clearly fewer' : '';
  return [...words, `${cuts.replace(/^./, (letter) => letter.toUpperCase())}${none}.`];
}

const fewestLine = ({ of, cuts }: FewestCuts<CuttingPlan>, say: Here['say']): string =>
  `Fewest cuts, ${grouped(of.count)}: ${planWords(of, say)}; ${cutsWords(cuts)}.`;

/**
 * Yardage and strips have it at both ends of the width. A fat quarter or eighth is torn from a width folded in
 * two, so that one of its short sides may have it; squares and other pieces have none that is known. Common
 * practice, no source.
 */
function selvageOf({ name, width }: Cloth): Selvage {
  if (width === null) return 'sides';
  return name.startsWith('fat-') ? 'end' : 'none';
}

function pieceName(cloth: Cloth): string {
  const known = pieceTitle(cloth.name);
  return known ? `${/^a/i.test(known) ? 'an' : 'a'} ${known}, ` : '';
}

/** One row a method: its better direction. Those told already are left out. */
function otherWays(
  { plans }: Yield,
  { patch }: BestPlan,
  told: readonly (CuttingPlan | undefined)[],
  { say }: Here,
): Reply['table'] {
  const seen = new Set<CuttingMethod>(told.flatMap((plan) => (plan ? [plan.method] : [])));
  const rows: string[][] = [];
  for (const plan of plans) {
    if (seen.has(plan.method)) continue;
    seen.add(plan.method);
    const blunt = plan.patch.cornerStyle !== patch.cornerStyle ? ' (blunt corners only)' : '';
    rows.push([METHOD[plan.method], grouped(plan.count), `${planWords(plan, say)}${blunt}`]);
  }
  return rows.length === 0 ? null : { columns: ['other ways', 'gives', 'how'], rows };
}

function figuresOf(
  { strips, nested, turned, squares, ceiling }: Yield,
  best: BestPlan,
  fewest: FewestCuts<CuttingPlan> | undefined,
): Reply['figures'] {
  return {
    strips: count(strips),
    ...(nested === undefined ? {} : { nested: count(nested) }),
    ...(turned === undefined ? {} : { turned: count(turned) }),
    ...(squares === undefined ? {} : { squares: count(squares) }),
    best: count(best.count),
    ...(fewest ? { fewest: count(fewest.of.count) } : {}),
    ceiling: count(ceiling),
    clothWidth: inches(best.cloth.width),
    clothLength: inches(best.cloth.length),
  };
}
