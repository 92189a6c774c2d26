import type { Arrangement } from '../src/calculator/layouts/arrangement.ts';
import { alsoNamed, bare, type Option, suggesting, usually } from '../src/chat/option.ts';
import { choice, length, number, percent, size, whole, words, yesNo } from '../src/chat/option-kinds.ts';
import { arrangement } from './arrangement.ts';
import { measureChoices, shapeChoices } from './patch-options.ts';

/** "rosette 2 rounds" says how many rounds one has, not that there are two. */
const notRounds = (of: Option<Arrangement, false>): Option<Arrangement, false> => ({
  ...of,
  take: (text, context) => (/^\d+\s*(?:rounds?|a side|sides?)\b/i.test(text) ? null : of.take(text, context)),
});

/** How a plan is told what to work out: the words of /count, /yardage, /time and /finish. */
export const planOptions = {
  layout: bare(
    choice('How the patches are set', [
      { name: 'field', title: 'a field of hexagons', words: ['all over', 'allover'] },
      { name: 'rosette', title: 'one rosette', words: ['flower'] },
      { name: 'garden', title: 'rosettes set together', words: ['flower garden'] },
      { name: 'star', title: 'one star' },
      { name: 'stars', title: 'stars set together' },
      { name: 'diamonds', title: 'a large diamond', words: ['large diamond'] },
      { name: 'blocks', title: 'three-shade blocks', words: ['tumbling blocks', 'baby blocks'] },
      { name: 'pieces', title: 'loose patches', words: ['loose', 'patches'] },
    ]),
  ),
  shape: bare(choice('The shape of loose patches', shapeChoices)),
  size: usually(bare(length('The finished side of one patch')), '1in, said in the reply'),
  measure: bare(choice('What the size measures', measureChoices.slice(0, 3))),
  quilt: bare(size('The quilt to fill, or that the patches are sewn on')),
  number: alsoNamed(
    whole('So many loose patches, or rosettes or stars not joined', 1, 1_000_000, '240'),
    'pieces',
    'patches',
  ),
  rosettes: notRounds(alsoNamed(arrangement('Rosettes set together, in rings or rows'), 'flowers')),
  stars: notRounds(arrangement('Stars set together, in rings or rows')),
  blocks: whole('So many blocks of three', 1, 333_333, '100'),
  rounds: alsoNamed(whole('Rounds of each rosette', 0, 577, '2'), 'round'),
  path: choice('What lies between the rosettes', [
    { name: 'none', title: 'nothing', words: ['no', 'no path', 'interlocked'] },
    { name: 'one', title: 'one path, shared', words: ['shared', 'single', 'one path', 'shared path', 'yes'] },
    { name: 'own', title: 'a path to each', words: ['double', 'own path', 'each'] },
    { name: 'diamonds', title: 'diamonds and triangles', words: ['diamond'] },
  ]),
  outer: yesNo('Whether the path runs round the outside, or outer notches are filled'),
  set: choice('What lies between the stars', [
    { name: 'diamonds', title: 'diamonds, tips shared', words: ['diamond'] },
    { name: 'hexagons', title: 'hexagons, tip to tip', words: ['hexagon'] },
  ]),
  side: whole('Diamonds along a side: of a star’s point, a diamond, a hexagon of blocks', 1, 577, '4'),
  sides: bare(
    choice('How a field’s sides are ended', [
      { name: 'whole', title: 'whole hexagons inside', words: ['inside', 'whole hexagons'] },
      { name: 'cover', title: 'cover, then trim', words: ['trim', 'trimmed', 'cover and trim'] },
      { name: 'straight', title: 'straight, with half-hexagons', words: ['straight sides', 'halves'] },
    ]),
  ),
  rows: bare(
    choice('Which way a field’s rows run', [
      { name: 'across', title: 'rows across, points up' },
      { name: 'down', title: 'rows down, flats up' },
    ]),
  ),
  cloths: alsoNamed(
    words('The cloth for each part', 400, 'centre yellow, petal scraps, path white'),
    'cloth',
    'fabrics',
    'colours',
    'colors',
  ),
  seam: usually(length('Seam allowance', 0, 2, '1/4in'), 'what /me and /guild keep, or 1/4in'),
  width: usually(length('Usable width of the cloth', 4, 200, '42in'), 'what /me and /guild keep, or 42in'),
  spare: percent('More patches than needed, to be safe', 100, '5%'),
  shrink: percent('How much of its length the cloth loses in the wash', 50, '3%'),
  method: bare(
    choice('How the patches are joined', [
      { name: 'running', title: 'running stitch on a marked line', words: ['running stitch', 'run'] },
      {
        name: 'whip',
        title: 'whipstitch over paper',
        words: ['whipstitch', 'whip stitch', 'over paper', 'papers', 'paper', 'epp'],
      },
    ]),
  ),
  hours: usually(alsoNamed(number('Hours a week', 0.25, 112, '5'), 'hour'), 'what /me keeps, or 5'),
  border: length('How wide a border finishes; 0in for none', 0, 40, '3in'),
};

export const nameOption = words('What the plan is called', 60, 'Spring garden');

/** The name of a plan that is kept. */
export const keptNameOption = suggesting(nameOption, async ({ facts, guild }) =>
  (await facts.plans.list(guild)).map(({ name }) => name),
);
