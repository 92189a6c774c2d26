import { CATALOGUE } from '../src/calculator/shapes/catalogue.ts';
import { cutPatch, dimensionsFrom } from '../src/calculator/shapes/cut.ts';
import { box } from '../src/calculator/shapes/extent.ts';
import type {
  CornerStyle,
  CutPatch,
  Dimensions,
  MeasureName,
  ShapeName,
} from '../src/calculator/shapes/shape.ts';
import type { Here } from '../src/chat/command.ts';
import { type Reply, reply } from '../src/chat/reply.ts';
import { ok, type Result, type Wrong, wrong } from '../src/measure/result.ts';
import { capital, type Speech } from '../src/measure/speech.ts';
import { whose } from './assumed.ts';
import { type Further, furtherWords, notOfShape, usualWords } from './patch-dimensions.ts';
import { measureChoices, type PatchSize, type PatchValues, patchSize } from './patch-options.ts';
import { measureWords, sizeWords } from './patch-words.ts';

/** A patch settled from what was said, with what was taken for granted. */
export interface AskedPatch {
  readonly patch: CutPatch;
  readonly shape: ShapeName;
  /** The size as it was said, for the title. */
  readonly said: {
    readonly value: number;
    readonly second?: number;
    readonly measure: MeasureName;
    readonly given: 'finished' | 'cut';
    readonly further: Further;
  };
  readonly assumed: readonly string[];
  /** The other readings of a size that may be meant otherwise. */
  readonly otherwise: Reply['choices'];
}

interface Stated {
  readonly size: PatchSize;
  readonly measure: MeasureName;
  /** Whether the measure was said, or taken to be the side. */
  readonly sure: boolean;
  /** The dimensions beside the size. */
  readonly further: Further;
}

/** From this finished size up, in inches, a bare size may well be flat to flat. */
const DOUBTFUL_FROM = 3;

/** What a size of each shape may be taken for; a shape that is not here is measured one way only. */
const READINGS: Readonly<Partial<Record<ShapeName, readonly MeasureName[]>>> = {
  hexagon: ['edge', 'flats', 'corners'],
  diamond: ['edge', 'height'],
  triangle: ['edge', 'height'],
  'half-hexagon': ['edge', 'height'],
  diamond45: ['edge', 'height'],
  octagon: ['edge', 'flats'],
  pentagon: ['edge', 'height'],
};

/**
 * The patch that was asked about: settled, or a problem, or a question to ask back with a choice for each
 * reading, where the size may be meant two ways and the two differ by more than a tenth.
 */
export function askedPatch(
  values: PatchValues,
  here: Here,
  what: (patch: CutPatch) => string,
): Result<AskedPatch> | { readonly asks: Reply } {
  const stated = statedSize(values);
  if (!stated.ok) return stated;
  const seam = seamOf(values, here);
  const style = styleOf(values);
  const { measure, size, sure, further } = stated.value;
  const given = values.given ?? 'finished';
  const patchOf = (as: MeasureName) =>
    patchFrom(values.shape, { as, size, given, seam, style, further }, here);
  const patch = patchOf(measure);
  if (!patch.ok) return patch;
  const others = sure || size.value < DOUBTFUL_FROM - 1e-9 ? [] : (READINGS[values.shape] ?? []);
  const choices = others.map((as) => choiceFor(values.shape, as, size, here));
  if (choices.length > 0 && here.bare.has('size'))
    return { asks: askWhich(values.shape, size, others, choices, patchOf, what, here) };
  const said = { ...size, measure, given, further };
  const assumed = assumptions(here, values.shape, { sure, further });
  return ok({ patch: patch.value, shape: values.shape, said, assumed, otherwise: choices.slice(1) });
}

function statedSize(values: PatchValues): Result<Stated> {
  const { shape, size } = values;
  const further = furtherOf(values);
  const not = notOfShape(shape, further);
  if (not) return not;
  const lengths = {
    edge: values.edge,
    flats: values.flats,
    height: values.height,
    corners: pointToPoint(values.corners),
    side: values.side,
  };
  const beside = new Set(Object.keys(further));
  const short = Object.entries(lengths).filter(([name, value]) => value !== undefined && !beside.has(name));
  const said = [...(size ? ['size'] : []), ...short.map(([name]) => name)];
  if (said.length > 1) return wrong('size-twice', { got: said.join(', ') });
  const [first] = short as [string, number][];
  if (first) {
    const measure = first[0] === 'side' ? sideOf(shape) : (first[0] as MeasureName);
    return ok({ size: { value: first[1] }, measure, sure: true, further });
  }
  if (!size) return wrong('size-missing', { example: `size:${patchSize.example}` });
  const two = CATALOGUE[shape].second !== undefined;
  const second = size.second ?? (two ? values.side : undefined);
  if (two && second === undefined) return wrong('needs-two-measures');
  if (!two && second !== undefined) return wrong('one-measure-only', { shape: CATALOGUE[shape].title });
  return ok({
    size: second === undefined ? size : { value: size.value, second },
    measure: values.measure ?? (two ? 'width' : 'edge'),
    sure: values.measure !== undefined || two || shape === 'square',
    further,
  });
}

/** A long hexagon's side is its long one; of any other shape one side is the size. */
const sideOf = (shape: ShapeName): MeasureName => (shape === 'long-hexagon' ? 'longSide' : 'edge');

/** The dimensions that stand beside a size. A side or a height without one is the size itself. */
function furtherOf({ shape, size, edge, side, angle, narrow, height }: PatchValues): Further {
  const also = CATALOGUE[shape].also ?? {};
  const sized = size !== undefined || edge !== undefined;
  const has = (name: keyof Further, value: number | undefined) =>
    sized && name in also && value !== undefined;
  return {
    ...(has('side', side) ? { side: side! } : {}),
    ...(has('height', height) ? { height: height! } : {}),
    ...(angle === undefined ? {} : { angle }),
    ...(narrow === undefined ? {} : { narrow }),
  };
}

const styleOf = ({ corners }: PatchValues): CornerStyle => (corners === 'blunt' ? 'blunt' : 'pointed');

const pointToPoint = (corners: PatchValues['corners']) =>
  typeof corners === 'object' ? corners.length : undefined;

interface Made {
  readonly as: MeasureName;
  readonly size: PatchSize;
  readonly given: 'finished' | 'cut';
  readonly seam: number;
  readonly style: CornerStyle;
  readonly further: Further;
}

function patchFrom(shape: ShapeName, made: Made, here: Here): Result<CutPatch> {
  const { as, size, given, seam, style, further } = made;
  const { value, second } = size;
  const stated = {
    measure: as,
    given,
    value,
    seam,
    cornerStyle: style,
    also: further,
    ...(second === undefined ? {} : { side: second }),
  };
  const dimensions: Result<Dimensions> = dimensionsFrom(shape, stated);
  if (!dimensions.ok) return explained(dimensions, shape, here);
  return ok(cutPatch(shape, dimensions.value, seam, style));
}

/** The calculator's problem in the words and units of the asker. */
function explained({ problem }: Wrong, shape: ShapeName, { say }: Here): Wrong {
  const { title } = CATALOGUE[shape];
  if (problem.code === 'nothing-left')
    return wrong('nothing-left', {
      got: say.plain(Number(problem.value)),
      least: say.plain(Number(problem.least)),
    });
  if (problem.code === 'not-narrower') return wrong('not-narrower');
  if (problem.code === 'seam-closes-curve')
    return wrong('seam-closes-curve', {
      seam: say.plain(Number(problem.seam)),
      shape: title,
      most: say.plain(Number(problem.most)),
    });
  const known = (problem.accepts as readonly MeasureName[] | undefined)?.filter((m) =>
    measureChoices.some((c) => c.name === m),
  );
  return wrong('measure-not-of-shape', {
    shape: problem.given === 'cut' ? `cut ${title}` : title,
    measure: measureWords(shape, problem.measure as MeasureName),
    known: known ?? [],
  });
}

/** The seam allowance said, or kept, or usual. */
export const seamOf = (values: { readonly seam?: number }, here: Here): number =>
  values.seam ?? here.defaults.seam.value;

interface Took {
  readonly sure: boolean;
  readonly further: Further;
}

function assumptions(here: Here, shape: ShapeName, { sure, further }: Took): string[] {
  const { given, say, defaults } = here;
  const taken: string[] = [];
  if (!given.has('shape') && shape === 'hexagon') taken.push('hexagons');
  if (!sure) taken.push(`the size is ${sizeWords(shape)}`);
  taken.push(...usualWords(shape, further));
  if (!given.has('seam')) taken.push(`${whose(defaults.seam.from)}${say.plain(defaults.seam.value)} seam`);
  if (CATALOGUE[shape].corners === 'rounded') taken.push('a rounded allowance (curves take no other)');
  return taken;
}

function choiceFor(shape: ShapeName, as: MeasureName, size: PatchSize, here: Here) {
  return {
    label: `${here.say.plain(size.value)} ${measureWords(shape, as)}`,
    ask: here.again({ size, measure: as }),
  };
}

function askWhich(
  shape: ShapeName,
  size: PatchSize,
  readings: readonly MeasureName[],
  choices: Reply['choices'],
  patchOf: (as: MeasureName) => Result<CutPatch>,
  what: (patch: CutPatch) => string,
  { say }: Here,
): Reply {
  const rows = readings.flatMap((as) => {
    const patch = patchOf(as);
    return patch.ok ? [[measureWords(shape, as), what(patch.value)]] : [];
  });
  return reply({
    title: `${say.plain(size.value)} ${CATALOGUE[shape].title}: which way?`,
    lines: [],
    asks: `Is ${say.plain(size.value)} ${readings.map((as) => `the ${measureWords(shape, as)}`.replace('the flat', 'flat').replace('the point', 'point')).join(', or ')}?`,
    table: { columns: ['if it is', 'then'], rows },
    choices,
  });
}

/** A patch's name and size as it was said: "hexagons, 1 1/2 in side". */
export function titled({ shape, said }: AskedPatch, { say }: Here, many = true): string {
  const { title, titles } = CATALOGUE[shape];
  const size = said.second === undefined ? say.plain(said.value) : say.size(said.value, said.second);
  const measure = said.second === undefined ? ` ${measureWords(shape, said.measure)}` : '';
  const further = furtherWords(shape, said.further, say).map((words) => `, ${words}`);
  const cut = said.given === 'cut' ? ', as cut' : '';
  return `${capital(many ? titles : title)}, ${size}${measure}${further.join('')}${cut}`;
}

/** Width and height of the cut patch as it lies. */
export function cutSize({ cut }: CutPatch, say: Speech): string {
  const { width, height } = box(cut.outline);
  return say.size(width, height);
}
