import { purchase } from '../src/calculator/fabric/purchase.ts';
import { type Yardage, type YardageWay, yardage } from '../src/calculator/fabric/yardage.ts';
import { CATALOGUE } from '../src/calculator/shapes/catalogue.ts';
import { type Answer, type Command, form, type Here } from '../src/chat/command.ts';
import { alsoNamed, bare, otherwise, usually } from '../src/chat/option.ts';
import { choice, length, percent, whole } from '../src/chat/option-kinds.ts';
import { count, type Figure, inches, type Reply, reply, yards } from '../src/chat/reply.ts';
import { wrong } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';
import { many, type Speech } from '../src/measure/speech.ts';
import { bought, metresFigure, purchaseFor, roundDown, roundUp, tightWords } from './bought.ts';
import { bladeCaution } from './cautions.ts';
import { manyWords } from './count-field.ts';
import { type MadeOf, madeOf, madeOfOptions } from './made-of.ts';
import { type AskedPatch, askedPatch, assumedNote, patchOptions, titled, whose } from './patch.ts';
import { cuttingPictures } from './pictures.ts';
import { METHOD } from './plan-words.ts';

const METHODS = ['strips', 'lengthwise', 'nested', 'turned', 'squares'] as const;
type MethodName = (typeof METHODS)[number];

const methodChoice = choice('How the cloth is cut; the shortest where nothing is said', [
  { name: 'strips', title: 'strips across the width', words: ['strip'] },
  { name: 'lengthwise', title: 'strips along the length' },
  { name: 'nested', title: 'nested, shared lines', words: ['traced', 'honeycomb'] },
  { name: 'squares', title: 'blunt squares', words: ['blunt squares'] },
  { name: 'best', title: 'the shortest' },
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
      ],
      options: yardageOptions,
      run(values, here) {
        const width = values.width ?? here.defaults.width.value;
        const { spare, shrink, method } = values;
        let of: MadeOf | null = null;
        // The layout's patches need the finished side, so the patch is settled first, in the layout's own shape.
        const shape = here.given.has('shape') ? values.shape : shapeOf(values);
        const asked = askedPatch({ ...values, shape }, here, (patch) => {
          const found = yardage(patch, values.pieces ?? 1, width, { spare, shrink });
          return found.ok ? `buy ${bought(found.value.best.buy, here.say)}` : 'wider than the cloth';
        });
        if ('asks' in asked) return asked.asks;
        if (!asked.ok) return asked;
        const made = madeOf(values, asked.value.patch.dimensions.edge, here);
        if (made && !made.ok) return manyWords(made);
        of = made?.value ?? null;
        if (of && values.pieces !== undefined) return wrong('one-of-these', { got: 'pieces, or a layout' });
        const pieces = of?.pieces ?? values.pieces;
        if (pieces === undefined) return wrong('what-to-cut');
        if (of && of.shape !== shape)
          return wrong('layout-shape', { layout: of.words, shape: CATALOGUE[of.shape].titles });
        const found = yardage(asked.value.patch, pieces, width, { spare, shrink });
        if (!found.ok) return widerThanCloth(asked.value, width, here);
        return answer(asked.value, found.value, { here, of, pieces, width, method, shrink });
      },
    }),
  ],
};

export default yardageCommand;

const shapeOf = (values: {
  readonly star?: number;
  readonly blocks?: number;
  readonly shape: AskedPatch['shape'];
}) => (values.star !== undefined || values.blocks !== undefined ? ('diamond' as const) : values.shape);

function widerThanCloth({ patch }: AskedPatch, width: number, { say }: Here) {
  const { height = 0, width: wide = 0 } = patch.cut.measures;
  return wrong('patch-wider-than-cloth', {
    patch: say.size(wide, height),
    cloth: `${say.plain(width)} width`,
  });
}

interface Told {
  readonly here: Here;
  readonly of: MadeOf | null;
  readonly pieces: number;
  readonly width: number;
  readonly method: MethodName | 'best';
  readonly shrink: number;
}

function answer(asked: AskedPatch, found: Yardage, told: Told): Answer {
  const { here, method, shrink } = told;
  const chosen = method === 'best' ? found.best : found[method];
  if (!chosen) return wrong('method-not-for-shape', { method, shape: CATALOGUE[asked.shape].titles });
  const buy = purchaseFor(chosen.buy, here.say);
  const title = `${titled(asked, here)}: ${many(found.pieces, 'patch', 'patches')}`;
  const words = `${nameOf(chosen)}: ${cuttingWords(chosen, here.say)}.`;
  return reply({
    title,
    lines: [
      `Buy ${bought(chosen.buy, here.say)}: ${here.say.plain(roundUp(chosen.buy, here.say))} needed, ${here.say.plain(roundDown(buy.spare, here.say))} to spare.`,
      words,
      ...(buy.tight ? [tightWords(chosen.buy, here.say)] : []),
      ...madeWords(found, told),
    ],
    table: otherWays(found, chosen, here.say),
    figures: figuresOf(found),
    notes: assumedNote(assumptions(asked, told)),
    cautions: bladeCaution(here),
    choices: asked.otherwise,
    pictures: cuttingPictures(
      {
        ...{ title, patch: asked.patch, plan: chosen.plan, pieces: found.pieces, words },
        // What is bought, as it lies after the wash.
        spare: buy.length * (1 - shrink) - chosen.length,
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

const nameOf = ({ method, direction }: YardageWay): string =>
  method === 'strips' && direction === 'lengthwise' ? 'Strips lengthwise' : METHOD[method];

/** The cutting list: so many strips or rows, so many patches from each, what is left for the last. */
function cuttingWords({ list, plan, method }: YardageWay, say: Speech): string {
  const { rows, perRow, lastRow } = list;
  const along = plan.direction === 'lengthwise' && method !== 'strips' ? ' lengthwise' : '';
  const what = { strips: 'strips', nested: 'rows', turned: 'rows', squares: 'rows of squares' }[method];
  const each =
    perRow[0] === perRow[1] || rows < 2
      ? `${grouped(perRow[0])} from each`
      : `${grouped(perRow[0])} and ${grouped(perRow[1])} by turns`;
  const full = rows % 2 === 1 || rows < 2 ? perRow[0] : perRow[1];
  const last = rows > 1 && lastRow < full ? `, ${grouped(lastRow)} from the last` : '';
  return `${grouped(rows)} ${rows === 1 ? what.replace(/s( of.*)?$/, '$1') : what} of ${say.length(plan.rowHeight)}${along}, ${each}${last}`;
}

function otherWays(found: Yardage, chosen: YardageWay, say: Speech): Reply['table'] {
  const rows = METHODS.flatMap((name) => {
    const way = found[name];
    if (!way || way === chosen) return [];
    if (name === 'lengthwise' && found.strips && way.length > found.strips.length - 1e-6) return [];
    const blunt =
      way.plan.patch.cornerStyle === 'blunt' && chosen.plan.patch.cornerStyle !== 'blunt'
        ? ', blunt corners'
        : '';
    return [
      [
        nameOf(way),
        bought(way.buy, say),
        `${say.plain(roundUp(way.buy, say))}: ${cuttingWords(way, say)}${blunt}`,
      ],
    ];
  });
  return rows.length === 0 ? null : { columns: ['other ways', 'buy', 'needed'], rows };
}

function assumptions(asked: AskedPatch, { here, shrink, width }: Told): string[] {
  const { given, defaults, say } = here;
  const taken = [...asked.assumed];
  if (!given.has('width')) taken.push(`${whose(defaults.width.from)}${say.plain(width)} usable width`);
  if (!given.has('shrink') && shrink === 0) taken.push('no shrinkage');
  return taken;
}

function figuresOf(found: Yardage): Record<string, Figure> {
  const figures: Record<string, Figure> = { pieces: count(found.pieces) };
  for (const name of [...METHODS, 'best'] as const) {
    const way = found[name];
    if (!way) continue;
    const buy = purchase(way.buy, 'yard');
    figures[`${name}Length`] = inches(way.buy);
    figures[`${name}Yards`] = yards(buy.amount);
    figures[`${name}Spare`] = inches(buy.spare);
    figures[`${name}Metres`] = metresFigure(way.buy);
  }
  return figures;
}
