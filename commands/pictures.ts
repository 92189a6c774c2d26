import type { BestPlan } from '../src/calculator/fabric/best-plan.ts';
import type { Repeat } from '../src/calculator/fabric/motif.ts';
import type { CuttingPlan, LaidPlan } from '../src/calculator/fabric/plan.ts';
import { wasteOf } from '../src/calculator/fabric/waste.ts';
import type { Ball } from '../src/calculator/layouts/ball.ts';
import { inCloths } from '../src/calculator/layouts/in-cloths.ts';
import { tally } from '../src/calculator/layouts/tally.ts';
import { CATALOGUE } from '../src/calculator/shapes/catalogue.ts';
import type { CutPatch } from '../src/calculator/shapes/shape.ts';
import type { Here } from '../src/chat/command.ts';
import type { Picture } from '../src/chat/reply.ts';
import { grouped } from '../src/measure/ruler.ts';
import { capital, many } from '../src/measure/speech.ts';
import type { BallRecipe } from '../src/pictures/ball.ts';
import type { Selvage } from '../src/pictures/cloth.ts';
import type { CuttingRecipe } from '../src/pictures/cutting.ts';
import type { LayoutAsk } from '../src/pictures/laid.ts';
import type { LayoutRecipe } from '../src/pictures/layout.ts';
import type { PatchRecipe } from '../src/pictures/patch.ts';
import type { Counted } from './layouts.ts';
import { measureWords } from './patch-words.ts';

/** A longer name is cut between words. */
const LONGEST_NAME = 80;

/**
 * A file's name from a reply's title: plain letters and figures, so that it can be kept anywhere. What says
 * which of several files it is (`last`) stays when the title is cut.
 *
 * @example
 * fileName('Hexagon, 1 1/2 in side', 'png') // "hexagon-1-1-2-in-side.png"
 * fileName('Hexagons', 'png', 'cutting plan') // "hexagons-cutting-plan.png"
 */
export function fileName(title: string, ending: 'png' | 'pdf', last = ''): string {
  const after = last === '' ? '' : `-${hyphened(last)}`;
  return `${cutBetweenWords(hyphened(title), LONGEST_NAME - after.length)}${after}.${ending}`;
}

const hyphened = (words: string): string =>
  words
    .replace(/[½¼¾⅛]/g, (part) => ` ${part.normalize('NFKD')}`)
    .toLowerCase()
    .replace(/[^a-z0-9.]+/g, '-')
    .replace(/^[-.]+|[-.]+$/g, '');

function cutBetweenWords(name: string, most: number): string {
  if (name.length <= most) return name;
  const end = name.lastIndexOf('-', most);
  return name.slice(0, end > 0 ? end : most).replace(/[-.]+$/, '');
}

/** The patch with its two lines and what a cutter is told of it. */
export function patchPicture(title: string, patch: CutPatch, { say }: Here): Picture {
  const { shape, dimensions, seam, cornerStyle, finished, cut } = patch;
  const { told, corners = cornerStyle } = CATALOGUE[shape];
  const measures = told.map((name) => ({ name, words: measureWords(shape, name) }));
  const said = measures.map(
    ({ name, words }) =>
      `${words} ${say.length(finished.measures[name] ?? 0)} finished, ${say.length(cut.measures[name] ?? 0)} cut`,
  );
  const of: PatchRecipe = {
    draw: 'patch',
    ...{ title, shape, dimensions, seam, cornerStyle, measures },
    reading: say.reading,
  };
  return {
    name: fileName(title, 'png'),
    alt: `${title}: the sewing line inside the cutting line. ${capital(said.join('; '))}. ${say.plain(seam)} seam, ${corners} corners.`,
    of: { ...of },
  };
}

/** The ball as it is seen, with both its sizes. */
export function ballPicture(title: string, made: Ball, edge: number, { say }: Here): Picture {
  const of: BallRecipe = { draw: 'ball', title, edge, reading: say.reading };
  const sizes = `${say.length(made.cornerToCorner)} corner to corner, ${say.length(made.flatToFlat)} flat to flat`;
  const alt = `${title}: a ball of ${made.total} pentagons that meet by threes, ${made.seams} seams. ${sizes}.`;
  return { name: fileName(title, 'png'), alt, of: { ...of } };
}

/** More roles than this are told by their first and last. */
const MOST_ROLES = 12;

interface LaidOut {
  readonly title: string;
  readonly made: Counted;
  readonly ask: LayoutAsk;
  /** What the layout's roles are called in the reply. */
  readonly called?: Readonly<Record<string, string>>;
  /** The cloth that a role is of, where it was named. */
  readonly cloths?: Readonly<Record<string, string>>;
}

/** The layout coloured by role, or by cloth where cloths were named; with the line that it is trimmed to for a quilt. */
export function layoutPicture(
  { title, made, ask, called: all = {}, cloths }: LaidOut,
  { say }: Here,
): Picture {
  // A cloth that has a role's name is called by it.
  const called = Object.fromEntries(Object.entries(all).filter(([role]) => !ask.cloths?.includes(role)));
  const { layout, counted, edge, width, height } = asDrawn(made, ask);
  const roles = Object.entries(counted.byRole)
    .filter(([, count]) => count > 0)
    .map(([role, count]) => `${called[role] ?? role}: ${grouped(count)}`);
  const told =
    roles.length <= MOST_ROLES ? roles : [...roles.slice(0, 3), `and so on to ${roles.at(-1) ?? ''}`];
  const size = say.size(width, height);
  const apart = ask.layout === 'blocks apart';
  const ends = apart ? 'not yet joined' : layout.trim ? `trimmed to ${size} along the dashed line` : size;
  const of: LayoutRecipe = {
    draw: 'layout',
    ...{ title, ask, edge, called },
    ...(cloths ? { cloths } : {}),
    ...(apart ? { apart } : {}),
    reading: say.reading,
  };
  return {
    name: fileName(title, 'png'),
    alt: `${title}, coloured by ${ask.cloths ? 'cloth' : 'what each patch is for'}: ${told.join(', ')}; ${many(counted.total, 'patch', 'patches')}, ${ends}.`,
    of: { ...of },
  };
}

interface MotifPlan extends LaidPlan {
  readonly motif: Repeat;
}

/** What the picture shows of a layout that was counted: its cloths for its roles, and its size when trimmed. */
function asDrawn(made: Counted, { cloths, trimTo }: LayoutAsk): Counted {
  if (!cloths && !trimTo) return made;
  const coloured = cloths ? inCloths(made.layout, cloths) : made.layout;
  const layout = trimTo ? { ...coloured, trim: trimTo } : coloured;
  const { width, height } = trimTo ?? made;
  return { ...made, layout, counted: cloths ? tally(layout.patches) : made.counted, width, height };
}

interface LaidOnCloth {
  readonly title: string;
  /** The patch that was asked for; the plan may be of its blunt twin. */
  readonly patch: CutPatch;
  /** One of the trade's plans, the best one, or one round motifs. */
  readonly plan: CuttingPlan | BestPlan | MotifPlan;
  readonly pieces?: number;
  readonly spare?: number;
  readonly selvage: Selvage;
  readonly words: string;
}

/** By what the plan is made again. */
function wayOf(
  plan: LaidOnCloth['plan'],
): Pick<CuttingRecipe, 'method' | 'direction' | 'rowHeight' | 'motif'> {
  if ('blocks' in plan) return { method: 'best' };
  if ('motif' in plan) return { method: 'motif', motif: plan.motif };
  const { method, direction, rowHeight } = plan;
  return { method, direction, rowHeight };
}

/** More patches than this on one length of cloth nobody looks at one by one; their places would fill the memory. */
const MOST_LAID = 20_000;

/** The patches on the cloth; none where they are too many to be drawn. */
export function cuttingPictures(laid: LaidOnCloth, { say }: Here): Picture[] {
  if (laid.plan.count > MOST_LAID) return [];
  const { title, patch, plan, spare, selvage, words } = laid;
  const { shape, dimensions, seam, cornerStyle } = patch;
  const { cloth, margin, count } = plan;
  const pieces = laid.pieces ?? count;
  const waste = Math.round(wasteOf(plan, pieces) * 100);
  const of: CuttingRecipe = {
    draw: 'cutting',
    ...{ title, shape, dimensions, seam, cornerStyle, cloth, margin, count },
    ...wayOf(plan),
    ...(pieces < count ? { pieces } : {}),
    ...(spare === undefined ? {} : { spare }),
    ...{ selvage, words: [words], reading: say.reading },
  };
  const { title: one, titles } = CATALOGUE[shape];
  const size = say.size(cloth.width, cloth.length + (spare ?? 0));
  const alt = `${title}, laid on ${size}: ${many(pieces, one, titles)}. ${words} ${waste} % is waste.`;
  return [{ name: fileName(title, 'png', 'cutting plan'), alt, of: { ...of } }];
}
