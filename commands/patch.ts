import { CATALOGUE, shapeNames } from '../src/calculator/shapes/catalogue.ts';
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
import type { Option, Values } from '../src/chat/option.ts';
import { bare, otherwise, usually } from '../src/chat/option.ts';
import { choice, LONGEST, length, SHORTEST, writeLength, writeSize } from '../src/chat/option-kinds.ts';
import { type Reply, reply } from '../src/chat/reply.ts';
import { takeLength } from '../src/measure/length.ts';
import { ok, type Result, type Wrong, wrong } from '../src/measure/result.ts';
import { takeSize } from '../src/measure/size.ts';
import type { Speech } from '../src/measure/speech.ts';
import { CORNERS, FLATS, followed, measured } from './measured.ts';
import { dimensionOptions, type Further, furtherWords, notOfShape, usualWords } from './patch-dimensions.ts';
import { measureWords, sizeWords } from './patch-words.ts';

/** Other words for a shape, beside its name and the plural. */
const SPOKEN: Readonly<Partial<Record<ShapeName, readonly string[]>>> = {
  hexagon: ['hex', 'hexes', 'hexie', 'hexy', 'hexies', 'six-sided'],
  diamond: ['60° diamond', '60 degree diamond', '60 diamond', 'lozenge', 'rhombus'],
  triangle: ['equilateral triangle', '60° triangle', '60 degree triangle'],
  'half-hexagon': ['half hex', 'half hexie', 'halves', 'half hexagons point to point'],
  'half-hexagon-flats': ['half hexagon flat to flat', 'half hex flats', 'half hexagons flat to flat'],
  kite: ['sixth', 'sixth of a hexagon'],
  third: ['third of a hexagon'],
  'long-hexagon': ['elongated hexagon', 'stretched hexagon', 'long hex', 'church window', 'long hexie'],
  diamond45: ['45° diamond', '45 degree diamond', '45 diamond', 'eight-point star diamond'],
  octagon: ['eight-sided'],
  pentagon: ['five-sided'],
  clamshell: ['clam shell', 'fish scale', 'scale'],
  'apple-core': ['apple core', 'axe head', 'axe blade'],
};

export const shapeChoices = shapeNames.map((name) => ({
  name,
  title: CATALOGUE[name].title,
  ...(SPOKEN[name] ? { words: SPOKEN[name] } : {}),
}));

export const measureChoices = [
  { name: 'edge', title: 'one side', words: ['side', 'sides', 'per side', 'side length', 'on the side'] },
  {
    name: 'flats',
    title: 'flat to flat',
    words: ['flat', 'flat to flat', 'across the flats', 'across flats', 'side to side'],
  },
  {
    name: 'corners',
    title: 'point to point',
    words: ['point to point', 'corner to corner', 'tip to tip', 'across the points', 'across the corners'],
  },
  { name: 'height', title: 'height', words: ['high', 'tall'] },
  { name: 'width', title: 'width' },
] as const;

/** The size of a patch as given: one length, or two for a rectangle. */
export type PatchSize = { readonly value: number; readonly second?: number };

const patchSize: Option<PatchSize, false> = {
  kind: 'size',
  summary: 'How large the finished patch is; its side unless measure: says otherwise',
  example: '1 1/2in',
  bounds: '1/8in to 480in; 2x3in for a rectangle',
  shape: { as: 'words', longest: 40 },
  take(text, context) {
    const one = takeLength(text, context.unit);
    const two = one ? null : takeSize(text, context.unit);
    if (!one && (!two || two.value.bed)) return null;
    const values = one ? [one.value] : [two?.value.width ?? 0, two?.value.height ?? 0];
    for (const value of values) {
      const got = writeLength(value);
      if (value < SHORTEST)
        return wrong('too-small', { got, least: writeLength(SHORTEST), most: writeLength(LONGEST) });
      if (value > LONGEST)
        return wrong('too-large', { got, least: writeLength(SHORTEST), most: writeLength(LONGEST) });
    }
    const [value = 0, second] = values;
    return ok({
      value: second === undefined ? { value } : { value, second },
      rest: (one ?? two)?.rest ?? '',
    });
  },
  write: ({ value, second }) => (second === undefined ? writeLength(value) : writeSize(value, second)),
};

const pointToPointLength = length('The size, point to point');

/** `corners:` says how the allowance ends, or gives the size from point to point. */
const cornersOption: Option<CornerStyle | { readonly length: number }, false> = {
  kind: 'corner',
  summary: 'How the allowance ends at a corner; or the size, point to point',
  example: 'blunt',
  bounds: 'pointed, blunt, or a length',
  shape: { as: 'words', longest: 40 },
  take(text, context) {
    const style = /^(pointed|blunt)\b/i.exec(text);
    if (style)
      return ok({ value: style[1]?.toLowerCase() as CornerStyle, rest: text.slice(style[0].length) });
    const taken = pointToPointLength.take(text, context);
    return taken?.ok ? ok({ value: { length: taken.value.value }, rest: taken.value.rest }) : taken;
  },
  write: (value) => (typeof value === 'string' ? value : writeLength(value.length)),
};

/** A word that is bare only in a few safe phrases: "cut" alone says what to do, not what was measured. */
const givenOption = {
  ...bare(
    choice('Whether the size is the finished or the cut patch', [
      { name: 'finished', title: 'finished', words: ['sewn'] },
      { name: 'cut', title: 'cut', words: ['cut size', 'as cut', 'cut at'] },
    ]),
  ),
  bareWhen: /^(?:finished|sewn|cut size|as cut|cut at)\b/i,
};

/** The options by which every command that is about one patch is told which patch. */
export const patchOptions = {
  shape: otherwise(bare(choice('The shape of the patch', shapeChoices)), 'hexagon'),
  size: bare(followed(patchSize, /^[\s-]*wide\b/i)),
  measure: bare(choice('What the size measures', measureChoices)),
  given: givenOption,
  edge: length('The size, along one side'),
  flats: measured(length('The size, flat to flat'), FLATS),
  height: length('The size, base to top; or a tumbler’s height, beside its size'),
  ...dimensionOptions,
  seam: usually(length('Seam allowance', 0, 6, '1/4in'), 'what /me and /guild keep, or 1/4in'),
  corners: measured(cornersOption, CORNERS),
};

export type PatchValues = Values<typeof patchOptions>;

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

/** "your " or "the guild’s " before a default that somebody has set. */
export const whose = (from: 'you' | 'guild' | 'usual'): string =>
  ({ you: 'your ', guild: 'the guild’s ', usual: '' })[from];

/** Of the assumptions, those that a member may keep her own of, and has not. */
const MAY_BE_KEPT = /^(?!your ).*\b(?:seam|usable width|stitches an inch|a week)$/;

/** What was taken for granted, in one line, and how to change what can be kept; nothing where nothing was. */
export function assumedNote(assumed: readonly string[]): string[] {
  if (assumed.length === 0) return [];
  const change = assumed.some((one) => MAY_BE_KEPT.test(one)) ? ' Yours differ? `/me set`' : '';
  return [`Assumed: ${assumed.join(', ')}.${change}`];
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

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
