import { seamsRoundByRound } from '../src/calculator/layouts/rosette.ts';
import { type StitchMethod, stitchesPerInch } from '../src/calculator/stitching/method.ts';
import { threadToCut, WORKING_LENGTH } from '../src/calculator/stitching/needlefuls.ts';
import { minutesPerSeam } from '../src/calculator/stitching/rates.ts';
import { type StitchingTime, stitchingTime } from '../src/calculator/stitching/time.ts';
import { type Answer, type Command, form, type Here } from '../src/chat/command.ts';
import { alsoNamed, bare, bareInCommands, otherwise, usually } from '../src/chat/option.ts';
import { choice, date, number, whole } from '../src/chat/option-kinds.ts';
import { count, inches, type Reply, reply } from '../src/chat/reply.ts';
import { wrong } from '../src/measure/result.ts';
import { decimal, grouped } from '../src/measure/ruler.ts';
import { many } from '../src/measure/speech.ts';
import { assumedNote, whose } from './assumed.ts';
import { handsCaution, withCribCaution } from './cautions.ts';
import { manyWords } from './count-field.ts';
import { askedEdge, hexagonEdge } from './edge.ts';
import { madeOf, madeOfOptions, shapeMadeOf } from './made-of.ts';
import { type Pace, paceFor, paceSource } from './own-pace.ts';
import { beforeAnswer, beforeWords, type ToPrepare, workOption } from './time-before.ts';
import { overOn, spanWords } from './time-words.ts';

/** Hours a week where nobody has said: a judgement, said in the reply. */
const USUAL_HOURS = 5;

const timeOptions = {
  seams: bareInCommands(alsoNamed(whole('How many seams', 1, 3_000_000, '42'), 'seam')),
  pieces: alsoNamed(
    whole('So many hexagons, laid round by round', 1, 1_000_000, '240'),
    ...['piece', 'patches', 'patch', 'hexagons'],
  ),
  ...madeOfOptions,
  ...hexagonEdge,
  work: workOption,
  method: otherwise(
    bare(
      choice('How the patches are joined', [
        { name: 'running', title: 'running stitch on a marked line', words: ['running stitch', 'run'] },
        {
          name: 'whip',
          title: 'whipstitch over paper',
          words: ['whipstitch', 'whip stitch', 'over paper', 'papers', 'paper', 'epp'],
        },
      ]),
    ),
    'whip',
  ),
  stitches: usually(number('Stitches an inch', 2, 40, '14'), 'what /me keeps, or 9 running and 14 whipped'),
  pace: usually(number('Your minutes for one seam', 0.1, 60, '2.5'), 'what /me keeps, or the usual range'),
  hours: usually(alsoNamed(number('Hours a week', 0.25, 112, '5'), 'hour'), 'what /me keeps, or 5'),
  start: usually(date('The day you start'), 'today'),
};

const time: Command = {
  name: 'time',
  summary: 'Stitches, thread, hours and the week it will be done',
  forms: [
    form({
      name: '',
      summary: 'Seams, stitches, thread and needlefuls, hours as a range, and the day it will be done',
      examples: [
        '/time rosette:2',
        '/time field:60x72in size:1in method:running hours:6',
        '/time seams:42 size:1in method:whip stitches:14 hours:5 start:2026-12-01',
      ],
      options: timeOptions,
      async run(values, here) {
        const ofDiamonds = shapeMadeOf(values) === 'diamond';
        const asked = askedEdge(values, here, ofDiamonds ? 'diamond' : 'hexagon');
        if ('asks' in asked) return asked.asks;
        if (!asked.ok) return asked;
        const { edge, assumed, otherwise: choices } = asked.value;
        const made = madeOf(values, edge, here);
        if (made && !made.ok) return manyWords(made);
        const { pieces } = values;
        const said = [
          values.seams !== undefined && 'seams',
          pieces !== undefined && 'pieces',
          made && 'a layout',
        ];
        const ways = said.filter(Boolean);
        if (ways.length > 1) return wrong('one-of-these', { got: ways.join(', or ') });
        const start = values.start ?? here.today;
        if (values.work !== 'sewing') {
          const patches = made?.value.pieces ?? pieces;
          if (patches === undefined) return wrong('what-to-cut');
          const { hours, assumed: week } = hoursFor(values, here);
          const before: ToPrepare = {
            ...{ pieces: patches, start, hours, choices },
            what: made?.value.words ?? many(patches, 'hexagon', 'hexagons'),
            outline: edge * (ofDiamonds ? 4 : 6),
            assumed: [...assumed, ...week],
          };
          return withCribCaution(beforeAnswer(values.work, before, here), values.field?.bed);
        }
        const seams = made?.value.seams ?? (pieces === undefined ? values.seams : seamsRoundByRound(pieces));
        if (seams === undefined) return wrong('what-to-sew');
        if (seams === 0) return wrong('nothing-to-sew');
        const pace = await paceFor(values.pace, edge, here);
        const rates = ratesFor(values, pace, here);
        const sewn = stitchingTime({ seams, seamLengthInches: edge, method: values.method, ...rates.used });
        const told: Told = {
          ...{ here, rates, pace, start, assumed, choices },
          method: values.method,
          pieces: made?.value.pieces ?? pieces ?? null,
          what:
            made?.value.words ??
            (pieces === undefined ? null : `${many(pieces, 'hexagon', 'hexagons')} laid round by round`),
        };
        return withCribCaution(answer(sewn, told), values.field?.bed);
      },
    }),
  ],
};

export default time;

interface Rates {
  readonly used: {
    readonly stitchesPerInch: number;
    readonly minutesPerSeam?: number;
    readonly hoursPerWeek: number;
  };
  readonly assumed: readonly string[];
}

interface RateValues {
  readonly method: StitchMethod;
  readonly stitches?: number;
  readonly hours?: number;
}

function ratesFor(values: RateValues, { minutes: pace }: Pace, here: Here): Rates {
  const { defaults, given } = here;
  const stitches = values.stitches ?? defaults.stitches.value ?? stitchesPerInch[values.method];
  const { hours, assumed: week } = hoursFor(values, here);
  const assumed: string[] = [];
  if (!given.has('method')) assumed.push('whipstitch over paper');
  if (values.stitches === undefined)
    assumed.push(`${whose(defaults.stitches.from)}${stitches} stitches an inch`);
  assumed.push(...week);
  return {
    used: {
      stitchesPerInch: stitches,
      hoursPerWeek: hours,
      ...(pace === null ? {} : { minutesPerSeam: pace }),
    },
    assumed,
  };
}

/** Hours a week: said, kept, or the usual. */
function hoursFor({ hours: said }: RateValues, { defaults }: Here) {
  const hours = said ?? defaults.hours.value ?? USUAL_HOURS;
  const words = `${whose(defaults.hours.from)}${decimal(hours, 2)} ${hours === 1 ? 'hour' : 'hours'} a week`;
  return { hours, assumed: said === undefined ? [words] : [] };
}

interface Told {
  readonly here: Here;
  readonly rates: Rates;
  readonly pace: Pace;
  readonly start: string;
  readonly method: StitchMethod;
  readonly what: string | null;
  /** The patches, where they are known. */
  readonly pieces: number | null;
  readonly assumed: readonly string[];
  readonly choices: Reply['choices'];
}

function answer(sewn: StitchingTime, told: Told): Answer {
  const { here, rates, start, method, what, pieces, assumed, choices } = told;
  const over = overOn(sewn, start);
  if (!over.ok) return over;
  const hours = `${spanWords({ low: sewn.minutesLow, high: sewn.minutesHigh })} of stitching.`;
  const thread = threadWords(sewn, here);
  // She who asks for the thread reads it first.
  const [first, last] = isOfThread(here) ? [thread, hours] : [hours, thread];
  return reply({
    title: what ? `Sewing ${what}` : `Sewing ${many(sewn.seams, 'seam', 'seams')}`,
    lines: [
      first,
      over.value.words,
      ...(pieces === null ? [] : [beforeWords(pieces, method)]),
      `${many(sewn.seams, 'seam', 'seams')}, ${here.say.run(sewn.seamLength)}; ${grouped(sewn.stitches)} stitches.`,
      last,
      paceWords(sewn, told),
    ],
    figures: {
      seams: count(sewn.seams),
      seamLength: inches(sewn.seamLength),
      stitches: count(sewn.stitches),
      threadLength: inches(sewn.threadLength),
      threadLengthLow: inches(sewn.threadLengthLow),
      threadLengths: count(sewn.threadLengths),
      ...over.value.figures,
    },
    notes: assumedNote([...assumed, ...rates.assumed]),
    cautions: handsCaution(),
    choices,
  });
}

/** Whether thread is what was asked for. */
const isOfThread = ({ typed }: Here): boolean =>
  typeof typed === 'string' &&
  /\b(?:thread|needlefuls?|spools?)\b/i.test(typed) &&
  !/\bhow long\b|\bhours\b/i.test(typed);

function threadWords({ threadLength, threadLengthLow, threadLengths }: StitchingTime, { say }: Here): string {
  const least = threadLength - threadLengthLow > 1 ? `${say.run(threadLengthLow)} to ` : '';
  const cut = `${many(threadLengths, 'needleful', 'needlefuls')} of ${say.run(WORKING_LENGTH)}`;
  return `Thread: ${least}${say.run(threadLength)} in the seams; cut ${cut}, ${say.run(threadToCut(threadLengths))}.`;
}

function paceWords(
  { rateSource, seams, minutes: middle }: StitchingTime,
  { method, here, pace }: Told,
): string {
  if (rateSource === 'own')
    return `${paceSource(pace)}: ${decimal(middle / seams, 2)} min a seam, a fifth either way.`;
  const { low, high } = minutesPerSeam[method];
  return `Range from common practice, ${low} to ${high} min for a ${here.say.plain(1)} seam. Time ten of your own, then \`/me set pace:${(low + high) / 2}\``;
}
