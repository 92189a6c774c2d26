import {
  BINDING_EXTRA,
  type BiasBinding,
  biasBinding,
  type StraightBinding,
  straightBinding,
} from '../src/calculator/finishing/binding.ts';
import { type EdgeAsk, outlineLength } from '../src/calculator/finishing/outline.ts';
import { type Answer, form, type Here } from '../src/chat/command.ts';
import { alsoNamed, bare, otherwise, type Values } from '../src/chat/option.ts';
import { choice, length, whole } from '../src/chat/option-kinds.ts';
import { count, type Figure, inches, reply } from '../src/chat/reply.ts';
import { ok, type Result, wrong } from '../src/measure/result.ts';
import { decimal, grouped } from '../src/measure/ruler.ts';
import { many, type Speech } from '../src/measure/speech.ts';
import { assumedNote } from './assumed.ts';
import { bought, metresFigure, purchaseFor, tightWords, yardsFigure } from './bought.ts';
import { bladeCaution } from './cautions.ts';
import {
  quiltAssumed,
  quiltCautions,
  quiltOption,
  tooWide,
  usableOption,
  usableWidth,
  widthAssumed,
} from './finish-words.ts';

/** The strip of a double binding: common practice, no source. */
export const BINDING_STRIP = 2.5;

const bindingOptions = {
  quilt: quiltOption,
  strip: otherwise(length('How wide the strips are cut', 3 / 4, 6, '2 1/2in'), BINDING_STRIP),
  width: usableOption,
  cut: bare(
    choice('Strips cut straight across the cloth, or on the bias', [
      { name: 'straight', title: 'straight', words: ['straight grain', 'straight strips'] },
      { name: 'bias', title: 'on the bias', words: ['on the bias', 'diagonal'] },
    ]),
  ),
  edge: bare(
    choice('What the edge of the quilt follows', [
      { name: 'straight', title: 'straight sides', words: ['straight sides', 'straight edge'] },
      {
        name: 'hexagons',
        title: 'the hexagons',
        words: ['hexagon', 'hexagon edge', 'hexagon-edged', 'points'],
      },
      { name: 'rosette', title: 'one large rosette', words: ['rosette edge', 'rosette-edged'] },
    ]),
  ),
  rows: otherwise(
    choice('Which way the rows of hexagons run', [
      { name: 'across', title: 'across, points up' },
      { name: 'down', title: 'down, flats up' },
    ]),
    'across',
  ),
  rounds: alsoNamed(whole('Rounds of the rosette', 0, 577, '3'), 'round'),
  size: otherwise(length('The finished side of the rosette’s hexagons'), 1),
  extra: otherwise(length('More than the way round, for corners and the join', 0, 72, '10in'), BINDING_EXTRA),
};

type BindingValues = Values<typeof bindingOptions>;

export const bindingForm = form({
  name: 'binding',
  summary: 'Strips for the binding, straight or bias, of straight edges, hexagon edges or a rosette',
  examples: [
    '/finish binding 60x72in',
    '/finish binding quilt:60x72in strip:2 1/4in cut:bias',
    '/finish binding 60x72in edge:hexagons',
    '/finish binding edge:rosette rounds:8 size:1in',
  ],
  options: bindingOptions,
  run(values, here) {
    const edge = edgeOf(values, here);
    if (!edge.ok) return edge;
    const needed = outlineLength(edge.value) + values.extra;
    const usable = usableWidth(values, here);
    const cut = values.cut ?? (edge.value.edge === 'straight' ? 'straight' : 'bias');
    const told = { values, here, edge: edge.value, needed, usable };
    if (values.strip >= usable - 1e-9) return tooWide('strip', values.strip, usable, here);
    return cut === 'straight' ? answerStraight(told) : answerBias(told);
  },
});

interface Told {
  readonly values: BindingValues;
  readonly here: Here;
  readonly edge: EdgeAsk;
  readonly needed: number;
  readonly usable: number;
}

/** The edge that was asked about; rounds alone are a rosette's. */
function edgeOf({ edge, quilt, rows, rounds, size }: BindingValues, { given }: Here): Result<EdgeAsk> {
  const kind = edge ?? (given.has('rounds') ? 'rosette' : 'straight');
  if (kind === 'rosette')
    return rounds === undefined
      ? missing('rounds', bindingOptions.rounds)
      : ok({ edge: 'rosette', rounds, side: size });
  if (!quilt) return missing('quilt', bindingOptions.quilt);
  const { width, height } = quilt;
  return kind === 'hexagons'
    ? ok({ edge: 'hexagons', width, height, rows })
    : ok({ edge: 'straight', width, height });
}

const missing = (option: string, { summary, example }: { summary: string; example: string }) =>
  wrong('option-missing', { option, summary, example });

function answerStraight(told: Told): Answer {
  const { values, here, needed, usable } = told;
  const made = straightBinding(needed, values.strip, usable);
  const { say } = here;
  const tight = purchaseFor(made.length, say).tight;
  return reply({
    ...common(told, { strips: count(made.strips), joined: inches(made.joined), ...cloth(made.length) }),
    lines: [
      `Cut ${stripWords(made, values.strip, say)}: buy ${bought(made.length, say)}.`,
      aroundWords(told),
      `Joined on the slant they give ${say.run(made.joined)}.`,
      ...(tight ? [tightWords(made.length, say)] : []),
      ...wavyWords(told),
    ],
    choices: [{ label: 'On the bias', ask: here.again({ cut: 'bias' }) }],
  });
}

/** "8 strips of 2 1/2 in". */
export const stripWords = ({ strips }: StraightBinding, strip: number, say: Speech): string =>
  `${many(strips, 'strip', 'strips')} of ${say.plain(strip)}`;

function answerBias(told: Told): Answer {
  const { values, here, needed, usable } = told;
  const made = biasBinding(needed, values.strip, usable);
  if (!made) return tooWide('bias strip', values.strip, usable, here);
  const { say } = here;
  return reply({
    ...common(told, {
      square: inches(made.square),
      squarePlain: inches(made.plain),
      squareCut: inches(made.cut),
      squares: count(made.squares),
      ...cloth(made.length),
    }),
    lines: [
      `Cut ${squareWords(made, say)}: buy ${bought(made.length, say)}.`,
      `${say.length(made.square)} with its two seams, ${say.length(made.plain)} by area alone.`,
      aroundWords(told),
      ...wavyWords(told),
    ],
    choices: [{ label: 'Straight strips', ask: here.again({ cut: 'straight' }) }],
  });
}

const squareWords = ({ squares, cut }: BiasBinding, say: Speech): string =>
  squares === 1 ? `a square of ${say.plain(cut)}` : `${grouped(squares)} squares of ${say.plain(cut)}`;

const cloth = (length: number): Record<string, Figure> => ({
  length: inches(length),
  yards: yardsFigure(length),
  metres: metresFigure(length),
});

function common(told: Told, figures: Record<string, Figure>) {
  const { values, here, needed, usable } = told;
  const { quilt, strip } = values;
  return {
    title: `Binding for ${edgeWords(told)}`,
    figures: { needLength: inches(needed), ...figures },
    notes: assumedNote([
      ...(quilt ? quiltAssumed(quilt, here) : []),
      ...(here.given.has('strip') ? [] : [`strips of ${here.say.plain(strip)}`]),
      ...widthAssumed(usable, here),
      ...(told.edge.edge === 'hexagons' && !here.given.has('rows') ? ['rows across, points up'] : []),
      ...(told.edge.edge === 'rosette' && !here.given.has('size')
        ? [`${here.say.plain(values.size)} side`]
        : []),
    ]),
    cautions: [...bladeCaution(here), ...(quilt ? quiltCautions(quilt) : [])],
  };
}

function edgeWords({ edge, here: { say } }: Told): string {
  if (edge.edge === 'rosette')
    return `a rosette of ${many(edge.rounds, 'round', 'rounds')}, ${say.plain(edge.side)} side`;
  const shaped = edge.edge === 'hexagons' ? ', hexagon-edged' : '';
  return `${say.size(edge.width, edge.height)}${shaped}`;
}

const aroundWords = ({ needed, values: { extra }, here: { say } }: Told): string =>
  `Needs ${say.run(needed)}, ${say.plain(extra)} of it for corners and the join.`;

/** An edge in and out is bound on the bias or faced: common practice, no source. */
function wavyWords({ edge }: Told): string[] {
  if (edge.edge === 'straight') return [];
  const times =
    edge.edge === 'hexagons'
      ? ` The edge is ${decimal(outlineLength(edge) / (2 * (edge.width + edge.height)), 2)} times a straight one.`
      : '';
  return [`In and out it lies flat with bias strips only, or face it.${times}`];
}
