import type { Arrangement } from '../src/calculator/layouts/arrangement.ts';
import type { Option } from '../src/chat/option.ts';
import { takeNumber } from '../src/measure/number.ts';
import { ok, type Result, wrong } from '../src/measure/result.ts';
import { fullRingsIn, inFullRings, isFullRings, squarestRows } from '../src/measure/rings.ts';

/** Six rows of five; with a unit it is a quilt's size. */
const ROWS = /^(\d{1,4})\s*(?:x|by)\s*(\d{1,4})(?![\d.]|\s*(?:in\b|inch|"|'|ft\b|feet|cm\b|mm\b|m\b))/i;
const RINGS = /^\d+(?:\s*\+\s*\d+)+/;
const MOST = 1000;

/** How many rosettes or stars, and how they stand: `7`, `1 + 6 + 12`, or `6x5` for six staggered rows of five. */
export function arrangement(summary: string): Option<Arrangement, false> {
  return {
    kind: 'count',
    summary,
    example: '7',
    bounds: '1, 7, 19, 37 … in rings, or rows such as 6x5',
    shape: { as: 'words', longest: 20 },
    take(text) {
      const rows = ROWS.exec(text);
      if (rows) return inRows(rows, text);
      const rings = RINGS.exec(text);
      if (rings) return inRings(sumOf(rings[0]), text.slice(rings[0].length));
      const count = takeNumber(text);
      return count && !/^\s*(?:in|"|cm|mm|x)/i.test(count.rest) ? inRings(count.value, count.rest) : null;
    },
    write: (of) => (of.kind === 'rows' ? `${of.rows}x${of.perRow}` : String(inFullRings(of.rings))),
  };
}

const sumOf = (text: string): number => text.split('+').reduce((sum, part) => sum + Number(part), 0);

function inRows(
  [found, first, second]: RegExpExecArray,
  text: string,
): Result<{ value: Arrangement; rest: string }> {
  const [rows, perRow] = [Number(first), Number(second)];
  if (rows < 1 || perRow < 1)
    return wrong('too-small', { got: found, least: '1x1', most: `${MOST}x${MOST}` });
  if (rows > MOST || perRow > MOST)
    return wrong('too-large', { got: found, least: '1x1', most: `${MOST}x${MOST}` });
  return ok({ value: { kind: 'rows', rows, perRow }, rest: text.slice(found.length) });
}

function inRings(count: number, rest: string): Result<{ value: Arrangement; rest: string }> {
  const below = fullRingsIn(count);
  if (isFullRings(count)) return ok({ value: { kind: 'rings', rings: below }, rest });
  const { rows, perRow } = squarestRows(count, MOST) ?? { rows: 6, perRow: 5 };
  return wrong('arrangement-unknown', {
    got: String(count),
    near: `${inFullRings(below)} and ${inFullRings(below + 1)}`,
    rows: `${rows}x${perRow}`,
  });
}
