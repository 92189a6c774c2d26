import { type Border, border } from '../src/calculator/finishing/border.ts';
import { form, type Here } from '../src/chat/command.ts';
import { bare, otherwise, required, usually } from '../src/chat/option.ts';
import { choice, length } from '../src/chat/option-kinds.ts';
import { count, inches, reply } from '../src/chat/reply.ts';
import { many } from '../src/measure/speech.ts';
import { assumedNote, whose } from './assumed.ts';
import { bought, metresFigure, purchaseFor, tightWords, yardsFigure } from './bought.ts';
import { bladeCaution } from './cautions.ts';
import {
  neededQuilt,
  quiltAssumed,
  quiltCautions,
  tooWide,
  usableOption,
  usableWidth,
  widthAssumed,
} from './finish-words.ts';
import { seamOf } from './patch.ts';

const joinChoice = choice('How the corners are made', [
  { name: 'butted', title: 'butted', words: ['butt', 'square'] },
  { name: 'mitred', title: 'mitred', words: ['mitered', 'mitre', 'miter'] },
]);

export const borderForm = form({
  name: 'border',
  summary: 'Strips for a border, butted or mitred, and the new size',
  examples: [
    '/finish border 50x60in border:3in',
    '/finish border quilt:50x60in border:3in join:mitred width:40in',
  ],
  options: {
    quilt: neededQuilt,
    border: required(bare(length('How wide the border finishes', 1 / 4, 40, '3in'))),
    join: otherwise(bare(joinChoice), 'butted'),
    width: usableOption,
    seam: usually(length('Seam allowance', 0, 2, '1/4in'), 'what /me and /guild keep, or 1/4in'),
  },
  run(values, here) {
    const { quilt, border: wide, join } = values;
    const usable = usableWidth(values, here);
    const seam = seamOf(values, here);
    if (wide + 2 * seam > usable + 1e-9) return tooWide('strip', wide + 2 * seam, usable, here);
    const made = border({ width: quilt.width, height: quilt.height, border: wide, seam, usable, join });
    const { say } = here;
    const tight = purchaseFor(made.length, say).tight;
    return reply({
      title: `${say.plain(wide)} border for ${say.size(quilt.width, quilt.height)}, ${join}`,
      lines: [
        `Cut ${many(made.strips, 'strip', 'strips')} of ${say.plain(made.cutStrip)}: buy ${bought(made.length, say)}.`,
        ...cutWords(made, join, here),
        `Finishes at ${say.size(made.newWidth, made.newHeight)}.`,
        ...(tight ? [tightWords(made.length, say)] : []),
      ],
      figures: {
        cutStrip: inches(made.cutStrip),
        sides: inches(made.sides),
        topBottom: inches(made.topBottom),
        total: inches(made.total),
        strips: count(made.strips),
        length: inches(made.length),
        yards: yardsFigure(made.length),
        metres: metresFigure(made.length),
        newWidth: inches(made.newWidth),
        newLength: inches(made.newHeight),
      },
      notes: [
        'Measure your own top through its middle before you cut.',
        ...assumedNote([
          ...quiltAssumed(quilt, here),
          ...(here.given.has('join') ? [] : ['butted corners']),
          ...(here.given.has('seam') ? [] : [`${whose(here.defaults.seam.from)}${say.plain(seam)} seam`]),
          ...widthAssumed(usable, here),
        ]),
      ],
      cautions: [...bladeCaution(here), ...quiltCautions(quilt)],
      choices: [otherJoin(join, here)],
    });
  },
});

function cutWords({ sides, topBottom }: Border, join: 'butted' | 'mitred', { say }: Here): string[] {
  if (join === 'butted')
    return [`Sides first, 2 of ${say.plain(sides)}.`, `Then top and bottom, 2 of ${say.plain(topBottom)}.`];
  return [
    `Sides 2 of ${say.plain(sides)}, top and bottom 2 of ${say.plain(topBottom)}.`,
    `${say.plain(4)} of each is for the mitres, trimmed after.`,
  ];
}

const otherJoin = (join: 'butted' | 'mitred', { again }: Here) =>
  join === 'butted'
    ? { label: 'Mitred corners', ask: again({ join: 'mitred' }) }
    : { label: 'Butted corners', ask: again({ join: 'butted' }) };
