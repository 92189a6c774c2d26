import { basting, cutting, minutesBefore } from '../src/calculator/stitching/before.ts';
import type { StitchMethod } from '../src/calculator/stitching/method.ts';
import type { Answer, Here } from '../src/chat/command.ts';
import { otherwise } from '../src/chat/option.ts';
import { choice } from '../src/chat/option-kinds.ts';
import { count, inches, minutes, type Reply, reply } from '../src/chat/reply.ts';
import { assumedNote } from './assumed.ts';
import { bladeCaution, handsCaution } from './cautions.ts';
import { lastingOf, overOn, spanWords } from './time-words.ts';

export type Work = 'sewing' | 'basting' | 'cutting';

export const workOption = otherwise(
  choice('What the hours are for', [
    { name: 'sewing', title: 'the sewing', words: ['sew', 'stitching', 'piecing'] },
    { name: 'basting', title: 'basting over papers', words: ['baste', 'tacking', 'tack'] },
    { name: 'cutting', title: 'tracing and cutting', words: ['cut', 'cutting out'] },
  ]),
  'sewing',
);

/** So many patches, what they make, and round how many inches each is basted. */
export interface ToPrepare {
  readonly pieces: number;
  readonly what: string;
  readonly outline: number;
}

/** When the work is begun, and the hours a week that it gets. */
export interface Begun {
  readonly start: string;
  readonly hours: number;
  readonly assumed: readonly string[];
  readonly choices: Reply['choices'];
}

/** "Before that, 17 to 38 hours of cutting and basting." */
export const beforeWords = (pieces: number, method: StitchMethod): string =>
  `Before that, ${spanWords(minutesBefore(pieces, method === 'whip'))} of cutting${method === 'whip' ? ' and basting' : ''}.`;

const PRACTICE = 'Ranges from common practice: time ten of your own.';

/** How long the basting takes, with thread and with glue. */
export function bastingAnswer({ pieces, what, outline }: ToPrepare, begun: Begun, here: Here): Answer {
  const { withThread, withGlue, thread } = basting(pieces, outline);
  const over = overOn(lastingOf(withThread, begun.hours), begun.start);
  if (!over.ok) return over;
  return reply({
    title: `Basting ${what}`,
    lines: [
      `${spanWords(withThread)} of basting with thread.`,
      `With glue: ${spanWords(withGlue)}.`,
      over.value.words,
      `Thread: ${here.say.run(thread)}, ${here.say.plain(thread / pieces)} a patch.`,
      `Cutting comes before it: ${spanWords(cutting(pieces).oneByOne)}.`,
      PRACTICE,
    ],
    figures: {
      pieces: count(pieces),
      ...over.value.figures,
      glueMinutesLow: minutes(withGlue.low),
      glueMinutesHigh: minutes(withGlue.high),
      threadLength: inches(thread),
    },
    notes: assumedNote(begun.assumed),
    cautions: handsCaution(),
    choices: begun.choices,
  });
}

/** How long the cutting takes, one by one and several layers at a time. */
export function cuttingAnswer({ pieces, what }: ToPrepare, begun: Begun, here: Here): Answer {
  const { oneByOne, inLayers } = cutting(pieces);
  const over = overOn(lastingOf(oneByOne, begun.hours), begun.start);
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
    notes: assumedNote(begun.assumed),
    cautions: [...bladeCaution(here), ...handsCaution()],
    choices: begun.choices,
  });
}
