import { isFullRings, squarestRows } from '../measure/rings.ts';
import type { Doubt, Way } from './doubt.ts';
import { eitherUnit } from './metric-sizes.ts';
import { acrossWhich } from './question-across.ts';
import { A_RATE, APART, IN_ROWS, PATCHES } from './question-patterns.ts';
import { severalShapes } from './question-shapes.ts';
import { LONG_OR_MUCH, QUILT } from './question-signs.ts';
import { severalSizes } from './question-sizes.ts';
import { toldOfPlan } from './question-told.ts';
import { optionWords } from './question-words.ts';

type Doubtful = (sign: string, question: string) => Doubt | null;

const ROUNDS = /\b(\d+)[- ]rounds?\b/i;

/** The same question with something said before it. */
const each = (
  ask: string,
  question: string,
  said: readonly (readonly [label: string, words: string])[],
): Way[] => said.map(([label, words]) => ({ label, words: `${words}, ${optionWords(ask, question)}` }));

/** A rosette of one round more has twice the patches and more. */
const howManyRosettes: Doubtful = (sign, question) =>
  sign === 'count garden' &&
  /\bhow many (?:\w+[- ]){0,3}(?:rosettes|flowers)\b/i.test(question) &&
  QUILT.test(question) &&
  !ROUNDS.test(question)
    ? {
        ask: 'count garden',
        title: 'Rosettes for a quilt',
        asks: 'How many rounds has each rosette?',
        ways: each('count garden', question, [
          ['1 round', 'rounds:1'],
          ['2 rounds', 'rounds:2'],
          ['3 rounds', 'rounds:3'],
        ]),
      }
    : null;

const howManyStars: Doubtful = (sign, question) =>
  sign === 'count stars' && QUILT.test(question) && !/\b(?:between|set)\b/i.test(question)
    ? {
        ask: 'count stars',
        title: 'Stars for a quilt',
        asks: 'What lies between the stars?',
        ways: each('count stars', question, [
          ['Diamonds between', 'set:diamonds'],
          ['Hexagons between', 'set:hexagons'],
        ]),
      }
    : null;

const SEVERAL = new RegExp(
  `\\b(\\d+)(?![- ]rounds?\\b|[- ]pieces?\\b|[- ]patch) (?:(\\d+)[- ]rounds? )?(?:[a-z]+ )?(rosettes|flowers)\\b(?!${A_RATE})`,
  'i',
);
const TOGETHER = new RegExp(`${IN_ROWS}|\\b(?:paths?|garden|joined|together|set|between)\\b`, 'i');

/** Several rosettes have a path between, or none: what joins them is a third of the sewing. */
const rosettesTogether: Doubtful = (sign, question) => {
  const found = SEVERAL.exec(question);
  const ask = sign === 'kit' ? 'kit' : 'plan make';
  if (!found || Number(found[1]) < 2) return null;
  if (sign !== 'kit' && sign !== 'plan make' && !LONG_OR_MUCH.test(question)) return null;
  if (TOGETHER.test(question) || APART.test(question) || QUILT.test(question.replace(/\bquilts?\b/gi, '')))
    return null;
  const [, many = '', , what = ''] = found;
  const said = ROUNDS.exec(question)?.[1];
  const sizes = said ? [said] : /^flowers/i.test(what) ? ['1'] : ['1', '2'];
  const rest = optionWords(ask, question.replace(SEVERAL, ' ').replace(ROUNDS, ' '));
  const inRows = isFullRings(Number(many)) ? null : squarestRows(Number(many));
  const stand = inRows ? `${inRows.rows}x${inRows.perRow}` : many;
  const joined = inRows
    ? `Joined in ${inRows.rows === 1 ? 'a row' : `${inRows.rows} rows`} of ${inRows.perRow}`
    : 'Joined';
  const ways = sizes.flatMap((rounds) => {
    const of = sizes.length === 1 ? '' : `, ${rounds} ${rounds === '1' ? 'round' : 'rounds'}`;
    return [
      {
        label: `${joined}, a path between${of}`,
        words: `layout:garden rosettes:${stand} rounds:${rounds}, ${rest}`,
      },
      { label: `Each by itself${of}`, words: `layout:rosette number:${many} rounds:${rounds}, ${rest}` },
    ];
  });
  const rounds = sizes.length > 1 ? ' Of how many rounds?' : '';
  const tells = sign === 'kit' ? {} : { tells: toldOfPlan(question) };
  return {
    ask,
    title: `${many} ${what}`,
    asks: `Are they joined, or each by itself?${rounds}`,
    ways,
    ...tells,
  };
};

const SIZE_THEN_PART = new RegExp(
  `(\\d+ ?(?:x|by) ?\\d+) (\\d\\/\\d{1,2})(?: ?(?:in\\b|inch(?:es)?|")|(?= ${PATCHES}\\b))`,
  'i',
);

/** "20 x 20 3/4 in": a quilt of 20 x 20 and patches of 3/4, or a quilt of 20 x 20 3/4. */
const quiltOrPatch: Doubtful = (sign, question) => {
  const found = SIZE_THEN_PART.exec(question);
  if (sign !== 'count field' || !found) return null;
  const [all, quilt = '', part = ''] = found;
  const rest = question.replace(all, ' ');
  // A size of the patches elsewhere leaves no doubt.
  if (/\d ?(?:in\b|inch|"|cm|mm)/i.test(rest)) return null;
  const said = optionWords(sign, rest);
  return {
    ask: sign,
    title: `${quilt} ${part} in`,
    asks: `Is ${part} in the side of the patches, or of the quilt’s size?`,
    ways: [
      { label: `${quilt} in, patches of ${part} in`, words: `quilt:${quilt}in size:${part}in, ${said}` },
      { label: `${quilt} ${part} in, patches of 1 in`, words: `quilt:${quilt} ${part}in size:1in, ${said}` },
    ],
  };
};

/** "60x72, 25mm hexagons": the patches are metric, the quilt may be either. */
const inchesOrCentimetres: Doubtful = (sign, question) => {
  const found = UNIT_DOUBTED.test(sign) ? eitherUnit(question) : null;
  if (!found) return null;
  const { size, index } = found;
  const inUnit = (unit: string) =>
    `${question.slice(0, index)}${size}${unit}${question.slice(index + size.length)}`;
  return {
    ask: sign,
    title: `${size}: inches or centimetres?`,
    asks: `Is ${size} in inches, or in centimetres?`,
    ways: (['cm', 'in'] as const).map((unit) => ({
      label: `${size} ${unit}`,
      words: optionWords(sign, inUnit(unit)),
    })),
    ...(sign === 'plan make' ? { tells: toldOfPlan(question) } : {}),
  };
};
const UNIT_DOUBTED = /^(?:count \w+|yardage|time|plan make|finish \w+)$/;

const DOUBTS: readonly Doubtful[] = [
  inchesOrCentimetres,
  acrossWhich,
  quiltOrPatch,
  howManyRosettes,
  howManyStars,
  rosettesTogether,
  severalShapes,
  severalSizes,
];

/** What must be asked back before a question can be answered; null where it can be read one way only. */
export function doubtIn(sign: string | null, question: string): Doubt | null {
  for (const doubtful of DOUBTS) {
    const doubt = doubtful(sign ?? '', question);
    if (doubt) return doubt;
  }
  return null;
}
