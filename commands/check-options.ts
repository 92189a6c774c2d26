import type { Option } from '../src/chat/option.ts';
import { LONGEST, length, whole } from '../src/chat/option-kinds.ts';
import { ok } from '../src/measure/result.ts';

const MOST = 2000;

const plainRow = whole('How many patches are in the row', 2, MOST, '20');

const WHOLE = /^(\d{1,4})(?![\d./])/;
/** "20 in a row", "20 hexagons in a row": the words between are left to be read. */
const IN_A_ROW = /^((?:\s+[a-z]+){0,2}?)\s+in (?:a|the|one|each|my) row\b/i;

const PATCHES = '(?:hexagons|hexies|hexes|diamonds|triangles|squares|patches)\\b';
/** "20 hexagons", "10 1in hexagons"; before a fraction only what is no size: "20 1 1/2in hexagons". */
const SO_MANY = `\\d{1,4}(?=\\s+(?:\\d+(?:\\.\\d+)?\\s*(?:in|inch(?:es)?|"|cm|mm)\\s+)?${PATCHES})`;
const BEFORE_FRACTION = `(?:1[3-9]|[2-9]\\d|\\d{3,4})(?=\\s+(?:\\d+\\s+)?\\d+\\/\\d+\\s*(?:in|inch|")?\\s*${PATCHES})`;

/** How many patches stand in the row: `20`, `20 in a row`. */
export const rowCount: Option<number, false> = {
  ...plainRow,
  bareWhen: new RegExp(
    `^(?:\\d{1,4}(?:\\s+[a-z]+){0,2}?\\s+in (?:a|the|one|each|my) row\\b|${SO_MANY}|${BEFORE_FRACTION})`,
    'i',
  ),
  take(text, context) {
    const number = WHOLE.exec(text);
    const rest = number && text.slice(number[0].length);
    const said = rest === null ? null : IN_A_ROW.exec(rest);
    if (!number || rest === null || !said) return plainRow.take(text, context);
    const taken = plainRow.take(number[0], context);
    return taken?.ok
      ? ok({ value: taken.value.value, rest: `${said[1]} ${rest.slice(said[0].length)}` })
      : taken;
  },
};

const CAME_OUT =
  /^(?:(?:it|they|that|this|which|and|but|row)\s+)*(?:(?:came|comes?|turned|turns?) (?:out|to)|measures?|measured|is|are|was|were|finish(?:es|ed)?)(?:\s+(?:only|just|about|to be|at|as|to|up))*\s+(?=[\d.])/i;

/** What the row measures: a length, or `came out 33 3/4`. */
export const measuredRow: Option<number, false> = {
  ...length('What it measures', 1 / 8, LONGEST * 3, '33 3/4in'),
  bareWhen: CAME_OUT,
  take(text, context) {
    const words = CAME_OUT.exec(text)?.[0] ?? '';
    return length('', 1 / 8, LONGEST * 3).take(text.slice(words.length), context);
  },
};
