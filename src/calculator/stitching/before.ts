import { taskMinutes } from './rates.ts';
import { bastingThread } from './thread.ts';

/** From the fewest minutes to the most. */
export interface MinutesSpan {
  readonly low: number;
  readonly high: number;
}

const each = (patches: number, [low, high]: readonly [number, number]): MinutesSpan => ({
  low: patches * low,
  high: patches * high,
});

/**
 * Minutes before the first seam: so many patches traced and cut one by one and, where they are sewn over paper,
 * basted with thread. Common practice, no source.
 *
 * @example
 * minutesBefore(19, true) // {"low":47.5,"high":104.5}
 * minutesBefore(19, false) // {"low":9.5,"high":28.5}
 */
export function minutesBefore(patches: number, overPaper: boolean): MinutesSpan {
  const cut = each(patches, taskMinutes.traceAndCut);
  if (!overPaper) return cut;
  const baste = each(patches, taskMinutes.baste);
  return { low: cut.low + baste.low, high: cut.high + baste.high };
}

/**
 * Basting so many patches over their papers, with thread or with glue, minutes; the thread in inches, from the
 * inches round one patch. Common practice, no source.
 *
 * @example
 * basting(500, 6).withThread // {"low":1000,"high":2000}
 * basting(500, 6).withGlue // {"low":250,"high":750}
 * basting(500, 6).thread // 5300
 */
export const basting = (patches: number, outlineInches: number) => ({
  withThread: each(patches, taskMinutes.baste),
  withGlue: each(patches, taskMinutes.glueBaste),
  thread: patches * bastingThread(outlineInches),
});

/**
 * Cutting so many patches, traced and cut one by one or several layers at a time, minutes. Common practice, no
 * source.
 *
 * @example
 * cutting(500).oneByOne // {"low":250,"high":750}
 * cutting(500).inLayers // {"low":50,"high":150}
 */
export const cutting = (patches: number) => ({
  oneByOne: each(patches, taskMinutes.traceAndCut),
  inLayers: each(patches, taskMinutes.stackCut),
});
