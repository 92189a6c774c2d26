import { bestLength } from '../src/calculator/fabric/best-length.ts';
import { type Allotment, allot, type Pile, type Share } from '../src/calculator/fabric/have.ts';
import { purchase } from '../src/calculator/fabric/purchase.ts';
import type { CutPatch } from '../src/calculator/shapes/shape.ts';
import type { Here } from '../src/chat/command.ts';
import type { Option } from '../src/chat/option.ts';
import { count, type Reply, reply, type Table, yards } from '../src/chat/reply.ts';
import { type ClothPile, type RoleCount, readClothList } from '../src/measure/cloth-list.ts';
import { takeClothList } from '../src/measure/cloth-said.ts';
import type { Unit } from '../src/measure/length.ts';
import type { Taken } from '../src/measure/number.ts';
import { ok, type Result, wholeAbove, wrong } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';
import { many, type Speech } from '../src/measure/speech.ts';
import { assumedNote } from './assumed.ts';
import { bought, roundUp } from './bought.ts';
import { bladeCaution } from './cautions.ts';

const LONGEST_LIST = 400;

/** The cloth that she has, in free words. */
export const haveOption: Option<readonly ClothPile[], false> = {
  kind: 'list of cloth',
  summary: 'What cloth you have: what can be cut from it, and what to buy',
  example: '3 fat quarters, 12 5in squares, 1 1/2yd',
  bounds: 'pieces with commas between; each may say what it is for',
  shape: { as: 'words', longest: LONGEST_LIST },
  greedy: true,
  take(text, { unit }) {
    const list = readClothList(text, unit);
    if (!list.ok) return thenMore(text, unit) ?? list;
    const paper = list.value.find(({ cloth }) => cloth.kind === 'paper');
    return paper ? wrong('cloth-unread', { got: paper.words }) : ok({ value: list.value, rest: '' });
  },
  write: (piles) => piles.map(pileWords).join(', '),
};

/** A list that other words follow without a comma: `3 fat quarters, 1yd hexagon 1in`. */
function thenMore(text: string, unit: Unit): Result<Taken<readonly ClothPile[]>> | null {
  const taken = takeClothList(text, unit);
  if (!taken || /^\s*[,;+&]/.test(taken.rest)) return null;
  const list = readClothList(taken.words, unit);
  return list.ok ? ok({ value: list.value, rest: taken.rest }) : null;
}

/** A pile as it can be typed again. */
export function pileWords({ count: pieces, cloth, words, role }: ClothPile): string {
  const many = pieces === 1 ? '' : cloth.kind === 'yardage' ? `${pieces} x ` : `${pieces} `;
  return `${many}${words}${role === '' ? '' : ` for ${role}`}`;
}

interface Stash {
  readonly patch: CutPatch;
  readonly needs: readonly RoleCount[];
  readonly piles: readonly ClothPile[];
  readonly width: number;
  readonly spare: number;
  readonly shrink: number;
  readonly title: string;
  readonly assumed: readonly string[];
  readonly here: Here;
}

/** What can be cut from what she has, and what is to buy; undefined where a patch is wider than the cloth. */
export function haveAnswer(stash: Stash): Reply | undefined {
  const { patch, piles, width, spare, shrink, title, assumed, here } = stash;
  const { say } = here;
  const needs = stash.needs.map((need) => ({
    ...{ role: purposeOf(need), patch },
    pieces: wholeAbove(need.count * (1 + spare)),
  }));
  const allotment = allot(
    piles.map((pile) => pileFrom(pile, keptFor(pile, stash.needs), width)),
    needs,
  );
  const wanting = allotment.missing.flatMap((pieces, at) => {
    if (pieces === 0) return [];
    const length = bestLength(patch, pieces, width)?.length;
    return [
      {
        pieces,
        role: partWords(stash.needs[at]!),
        buy: length === undefined ? undefined : length / (1 - shrink),
      },
    ];
  });
  if (wanting.some(({ buy }) => buy === undefined)) return undefined;
  const all = needs.reduce((sum, { pieces }) => sum + pieces, 0);
  const missing = allotment.missing.reduce((sum, pieces) => sum + pieces, 0);
  const toBuy = wanting.reduce((sum, { buy = 0 }) => sum + purchase(buy, 'yard').amount, 0);
  const rows = [
    ...allotment.shares.map((share) => shareRow(share, stash, say)),
    ...wanting.map(({ pieces, role, buy = 0 }) => [
      `buy ${bought(buy, say)}`,
      grouped(pieces),
      forWords(role, `${say.plain(roundUp(buy, say))} needed`),
    ]),
  ];
  return reply({
    title,
    lines: [headline(all, missing, wanting.length, piles.length > 0), ...leftWords(allotment, stash, say)],
    table: rows.length === 0 ? null : ({ columns: ['from', 'gives', 'for'], rows } satisfies Table),
    figures: {
      pieces: count(all),
      covered: count(all - missing),
      missing: count(missing),
      buyYards: yards(toBuy),
    },
    notes: [
      ...(piles.length > 0 && needs.length > 1
        ? ['A piece serves one part; a length is cut from one end and may serve several.']
        : []),
      ...assumedNote(assumed),
    ],
    cautions: bladeCaution(here),
  });
}

const plain = (words: string): string => words.trim().toLowerCase().replace(/s$/, '');

/** By what a part and the pieces kept for it know each other: the cloth that it is to be of, or its own name. */
const purposeOf = ({ role, cloth }: RoleCount): string => plain(cloth ?? role);

/** The part or the cloth that a pile is kept for: as was said, or by its colour; empty where it may serve any. */
function keptFor({ role, words }: ClothPile, needs: readonly RoleCount[]): string {
  if (role !== '') {
    const meant = needs.find((need) => plain(need.role) === plain(role));
    return meant ? purposeOf(meant) : plain(role);
  }
  const said = ` ${words.toLowerCase()} `;
  const wanted = needs.find(({ cloth }) => cloth !== undefined && said.includes(` ${cloth.toLowerCase()} `));
  return wanted ? purposeOf(wanted) : '';
}

/** "centre, yellow" */
const partWords = ({ role, cloth }: RoleCount): string => (cloth === undefined ? role : `${role}, ${cloth}`);

function pileFrom({ count: pieces, cloth }: ClothPile, role: string, usable: number): Pile {
  return {
    count: pieces,
    width: cloth.width ?? usable,
    length: cloth.length,
    isLength: cloth.kind === 'yardage',
    role,
  };
}

function headline(all: number, missing: number, parts: number, has: boolean): string {
  if (missing === 0) return `What you have is enough for all ${grouped(all)}.`;
  if (!has) return `${many(all, 'patch', 'patches')}: buy as below, each part from cloth of its own.`;
  const buys =
    parts === 1 ? 'buy the rest as below' : 'buy the rest as below, each part from cloth of its own';
  return `${grouped(all - missing)} of ${grouped(all)} from what you have; ${buys}.`;
}

function shareRow(
  { pile, need, pieces, gives, length }: Share,
  { piles, needs }: Stash,
  say: Speech,
): string[] {
  const { count: there, words } = piles[pile]!;
  const from =
    length === undefined
      ? `${pieces < there ? `${grouped(pieces)} of ${grouped(there)}` : grouped(there)} ${words}`
      : `${say.plain(roundUp(length, say))} of ${words}`;
  return [from, grouped(gives), forWords(partWords(needs[need]!))];
}

const forWords = (role: string, more = ''): string =>
  [role, more].filter((words) => words !== '').join(', ') || 'all';

/** "fat quarters blue" is what several are called, and one is a "fat quarter blue". */
const oneOf = (words: string): string => words.replace(/\b(quarter|eighth|square|charm|strip|fq)s\b/i, '$1');

/** What stays whole, in one line. */
function leftWords({ shares }: Allotment, { piles }: Stash, say: Speech): string[] {
  const left = piles.flatMap(({ count: there, words, cloth }, at) => {
    const used = shares.filter(({ pile }) => pile === at);
    if (cloth.kind === 'yardage') {
      const cut = used.reduce((sum, { length = 0 }) => sum + length, 0);
      const rest = there * cloth.length - cut;
      return rest < 1 ? [] : [cut === 0 ? words : `${say.plain(Math.floor(rest * 8) / 8)} of ${words}`];
    }
    const rest = there - used.reduce((sum, { pieces }) => sum + pieces, 0);
    return rest > 0 ? [`${grouped(rest)} ${rest === 1 ? oneOf(words) : words}`] : [];
  });
  return left.length === 0 || shares.length === 0 ? [] : [`Left over: ${left.join(', ')}.`];
}
