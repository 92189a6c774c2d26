import { stars } from '../src/calculator/layouts/stars.ts';
import { form } from '../src/chat/command.ts';
import { alsoNamed, bare, otherwise, required } from '../src/chat/option.ts';
import { choice, whole, yesNo } from '../src/chat/option-kinds.ts';
import { count, inches, reply } from '../src/chat/reply.ts';
import { wrong } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';
import { many } from '../src/measure/speech.ts';
import { arrangement } from './arrangement.ts';
import { manyWords } from './count-field.ts';
import { roundWords } from './count-rosettes.ts';
import { layoutFigures, layoutLines } from './count-words.ts';
import { askedEdge, diamondEdge, edgeOptions } from './edge.ts';
import {
  BLOCK_SEAMS,
  countBlocks,
  countBlocksApart,
  countDiamonds,
  countedFrom,
  countStar,
} from './layouts.ts';
import { assumedNote } from './patch.ts';
import { layoutPicture } from './pictures.ts';

const side = (summary: string, most: number) => whole(summary, 1, most, '4');

export const starForm = form({
  name: 'star',
  summary: 'A six-point star of 60° diamonds',
  examples: ['/count star side:4', '/count star 3 side 1 1/2in'],
  options: { side: required(side('Diamonds along each side of a point', 408)), ...diamondEdge },
  run(values, here) {
    const asked = askedEdge(values, here, 'diamond');
    if ('asks' in asked) return asked.asks;
    if (!asked.ok) return asked;
    const made = countStar(values.side, asked.value.edge);
    if (!made.ok) return manyWords(made);
    const { layout, counted, edge } = made.value;
    const title = `Star, ${values.side} a side, ${here.say.plain(edge)} diamonds`;
    const ask = { layout: 'star', side: values.side } as const;
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
      },
      notes: assumedNote(asked.value.assumed),
      choices: asked.value.otherwise,
      pictures: [layoutPicture({ title, made: made.value, ask }, here)],
    });
  },
});

export const starsForm = form({
  name: 'stars',
  summary: 'Six-point stars set together, with diamonds or hexagons between',
  examples: ['/count stars stars:7 set:hexagons', '/count stars 7 set:diamonds outer:yes'],
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
    outer: otherwise(yesNo('Whether the notches on the outside are filled too'), false),
    ...edgeOptions,
  },
  run(values, here) {
    const asked = askedEdge(values, here, 'diamond');
    if ('asks' in asked) return asked.asks;
    if (!asked.ok) return asked;
    const { stars: standing, set, outer } = values;
    const standingAs = { arrangement: standing, set, edge: outer ? 'notches' : 'open' } as const;
    const made = countedFrom(stars(standingAs), asked.value.edge);
    if (!made.ok) return manyWords(made);
    const { layout, counted, edge } = made.value;
    const { star = 0, between = 0 } = counted.byRole;
    const assumed = [
      ...(here.given.has('stars') ? [] : ['7 stars']),
      ...(here.given.has('set') ? [] : ['set with diamonds']),
      ...(here.given.has('outer') ? [] : ['outer notches open']),
    ];
    const title = `${many(layout.stars, 'star', 'stars')} set with ${set}, ${here.say.plain(edge)} side`;
    const ask = { layout: 'stars', ...standingAs } as const;
    const called = { star: 'in stars', between: `${set} between` };
    return reply({
      title,
      lines: [
        `${many(star, 'diamond', 'diamonds')} in stars, ${grouped(between)} ${set} between.`,
        ...layoutLines(made.value, here),
      ],
      figures: {
        ...layoutFigures(made.value),
        stars: count(layout.stars),
        diamonds: count(star),
        between: count(between),
        betweenPerStar: count(layout.betweenPerStar),
      },
      notes: assumedNote([...assumed, ...asked.value.assumed]),
      choices: asked.value.otherwise,
      pictures: [layoutPicture({ title, made: made.value, ask, called }, here)],
    });
  },
});

export const diamondsForm = form({
  name: 'diamonds',
  summary: 'A large diamond of small ones, grown from one or from four',
  examples: ['/count diamonds from:4 rounds:3', '/count diamonds from 1 2 rounds 2in'],
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
  },
  run(values, here) {
    const asked = askedEdge(values, here, 'diamond');
    if ('asks' in asked) return asked.asks;
    if (!asked.ok) return asked;
    const from = values.from === '4' ? 4 : 1;
    const made = countDiamonds(from, values.rounds, asked.value.edge);
    if (!made.ok) return manyWords(made);
    const { layout, counted, edge } = made.value;
    const assumed = [
      ...(here.given.has('from') ? [] : ['one in the centre']),
      ...(here.given.has('rounds') ? [] : ['1 round']),
      ...asked.value.assumed,
    ];
    const title = `Diamond field, ${layout.side} a side, ${here.say.plain(edge)} diamonds`;
    const ask = { layout: 'diamonds', from, rounds: values.rounds } as const;
    return reply({
      title,
      lines: [
        `${many(counted.total, 'diamond', 'diamonds')}: ${roundWords(layout.rounds)}.`,
        ...layoutLines(made.value, here),
      ],
      figures: { ...layoutFigures(made.value), rounds: count(layout.rounds) },
      notes: assumedNote(assumed),
      choices: asked.value.otherwise,
      pictures: [layoutPicture({ title, made: made.value, ask }, here)],
    });
  },
});

export const blocksForm = form({
  name: 'blocks',
  summary: 'Three-shade blocks of diamonds: a hexagon of them by its side, or so many by number',
  examples: ['/count blocks side:5', '/count blocks 100 blocks 1 1/2in'],
  options: {
    side: side('Diamonds along each side of a hexagon of them', 577),
    blocks: bare(alsoNamed(whole('So many blocks of three', 1, 333_333, '100'), 'block')),
    ...diamondEdge,
  },
  run(values, here) {
    const asked = askedEdge(values, here, 'diamond');
    if ('asks' in asked) return asked.asks;
    if (!asked.ok) return asked;
    const { side: along, blocks } = values;
    if (along !== undefined && blocks !== undefined) return wrong('one-of-these', { got: 'side, blocks' });
    if (along === undefined && blocks === undefined) return wrong('blocks-or-side');
    const { edge, assumed, otherwise: choices } = asked.value;
    const made = along === undefined ? countBlocksApart(blocks ?? 1, edge) : countBlocks(along, edge);
    if (!made.ok) return manyWords(made);
    const { layout, counted } = made.value;
    const inside = layout.blocks * BLOCK_SEAMS;
    const perShade = counted.total / 3;
    const joined = along !== undefined;
    const title = joined
      ? `Hexagon of diamonds, ${along} a side, ${here.say.plain(edge)} diamonds`
      : `${many(layout.blocks, 'block', 'blocks')} of three, ${here.say.plain(edge)} diamonds`;
    const ask = joined
      ? ({ layout: 'blocks', side: along } as const)
      : ({ layout: 'blocks apart', count: layout.blocks } as const);
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
      },
      notes: assumedNote(assumed),
      choices,
      pictures: [layoutPicture({ title, made: made.value, ask }, here)],
    });
  },
});
