import type { Arrangement } from '../src/calculator/layouts/arrangement.ts';
import { type Garden, garden, type Path } from '../src/calculator/layouts/garden.ts';
import { type DiamondGarden, gardenWithDiamonds } from '../src/calculator/layouts/garden-with-diamonds.ts';
import { form, type Here } from '../src/chat/command.ts';
import { alsoNamed, bare, otherwise } from '../src/chat/option.ts';
import { choice, whole, yesNo } from '../src/chat/option-kinds.ts';
import { count, type Reply, reply } from '../src/chat/reply.ts';
import { wrong } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';
import { many } from '../src/measure/speech.ts';
import { arrangement } from './arrangement.ts';
import { assumedNote } from './assumed.ts';
import { clothFigures, clothTable, coloured, coloursOption, inTheCloths, roundAbout } from './colours.ts';
import { manyWords } from './count-field.ts';
import { gardenCloths, gardenFor } from './count-wish.ts';
import { rosetteFor } from './count-wish-grown.ts';
import { layoutFigures, layoutLines, PATH_WORDS, roleRows } from './count-words.ts';
import { askedEdge, hexagonEdge, loneNumber, orElse } from './edge.ts';
import { type Counted, countedFrom, countRosette } from './layouts.ts';
import { layoutPicture } from './pictures.ts';
import { quiltOption } from './wish.ts';

export const rosetteForm = form({
  name: 'rosette',
  summary: 'One rosette: a centre and rounds of hexagons about it',
  examples: [
    '/count rosette rounds:3',
    '/count rosette 2 rounds 3/4in',
    '/count rosette rounds:5 colours:red,blue,white',
    '/count rosette quilt:60x72in',
  ],
  options: {
    rounds: otherwise(alsoNamed(whole('Rounds about the centre', 0, 576, '3'), 'round'), 1),
    ...hexagonEdge,
    quilt: quiltOption,
    colours: coloursOption,
  },
  run(values, here) {
    const asked = askedEdge(values, here, 'hexagon');
    if ('asks' in asked) return orRounds(asked.asks, values, here);
    if (!asked.ok) return asked;
    const { quilt, colours } = values;
    if (quilt && here.given.has('rounds')) return wrong('one-of-these', { got: 'rounds, quilt' });
    if (quilt) return rosetteFor(colours, { quilt, here, ...asked.value, size: values });
    const made = countRosette(values.rounds, asked.value.edge);
    if (!made.ok) return manyWords(made);
    const { layout, counted, edge } = made.value;
    const assumed = [...(here.given.has('rounds') ? [] : ['1 round']), ...asked.value.assumed];
    const cloths = coloured(layout.rounds, colours);
    const title = `Rosette, ${many(values.rounds, 'round', 'rounds')}, ${here.say.plain(edge)} side`;
    const ask = { layout: 'rosette', rounds: values.rounds, ...inTheCloths(colours) } as const;
    return reply({
      title,
      lines: [
        `${many(counted.total, 'hexagon', 'hexagons')}${values.rounds > 0 ? `: ${roundWords(layout.rounds)}` : ''}.`,
        ...layoutLines(made.value, here),
      ],
      table: clothTable(cloths, 'hexagons', { called: 'rounds', name: roundAbout }),
      figures: {
        ...layoutFigures(made.value),
        rounds: count(layout.rounds),
        ...clothFigures(cloths),
      },
      notes: assumedNote(assumed),
      choices: asked.value.otherwise,
      pictures: [layoutPicture({ title, made: made.value, ask }, here)],
    });
  },
});

/** "/count rosette 3" may say how many rounds. */
export function orRounds(asks: Reply, values: { readonly size?: number }, here: Here): Reply {
  const rounds = here.given.has('rounds') || here.given.has('quilt') ? null : loneNumber(values, here);
  return rounds === null
    ? asks
    : orElse(asks, here.again({ size: null, rounds }), many(rounds, 'round', 'rounds'));
}

const FEW = 8;

/** The pieces of each round: "1 + 6 + 12"; of many rounds the first and the last. */
export function roundWords(rounds: readonly number[]): string {
  if (rounds.length <= FEW) return rounds.map(grouped).join(' + ');
  return `${rounds.slice(0, 3).map(grouped).join(' + ')} + … + ${grouped(rounds.at(-1) ?? 0)}`;
}

const pathChoice = choice('What lies between the rosettes', [
  { name: 'none', title: 'nothing', words: ['no', 'no path', 'interlocked'] },
  { name: 'one', title: 'one path, shared', words: ['shared', 'single', 'one path', 'shared path', 'yes'] },
  { name: 'own', title: 'a path to each', words: ['double', 'own path', 'each'] },
  { name: 'diamonds', title: 'diamonds and triangles', words: ['diamond'] },
]);

export const gardenForm = form({
  name: 'garden',
  summary: 'Rosettes set together: with no path, one shared, one each, or diamonds between',
  examples: [
    '/count garden rosettes:7 rounds:2 path:one outer:yes',
    '/count garden 6x5 rosettes 2 rounds 3/4in',
    '/count garden 1+6+12 rounds:1 path:diamonds',
    '/count garden quilt:60x72in rounds:2 colours:yellow,red,pink',
  ],
  options: {
    rosettes: otherwise(
      bare(alsoNamed(arrangement('How many rosettes, in rings or in rows'), 'rosette', 'flowers')),
      { kind: 'rings', rings: 1 },
    ),
    rounds: otherwise(alsoNamed(whole('Rounds of each rosette', 0, 500, '2'), 'round'), 1),
    path: otherwise(pathChoice, 'one'),
    outer: otherwise(yesNo('Whether the path runs round the outside too'), false),
    ...hexagonEdge,
    quilt: quiltOption,
    colours: coloursOption,
  },
  run(values, here) {
    const asked = askedEdge(values, here, 'hexagon');
    if ('asks' in asked) return asked.asks;
    if (!asked.ok) return asked;
    const { rosettes, rounds, path, outer, quilt, colours } = values;
    const { edge } = asked.value;
    if (quilt && here.given.has('rosettes')) return wrong('one-of-these', { got: 'rosettes, quilt' });
    const assumed = [...taken(here), ...asked.value.assumed].filter(
      (one) => !quilt || one !== ASSUMED.rosettes,
    );
    if (quilt) {
      const said = assumed.map((one) =>
        path === 'diamonds' ? one.replace(ASSUMED.outer ?? '', VALLEYS) : one,
      );
      return gardenFor(
        { rounds, path, outer, colours },
        { ...asked.value, quilt, here, size: values, assumed: said },
      );
    }
    const told = { here, assumed, otherwise: asked.value.otherwise, rosettes, rounds, outer, colours };
    if (path === 'diamonds') {
      const made = countedFrom(gardenWithDiamonds({ arrangement: rosettes, rounds, outer }), edge);
      return made.ok ? withDiamonds(made.value, told) : manyWords(made);
    }
    const made = countedFrom(garden({ arrangement: rosettes, rounds, path, outer }), edge);
    return made.ok ? withPath(made.value, path, told) : manyWords(made);
  },
});

const ASSUMED: Readonly<Record<string, string>> = {
  rosettes: '7 rosettes',
  rounds: '1 round each',
  path: 'one path, shared',
  outer: 'no path round the outside',
};

/** Where diamonds lie between the rosettes, the outside has valleys and no path. */
const VALLEYS = 'outer valleys open';

const taken = ({ given }: Here): string[] =>
  Object.entries(ASSUMED).flatMap(([name, words]) => (given.has(name) ? [] : [words]));

interface Told {
  readonly here: Here;
  readonly assumed: readonly string[];
  readonly otherwise: Reply['choices'];
  readonly rosettes: Arrangement;
  readonly rounds: number;
  readonly outer: boolean;
  readonly colours: readonly string[] | undefined;
}

function gardenTitle({ rosettes, rounds, here }: Told, number: number, edge: number, path: string): string {
  const stand = rosettes.kind === 'rows' ? ` in ${rosettes.rows} rows of ${rosettes.perRow}` : '';
  return `${many(number, 'rosette', 'rosettes')}${stand}, ${many(rounds, 'round', 'rounds')}, ${path}, ${here.say.plain(edge)} side`;
}

function withPath(made: Counted<Garden>, path: Path, told: Told): Reply {
  const { layout, counted, edge } = made;
  const { centre = 0, petal = 0, path: laid = 0 } = counted.byRole;
  const outside = path === 'own' || told.outer ? '' : ', none round the outside';
  const title = gardenTitle(told, layout.rosettes, edge, PATH_WORDS[path]);
  const called = { centre: 'centres', petal: 'rounds', path: 'path' };
  const { rosettes: arrangement, rounds, outer } = told;
  const ask = { layout: 'garden', arrangement, rounds, path, outer, ...inTheCloths(told.colours) } as const;
  return reply({
    title,
    lines: [
      `${many(counted.total, 'hexagon', 'hexagons')}${path === 'one' ? `, the path ${grouped(laid)}${outside}` : ''}.`,
      ...layoutLines(made, told.here),
    ],
    table: clothTable(
      gardenCloths(told, layout.rosettes),
      'hexagons',
      { called: 'rounds', name: roundAbout },
      roleRows(made, { path: 'path' }),
    ) ?? {
      columns: ['for', 'hexagons'],
      rows: roleRows(made, called),
    },
    figures: {
      ...layoutFigures(made),
      ...clothFigures(gardenCloths(told, layout.rosettes)),
      rosettes: count(layout.rosettes),
      centres: count(centre),
      petals: count(petal),
      path: count(laid),
      pathPerRosette: count(layout.pathPerRosette),
    },
    notes: assumedNote(told.assumed.filter((one) => path === 'one' || !one.includes('outside'))),
    choices: told.otherwise,
    pictures: [layoutPicture({ title, made, ask, called }, told.here)],
  });
}

function withDiamonds(made: Counted<DiamondGarden>, told: Told): Reply {
  const { layout, counted, edge } = made;
  const { centre = 0, petal = 0, diamond = 0, triangle = 0 } = counted.byRole;
  const title = gardenTitle(told, layout.rosettes, edge, 'set with diamonds');
  const called = {
    centre: 'centres',
    petal: 'rounds',
    diamond: 'diamonds between',
    triangle: 'triangles between',
  };
  const { rosettes: arrangement, rounds, outer } = told;
  const ask = {
    layout: 'garden with diamonds' as const,
    ...{ arrangement, rounds, outer },
    ...inTheCloths(told.colours),
  };
  return reply({
    title,
    lines: [
      `${many(centre + petal, 'hexagon', 'hexagons')}, ${many(diamond, 'diamond', 'diamonds')}, ${many(triangle, 'triangle', 'triangles')}.`,
      ...layoutLines(made, told.here),
    ],
    table: clothTable(
      gardenCloths(told, layout.rosettes),
      'patches',
      { called: 'rounds', name: roundAbout },
      roleRows(made, { diamond: 'diamonds', triangle: 'triangles' }),
    ) ?? {
      columns: ['for', 'patches'],
      rows: roleRows(made, called),
    },
    figures: {
      ...layoutFigures(made),
      ...clothFigures(gardenCloths(told, layout.rosettes)),
      rosettes: count(layout.rosettes),
      centres: count(centre),
      petals: count(petal),
      diamonds: count(diamond),
      triangles: count(triangle),
    },
    notes: assumedNote(told.assumed.map((one) => one.replace(ASSUMED.outer ?? '', VALLEYS))),
    choices: told.otherwise,
    pictures: [layoutPicture({ title, made, ask, called }, told.here)],
  });
}
