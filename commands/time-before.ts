import { basting, cutting, minutesBefore } from '../src/calculator/stitching/before.ts';
import type { StitchMethod } from '../src/calculator/stitching/method.ts';
import type { Answer, Here } from '../src/chat/command.ts';
import { otherwise } from '../src/chat/option.ts';
import { choice } from '../src/chat/option-kinds.ts';
import { count, inches, minutes, type Reply, reply } from '../src/chat/reply.ts';
import { assumedNote } from './assumed.ts';
import { bladeCaution, handsCaution } from './cautions.ts';
import { lastingOf, overOn, spanWords } from './time-words.ts';

export type Work = 'sewing' | 'basting' | 'gluing' | 'cutting' | 'before';

export const workOption = otherwise(
  choice('What the hours are for', [
    { name: 'sewing', title: 'the sewing', words: ['sew', 'stitching', 'piecing'] },
    { name: 'basting', title: 'basting over papers with thread', words: ['baste', 'tacking', 'tack'] },
    { name: 'gluing', title: 'basting over papers with glue', words: ['glue', 'glue basting'] },
    { name: 'cutting', title: 'tracing and cutting', words: ['cut', 'cutting out'] },
    { name: 'before', title: 'cutting and basting, all before the sewing', words: ['prep', 'preparing'] },
  ]),
  'sewing',
);

/** So many patches to be cut or basted. */
export interface ToPrepare {
  readonly pieces: number;
  /** What they make. */
  readonly what: string;
  /** Inches round one patch. */
  readonly outline: number;
  /** The day on which it is begun. */
  readonly start: string;
  /** Hours a week. */
  readonly hours: number;
  readonly assumed: readonly string[];
  readonly choices: Reply['choices'];
}

/** "Before that, 17 to 38 hours of cutting and basting." */
export const beforeWords = (pieces: number, method: StitchMethod): string =>
  `Before that, ${spanWords(minutesBefore(pieces, method === 'whip'))} of cutting${method === 'whip' ? ' and basting' : ''}.`;

const PRACTICE = 'Ranges from common practice: time ten of your own.';

/** How long the work before the sewing takes. */
export const beforeAnswer = (work: Exclude<Work, 'sewing'>, to: ToPrepare, here: Here): Answer =>
  work === 'cutting'
    ? cuttingAnswer(to, here)
    : work === 'before'
      ? bothAnswer(to, here)
      : bastingAnswer(work, to, here);

/** Cutting one by one, and basting with thread. */
function bothAnswer(to: ToPrepare, here: Here): Answer {
  const { pieces, what, outline, start, hours, assumed, choices } = to;
  const { oneByOne } = cutting(pieces);
  const { withThread, withGlue, thread } = basting(pieces, outline);
  const both = minutesBefore(pieces, true);
  const over = overOn(lastingOf(both, hours), start);
  if (!over.ok) return over;
  const glued = { low: oneByOne.low + withGlue.low, high: oneByOne.high + withGlue.high };
  return reply({
    title: `Cutting and basting ${what}`,
    lines: [
      `${spanWords(both)} of cutting and basting with thread.`,
      `Cutting ${spanWords(oneByOne)}, basting ${spanWords(withThread)}.`,
      `With glue in all: ${spanWords(glued)}.`,
      over.value.words,
      `Thread: ${here.say.run(thread)}, ${here.say.plain(thread / pieces)} a patch.`,
      PRACTICE,
    ],
    figures: { pieces: count(pieces), ...over.value.figures, threadLength: inches(thread) },
    notes: assumedNote(assumed),
    cautions: [...bladeCaution(here), ...handsCaution()],
    choices,
  });
}

/** With thread or with glue, the other told beside it. */
function bastingAnswer(by: 'basting' | 'gluing', to: ToPrepare, here: Here): Answer {
  const { pieces, what, outline, start, hours, assumed, choices } = to;
  const { withThread, withGlue, thread } = basting(pieces, outline);
  const [asked, other] = by === 'basting' ? [withThread, withGlue] : [withGlue, withThread];
  const { oneByOne: cut } = cutting(pieces);
  const over = overOn(lastingOf(asked, hours), start);
  if (!over.ok) return over;
  return reply({
    title: `Basting ${what}`,
    lines: [
      `${spanWords(asked)} of basting with ${by === 'basting' ? 'thread' : 'glue'}.`,
      `With ${by === 'basting' ? 'glue' : 'thread'}: ${spanWords(other)}.`,
      over.value.words,
      ...(by === 'basting'
        ? [`Thread: ${here.say.run(thread)}, ${here.say.plain(thread / pieces)} a patch.`]
        : []),
      `Cutting comes before it: ${spanWords(cut)}; both ${spanWords({ low: cut.low + asked.low, high: cut.high + asked.high })}.`,
      PRACTICE,
    ],
    figures: {
      pieces: count(pieces),
      ...over.value.figures,
      threadMinutesLow: minutes(withThread.low),
      threadMinutesHigh: minutes(withThread.high),
      glueMinutesLow: minutes(withGlue.low),
      glueMinutesHigh: minutes(withGlue.high),
      ...(by === 'basting' ? { threadLength: inches(thread) } : {}),
    },
    notes: assumedNote(assumed),
    cautions: handsCaution(),
    choices,
  });
}

/** One by one and several layers at a time. */
function cuttingAnswer({ pieces, what, start, hours, assumed, choices }: ToPrepare, here: Here): Answer {
  const { oneByOne, inLayers } = cutting(pieces);
  const over = overOn(lastingOf(oneByOne, hours), start);
  if (!over.ok) return over;
  return reply({
    title: `Cutting ${what}`,
    lines: [
      `${spanWords(oneByOne)} of cutting, traced and cut one by one.`,
      `Several layers at a time: ${spanWords(inLayers)}.`,
      over.value.words,
      PRACTICE,
    ],
    figures: {
      pieces: count(pieces),
      ...over.value.figures,
      layersMinutesLow: minutes(inLayers.low),
      layersMinutesHigh: minutes(inLayers.high),
    },
    notes: assumedNote(assumed),
    cautions: [...bladeCaution(here), ...handsCaution()],
    choices,
  });
}
