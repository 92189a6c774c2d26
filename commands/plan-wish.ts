import { topOf } from '../src/calculator/plan/top.ts';
import type { PlanLayout, PlanWish } from '../src/calculator/plan/wish.ts';
import { CATALOGUE } from '../src/calculator/shapes/catalogue.ts';
import { stitchesPerInch } from '../src/calculator/stitching/method.ts';
import type { Here } from '../src/chat/command.ts';
import type { Values } from '../src/chat/option.ts';
import type { Reply } from '../src/chat/reply.ts';
import { ok, type Result, wrong } from '../src/measure/result.ts';
import { many } from '../src/measure/speech.ts';
import { whose } from './assumed.ts';
import { askedEdge } from './edge.ts';
import { readCloths } from './plan-cloths.ts';
import { planGrown } from './plan-grown.ts';
import type { planOptions } from './plan-options.ts';
import { type PlanPace, planPace, type Sewer } from './plan-pace.ts';

export type PlanValues = Values<typeof planOptions>;

/** Hours a week where nobody has said: a judgement, said in the reply. */
const USUAL_HOURS = 5;

/** A wish settled from what was said, with what was taken for granted. */
export interface Wished {
  readonly wish: PlanWish;
  readonly assumed: readonly string[];
  readonly otherwise: Reply['choices'];
}

type Settled = Result<Wished> | { readonly asks: Reply };

/** Settles a new wish, or lays what was said over one that is kept. */
export async function wishFrom(
  values: PlanValues,
  here: Here,
  kept?: PlanWish,
  sewer: Sewer = 'asker',
): Promise<Settled> {
  const layout = layoutOf(values, kept);
  if (!layout) return wrong('plan-what');
  if (values.shape !== undefined && layout !== 'pieces' && values.shape !== SIDE_OF[layout])
    return wrong('layout-shape', { layout: `A plan of ${layout}`, shape: `${SIDE_OF[layout]}s` });
  const base = kept ? keptBase(kept, values, layout) : null;
  const loose = layout === 'pieces' ? looseShape(values, base) : ok(undefined);
  if (!loose.ok) return loose;
  const edge = edgeOf(values, here, loose.value === 'diamond' ? 'diamonds' : layout);
  if ('asks' in edge) return edge;
  if (!edge.ok) return edge;
  const side = values.size === undefined && base ? base.edge : edge.value.edge;
  const { pace: _, paceFrom: __, ...based } = base ?? {};
  const pace = await planPace(side, base, sewer, here);
  const bare: PlanWish = {
    ...based,
    ...setOf(values),
    layout,
    edge: side,
    cloths: base?.cloths ?? [],
    seam: values.seam ?? base?.seam ?? here.defaults.seam.value,
    width: values.width ?? base?.width ?? here.defaults.width.value,
    spare: values.spare ?? base?.spare ?? 0,
    shrink: values.shrink ?? base?.shrink ?? 0,
    ...ratesOf(values, here, base),
    ...pace.said,
    start: base?.start ?? here.today,
  };
  const grown = planGrown(bare);
  const wish = withoutNoBorder({ ...bare, ...grown.said });
  const cloths = clothsOf(values, wish);
  if (!cloths.ok) return cloths;
  return ok({
    wish: { ...wish, cloths: cloths.value },
    assumed: kept ? [] : assumptions(values, here, wish, [...edge.value.assumed, ...grown.words], pace),
    otherwise: edge.value.otherwise,
  });
}

/** The layout that was named, or that only one layout's own words can mean; a kept plan's own before a guess. */
function layoutOf(values: PlanValues, kept?: PlanWish): PlanLayout | undefined {
  const { layout, rosettes, path, stars, set, blocks, rounds, quilt, sides, rows, number, shape } = values;
  if (layout) return layout;
  if (rosettes ?? path) return 'garden';
  if (stars ?? set) return 'stars';
  if (blocks !== undefined) return 'blocks';
  if (kept) return kept.layout;
  if (rounds !== undefined) return quilt ? 'garden' : 'rosette';
  if (number !== undefined && shape !== undefined) return 'pieces';
  if (quilt ?? sides ?? rows) return 'field';
  return number === undefined ? undefined : 'pieces';
}

/** A new number takes the place of the size to fill, and the other way round; another layout keeps neither. */
function keptBase(kept: PlanWish, values: PlanValues, layout: PlanLayout): PlanWish {
  const { quilt, rosettes, stars, blocks, number, side, shape, ...rest } = kept;
  const given = values.rosettes ?? values.stars ?? values.blocks ?? values.side ?? values.number;
  const numbers = {
    ...(rosettes ? { rosettes } : {}),
    ...(stars ? { stars } : {}),
    ...(blocks ? { blocks } : {}),
    ...(number ? { number } : {}),
    ...(side ? { side } : {}),
    ...(shape ? { shape } : {}),
  };
  if (layout !== kept.layout) return { ...rest, ...(quilt ? { quilt } : {}) };
  const apart = layout === 'rosette' || layout === 'star' || layout === 'diamonds';
  return {
    ...rest,
    ...(quilt && (given === undefined || apart) ? { quilt } : {}),
    ...(values.quilt === undefined || apart ? numbers : {}),
  };
}

const SET = [
  'quilt',
  'shape',
  'number',
  'rosettes',
  'stars',
  'blocks',
  'rounds',
  'path',
  'outer',
  'set',
  'side',
  'sides',
  'rows',
  'border',
] as const;

const setOf = (values: PlanValues): Partial<PlanWish> =>
  Object.fromEntries(SET.filter((name) => values[name] !== undefined).map((name) => [name, values[name]]));

function withoutNoBorder(wish: PlanWish): PlanWish {
  if (wish.border !== 0) return wish;
  const { border: _, ...rest } = wish;
  return rest;
}

/** Whether the side is that of hexagons or of diamonds. */
const SIDE_OF: Readonly<Record<PlanLayout, 'hexagon' | 'diamond'>> = {
  field: 'hexagon',
  rosette: 'hexagon',
  garden: 'hexagon',
  star: 'diamond',
  stars: 'diamond',
  diamonds: 'diamond',
  blocks: 'diamond',
  pieces: 'hexagon',
};

/** Loose patches are of any shape that one size fixes; hexagons and diamonds may be given by other measures. */
function looseShape({ shape, measure }: PlanValues, base: PlanWish | null): Result<string> {
  const loose = shape ?? base?.shape ?? 'hexagon';
  if (CATALOGUE[loose].second !== undefined) return wrong('plan-one-size', { shape: CATALOGUE[loose].title });
  if (measure !== undefined && measure !== 'edge' && loose !== 'hexagon' && loose !== 'diamond')
    return wrong('measure-not-of-shape', { shape: CATALOGUE[loose].title, measure, known: ['edge'] });
  return ok(loose);
}

/** The side of the patches, by the same rules as /count; `measure` says it in place of three options. */
function edgeOf({ size, measure }: PlanValues, here: Here, layout: PlanLayout) {
  const asMeasure = (changes: Readonly<Record<string, unknown>>) => {
    const [key, value] = Object.entries(changes).find(([name]) => name !== 'size') ?? ['edge', size];
    return here.again({ size: value, measure: key });
  };
  const said = size === undefined ? {} : { [measure ?? 'size']: size };
  return askedEdge(said, { ...here, again: asMeasure }, SIDE_OF[layout]);
}

function ratesOf(values: PlanValues, { defaults }: Here, base: PlanWish | null) {
  const method = values.method ?? base?.method ?? 'whip';
  const own = base && base.method === method ? base.stitches : null;
  return {
    method,
    stitches: own ?? defaults.stitches.value ?? stitchesPerInch[method],
    hours: values.hours ?? base?.hours ?? defaults.hours.value ?? USUAL_HOURS,
  };
}

/** The cloths said, or those kept; the layout is counted only where its parts must be known. */
function clothsOf({ cloths }: PlanValues, wish: PlanWish): Result<PlanWish['cloths']> {
  if (cloths === undefined && wish.cloths.length === 0) return ok([]);
  const top = topOf(wish);
  if (!top.ok) return top;
  const roles = top.value.roles.map(({ role }) => role);
  return cloths === undefined ? ok(stillThere(wish.cloths, roles)) : readCloths(cloths, roles);
}

/** Cloths for parts that the layout still has. */
const stillThere = (cloths: PlanWish['cloths'], roles: readonly string[]) =>
  cloths.filter(({ role }) => roles.includes(role) || ['backing', 'binding', 'border', 'all'].includes(role));

/** A size to fill and nothing of how: a field is taken, and other layouts may be meant. */
export const isFieldUnsaid = (values: PlanValues, { layout }: Pick<PlanWish, 'layout'>): boolean =>
  layout === 'field' && [values.layout, values.sides, values.rows].every((said) => said === undefined);

function assumptions(
  values: PlanValues,
  { defaults, say }: Here,
  wish: PlanWish,
  edge: readonly string[],
  pace: PlanPace,
): string[] {
  const { quilt } = values;
  const taken: string[] = [];
  if (isFieldUnsaid(values, wish)) taken.push('hexagons all over');
  if (quilt?.bed) taken.push(`${quilt.bed} as ${say.size(quilt.width, quilt.height)}`);
  taken.push(...edge);
  if (values.seam === undefined) taken.push(`${whose(defaults.seam.from)}${say.plain(wish.seam)} seam`);
  if (values.width === undefined)
    taken.push(`${whose(defaults.width.from)}${say.plain(wish.width)} usable width`);
  if (values.spare === undefined) taken.push('nothing to spare');
  if (values.method === undefined) taken.push('whipstitch over paper');
  taken.push(...pace.words);
  if (values.hours === undefined)
    taken.push(`${whose(defaults.hours.from)}${many(wish.hours, 'hour', 'hours')} a week`);
  return taken;
}
