import { type BackingWay, backing, PANEL_SEAM } from '../src/calculator/finishing/backing.ts';
import { form, type Here } from '../src/chat/command.ts';
import { bare, otherwise } from '../src/chat/option.ts';
import { choice } from '../src/chat/option-kinds.ts';
import { count, inches, type Reply, reply } from '../src/chat/reply.ts';
import { grouped } from '../src/measure/ruler.ts';
import { many, type Speech } from '../src/measure/speech.ts';
import { assumedNote } from './assumed.ts';
import { bought, metresFigure, purchaseFor, tightWords, yardsFigure } from './bought.ts';
import {
  neededQuilt,
  overAssumed,
  overOption,
  quiltAssumed,
  quiltCautions,
  tooWide,
  usableOption,
  usableWidth,
  widthAssumed,
} from './finish-words.ts';

/** Backing cloth sold 108 in wide gives 106 in: common practice, no source. */
const WIDE = 106;

export const grainChoice = choice('Whether the print may lie either way', [
  { name: 'any', title: 'either way', words: ['either', 'either way'] },
  {
    name: 'lengthwise',
    title: 'down the quilt',
    words: ['directional', 'directional print', 'one way', 'down'],
  },
]);

export const backingForm = form({
  name: 'backing',
  summary: 'Cloth for the back: panels, which way the seams run, and wide backing beside it',
  examples: [
    '/finish backing 60x72in',
    '/finish backing queen width:106in',
    '/finish backing quilt:140x200cm grain:lengthwise over:10cm',
  ],
  options: {
    quilt: neededQuilt,
    width: usableOption,
    over: overOption,
    grain: otherwise(bare(grainChoice), 'any'),
  },
  run(values, here) {
    const { quilt, over, grain } = values;
    const usable = usableWidth(values, here);
    if (usable <= 2 * PANEL_SEAM) return tooWide('seam', 2 * PANEL_SEAM, usable, here);
    const ask = { width: quilt.width, height: quilt.height, over, grain };
    const { best, other, needWidth, needHeight } = backing({ ...ask, usable });
    const buy = purchaseFor(best.length, here.say);
    return reply({
      title: `Backing for ${here.say.size(quilt.width, quilt.height)}`,
      lines: [
        `Buy ${bought(best.length, here.say)}: ${panelWords(best, here.say)}.`,
        seamWords(best),
        `The back needs ${here.say.size(needWidth, needHeight)}.`,
        ...(buy.tight ? [tightWords(best.length, here.say)] : []),
      ],
      table: otherWays([
        ...(grain === 'any' ? [['the other way', other] as const] : []),
        ...(usable < WIDE - 6 ? [[wideTitle(here), backing({ ...ask, usable: WIDE }).best] as const] : []),
      ])(here),
      figures: {
        needWidth: inches(needWidth),
        needLength: inches(needHeight),
        panels: count(best.panels),
        panelLength: inches(best.panelLength),
        length: inches(best.length),
        yards: yardsFigure(best.length),
        metres: metresFigure(best.length),
        direction: { value: best.direction, unit: '' },
      },
      notes: assumedNote([
        ...quiltAssumed(quilt, here),
        ...widthAssumed(usable, here),
        ...overAssumed(over, here),
        ...(here.given.has('grain') ? [] : ['a print that may lie either way']),
      ]),
      cautions: quiltCautions(quilt),
    });
  },
});

const wideTitle = ({ say }: Here): string => `wide backing, ${say.plain(WIDE)}`;

/** "2 panels, each 80 in long". */
export const panelWords = ({ panels, panelLength }: BackingWay, say: Speech): string =>
  panels === 1
    ? `one piece, ${say.plain(panelLength)} long`
    : `${grouped(panels)} panels, each ${say.plain(panelLength)} long`;

/** Which way the seams run. */
export function seamWords({ panels, direction }: BackingWay): string {
  if (panels === 1)
    return direction === 'lengthwise' ? 'No seam.' : 'No seam; the cloth lies across the quilt.';
  const way = direction === 'lengthwise' ? 'down' : 'across';
  return `${many(panels - 1, 'seam', 'seams')} ${way} the quilt.`;
}

const otherWays =
  (ways: readonly (readonly [string, BackingWay])[]) =>
  ({ say }: Here): Reply['table'] =>
    ways.length === 0
      ? null
      : {
          columns: ['or', 'buy', 'how'],
          rows: ways.map(([title, way]) => [
            title,
            bought(way.length, say),
            `${panelWords(way, say)}; ${seamWords(way).toLowerCase().replace(/\.$/, '')}`,
          ]),
        };
