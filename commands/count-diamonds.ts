import type { Arrangement } from '../src/calculator/layouts/arrangement.ts';
import { type Stars, stars } from '../src/calculator/layouts/stars.ts';
import { form, type Here } from '../src/chat/command.ts';
import { alsoNamed, bare, otherwise } from '../src/chat/option.ts';
import { choice, whole } from '../src/chat/option-kinds.ts';
import { count, inches, reply } from '../src/chat/reply.ts';
import { wrong } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';
import { many } from '../src/measure/speech.ts';
import { arrangement } from './arrangement.ts';
import { assumedNote } from './assumed.ts';
import {
  clothFigures,
  clothTable,
  coloured,
  coloursOption,
  inTheCloths,
  roundAbout,
  roundOf,
  shadeCloths,
  shadeTable,
  starCloths,
  starsInTurn,
  starTable,
} from './colours.ts';
import { manyWords } from './count-field.ts';
import { orRounds, roundWords } from './count-rosettes.ts';
import { starsFor } from './count-wish.ts';
import { blocksFor, diamondsFor, starFor } from './count-wish-grown.ts';
import { layoutFigures, layoutLines } from './count-words.ts';
import { askedEdge, diamondEdge, edgeOptions, loneNumber } from './edge.ts';
import {
  BLOCK_SEAMS,
  type Counted,
  countBlocks,
  countBlocksApart,
  countDiamonds,
  countedFrom,
  countStar,
} from './layouts.ts';
import { layoutPicture } from './pictures.ts';
import { quiltOption } from './wish.ts';

const side = (summary: string, most: number) => whole(summary, 1, most, '4');

const SIDE_MISSING = {
  option: 'side',
  example: '4',
  summary: 'diamonds along each side of a point, or quilt: how large to make it',
};

export const starForm = form({
  name: 'star',
  summary: 'A six-point star of 60° diamonds',
  examples: [
    '/count star side:4',
    '/count star 3 side 1 1/2in colours:red,white',
    '/count star quilt:60x72in',
  ],
  options: {
    side: side('Diamonds along each side of a point', 408),
    ...diamondEdge,
    quilt: quiltOption,
    colours: coloursOption,
  },
  run(values, here) {
    const { quilt, colours, side: along = 0 } = values;
    if (quilt && along > 0) return wrong('one-of-these', { got: 'side, quilt' });
    if (!quilt && along === 0) {
      const meant = loneNumber(values, here);
      const instead = meant === null ? {} : { instead: here.again({ size: null, side: meant }) };
      return wrong('option-missing', { ...SIDE_MISSING, ...instead });
    }
    const asked = askedEdge(values, here, 'diamond');
    if ('asks' in asked) return asked.asks;
    if (!asked.ok) return asked;
    if (quilt) return starFor(colours, { quilt, here, ...asked.value, size: values });
    const made = countStar(along, asked.value.edge);
    if (!made.ok) return manyWords(made);
    const { layout, counted, edge } = made.value;
    const cloths = coloured(layout.rounds, colours);
    const title = `Star, ${along} a side, ${here.say.plain(edge)} diamonds`;
    const ask = { layout: 'star', side: along, ...inTheCloths(colours) } as const;
    return reply({
      title,
      lines: [
        `${many(counted.total, 'diamond', 'diamonds')}, ${grouped(layout.perPoint)} to each of 6 points.`,
        `By rounds: ${roundWords(layout.rounds)}.`,
        ...layoutLines(made.value, here),
      ],
      figures: {
        ...layoutFigures(made.value),
        perPoint: count(layout.perPoint),
        rounds: count(layout.rounds),
        ...clothFigures(cloths),
      },
      table: clothTable(cloths, 'diamonds', { called: 'rounds', name: roundOf }),
      notes: assumedNote(asked.value.assumed),
      choices: asked.value.otherwise,
      pictures: [layoutPicture({ title, made: made.value, ask }, here)],
    });
  },
});

const OUTER = [
  { name: 'no', title: 'open', words: ['n', 'open', 'without', 'none', 'false'] },
  { name: 'yes', title: 'filled', words: ['y', 'filled', 'with', 'true'] },
  { name: 'straight', title: 'a straight edge', words: ['straight edge', 'complete', 'completed'] },
] as const;

const EDGE = { no: 'open', yes: 'notches', straight: 'straight' } as const;

const SEVEN = '7 stars';

const starsAssumed = ({ given }: Here): string[] => [
  ...(given.has('stars') ? [] : [SEVEN]),
  ...(given.has('set') ? [] : ['set with diamonds']),
  ...(given.has('outer') ? [] : ['outer notches open']),
];

/** Rings of stars completed fill a hexagon; rows are straight along two sides only. */
function straightWords(
  { counted, edge }: Counted<Stars>,
  standing: Arrangement,
  outer: keyof typeof EDGE,
  { say }: Here,
): string[] {
  if (outer !== 'straight') return [];
  return standing.kind === 'rings'
    ? [`They fill a hexagon of ${say.plain((counted.outline / 6) * edge)} a side.`]
    : ['The outsides of the first and last row are straight, the row ends stepped.'];
}

export const starsForm = form({
  name: 'stars',
  summary: 'Six-point stars set together, with diamonds or hexagons between',
  examples: [
    '/count stars stars:7 set:hexagons',
    '/count stars 7 set:diamonds outer:straight',
    '/count stars quilt:60x72in set:hexagons',
    '/count stars 7 set:hexagons colours:yellow,red,blue',
  ],
  options: {
    stars: otherwise(bare(alsoNamed(arrangement('How many stars, in rings or in rows'), 'star')), {
      kind: 'rings',
      rings: 1,
    }),
    set: otherwise(
      bare(
        choice('What lies between the stars', [
          { name: 'diamonds', title: 'diamonds, tips shared', words: ['diamond'] },
          { name: 'hexagons', title: 'hexagons, tip to tip', words: ['hexagon'] },
        ]),
      ),
      'diamonds',
    ),
    outer: otherwise(
      choice(
        'Whether the outer notches are filled: no, yes, or with a straight edge (set with diamonds)',
        OUTER,
      ),
      'no',
    ),
    ...edgeOptions,
    quilt: quiltOption,
    colours: coloursOption,
  },
  run(values, here) {
    const asked = askedEdge(values, here, 'diamond');
    if ('asks' in asked) return asked.asks;
    if (!asked.ok) return asked;
    const { stars: standing, set, outer, quilt, colours } = values;
    if (outer === 'straight' && set === 'hexagons') return wrong('straight-with-diamonds');
    if (quilt && here.given.has('stars')) return wrong('one-of-these', { got: 'stars, quilt' });
    if (quilt) {
      const assumed = [...starsAssumed(here), ...asked.value.assumed].filter((one) => one !== SEVEN);
      return starsFor(
        { set, edge: EDGE[outer], colours },
        { ...asked.value, quilt, here, size: values, assumed },
      );
    }
    const standingAs = { arrangement: standing, set, edge: EDGE[outer] } as const;
    const made = countedFrom(stars(standingAs), asked.value.edge);
    if (!made.ok) return manyWords(made);
    const { layout, counted, edge } = made.value;
    const { star = 0, between = 0, triangle = 0 } = counted.byRole;
    const edging = triangle > 0 ? `, ${many(triangle, 'triangle', 'triangles')} at the edge` : '';
    const title = `${many(layout.stars, 'star', 'stars')} set with ${set}, ${here.say.plain(edge)} side`;
    const ask = { layout: 'stars', ...standingAs, ...inTheCloths(colours) } as const;
    const cloths = starCloths(layout.stars, colours);
    const called = { star: 'in stars', between: `${set} between`, triangle: 'triangles at the edge' };
    return reply({
      title,
      lines: [
        `${many(star, 'diamond', 'diamonds')} in stars, ${grouped(between)} ${set} between${edging}.`,
        ...straightWords(made.value, standing, outer, here),
        ...layoutLines(made.value, here),
      ],
      figures: {
        ...layoutFigures(made.value),
        stars: count(layout.stars),
        diamonds: count(star),
        between: count(between),
        betweenPerStar: count(layout.betweenPerStar),
        ...(outer === 'straight' ? { triangles: count(triangle) } : {}),
        ...clothFigures(cloths),
      },
      table: starTable(cloths, { [called.between]: between, [called.triangle]: triangle }),
      notes: [
        ...starsInTurn(standing, cloths),
        ...assumedNote([...starsAssumed(here), ...asked.value.assumed]),
      ],
      choices: asked.value.otherwise,
      pictures: [layoutPicture({ title, made: made.value, ask, called }, here)],
    });
  },
});

export const diamondsForm = form({
  name: 'diamonds',
  summary: 'A large diamond of small ones, grown from one or from four',
  examples: [
    '/count diamonds from:4 rounds:3',
    '/count diamonds from 1 2 rounds 2in colours:red,white',
    '/count diamonds quilt:60x72in',
  ],
  options: {
    from: otherwise(
      choice('How many diamonds the centre is of', [
        { name: '1', title: 'one' },
        { name: '4', title: 'four', words: ['four'] },
      ]),
      '1',
    ),
    rounds: otherwise(alsoNamed(whole('Rounds added about the centre', 0, 499, '3'), 'round'), 1),
    ...diamondEdge,
    quilt: quiltOption,
    colours: coloursOption,
  },
  run(values, here) {
    const asked = askedEdge(values, here, 'diamond');
    if ('asks' in asked) return orRounds(asked.asks, values, here);
    if (!asked.ok) return asked;
    const { quilt, colours } = values;
    const from = values.from === '4' ? 4 : 1;
    const centre = here.given.has('from') ? [] : ['one in the centre'];
    if (quilt && here.given.has('rounds')) return wrong('one-of-these', { got: 'rounds, quilt' });
    if (quilt) {
      const assumed = [...centre, ...asked.value.assumed];
      return diamondsFor(from, colours, { ...asked.value, quilt, here, size: values, assumed });
    }
    const made = countDiamonds(from, values.rounds, asked.value.edge);
    if (!made.ok) return manyWords(made);
    const { layout, counted, edge } = made.value;
    const cloths = coloured(layout.rounds, colours);
    const assumed = [...centre, ...(here.given.has('rounds') ? [] : ['1 round']), ...asked.value.assumed];
    const title = `Diamond field, ${layout.side} a side, ${here.say.plain(edge)} diamonds`;
    const ask = { layout: 'diamonds', from, rounds: values.rounds, ...inTheCloths(colours) } as const;
    return reply({
      title,
      lines: [
        `${many(counted.total, 'diamond', 'diamonds')}: ${roundWords(layout.rounds)}.`,
        ...layoutLines(made.value, here),
      ],
      table: clothTable(cloths, 'diamonds', { called: 'rounds', name: roundAbout }),
      figures: { ...layoutFigures(made.value), rounds: count(layout.rounds), ...clothFigures(cloths) },
      notes: assumedNote(assumed),
      choices: asked.value.otherwise,
      pictures: [layoutPicture({ title, made: made.value, ask }, here)],
    });
  },
});

export const blocksForm = form({
  name: 'blocks',
  summary: 'Three-shade blocks of diamonds: a hexagon of them by its side, or so many by number',
  examples: [
    '/count blocks side:5',
    '/count blocks 100 blocks 1 1/2in',
    '/count blocks quilt:60x72in',
    '/count blocks side:5 colours:white,grey,navy',
  ],
  options: {
    side: side('Diamonds along each side of a hexagon of them', 577),
    blocks: bare(alsoNamed(whole('So many blocks of three', 1, 333_333, '100'), 'block')),
    ...diamondEdge,
    quilt: quiltOption,
    colours: coloursOption,
  },
  run(values, here) {
    const asked = askedEdge(values, here, 'diamond');
    if ('asks' in asked) return asked.asks;
    if (!asked.ok) return asked;
    const { side: along, blocks, quilt, colours } = values;
    const said = Object.entries({ side: along, blocks, quilt }).filter(([, value]) => value !== undefined);
    if (said.length > 1) return wrong('one-of-these', { got: said.map(([name]) => name).join(', ') });
    if (quilt) return blocksFor(colours, { quilt, here, ...asked.value, size: values });
    if (along === undefined && blocks === undefined) return wrong('blocks-or-side');
    const { edge, assumed, otherwise: choices } = asked.value;
    const made = along === undefined ? countBlocksApart(blocks ?? 1, edge) : countBlocks(along, edge);
    if (!made.ok) return manyWords(made);
    const { layout, counted } = made.value;
    const inside = layout.blocks * BLOCK_SEAMS;
    const perShade = counted.total / 3;
    const cloths = shadeCloths(perShade, colours);
    if (!cloths.ok) return cloths;
    const joined = along !== undefined;
    const title = joined
      ? `Hexagon of diamonds, ${along} a side, ${here.say.plain(edge)} diamonds`
      : `${many(layout.blocks, 'block', 'blocks')} of three, ${here.say.plain(edge)} diamonds`;
    const ask = joined
      ? ({ layout: 'blocks', side: along, ...inTheCloths(colours) } as const)
      : ({ layout: 'blocks apart', count: layout.blocks, ...inTheCloths(colours) } as const);
    return reply({
      title,
      lines: [
        `${many(counted.total, 'diamond', 'diamonds')}, ${grouped(perShade)} of each of 3 shades.`,
        ...(joined ? layoutLines(made.value, here) : []),
        joined
          ? `Pieces for ${many(layout.blocks, 'block', 'blocks')} of three.`
          : `${grouped(inside)} seams inside the blocks, ${here.say.run(inside * edge)}. Joining them adds more, by how they are set.`,
      ],
      figures: {
        blocks: count(layout.blocks),
        perShade: count(perShade),
        blockSeams: count(inside),
        blockSeamLength: inches(inside * edge),
        ...(joined ? layoutFigures(made.value) : { total: count(counted.total) }),
        ...clothFigures(cloths.value),
      },
      table: shadeTable(cloths.value),
      notes: assumedNote(assumed),
      choices,
      pictures: [layoutPicture({ title, made: made.value, ask }, here)],
    });
  },
});
