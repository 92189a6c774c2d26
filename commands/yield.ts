import { bestPlan } from '../src/calculator/fabric/best-plan.ts';
import { yieldFrom } from '../src/calculator/fabric/yield.ts';
import { type Answer, type Command, form, type Here } from '../src/chat/command.ts';
import { alsoNamed, bare, neededUnless, otherwise, usually, type Values } from '../src/chat/option.ts';
import { choice, cloth, length, whole } from '../src/chat/option-kinds.ts';
import { type Cloth, pieceTitle } from '../src/measure/cloth.ts';
import type { ClothPile } from '../src/measure/cloth-list.ts';
import { wrong } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';
import type { Selvage } from '../src/pictures/cloth.ts';
import { whose } from './assumed.ts';
import { haveOption } from './have.ts';
import { motifOption } from './motif.ts';
import { type AskedPatch, askedPatch, cutSize, titled } from './patch.ts';
import { patchOptions } from './patch-options.ts';
import { yieldOfAll } from './yield-have.ts';
import { isSized, largestAnswer } from './yield-largest.ts';
import { motifAnswer } from './yield-motif.ts';
import { yieldReply } from './yield-reply.ts';
import { rosetteRounds } from './yield-rosettes.ts';

const yieldOptions = {
  ...patchOptions,
  cloth: neededUnless(bare(cloth('The piece to cut from')), 'have'),
  width: usually(
    length('Usable width of cloth on the bolt', 4, 200, '42in'),
    'what /me and /guild keep, or 42in',
  ),
  margin: usually(
    length('Left free along every edge', 0, 6, '1/4in'),
    'none on cloth, 1/4in on a sheet of paper',
  ),
  method: otherwise(
    choice('Which way of cutting is told', [
      { name: 'best', title: 'least cloth', words: ['least cloth', 'most'] },
      { name: 'fewest', title: 'fewest cuts', words: ['fewest cuts', 'easiest'] },
      { name: 'strips', title: 'strips', words: ['strip'] },
      { name: 'nested', title: 'nested, shared lines', words: ['traced', 'honeycomb'] },
      { name: 'squares', title: 'blunt squares', words: ['blunt squares'] },
    ]),
    'best',
  ),
  motif: motifOption,
  have: haveOption,
  pieces: alsoNamed(
    whole(
      'So many patches: how many pieces of that cloth they take; without a size, how large they can be',
      1,
      1_000_000,
      '240',
    ),
    'patches',
  ),
  rounds: rosetteRounds,
};

const yieldCommand: Command = {
  name: 'yield',
  summary: 'How many patches a piece of cloth gives, and how to cut it',
  forms: [
    form({
      name: '',
      summary: 'How many patches a piece of cloth or a sheet of papers gives, by each way of cutting',
      examples: [
        '/yield hexagon 1in fat-quarter',
        '/yield diamond 2in 1 1/2yd width:40in',
        '/yield hexagon 1in 10in-square corners:blunt',
        '/yield hexagon 1in letter',
        '/yield hexagon 1in 1yd method:fewest',
        '/yield hexagon 1 1/2in 1yd motif:4x5in',
        '/yield hexagon 1in have:3 fat quarters, 12 5in squares, 1 1/2yd',
        '/yield hexagon 1in fat-quarter pieces:240',
        '/yield hexagon 1in fat-quarter rounds:1',
        '/yield hexagon 5in-square pieces:1',
      ],
      options: yieldOptions,
      run(values, here) {
        if (values.rounds !== undefined && !['hexagon', undefined].includes(values.shape))
          return wrong('layout-shape', { layout: 'A rosette', shape: 'hexagons' });
        if (values.rounds !== undefined && values.motif)
          return wrong('one-of-these', { got: 'motif, rounds' });
        const { pieces } = values;
        if (pieces !== undefined && isWithoutSize(values, here))
          return ofWhatSize({ ...values, pieces }, here);
        if (values.have) return fromAll({ ...values, have: values.have }, here);
        return fromOne({ ...values, cloth: values.cloth! }, here);
      },
    }),
  ],
};

export default yieldCommand;

type Asked = Values<typeof yieldOptions>;

/** One piece of cloth, and how it is cut. */
function fromOne(values: Asked & { readonly cloth: Cloth }, here: Here): Answer {
  const paper = values.cloth.kind === 'paper';
  // A paper is the finished patch: it has no seam unless one is asked for.
  const seam = values.seam ?? (paper ? 0 : undefined);
  const size = piece(values.cloth, values.width ?? here.defaults.width.value);
  const margin = values.margin ?? (paper ? 1 / 4 : 0);
  const asked = askedPatch({ ...values, ...(seam === undefined ? {} : { seam }) }, here, (patch) =>
    atLeast(bestPlan(patch, size, { margin })?.count ?? 0),
  );
  if ('asks' in asked) return asked.asks;
  if (!asked.ok) return asked;
  const { patch } = asked.value;
  const assumed = assumptions(asked.value.assumed, values.cloth, margin, here);
  const told = {
    ...here,
    assumed,
    selvage: selvageOf(values.cloth),
    wanted: values.pieces,
    rounds: values.rounds,
    paper,
  };
  const title = `${titled(asked.value, here)}, from ${pieceName(values.cloth)}${here.say.size(size.width, size.length)}`;
  if (values.motif)
    return (
      motifAnswer({ patch, size, margin, motif: values.motif, title, here: told }) ??
      tooSmall(asked.value, size, here)
    );
  const best = bestPlan(patch, size, { margin });
  if (!best) return tooSmall(asked.value, size, here);
  return yieldReply(asked.value, values.method, yieldFrom(patch, size, { margin }), best, {
    ...told,
    title,
  });
}

/** No size, and nothing said of how the cloth is cut or printed, which the search does not heed. */
const isWithoutSize = (values: Asked, { given }: Here): boolean =>
  !isSized(values) && !given.has('method') && values.motif === undefined && values.rounds === undefined;

/** So many patches, and no size: the largest at which they come out. */
function ofWhatSize(values: Asked & { readonly pieces: number }, here: Here): Answer {
  const { cloth: one, have, pieces } = values;
  if (one && have) return wrong('one-of-these', { got: 'cloth, have' });
  const piles = have ?? (one ? [{ cloth: one, count: 1 }] : []);
  const first = (piles.find(({ cloth }) => cloth.width === null) ?? piles[0]!).cloth;
  const paper = first.kind === 'paper';
  const margin = values.margin ?? (paper ? 1 / 4 : 0);
  const width = values.width ?? here.defaults.width.value;
  const cloths = piles.map(({ cloth, count: of }) => ({ size: piece(cloth, width), count: of }));
  const { size } = cloths[0]!;
  return largestAnswer(
    {
      ...{ pieces, cloths, margin },
      values: paper && values.seam === undefined ? { ...values, seam: 0 } : values,
      from: have ? 'what you have' : `${pieceName(first)}${here.say.size(size.width, size.length)}`,
      assumed: (patch) => assumptions(patch, first, margin, here),
    },
    here,
  );
}

/** What one reading of a doubtful size comes to. */
const atLeast = (patches: number): string =>
  patches === 0 ? 'too large for it' : `at least ${grouped(patches)} of them`;

/** All the cloth that she has, piece by piece. */
function fromAll(values: Asked & { readonly have: readonly ClothPile[] }, here: Here): Answer {
  const { have: piles, cloth: one, method, motif, margin = 0 } = values;
  if (one) return wrong('one-of-these', { got: 'cloth, have' });
  const width = values.width ?? here.defaults.width.value;
  const sizes = piles.map(({ cloth }) => piece(cloth, width));
  const asked = askedPatch(values, here, (patch) => {
    const counts = piles.map(
      ({ count: pieces }, at) => pieces * (bestPlan(patch, sizes[at]!, { margin })?.count ?? 0),
    );
    return atLeast(counts.reduce((sum, patches) => sum + patches, 0));
  });
  if ('asks' in asked) return asked.asks;
  if (!asked.ok) return asked;
  const lengths = piles.find(({ cloth }) => cloth.width === null)?.cloth ?? piles[0]!.cloth;
  const assumed = assumptions(asked.value.assumed, lengths, margin, here);
  const largest = sizes.toSorted((a, b) => b.width * b.length - a.width * a.length)[0]!;
  return (
    yieldOfAll(
      asked.value,
      { piles, width, margin, method, motif, assumed, wanted: values.pieces, rounds: values.rounds },
      here,
    ) ?? tooSmall(asked.value, largest, here)
  );
}

interface Size {
  readonly width: number;
  readonly length: number;
}

const piece = ({ width, length: long }: Cloth, usable: number): Size => ({
  width: width ?? usable,
  length: long,
});

function tooSmall({ patch }: AskedPatch, { width, length: long }: Size, { say }: Here) {
  return wrong('patch-wider-than-cloth', {
    patch: cutSize(patch, say),
    cloth: say.size(width, long),
  });
}

function assumptions(patch: readonly string[], { kind, width }: Cloth, margin: number, here: Here): string[] {
  const { defaults, given, say } = here;
  const taken = kind === 'paper' ? patch.filter((one) => !one.endsWith('seam')) : [...patch];
  if (kind === 'paper' && !given.has('seam')) taken.push('papers at the finished size');
  if (width === null && !given.has('width'))
    taken.push(`${whose(defaults.width.from)}${say.plain(defaults.width.value)} usable width`);
  if (kind === 'paper' && !given.has('margin')) taken.push(`${say.plain(margin)} free along each edge`);
  return taken;
}

/**
 * Yardage and strips have it at both ends of the width. A fat quarter or eighth is torn from a width folded in
 * two, so that one of its short sides may have it; squares and other pieces have none that is known. Common
 * practice, no source.
 */
function selvageOf({ name, width }: Cloth): Selvage {
  if (width === null) return 'sides';
  return name.startsWith('fat-') ? 'end' : 'none';
}

function pieceName(cloth: Cloth): string {
  const known = pieceTitle(cloth.name);
  return known ? `${/^a/i.test(known) ? 'an' : 'a'} ${known}, ` : '';
}
