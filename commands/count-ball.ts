import { ball } from '../src/calculator/layouts/ball.ts';
import { form, type Here } from '../src/chat/command.ts';
import { bare, usually } from '../src/chat/option.ts';
import { length } from '../src/chat/option-kinds.ts';
import { count, inches, type Reply, reply } from '../src/chat/reply.ts';
import { wrong } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';
import { assumedNote } from './assumed.ts';
import { ballPicture } from './pictures.ts';

/** Sides left open to turn the ball and fill it: common practice, no source. */
const OPEN = 2;

/** From here up, in inches, a bare size may well be the whole ball's. */
const DOUBTFUL_FROM = 3;

const ballOptions = {
  size: usually(bare(length('The finished side of one pentagon')), '1in, said in the reply'),
  edge: length('The same, said outright'),
  across: length('The ball’s own size, flat to flat'),
};

export const ballForm = form({
  name: 'ball',
  summary: 'A ball of twelve pentagons',
  examples: ['/count ball', '/count ball size:1 1/2in', '/count ball across:4in'],
  options: ballOptions,
  run(values, here) {
    const said = Object.entries(values).filter(([, value]) => value !== undefined);
    if (said.length > 1) return wrong('size-twice', { got: said.map(([name]) => name).join(', ') });
    const { size, edge, across } = values;
    const choices = size === undefined || size < DOUBTFUL_FROM - 1e-9 ? [] : readings(size, here);
    if (size !== undefined && choices.length > 0 && here.bare.has('size'))
      return askWhich(size, choices, here);
    const side = across === undefined ? (size ?? edge ?? 1) : across / ball(1).flatToFlat;
    const assumed = said.length > 0 ? [] : [`${here.say.plain(1)} side`];
    if (choices.length > 0) assumed.push('the size is one pentagon’s side');
    return answer(side, { here, assumed, choices: choices.slice(1) });
  },
});

const readings = (size: number, { say, again }: Here): Reply['choices'] => [
  { label: `${say.plain(size)} pentagon’s side`, ask: again({ size: null, edge: size }) },
  { label: `${say.plain(size)} across the ball`, ask: again({ size: null, across: size }) },
];

const askWhich = (size: number, choices: Reply['choices'], { say }: Here): Reply =>
  reply({
    title: `${say.plain(size)} ball: which way?`,
    asks: `Is ${say.plain(size)} one pentagon’s side, or the ball’s size across?`,
    choices,
  });

interface Told {
  readonly here: Here;
  readonly assumed: readonly string[];
  readonly choices: Reply['choices'];
}

function answer(side: number, { here, assumed, choices }: Told): Reply {
  const { say } = here;
  const made = ball(side);
  const title = `Ball of pentagons, ${say.plain(side)} side`;
  return reply({
    title,
    lines: [
      `${grouped(made.total)} pentagons, ${grouped(made.seams)} seams, ${grouped(made.corners)} corners.`,
      `${say.length(made.flatToFlat)} across, flat to flat.`,
      `${say.length(made.cornerToCorner)} across, corner to corner.`,
      `${say.run(made.seamLength)} of sewing. Leave ${OPEN} seams open to turn and fill it.`,
    ],
    figures: {
      ...{ total: count(made.total), seams: count(made.seams), corners: count(made.corners) },
      ...{ setIns: count(made.setIns), edge: inches(side), seamLength: inches(made.seamLength) },
      ...{ flatToFlat: inches(made.flatToFlat), cornerToCorner: inches(made.cornerToCorner) },
    },
    notes: assumedNote(assumed),
    choices,
    pictures: [ballPicture(title, made, side, here)],
  });
}
