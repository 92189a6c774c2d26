import { byCloth, type Cloth } from '../src/calculator/layouts/by-cloth.ts';
import { byRow } from '../src/calculator/layouts/by-row.ts';
import { type Field, type FieldAsk, fieldCounts } from '../src/calculator/layouts/field.ts';
import { CATALOGUE } from '../src/calculator/shapes/catalogue.ts';
import { cutPatch, dimensionsFrom } from '../src/calculator/shapes/cut.ts';
import type { ShapeName } from '../src/calculator/shapes/shape.ts';
import { form, type Here } from '../src/chat/command.ts';
import { bare, otherwise, required } from '../src/chat/option.ts';
import { choice, size } from '../src/chat/option-kinds.ts';
import { count, type Reply, reply } from '../src/chat/reply.ts';
import { type Wrong, wrong } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';
import { isInfantBed, isUsual, type Size } from '../src/measure/size.ts';
import { many } from '../src/measure/speech.ts';
import { assumedNote } from './assumed.ts';
import { cribCaution } from './cautions.ts';
import { clothFigures, coloursOption, inTheCloths, placeWords } from './colours.ts';
import { layoutFigures, layoutLines } from './count-words.ts';
import { askedEdge, hexagonEdge } from './edge.ts';
import { type Counted, countField } from './layouts.ts';
import { shapeChoices } from './patch-options.ts';
import { layoutPicture } from './pictures.ts';
import { planChoice } from './plan-choice.ts';

const rowsChoice = choice('Which way the rows run, points up or flats up', [
  { name: 'across', title: 'rows across, points up' },
  { name: 'down', title: 'rows down, flats up' },
]);

const sidesChoice = choice('How the sides are ended', [
  { name: 'whole', title: 'whole hexagons inside', words: ['inside', 'whole hexagons'] },
  { name: 'cover', title: 'cover, then trim', words: ['trim', 'trimmed', 'cover and trim'] },
  {
    name: 'straight',
    title: 'straight, with half-hexagons',
    words: ['straight sides', 'halves', 'half-hexagons'],
  },
]);

export const fieldForm = form({
  name: 'field',
  summary: 'A quilt filled with hexagons: whole inside, covered and trimmed, or with straight sides',
  examples: [
    '/count field 60x72 1in',
    '/count field queen 1in sides:straight',
    '/count field quilt:140x200cm size:25mm rows:down',
    '/count field 60x72in colours:red,white,blue',
  ],
  options: {
    quilt: required(bare(size('The finished quilt'))),
    ...hexagonEdge,
    shape: choice('The shape of the patches: only hexagons are laid out here', shapeChoices),
    rows: otherwise(bare(rowsChoice), 'across'),
    sides: otherwise(bare(sidesChoice), 'cover'),
    colours: coloursOption,
  },
  run(values, here) {
    const asked = askedEdge(values, here, 'hexagon');
    if ('asks' in asked) return asked.asks;
    if (!asked.ok) return asked;
    const { quilt, rows, sides, shape = 'hexagon' } = values;
    if (shape !== 'hexagon') return otherShape(shape, quilt, asked.value.edge, here);
    const ask = { width: quilt.width, height: quilt.height, edge: asked.value.edge, rows };
    if (sides === 'whole' && fieldCounts(ask).inside === 0) return tooSmall(quilt, here);
    const made = countField({ ...ask, sides });
    if (!made.ok) return manyWords(made);
    const said = {
      ...(here.given.has('rows') ? { rows } : {}),
      ...(here.given.has('sides') ? { sides } : {}),
    };
    const otherwise = [...asked.value.otherwise, planChoice({ layout: 'field', quilt, ...said }, values)];
    return answer(made.value, quilt, { ...asked.value, otherwise, here, rows, colours: values.colours });
  },
});

/** Only hexagons are laid out; of another shape of one size its area tells about how many. */
function otherShape(shape: ShapeName, { width, height }: Size, edge: number, { say }: Here): Wrong {
  const { titles } = CATALOGUE[shape];
  const of = dimensionsFrom(shape, {
    measure: 'edge',
    given: 'finished',
    value: edge,
    seam: 0,
    cornerStyle: 'pointed',
    also: {},
  });
  const area = of.ok ? cutPatch(shape, of.value, 0, 'pointed').finished.area : null;
  return wrong('field-of-hexagons', {
    shape: titles,
    about: area === null ? '' : grouped(Math.ceil((width * height) / area)),
    size: say.plain(edge),
  });
}

/** A count that is too large, in figures that can be read. */
export function manyWords({ problem }: Wrong): Wrong {
  if (problem.code !== 'too-many-patches') return { ok: false, problem };
  return wrong(problem.code, { count: grouped(Number(problem.count)), most: grouped(Number(problem.most)) });
}

const tooSmall = (quilt: Size, { say }: Here) => ({
  ok: false as const,
  problem: { code: 'no-patch-fits', quilt: say.size(quilt.width, quilt.height) },
});

interface Told {
  readonly here: Here;
  readonly assumed: readonly string[];
  readonly otherwise: Reply['choices'];
  readonly rows: FieldAsk['rows'];
  readonly colours: readonly string[] | undefined;
}

function answer(made: Counted<Field>, quilt: Size, told: Told): Reply {
  const { here, assumed, otherwise: choices, colours } = told;
  const { layout, edge, counted } = made;
  const byCloths = colours ? rowCloths(layout, colours) : null;
  const { say } = here;
  const bed = quilt.bed && isUsual(quilt) ? [`${quilt.bed} as ${say.size(quilt.width, quilt.height)}`] : [];
  const sides = here.given.has('sides') ? [] : ['covered, then trimmed'];
  const { inside, cover, byArea, straightWhole, straightHalf, rowCount } = layout;
  const title = `Hexagons, ${say.plain(edge)} side, for ${say.size(quilt.width, quilt.height)}`;
  const { width, height } = quilt;
  return reply({
    title,
    lines: [
      firstLine(made),
      `${many(rowCount, 'row', 'rows')} ${layout.patches.rows === 'across' ? 'across, points up' : 'down, flats up'}.`,
      ...layoutLines(made, here),
    ],
    table: byCloths?.table ?? { columns: ['sides', 'hexagons'], rows: otherSides(layout) },
    figures: {
      ...layoutFigures(made),
      inside: count(inside),
      cover: count(cover),
      byArea: count(byArea),
      straightWhole: count(straightWhole),
      straightHalf: count(straightHalf),
      rows: count(rowCount),
      ...(counted.byRole.trimmed ? { trimmed: count(counted.byRole.trimmed) } : {}),
      ...byCloths?.figures,
    },
    notes: assumedNote([...bed, ...assumed, ...sides]),
    cautions: isInfantBed(quilt.bed) ? cribCaution() : [],
    choices,
    pictures: [
      layoutPicture(
        {
          ...{ title, made, called: ROLES },
          ask: {
            ...{ layout: 'field', width, height, edge, rows: told.rows, sides: layout.sides },
            ...inTheCloths(colours),
          },
        },
        here,
      ),
    ],
  });
}

const ROLES = { whole: 'whole', trimmed: 'trimmed', half: 'halves' };

function firstLine({ layout, counted }: Counted<Field>): string {
  const { whole = 0, trimmed = 0, half = 0 } = counted.byRole;
  if (layout.sides === 'straight')
    return `${many(whole, 'hexagon', 'hexagons')} and ${many(half, 'half', 'halves')}.`;
  if (layout.sides === 'whole') return `${many(whole, 'whole hexagon', 'whole hexagons')} inside.`;
  return `${many(counted.total, 'hexagon', 'hexagons')}; ${grouped(trimmed)} of them are trimmed.`;
}

function otherSides({ inside, cover, straightWhole, straightHalf, byArea }: Field): string[][] {
  return [
    ['whole inside', grouped(inside)],
    ['cover, then trim', grouped(cover)],
    ['straight', `${grouped(straightWhole)} and ${grouped(straightHalf)} halves`],
    ['by area, a check', grouped(byArea)],
  ];
}

/** Row by row in the cloths' turn; half-hexagons at straight sides are counted by themselves. */
function rowCloths({ patches }: Field, colours: readonly string[]) {
  const { wholes, halves } = byRow(patches);
  const [whole, half] = [byCloth(wholes, colours), byCloth(halves, colours)];
  const hasHalves = half.some(({ pieces }) => pieces > 0);
  return {
    table: {
      columns: ['cloth', hasHalves ? 'hexagons and halves' : 'hexagons', 'rows'],
      rows: whole.map(({ name, pieces, places }, i) => [
        name,
        hasHalves ? `${grouped(pieces)} and ${grouped(half[i]?.pieces ?? 0)}` : grouped(pieces),
        placeWords(places, (place) => String(place + 1)),
      ]),
    },
    figures: {
      ...clothFigures(whole),
      ...(hasHalves ? halfFigures(half) : {}),
    },
  };
}

const halfFigures = (half: readonly Cloth[]): Reply['figures'] =>
  Object.fromEntries(half.map(({ pieces }, i) => [`cloth${i + 1}Halves`, count(pieces)]));
