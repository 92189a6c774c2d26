import { type BestLength, bestLength } from '../src/calculator/fabric/best-length.ts';
import { clothNeed } from '../src/calculator/fabric/cloth-need.ts';
import { fewestCuts, isEasier } from '../src/calculator/fabric/fewest.ts';
import { type Yardage, yardage } from '../src/calculator/fabric/yardage.ts';
import { CATALOGUE } from '../src/calculator/shapes/catalogue.ts';
import { type Answer, type Command, form, type Here } from '../src/chat/command.ts';
import { alsoNamed, bare, otherwise, usually, type Values } from '../src/chat/option.ts';
import { choice, length, percent, whole } from '../src/chat/option-kinds.ts';
import { reply } from '../src/chat/reply.ts';
import { wholeAbove, wrong } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';
import { many } from '../src/measure/speech.ts';
import { assumedNote, whose } from './assumed.ts';
import { bought, purchaseFor, roundDown, roundUp, tightWords } from './bought.ts';
import { bladeCaution, withCribCaution } from './cautions.ts';
import { manyWords } from './count-field.ts';
import { cutsFigures, cutsWords } from './cutting-words.ts';
import { haveAnswer, haveOption } from './have.ts';
import { type MadeOf, madeOf, madeOfOptions, shapeMadeOf } from './made-of.ts';
import { motifOption } from './motif.ts';
import { needOption, needsFrom, withNeeded } from './need.ts';
import { type AskedPatch, askedPatch, cutSize, titled } from './patch.ts';
import { patchOptions } from './patch-options.ts';
import { cuttingPictures } from './pictures.ts';
import { motifYardage } from './yardage-motif.ts';
import {
  fewestLine,
  figuresOf,
  leastCloth,
  type MethodName,
  NO_GAIN,
  otherWays,
  plainerWay,
  wayOf,
} from './yardage-ways.ts';

const methodChoice = choice('How the cloth is cut; the shortest where nothing is said', [
  { name: 'strips', title: 'strips across the width', words: ['strip'] },
  { name: 'lengthwise', title: 'strips along the length' },
  { name: 'nested', title: 'nested, shared lines', words: ['traced', 'honeycomb'] },
  { name: 'squares', title: 'blunt squares', words: ['blunt squares'] },
  { name: 'best', title: 'the shortest', words: ['least cloth'] },
  { name: 'fewest', title: 'fewest cuts', words: ['fewest cuts', 'easiest'] },
]);

const yardageOptions = {
  pieces: bare(alsoNamed(whole('How many patches', 1, 1_000_000, '240'), 'piece', 'patches', 'patch')),
  ...madeOfOptions,
  ...patchOptions,
  width: usually(
    length('Usable width of the cloth', 1 / 8, 200, '42in'),
    'what /me and /guild keep, or 42in',
  ),
  method: otherwise(methodChoice, 'best'),
  spare: otherwise(percent('More patches than needed, to be safe', 100, '5%'), 0),
  shrink: otherwise(percent('How much of its length the cloth loses in the wash', 50, '3%'), 0),
  motif: motifOption,
  have: haveOption,
  need: needOption,
};

const yardageCommand: Command = {
  name: 'yardage',
  summary: 'How much cloth to buy for so many patches',
  forms: [
    form({
      name: '',
      summary: 'How much cloth to buy for so many patches, by each way of cutting, and how much is to spare',
      examples: [
        '/yardage 240 hexagon 1in',
        '/yardage pieces:300 shape:diamond size:2in width:40in',
        '/yardage field:60x72in size:1in spare:5% shrink:3%',
        '/yardage rosette:2 size:1in method:nested',
        '/yardage 240 hexagon 1in have:3 fat quarters, 12 5in squares, 1/2yd',
        '/yardage hexagon 1in need:7 centres, 42 petals, 24 path have:2 fat quarters',
        '/yardage hexagon 1in need:7 rosettes of 2 rounds have:2 fat quarters, 1yd',
      ],
      options: yardageOptions,
      run: (said, here) => withCribCaution(worked(said, here), said.field?.bed),
    }),
  ],
};

export default yardageCommand;

function worked(said: Values<typeof yardageOptions>, here: Here): Answer {
  const values = withNeeded(said);
  const width = values.width ?? here.defaults.width.value;
  const { spare, shrink, method } = values;
  let of: MadeOf | null = null;
  // The layout's patches need the finished side, so the patch is settled first, in the layout's own shape.
  const shape = here.given.has('shape') ? values.shape : (shapeMadeOf(values) ?? values.shape);
  const asked = askedPatch({ ...values, shape }, here, (patch) => {
    const found = clothNeed(patch, values.pieces ?? 1, width, { spare, shrink });
    return found.ok ? `buy ${bought(found.value.buy, here.say)}` : 'wider than the cloth';
  });
  if ('asks' in asked) return asked.asks;
  if (!asked.ok) return asked;
  const made = madeOf(values, asked.value.patch.dimensions.edge, here);
  if (made && !made.ok) return manyWords(made);
  of = made?.value ?? null;
  if (of && values.pieces !== undefined) return wrong('one-of-these', { got: 'pieces, or a layout' });
  const needs = needsFrom(values, of);
  if (!needs.ok) return needs;
  const pieces = needs.value.reduce((sum, { count }) => sum + count, 0);
  if (pieces === 0) return howMany(values.have !== undefined, here);
  if (of && of.shape !== shape)
    return wrong('layout-shape', { layout: of.words, shape: CATALOGUE[of.shape].titles });
  const { patch } = asked.value;
  const told: Told = { here, of, pieces, width, method, shrink };
  const title = `${titled(asked.value, here)}: ${many(wholeAbove(pieces * (1 + spare)), 'patch', 'patches')}`;
  const assumed = assumptions(asked.value, told);
  if (values.have || values.need)
    return (
      haveAnswer({
        patch,
        needs: needs.value,
        piles: values.have ?? [],
        ...{ width, spare, shrink, title, assumed, here },
      }) ?? widerThanCloth(asked.value, width, here)
    );
  if (values.motif)
    return (
      motifYardage({
        patch,
        pieces: wholeAbove(pieces * (1 + spare)),
        motif: values.motif,
        ...{ width, shrink, title, assumed, here },
      }) ?? widerThanCloth(asked.value, width, here)
    );
  const found = yardage(patch, pieces, width, { spare, shrink });
  const least = found.ok ? bestLength(patch, found.value.pieces, width, found.value.best.length) : undefined;
  if (!found.ok || !least) return widerThanCloth(asked.value, width, here);
  return answer(asked.value, found.value, least, { ...told, title, assumed });
}

/** Nothing was said to be cut; what she has can be answered for all the same. */
function howMany(has: boolean, { again }: Here) {
  const gives = () => again({ spare: null, shrink: null }).replace(/^\/yardage/, '/yield');
  return wrong('what-to-cut', has ? { instead: gives() } : {});
}

function widerThanCloth({ patch }: AskedPatch, width: number, { say }: Here) {
  return wrong('patch-wider-than-cloth', {
    patch: cutSize(patch, say),
    cloth: `${say.plain(width)} width`,
  });
}

interface Told {
  readonly here: Here;
  readonly of: MadeOf | null;
  readonly pieces: number;
  readonly width: number;
  readonly method: MethodName | 'best' | 'fewest';
  readonly shrink: number;
}

function answer(
  asked: AskedPatch,
  found: Yardage,
  least: BestLength,
  told: Told & { readonly title: string; readonly assumed: readonly string[] },
): Answer {
  const { here, method, shrink, title, assumed } = told;
  const { say } = here;
  const serving = found.ways.filter(({ plan }) => plan.patch.cornerStyle === asked.patch.cornerStyle);
  const fewest = fewestCuts(serving, ({ plan }) => plan);
  const wanted = wayOf(method, found, least, fewest, told);
  if (!wanted) return wrong('method-not-for-shape', { method, shape: CATALOGUE[asked.shape].titles });
  const plainer =
    method === 'best' && !here.given.has('method') ? plainerWay(found, fewest, wanted, say) : undefined;
  const chosen = plainer ?? wanted;
  const buy = purchaseFor(chosen.buy, say);
  const isTold = method === 'best' && fewest && isEasier(fewest, chosen.cuts, chosen.patches);
  const other = isTold ? fewest : undefined;
  const cuts = cutsWords(chosen.cuts);
  return reply({
    title,
    lines: [
      `Buy ${bought(chosen.buy, say)}: ${say.plain(roundUp(chosen.buy, say))} needed, ${say.plain(roundDown(buy.spare, say))} to spare.`,
      ...chosen.words.slice(0, -1),
      ...chosen.words.slice(-1).map((words) => (cuts === '' ? `${words}.` : `${words}; ${cuts}.`)),
      ...(other ? [fewestLine(other, say)] : []),
      ...(buy.tight ? [tightWords(chosen.buy, say)] : []),
      ...madeWords(found, told),
    ],
    table: otherWays(found, [chosen.way, other?.of], asked, say),
    figures: {
      ...figuresOf(found, least.length / (1 - shrink), fewest),
      ...cutsFigures(chosen.cuts),
    },
    notes: assumedNote(assumed),
    cautions: bladeCaution(here),
    choices: [...(chosen.buy > wanted.buy + NO_GAIN ? [leastCloth(wanted, here)] : []), ...asked.otherwise],
    pictures: cuttingPictures(
      {
        ...{ title, patch: asked.patch, plan: chosen.way?.plan ?? least.plan, pieces: found.pieces },
        words: `${chosen.words.join(' ')}.`,
        // What is bought, as it lies after the wash.
        spare: buy.length * (1 - shrink) - (chosen.way?.length ?? least.length),
        selvage: 'sides',
      },
      here,
    ),
  });
}

function madeWords({ pieces }: Yardage, { of, pieces: asked }: Told): string[] {
  const spare = pieces > asked ? `${grouped(asked)} and ${grouped(pieces - asked)} to spare` : grouped(asked);
  return of || pieces > asked ? [`${spare}${of ? `, for ${of.words}` : ''}.`] : [];
}

function assumptions(asked: AskedPatch, { here, shrink, width }: Told): string[] {
  const { given, defaults, say } = here;
  const taken = [...asked.assumed];
  if (!given.has('width')) taken.push(`${whose(defaults.width.from)}${say.plain(width)} usable width`);
  if (!given.has('shrink') && shrink === 0) taken.push('no shrinkage');
  return taken;
}
