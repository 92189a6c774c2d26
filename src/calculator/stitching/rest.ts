/**
 * Rest for the hands on a long sewing plan. Five minutes in each hour cut discomfort of hand, wrist and eye
 * with no loss of output (NIOSH, 42 and 51 workers); short and often beats long and seldom (HSE). It defers
 * to people licensed to advise.
 *
 * @example
 * restForHands.breakMinutes // 5
 * restForHands.everyMinutes // 60
 */
export const restForHands = {
  code: 'rest-hands',
  breakMinutes: 5,
  everyMinutes: 60,
  source: 'NIOSH (cdc.gov, record 20020675)',
  stopSigns: ['numbness', 'pain at night'],
} as const;
