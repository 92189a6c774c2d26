import type { CuttingMethod } from '../src/calculator/fabric/lay.ts';
import { type Yield, yieldFrom } from '../src/calculator/fabric/yield.ts';
import { type Command, form, type Here } from '../src/chat/command.ts';
import { bare, required, usually } from '../src/chat/option.ts';
import { cloth, length } from '../src/chat/option-kinds.ts';
import { count, inches, type Reply, reply } from '../src/chat/reply.ts';
import { type Cloth, pieceTitle } from '../src/measure/cloth.ts';
import { wrong } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';
import type { Selvage } from '../src/pictures/cloth.ts';
import { bladeCaution } from './cautions.ts';
import { type AskedPatch, askedPatch, assumedNote, cutSize, patchOptions, titled, whose } from './patch.ts';
import { cuttingPictures } from './pictures.ts';
import { METHOD, planWords } from './plan-words.ts';

const yieldOptions = {
  ...patchOptions,
  cloth: required(bare(cloth('The piece to cut from'))),
  width: usually(
    length('Usable width of cloth on the bolt', 4, 200, '42in'),
    'what /me and /guild keep, or 42in',
  ),
  margin: usually(
    length('Left free along every edge', 0, 6, '1/4in'),
    'none on cloth, 1/4in on a sheet of paper',
  ),
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
      ],
      options: yieldOptions,
      run(values, here) {
        const paper = values.cloth.kind === 'paper';
        // A paper is the finished patch: it has no seam unless one is asked for.
        const seam = values.seam ?? (paper ? 0 : undefined);
        const size = piece(values.cloth, values.width ?? here.defaults.width.value);
        const margin = values.margin ?? (paper ? 1 / 4 : 0);
        const asked = askedPatch(
          { ...values, ...(seam === undefined ? {} : { seam }) },
          here,
          (patch) => `at least ${grouped(yieldFrom(patch, size, { margin }).best)} of them`,
        );
        if ('asks' in asked) return asked.asks;
        if (!asked.ok) return asked;
        const found = yieldFrom(asked.value.patch, size, { margin });
        if (found.best === 0) return tooSmall(asked.value, size, here);
        const assumed = assumptions(asked.value.assumed, values.cloth, margin, here);
        return answer(asked.value, values.cloth, size, found, { ...here, assumed });
      },
    }),
  ],
};

export default yieldCommand;

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

function answer(
  asked: AskedPatch,
  cloth: Cloth,
  { width, length: long }: Size,
  found: Yield,
  here: Here & { readonly assumed: readonly string[] },
): Reply {
  const { say, assumed } = here;
  const { best, bestPlan, ceiling } = found;
  const how = bestPlan ? `${METHOD[bestPlan.method]}: ${planWords(bestPlan, say)}.` : '';
  const sure = best === ceiling ? 'and no more can be cut' : `the area alone would allow ${grouped(ceiling)}`;
  const name = `${titled(asked, here)}, from ${pieceName(cloth)}${say.size(width, long)}`;
  return reply({
    title: name,
    lines: [
      best === ceiling ? `${grouped(best)}, ${sure}.` : `At least ${grouped(best)} this way; ${sure}.`,
      how,
    ],
    table: otherWays(found, here),
    figures: figuresOf(found),
    notes: assumedNote(assumed),
    cautions: bladeCaution(here),
    choices: asked.otherwise,
    pictures: bestPlan
      ? cuttingPictures(
          { title: name, patch: asked.patch, plan: bestPlan, selvage: selvageOf(cloth), words: how },
          here,
        )
      : [],
  });
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
  return known ? `a ${known}, ` : '';
}

/** One row a method: its better direction. */
function otherWays({ plans, bestPlan }: Yield, { say }: Here): Reply['table'] {
  const seen = new Set<CuttingMethod>(bestPlan ? [bestPlan.method] : []);
  const rows: string[][] = [];
  for (const plan of plans) {
    if (seen.has(plan.method)) continue;
    seen.add(plan.method);
    const blunt =
      plan.patch.cornerStyle === 'blunt' && bestPlan?.patch.cornerStyle !== 'blunt'
        ? ' (blunt corners only)'
        : '';
    rows.push([METHOD[plan.method], grouped(plan.count), `${planWords(plan, say)}${blunt}`]);
  }
  return rows.length === 0 ? null : { columns: ['other ways', 'gives', 'how'], rows };
}

function figuresOf({ strips, nested, turned, squares, best, ceiling, bestPlan }: Yield): Reply['figures'] {
  return {
    strips: count(strips),
    ...(nested === undefined ? {} : { nested: count(nested) }),
    ...(turned === undefined ? {} : { turned: count(turned) }),
    ...(squares === undefined ? {} : { squares: count(squares) }),
    best: count(best),
    ceiling: count(ceiling),
    ...(bestPlan
      ? { clothWidth: inches(bestPlan.cloth.width), clothLength: inches(bestPlan.cloth.length) }
      : {}),
  };
}
