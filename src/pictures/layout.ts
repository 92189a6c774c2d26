import { finishedSize, type Layout, type Rectangle } from '../calculator/layouts/layout.ts';
import { tally } from '../calculator/layouts/tally.ts';
import { grouped } from '../measure/ruler.ts';
import { type Reading, type Speech, speech } from '../measure/speech.ts';
import { across, DASHES, roomBelow, roomLeftOf } from './dimension.ts';
import { type LayoutAsk, laid } from './laid.ts';
import { type Entry, legend, lineSample, MIDDLE, swatch } from './legend.ts';
import {
  everyMark,
  type Ground,
  inRounds,
  type Marked,
  marksAlong,
  marksFor,
  onGround,
  roomForMarks,
} from './marks.ts';
import { type Block, footing, heading, page, ROOM } from './page.ts';
import { INK, looksFor, PAPER, tile } from './palette.ts';
import { rolePaths } from './patches.ts';
import type { Scale } from './path.ts';
import { toPng } from './png.ts';
import { element, px } from './svg.ts';

/** A layout coloured by what its patches are for. Lengths in inches. */
export interface LayoutRecipe {
  readonly draw: 'layout';
  readonly title: string;
  readonly ask: LayoutAsk;
  readonly edge: number;
  readonly reading: Reading;
  /** What roles are called, where the layout's own word is not the one the reply uses. */
  readonly called?: Readonly<Record<string, string>>;
  /** The cloth that a role is of, where it was named. */
  readonly cloths?: Readonly<Record<string, string>>;
  /** True where the patches are not joined, so that there is no size to tell. */
  readonly apart?: boolean;
}

export const drawLayout = (recipe: LayoutRecipe): Promise<Uint8Array> => toPng(layoutPicture(recipe));

/** One role of the layout: how it is drawn, and what it comes to. */
interface Role extends Marked {
  readonly id: string;
  readonly words: string;
  readonly count: number;
}

/** The picture of a layout as SVG: the patches, the trim line, the size, and a legend with the counts. */
export function layoutPicture({
  title,
  ask,
  edge,
  reading,
  called = {},
  cloths = {},
  apart = false,
}: LayoutRecipe): string {
  const layout = laid(ask);
  const counted = tally(layout.patches);
  const { roles: names } = layout.patches;
  // A part with no patches is not shown, and takes no letter.
  const shown = names.filter((name) => counted.byRole[name]! > 0);
  const marks = marksFor(shown);
  const looks = looksFor(names.map((name) => (ask.cloths?.includes(name) ? name : (cloths[name] ?? ''))));
  const roles = names.map((name, i): Role => {
    const count = counted.byRole[name]!;
    const words = `${called[name] ?? name}: ${grouped(count)}`;
    return { look: looks[i]!, mark: marks[shown.indexOf(name)] ?? '', id: `role${i}`, words, count };
  });
  const all = boxOf(counted, edge);
  const size = finishedSize(layout, counted, edge);
  const view = viewOf(all, counted.total);
  const say = speech(reading);
  const scale = scaleFor(view.part, size, say);
  const ground = { list: layout.patches, edge, scale };
  const marked = view.whole && roomForMarks(ground, roles);
  const drawn = drawing({ layout, ground, roles, view, size, say, marked, apart });
  const texture = Math.min(1, Math.max(0.4, (edge * scale.perInch) / 30));
  const lettered = marked || inRounds(names);
  return page(
    [
      heading(title),
      drawn,
      legend(entriesOf(roles, layout.trim !== null, lettered)),
      partWords(view, all, reading),
    ],
    roles
      .filter(({ count }) => count > 0)
      .map(({ id, look }) => tile(id, look, texture))
      .join('') + clip(view, scale),
  );
}

const boxOf = (counted: Rectangle, edge: number): Rectangle => ({
  left: counted.left * edge,
  top: counted.top * edge,
  width: counted.width * edge,
  height: counted.height * edge,
});

/** More patches than this are too small to be told apart: then a part of the layout is shown, about so many. */
const MOST_SHOWN = 14_000;
const PART_SHOWN = 5_000;

interface View {
  readonly part: Rectangle;
  readonly whole: boolean;
}

function viewOf(all: Rectangle, count: number): View {
  if (count <= MOST_SHOWN) return { part: all, whole: true };
  const share = Math.sqrt(PART_SHOWN / count);
  return { part: { ...all, width: all.width * share, height: all.height * share }, whole: false };
}

/** Room at the left and below for the dimensions. */
const BESIDE = 84;
const TALLEST = 1300;

function scaleFor(part: Rectangle, size: Rectangle, say: Speech): Scale {
  const usual = scaleBeside(part, BESIDE);
  const more = roomLeftOf(say.side(size.height), size.height * usual.perInch);
  return more === 0 ? usual : scaleBeside(part, BESIDE + more);
}

function scaleBeside({ left, top, width, height }: Rectangle, beside: number): Scale {
  const perInch = Math.min((ROOM - beside) / width, TALLEST / height);
  const spare = ROOM - beside - width * perInch;
  return { perInch, x: beside + spare / 2 - left * perInch, y: -top * perInch, down: 1 };
}

interface Drawing {
  readonly layout: Layout;
  readonly ground: Ground;
  readonly roles: readonly Role[];
  readonly view: View;
  readonly size: Rectangle;
  readonly say: Speech;
  readonly marked: boolean;
  readonly apart: boolean;
}

function drawing({ layout, ground, roles, view, size, say, marked, apart }: Drawing): Block {
  const { scale, edge, list } = ground;
  const seam = Math.min(2.5, (edge * scale.perInch) / 12);
  const patches = rolePaths(list, edge, scale, view.part).map((d, i) =>
    d === ''
      ? ''
      : element('path', {
          d,
          fill: `url(#${roles[i]!.id})`,
          stroke: roles[i]!.look.mark,
          'stroke-width': seam,
          'stroke-linejoin': 'round',
        }),
  );
  const trim = layout.trim === null ? '' : trimmed(view.part, layout.trim, scale);
  const numbers = marked
    ? everyMark(ground, roles)
    : inRounds(list.roles) && view.whole
      ? marksAlong(ground, roles)
      : '';
  const shown = element('g', view.whole ? {} : { 'clip-path': 'url(#part)' }, ...patches, trim);
  const height = view.part.height * scale.perInch;
  return view.whole && !apart
    ? {
        height: height + BESIDE + roomBelow(say.side(size.width), size.width * scale.perInch),
        drawn: shown + numbers + dimensions(size, scale, height, say),
      }
    : { height, drawn: shown + numbers };
}

/** A rectangle of the layout, on the page. */
const onPage = ({ left, top, width, height }: Rectangle, { perInch, x, y }: Scale): Rectangle => ({
  left: x + left * perInch,
  top: y + top * perInch,
  width: width * perInch,
  height: height * perInch,
});

const rectanglePath = ({ left, top, width, height }: Rectangle): string =>
  `M${px(left)} ${px(top)}h${px(width)}v${px(height)}h${px(-width)}z`;

/** What is trimmed away is veiled, and the line to cut along is dashed. */
function trimmed(all: Rectangle, trim: Rectangle, scale: Scale): string {
  const line = rectanglePath(onPage(trim, scale));
  const rim = onPage(all, scale);
  const wider = { left: rim.left - 4, top: rim.top - 4, width: rim.width + 8, height: rim.height + 8 };
  return (
    element('path', {
      d: rectanglePath(wider) + line,
      fill: PAPER,
      'fill-opacity': 0.62,
      'fill-rule': 'evenodd',
    }) +
    element('path', { d: line, fill: 'none', stroke: PAPER, 'stroke-width': 7 }) +
    element('path', { d: line, ...TRIM_LINE })
  );
}

const TRIM_LINE = { fill: 'none', stroke: INK, 'stroke-width': 5, 'stroke-dasharray': DASHES };

function dimensions(size: Rectangle, scale: Scale, height: number, say: Speech): string {
  const { left, top, width, height: high } = onPage(size, scale);
  const below = height + BESIDE / 2 + 10;
  const beside = Math.max(BESIDE / 2 - 10, scale.x + Math.min(left - scale.x, 0) - BESIDE);
  return (
    across({ x: left, y: below }, { x: left + width, y: below }, say.side(size.width)) +
    across({ x: beside, y: top }, { x: beside, y: top + high }, say.side(size.height))
  );
}

/** The most lines of a legend; of more rounds than that the first and the last ones are told. */
const MOST_ENTRIES = 12;

function entriesOf(roles: readonly Role[], trim: boolean, lettered: boolean): Entry[] {
  const used = roles.filter(({ count }) => count > 0);
  const entries = used.map(({ look, id, mark, words }) => ({
    sample: swatch(`url(#${id})`, INK, lettered && mark !== '' ? onGround(mark, look, MIDDLE) : ''),
    words,
  }));
  const told =
    entries.length <= MOST_ENTRIES
      ? entries
      : [
          ...entries.slice(0, MOST_ENTRIES - 4),
          { sample: '', words: `… ${entries.length - MOST_ENTRIES + 2} rounds between` },
          ...entries.slice(-2),
        ];
  return trim ? [...told, { sample: lineSample(TRIM_LINE), words: 'trim here' }] : told;
}

const clip = ({ part, whole }: View, scale: Scale): string =>
  whole
    ? ''
    : element('clipPath', { id: 'part' }, element('path', { d: rectanglePath(onPage(part, scale)) }));

function partWords({ part, whole }: View, all: Rectangle, reading: Reading): Block {
  if (whole) return footing([]);
  const say = speech(reading);
  return footing([
    `The upper left ${say.size(part.width, part.height)} of it, out of ${say.size(all.width, all.height)}. The counts are of all of it.`,
  ]);
}
