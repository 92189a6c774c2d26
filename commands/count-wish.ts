import { type Garden, garden, gardenStep, type Path } from '../src/calculator/layouts/garden.ts';
import {
  type DiamondGarden,
  diamondGardenStep,
  gardenWithDiamonds,
} from '../src/calculator/layouts/garden-with-diamonds.ts';
import { turned } from '../src/calculator/layouts/lattice.ts';
import { inRound } from '../src/calculator/layouts/rosette.ts';
import {
  type StarEdge,
  type StarSet,
  type Stars,
  stars,
  starsStep,
} from '../src/calculator/layouts/stars.ts';
import type { Answer } from '../src/chat/command.ts';
import { count, type Figure, type Reply, reply } from '../src/chat/reply.ts';
import { decimal, grouped } from '../src/measure/ruler.ts';
import { many } from '../src/measure/speech.ts';
import type { LayoutAsk } from '../src/pictures/laid.ts';
import { assumedNote } from './assumed.ts';
import {
  clothFigures,
  clothTable,
  coloured,
  inTheCloths,
  roundAbout,
  starCloths,
  starsInTurn,
  starTable,
} from './colours.ts';
import { manyWords } from './count-field.ts';
import { layoutFigures } from './count-words.ts';
import { planChoice } from './plan-choice.ts';
import { bedCaution, bedNote, type Wished } from './wish.ts';
import {
  type StandingWish,
  standingFigures,
  standingLines,
  standingPictures,
  standingRows,
  standingWish,
} from './wish-standing.ts';

/** What every wish's reply says besides its own: the assumptions, and the other readings of a doubtful size. */
export interface Asked extends Wished {
  readonly assumed: readonly string[];
  readonly otherwise: Reply['choices'];
  /** The size of the patches as it was said. */
  readonly size: Parameters<typeof planChoice>[1];
}

type InPlan = Parameters<typeof planChoice>[0];

interface AsWished {
  /** The same layout in the words of a plan; null where a plan has no such layout. */
  readonly plan: InPlan | null;
  readonly notes?: readonly string[];
}

export const asWished = (parts: Partial<Reply>, asked: Asked, { plan, notes = [] }: AsWished): Reply =>
  reply({
    ...parts,
    notes: [...notes, ...assumedNote([...bedNote(asked), ...asked.assumed])],
    cautions: bedCaution(asked),
    choices: [...asked.otherwise, ...(plan ? [planChoice(plan, asked.size)] : [])],
  });

/** "Stars for 60 x 72 in, 1 in side". */
export const forQuilt = ({ quilt, edge, here: { say } }: Asked, what: string): string =>
  `${what} for ${say.size(quilt.width, quilt.height)}, ${say.plain(edge)} side`;

interface GardenWish {
  readonly rounds: number;
  readonly path: Path | 'diamonds';
  readonly outer: boolean;
  readonly colours: readonly string[] | undefined;
}

/** A garden as large as a quilt. */
export const gardenFor = (wish: GardenWish, asked: Asked): Answer =>
  wish.path === 'diamonds'
    ? diamondGardenFor(wish, asked)
    : pathGardenFor({ ...wish, path: wish.path }, asked);

function pathGardenFor(wish: GardenWish & { readonly path: Path }, asked: Asked): Answer {
  const { rounds, path, outer } = wish;
  const found = standingWish<Garden>(
    { step: gardenStep(rounds, path), make: (arrangement) => garden({ arrangement, rounds, path, outer }) },
    asked,
  );
  if (!found.ok) return manyWords(found);
  const { layout, counted } = found.value.cover;
  const { centre = 0, petal = 0, path: laid = 0 } = counted.byRole;
  const told = {
    what: `Rosettes of ${many(rounds, 'round', 'rounds')}`,
    pieces: many(counted.total, 'hexagon', 'hexagons'),
    words: { centre: 'centres', petal: 'rounds', path: 'path' },
    figures: {
      ...{ centres: count(centre), petals: count(petal), path: count(laid) },
      pathPerRosette: count(layout.pathPerRosette),
    },
    notes: leanNote(rounds, path),
    ask: {
      layout: 'garden' as const,
      ...{ arrangement: found.value.found.cover.arrangement, rounds, path, outer },
      ...inTheCloths(wish.colours),
    },
  };
  return gardenReply(wish, found.value, told, asked);
}

function diamondGardenFor(wish: GardenWish, asked: Asked): Answer {
  const { rounds, outer } = wish;
  const found = standingWish<DiamondGarden>(
    {
      step: diamondGardenStep(rounds),
      make: (arrangement) => gardenWithDiamonds({ arrangement, rounds, outer }),
    },
    asked,
  );
  if (!found.ok) return manyWords(found);
  const { centre = 0, petal = 0, diamond = 0, triangle = 0 } = found.value.cover.counted.byRole;
  const told = {
    what: `Rosettes of ${many(rounds, 'round', 'rounds')}, set with diamonds,`,
    pieces: `${many(centre + petal, 'hexagon', 'hexagons')}, ${grouped(diamond)} diamonds, ${grouped(triangle)} triangles`,
    words: {
      ...{ centre: 'centres', petal: 'rounds' },
      ...{ diamond: 'diamonds between', triangle: 'triangles between' },
    },
    figures: {
      ...{ centres: count(centre), petals: count(petal) },
      ...{ diamonds: count(diamond), triangles: count(triangle) },
    },
    notes: [],
    ask: {
      layout: 'garden with diamonds' as const,
      ...{ arrangement: found.value.found.cover.arrangement, rounds, outer },
      ...inTheCloths(wish.colours),
    },
  };
  return gardenReply(wish, found.value, told, asked);
}

interface Told {
  readonly what: string;
  readonly pieces: string;
  /** The roles, as the table names them. */
  readonly words: Readonly<Record<string, string>>;
  readonly figures: Record<string, Figure>;
  readonly notes: readonly string[];
  readonly ask: LayoutAsk;
}

function gardenReply(
  wish: GardenWish,
  found: StandingWish<Garden | DiamondGarden>,
  told: Told,
  asked: Asked,
): Reply {
  const { rosettes } = found.cover.layout;
  const cloths = gardenCloths(wish, rosettes);
  const rows = standingRows(found, told.words);
  const between = Object.values(told.words).slice(2);
  const others = rows
    .filter(([what = '']) => between.includes(what))
    .map(([what = '', cover = '']) => [what, cover]);
  const title = forQuilt(asked, told.what);
  return asWished(
    {
      title,
      lines: standingLines(found, { one: 'rosette', more: 'rosettes' }, told.pieces, asked),
      table: clothTable(cloths, 'patches', { called: 'rounds', name: roundAbout }, others) ?? {
        columns: ['for', 'cover', 'inside'],
        rows,
      },
      figures: {
        ...layoutFigures(found.cover),
        ...standingFigures(found, asked),
        ...{ rosettes: count(rosettes), ...told.figures },
        ...clothFigures(cloths),
      },
      pictures: standingPictures(found, told.ask, title, told.words, asked),
    },
    asked,
    {
      notes: told.notes,
      plan: gardenPlan(wish, asked),
    },
  );
}

const gardenPlan = ({ rounds, path, outer }: GardenWish, { quilt }: Asked): InPlan => ({
  ...{ layout: 'garden', quilt, rounds },
  ...(path === 'one' ? {} : { path }),
  ...(outer ? { outer } : {}),
});

const starsPlan = (set: StarSet, edge: StarEdge, { quilt }: Asked): InPlan | null =>
  edge === 'straight'
    ? null
    : { layout: 'stars', quilt, set, ...(edge === 'notches' ? { outer: true } : {}) };

/** The rounds of all the rosettes together, by cloth. */
export const gardenCloths = (
  { rounds, colours }: { readonly rounds: number; readonly colours: readonly string[] | undefined },
  rosettes: number,
) =>
  coloured(
    Array.from({ length: rounds + 1 }, (_, r) => inRound(r) * rosettes),
    colours,
  );

/** The hexagons' own lines lean where rosettes interlock or have a ring each; the rows are level all the same. */
function leanNote(rounds: number, path: Path): string[] {
  const { u, v } = turned(gardenStep(rounds, path));
  const degrees = (Math.atan2(u / 2 + v, (u * Math.sqrt(3)) / 2) * 180) / Math.PI;
  const lean = Math.abs(degrees - 30 * Math.round(degrees / 30));
  return lean < 0.01 ? [] : [`With the rows level, the hexagons lean by ${decimal(lean, 1)}°.`];
}

interface StarsWish {
  readonly set: StarSet;
  readonly edge: StarEdge;
  readonly colours: readonly string[] | undefined;
}

/** Stars as large as a quilt. */
export function starsFor(wish: StarsWish, asked: Asked): Answer {
  const { set, edge, colours } = wish;
  const found = standingWish<Stars>(
    { step: starsStep(set), make: (arrangement) => stars({ arrangement, set, edge }) },
    asked,
  );
  if (!found.ok) return manyWords(found);
  const { cover } = found.value;
  const { star = 0, between = 0, triangle = 0 } = cover.counted.byRole;
  const edging = triangle > 0 ? `, ${grouped(triangle)} triangles` : '';
  const pieces = `${many(star, 'diamond', 'diamonds')} in stars, ${grouped(between)} ${set} between${edging}`;
  const title = forQuilt(asked, `Stars set with ${set}`);
  const called = { star: 'in stars', between: `${set} between`, triangle: 'triangles' };
  const { arrangement } = found.value.found.cover;
  const ask = { layout: 'stars', arrangement, set, edge, ...inTheCloths(colours) } as const;
  const cloths = starCloths(cover.layout.stars, colours);
  return asWished(
    {
      title,
      lines: standingLines(found.value, { one: 'star', more: 'stars' }, pieces, asked),
      table: starTable(cloths, { [called.between]: between, [called.triangle]: triangle }) ?? {
        columns: ['for', 'cover', 'inside'],
        rows: standingRows(found.value, called),
      },
      figures: {
        ...layoutFigures(cover),
        ...standingFigures(found.value, asked),
        ...{ stars: count(cover.layout.stars), diamonds: count(star), between: count(between) },
        ...{ triangles: count(triangle), betweenPerStar: count(cover.layout.betweenPerStar) },
        ...clothFigures(cloths),
      },
      pictures: standingPictures(found.value, ask, title, called, asked),
    },
    asked,
    { plan: starsPlan(set, edge, asked), notes: starsInTurn(arrangement, cloths) },
  );
}
