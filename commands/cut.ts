import { CATALOGUE } from '../src/calculator/shapes/catalogue.ts';
import { startSquare, startSquareTurned, type TurnedSquare } from '../src/calculator/shapes/cut.ts';
import type { CutPatch } from '../src/calculator/shapes/shape.ts';
import { type PatchStrip, stripFor } from '../src/calculator/shapes/strip.ts';
import { type Command, form, type Here } from '../src/chat/command.ts';
import { type Figure, inches, type Reply, reply, squareInches } from '../src/chat/reply.ts';
import { decimal, rulerReading } from '../src/measure/ruler.ts';
import { capital } from '../src/measure/speech.ts';
import { assumedNote } from './assumed.ts';
import { bladeCaution } from './cautions.ts';
import { type AskedPatch, askedPatch, titled } from './patch.ts';
import { patchOptions } from './patch-options.ts';
import { measureWords } from './patch-words.ts';
import { patchPicture } from './pictures.ts';

const cut: Command = {
  name: 'cut',
  summary: 'How large to cut a patch, and what it finishes at',
  forms: [
    form({
      name: '',
      summary:
        'Every measure of a patch, finished and cut, the strip and the square to cut it from; or back from what was cut',
      examples: [
        '/cut hexagon 1 1/2in',
        '/cut diamond 2in seam 3/8in',
        '/cut hexagon flats:3in corners:blunt',
        '/cut shape:hexagon size:3 1/8in measure:flats given:cut',
      ],
      options: patchOptions,
      run(values, here) {
        const asked = askedPatch(
          values,
          here,
          (patch) =>
            `cut ${here.say.length(rulerMeasure(toCut(patch)).cut)} ${rulerMeasure(toCut(patch)).words}`,
        );
        if ('asks' in asked) return asked.asks;
        return asked.ok ? answer(asked.value, toCut(asked.value.patch), here) : asked;
      },
    }),
  ],
};

export default cut;

/** A patch with what it is cut from, worked out once for the words and the figures alike. */
interface ToCut {
  readonly patch: CutPatch;
  readonly strip: PatchStrip;
  readonly square: number;
  readonly turned: TurnedSquare;
}

const toCut = (patch: CutPatch): ToCut => ({
  patch,
  strip: stripFor(patch.shape, patch.dimensions, patch.seam),
  square: startSquare(patch),
  turned: startSquareTurned(patch),
});

function answer(asked: AskedPatch, from: ToCut, here: Here): Reply {
  const title = titled(asked, here, false);
  return reply({
    title,
    lines: [firstLine(from, asked, here), stripLine(from, asked, here), squareLine(from, here)],
    figures: figuresOf(from),
    table: tableOf(from.patch, here),
    notes: [...ruleNote(from, here), ...assumedNote(asked.assumed)],
    cautions: bladeCaution(here),
    choices: asked.otherwise,
    pictures: [patchPicture(title, from.patch, here)],
  });
}

/** The measure that goes on the ruler first: what the strip is cut at. */
function rulerMeasure({ patch, strip }: ToCut): { cut: number; words: string } {
  return { cut: strip.height, words: measureWords(patch.shape, CATALOGUE[patch.shape].strip.height) };
}

function firstLine(from: ToCut, { said }: AskedPatch, { say }: Here): string {
  const { shape, finished } = from.patch;
  if (said.given === 'cut' && said.second !== undefined) {
    const { width = 0, height = 0 } = finished.measures;
    return `Finishes at ${say.size(width, height)}.`;
  }
  if (said.given === 'cut') {
    const told = CATALOGUE[shape].told[0] ?? 'edge';
    return `Finishes at ${say.length(finished.measures[told] ?? 0)} ${measureWords(shape, told)}.`;
  }
  const { cut, words } = rulerMeasure(from);
  return words === 'height' ? `Cut strips ${say.length(cut)} high.` : `Cut ${say.length(cut)} ${words}.`;
}

function stripLine(from: ToCut, { said }: AskedPatch, { say }: Here): string {
  const { height, angles, step, stepTaken, trim } = from.strip;
  const every = stepTaken === 'square' ? `${say.mark(step)} apart` : `${say.mark(step)} along the edge`;
  const crossing =
    angles.length > 1
      ? `slanting by turns, ${degrees(angles[0])} each way`
      : angles[0] === 90
        ? 'straight across'
        : `at ${degrees(angles[0])}`;
  const trimming = trim.length > 0 ? `, then trim the ends at ${trim.map(degrees).join(' and ')}` : '';
  const curves = isCurved(from) ? ', then cut the curves round a template' : '';
  const strips =
    said.given === 'finished' && rulerMeasure(from).words === 'height'
      ? 'Then cut them'
      : `Strip ${say.mark(height)} high, cut`;
  return `${strips} ${crossing}, ${every}${trimming}${curves}.`;
}

const degrees = (angle = 0): string => `${decimal(angle, 1)}°`;

const isCurved = ({ patch }: ToCut): boolean => CATALOGUE[patch.shape].corners === 'rounded';

/** A hair less of cloth is not worth turning the patch for. */
const WORTH_TURNING = 1 / 16;

function squareLine({ square, turned }: ToCut, { say }: Here): string {
  const saves = square - turned.side >= WORTH_TURNING;
  const other = saves
    ? `, or ${say.mark(turned.side, 'up')} with the patch turned ${decimal(turned.degrees, 1)}°`
    : '';
  return `One patch from a square of ${say.mark(square, 'up')}${other}.`;
}

/** Rounding that shows over a row of ten. */
const WORTH_SAYING = 1 / 64;

function ruleNote(from: ToCut, { say }: Here): string[] {
  if (say.reading === 'metric') return [];
  const { error } = rulerReading(rulerMeasure(from).cut);
  if (Math.abs(error) < WORTH_SAYING) return [];
  const way = error > 0 ? 'large' : 'small';
  return [
    `At that mark a patch is ${decimal(Math.abs(error), 3)} in too ${way}: ${decimal(Math.abs(error) * 10, 2)} in over ten.`,
  ];
}

function tableOf({ shape, finished, cut }: CutPatch, { say }: Here): Reply['table'] {
  const rows = CATALOGUE[shape].told.map((name) => [
    measureWords(shape, name),
    lengthOr(finished.measures[name], say.length),
    lengthOr(cut.measures[name], say.length),
  ]);
  return {
    columns: ['', 'finished', 'cut'],
    rows: [...rows, ['area', say.area(finished.area), say.area(cut.area)]],
  };
}

const lengthOr = (value: number | undefined, words: (inches: number) => string): string =>
  value === undefined ? '' : words(value);

function figuresOf({ patch, strip, square, turned }: ToCut): Record<string, Figure> {
  const figures: Record<string, Figure> = {};
  for (const face of ['finished', 'cut'] as const) {
    for (const [name, value] of Object.entries(patch[face].measures))
      figures[`${face}${capital(name)}`] = inches(value);
    figures[`${face}Area`] = squareInches(patch[face].area);
  }
  figures.stripHeight = inches(strip.height);
  figures.stripAngle = { value: strip.angles, unit: '°' };
  figures.startSquare = inches(square);
  figures.startSquareTurned = inches(turned.side);
  return figures;
}
