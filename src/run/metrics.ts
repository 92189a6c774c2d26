import { Counter, collectDefaultMetrics, Gauge, Histogram, Registry } from 'prom-client';
import type { Counted, Watch } from '../chat/watch.ts';

const HELP: Readonly<Record<Counted, string>> = {
  asks_total: 'Asks taken in, by platform',
  replies_lost_total: 'Replies that could not be sent',
  faults_total: 'Asks that failed for a cause of ours',
  rate_limited_total: 'Times a platform asked us to wait',
  server_errors_total: 'Times a platform failed to serve us',
  reconnects_total: 'Times a connection was taken up again',
  events_seen_again_total: 'Events delivered again, answered once',
  events_too_old_total: 'Events too old to answer',
  sends_refused_total: 'Sends that a place did not allow',
  undecryptable_total: 'Messages that could not be decrypted',
  events_unsound_total: 'Events that could not be read',
  gaps_lost_total: 'Stretches of a room that could not be read',
  rooms_left_total: 'Rooms that the bot was put out of',
  reminders_total: 'Reminders sent',
};

/** Seconds that tell a quick answer from a slow one. */
const BUCKETS = [0.01, 0.03, 0.1, 0.3, 1, 3, 10];

export interface Metrics extends Watch {
  /** Says that a platform is up, or not. */
  up(platform: string, is: boolean): void;
  /** All figures in the text format that monitoring reads. */
  text(): Promise<string>;
  readonly contentType: string;
}

/** The figures of one process. */
export function openMetrics(): Metrics {
  const registry = new Registry();
  collectDefaultMetrics({ register: registry, prefix: 'honeycount_' });
  const registers = [registry];
  const counters = new Map(
    (Object.keys(HELP) as Counted[]).map((what) => {
      const counter = new Counter({
        name: `honeycount_${what}`,
        help: HELP[what],
        labelNames: ['platform'],
        registers,
      });
      return [what, counter] as const;
    }),
  );
  const took = new Histogram({
    name: 'honeycount_answer_seconds',
    help: 'From the event of an ask to its reply sent',
    labelNames: ['platform'],
    buckets: BUCKETS,
    registers,
  });
  const up = new Gauge({
    name: 'honeycount_up',
    help: '1 while a platform is connected',
    labelNames: ['platform'],
    registers,
  });
  const tookBy = atHand((platform) => took.labels(platform));
  const countedBy = atHand((of) => {
    const [what = '', platform = ''] = of.split(' ');
    return counters.get(what as Counted)?.labels(platform);
  });
  return {
    count: (what, { platform = '' } = {}) => countedBy(`${what} ${platform}`)?.inc(),
    took: (platform, seconds) => tookBy(platform).observe(seconds),
    up: (platform, is) => up.set({ platform }, is ? 1 : 0),
    text: () => registry.metrics(),
    contentType: registry.contentType,
  };
}

/** A figure by its label, looked up once: with each ask several are counted. */
function atHand<Figure>(find: (label: string) => Figure): (label: string) => Figure {
  const found = new Map<string, Figure>();
  return (label) => {
    const figure = found.get(label) ?? find(label);
    found.set(label, figure);
    return figure;
  };
}
