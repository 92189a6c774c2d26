import { type Arrangement, howMany } from '../src/calculator/layouts/arrangement.ts';
import { field } from '../src/calculator/layouts/field.ts';
import { garden, type Path } from '../src/calculator/layouts/garden.ts';
import { gardenWithDiamonds } from '../src/calculator/layouts/garden-with-diamonds.ts';
import type { Layout } from '../src/calculator/layouts/layout.ts';
import { rosette } from '../src/calculator/layouts/rosette.ts';
import { star } from '../src/calculator/layouts/star.ts';
import { alsoNamed, type Option, otherwise, type Values } from '../src/chat/option.ts';
import { choice, size as sizeKind, whole, yesNo } from '../src/chat/option-kinds.ts';
import { type Blocks, blocksWords, sharedBlocks, sharedLayout } from '../src/guild/block-shares.ts';
import type { Undated } from '../src/guild/schedule.ts';
import { ok, type Result, wrong } from '../src/measure/result.ts';
import type { Speech } from '../src/measure/speech.ts';
import { arrangement } from './arrangement.ts';

const ITEM =
  /^\s*(?:(\d{1,3})\s*x?\s+)?(rosette|flower|star|block)s?(?:\s+(\d{1,2}))?(?:\s*(?:rounds?|a side))?\s*(?:x\s*(\d{1,3}))?\s*$/i;
const MOST_ROUNDS = 40;

/** Blocks to be sewn, each a whole: `rosette 3 x4, star 4 x2, block x10`. */
const listOption: Option<readonly Blocks[], false> = {
  kind: 'list of blocks',
  summary: 'Whole blocks to share out',
  example: 'rosette 3 x4, star 4 x2',
  bounds: 'rosette and its rounds, star and its side, block; x and how many',
  shape: { as: 'words', longest: 200 },
  greedy: true,
  take(text) {
    const blocks: Blocks[] = [];
    for (const part of text.split(/\s*[,;+]\s*|\s+and\s+/)) {
      const found = ITEM.exec(part);
      if (!found) return wrong('list-unread', { got: part });
      const [, before, named = '', rounds = '1', after] = found;
      const counting = named.toLowerCase().replace('flower', 'rosette') as Blocks['counting'];
      const count = Number(before ?? after ?? 1);
      if (count < 1 || Number(rounds) < 1 || Number(rounds) > MOST_ROUNDS)
        return wrong('list-unread', { got: part });
      blocks.push({ counting, rounds: counting === 'block' ? 0 : Number(rounds), count });
    }
    return ok({ value: blocks, rest: '' });
  },
  write: (blocks) =>
    blocks
      .map(({ counting, rounds, count }) => `${counting}${rounds > 0 ? ` ${rounds}` : ''} x${count}`)
      .join(', '),
};

/** What is shared out: one of these. */
export const sharedOptions = {
  field: sizeKind('A field of hexagons to cover a quilt of this size'),
  rosettes: alsoNamed(arrangement('A garden of so many rosettes'), 'flowers', 'garden'),
  rounds: otherwise(alsoNamed(whole('Rounds of each rosette of a garden', 0, MOST_ROUNDS, '2'), 'round'), 1),
  path: otherwise(
    choice('What lies between the rosettes', [
      { name: 'one', title: 'one path, shared', words: ['shared', 'yes'] },
      { name: 'none', title: 'nothing', words: ['no'] },
      { name: 'own', title: 'a path to each', words: ['double'] },
      { name: 'diamonds', title: 'diamonds and triangles' },
    ]),
    'one',
  ),
  outer: otherwise(yesNo('Whether the path runs round the outside too'), false),
  rosette: whole('One large rosette of so many rounds', 1, 100, '8'),
  star: whole('One large star of diamonds, so many a side', 1, 90, '9'),
  list: listOption,
};

export type SharedValues = Values<typeof sharedOptions>;

/** What is shared out, in words, and its shares in order. */
export interface Shared {
  readonly words: string;
  readonly blocks: readonly Undated[];
}

const WAYS = ['field', 'rosettes', 'rosette', 'star', 'list'] as const;

/** Shares out what was named, in so many parts of equal seam. `size` is the side of a patch in inches. */
export function sharedOut(values: SharedValues, size: number, parts: number, say: Speech): Result<Shared> {
  const said = WAYS.filter((way) => values[way] !== undefined);
  if (said.length > 1) return wrong('one-of-these', { got: said.join(', ') });
  if (values.list) {
    const blocks = sharedBlocks(values.list, size, parts);
    return blocks.ok ? ok({ words: values.list.map(blocksWords).join(', '), blocks: blocks.value }) : blocks;
  }
  const named = layoutNamed(values, size, say);
  if (!named) return wrong('what-to-share');
  if (!named.made.ok) return named.made;
  const blocks = sharedLayout(named.made.value, size, parts);
  return blocks.ok ? ok({ words: named.words, blocks: blocks.value }) : blocks;
}

interface Named {
  readonly words: string;
  readonly made: Result<Layout>;
}

function layoutNamed(values: SharedValues, size: number, say: Speech): Named | null {
  if (values.field) {
    const { width, height } = values.field;
    const made = field({ width, height, edge: size, rows: 'across', sides: 'cover' });
    return { words: `a field of hexagons for ${say.size(width, height)}`, made };
  }
  if (values.rosettes) return gardenNamed(values.rosettes, values);
  if (values.rosette !== undefined)
    return { words: `a rosette of ${values.rosette} rounds`, made: rosette(values.rosette) };
  if (values.star !== undefined) return { words: `a star, ${values.star} a side`, made: star(values.star) };
  return null;
}

const BETWEEN: Readonly<Record<Path | 'diamonds', string>> = {
  none: 'no path',
  one: 'one path',
  own: 'a path to each',
  diamonds: 'diamonds between',
};

function gardenNamed(rosettes: Arrangement, { rounds, path, outer }: SharedValues): Named {
  const words = `a garden of ${howMany(rosettes)} rosettes, ${rounds} ${rounds === 1 ? 'round' : 'rounds'}, ${BETWEEN[path]}${outer ? ', outside too' : ''}`;
  const made =
    path === 'diamonds'
      ? gardenWithDiamonds({ arrangement: rosettes, rounds, outer })
      : garden({ arrangement: rosettes, rounds, path, outer });
  return { words, made };
}
