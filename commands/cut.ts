import { CATALOGUE } from '../src/calculator/shapes/catalogue.ts';
import { startSquare, startSquareTurned } from '../src/calculator/shapes/cut.ts';
import type { CutPatch, MeasureName } from '../src/calculator/shapes/shape.ts';
import { stripFor } from '../src/calculator/shapes/strip.ts';
import { type Command, form, type Here } from '../src/chat/command.ts';
import { type Figure, inches, type Reply, reply, squareInches } from '../src/chat/reply.ts';
import { decimal, rulerReading } from '../src/measure/ruler.ts';
import { bladeCaution } from './cautions.ts';
import { type AskedPatch, askedPatch, assumedNote, capital, patchOptions, titled } from './patch.ts';
import { measureWords } from './patch-words.ts';

const cut: Command = {
  name: 'cut',
  summary: 'How large to cut a patch, and what it finishes at',
  forms: [
    form({
      name: '',
      summary: 'Every measure of a patch, finished and cut, the strip and the square to cut it from; or back from what was cut',
      examples: [
        '/cut hexagon 1 1/2in',
        '/cut diamond 2in seam 3/8in',
        '/cut hexagon flats:3in corners:blunt',
        '/cut shape:hexagon size:3 1/8in measure:flats given:cut',
      ],
      options: patchOptions,
      run(values, here) {
        const asked = askedPatch(values, here, (patch) => `cut ${here.say.length(rulerMeasure(patch).cut)} ${rulerMeasure(patch).words}`);
        if ('asks' in asked) return asked.asks;
        return asked.ok ? answer(asked.value, here) : asked;
      },
    }),
  ],
};

export default cut;

function answer(asked: AskedPatch, here: Here): Reply {
  const { patch, assumed } = asked;
  return reply({
    title: titled(asked, here, false),
    lines: [firstLine(patch, asked, here), stripLine(patch, here), squareLine(patch, here)],
    figures: figuresOf(patch),
    table: tableOf(patch, here),
    notes: [...ruleNote(patch, here), ...assumedNote(assumed)],
    cautions: bladeCaution(here),
    choices: asked.otherwise,
  });
}

/** The measure that goes on the ruler first: what the strip is cut at. */
function rulerMeasure(patch: CutPatch): { cut: number; words: string } {
  const { strip } = CATALOGUE[patch.shape];
  return { cut: stripFor(patch.shape, patch.dimensions, patch.seam).height, words: measureWords(patch.shape, strip.height) };
}

function firstLine(patch: CutPatch, { said }: AskedPatch, { say }: Here): string {
  if (said.given === 'cut') {
    const words = measureWords(patch.shape, firstTold(patch));
    return `Finishes at ${say.length(patch.finished.measures[firstTold(patch)] ?? 0)} ${words}.`;
  }
  const { cut, words } = rulerMeasure(patch);
  return `Cut ${say.length(cut)} ${words}.`;
}

const firstTold = ({ shape }: CutPatch): MeasureName => CATALOGUE[shape].told[0] ?? 'edge';

function stripLine(patch: CutPatch, { say }: Here): string {
  const { height, angles, step, stepTaken, trim } = stripFor(patch.shape, patch.dimensions, patch.seam);
  const every = stepTaken === 'square' ? `${say.mark(step)} apart` : `${say.mark(step)} along the edge`;
  const crossing = angles.length > 1 ? `slanting by turns, ${angles[0]}° each way` : angles[0] === 90 ? 'straight across' : `at ${angles[0]}°`;
  const trimming = trim.length > 0 ? `, then trim the ends at ${trim.map((angle) => `${angle}°`).join(' and ')}` : '';
  return `Strip ${say.mark(height)} high, cut ${crossing}, ${every}${trimming}.`;
}

/** A hair less of cloth is not worth turning the patch for. */
const WORTH_TURNING = 1 / 16;

function squareLine(patch: CutPatch, { say }: Here): string {
  const upright = startSquare(patch);
  const turned = startSquareTurned(patch);
  const saves = upright - turned.side >= WORTH_TURNING;
  const other = saves ? `, or ${say.mark(turned.side, 'up')} with the patch turned ${decimal(turned.degrees, 1)}°` : '';
  return `One patch from a ${say.mark(upright, 'up')} square${other}.`;
}

/** Rounding that shows over a row of ten. */
const WORTH_SAYING = 1 / 64;

function ruleNote(patch: CutPatch, { say }: Here): string[] {
  if (say.reading === 'metric') return [];
  const { error } = rulerReading(rulerMeasure(patch).cut);
  if (Math.abs(error) < WORTH_SAYING) return [];
  const way = error > 0 ? 'wide' : 'narrow';
  return [`The ruler's mark is ${decimal(Math.abs(error), 3)} in ${way}: ${decimal(Math.abs(error) * 10, 2)} in over ten patches.`];
}

function tableOf({ shape, finished, cut }: CutPatch, { say }: Here): Reply['table'] {
  const rows = CATALOGUE[shape].told.map((name) => [
    measureWords(shape, name),
    lengthOr(finished.measures[name], say.length),
    lengthOr(cut.measures[name], say.length),
  ]);
  return { columns: ['', 'finished', 'cut'], rows: [...rows, ['area', say.area(finished.area), say.area(cut.area)]] };
}

const lengthOr = (value: number | undefined, words: (inches: number) => string): string => (value === undefined ? '' : words(value));

function figuresOf(patch: CutPatch): Record<string, Figure> {
  const figures: Record<string, Figure> = {};
  for (const face of ['finished', 'cut'] as const) {
    for (const [name, value] of Object.entries(patch[face].measures)) figures[`${face}${capital(name)}`] = inches(value);
    figures[`${face}Area`] = squareInches(patch[face].area);
  }
  const { height, angles } = stripFor(patch.shape, patch.dimensions, patch.seam);
  figures['stripHeight'] = inches(height);
  figures['stripAngle'] = { value: angles, unit: '°' };
  figures['startSquare'] = inches(startSquare(patch));
  figures['startSquareTurned'] = inches(startSquareTurned(patch).side);
  return figures;
}
