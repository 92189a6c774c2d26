/** What the operator may want counted, by its name on the dial; the names are the metrics' own. */
export type Counted =
  | 'asks_total'
  | 'replies_lost_total'
  | 'faults_total'
  | 'rate_limited_total'
  | 'server_errors_total'
  | 'reconnects_total'
  | 'events_seen_again_total'
  | 'events_too_old_total'
  | 'sends_refused_total'
  | 'undecryptable_total'
  | 'events_unsound_total'
  | 'gaps_lost_total'
  | 'rooms_left_total'
  | 'reminders_total';

/** Counts what happens. Who reads the counts, and how, is another room's business. */
export interface Watch {
  count(what: Counted, labels?: Readonly<Record<string, string>>): void;
  /** How long an ask took from its event to its reply sent, in seconds. */
  took(platform: string, seconds: number): void;
}

/** A watch that nobody reads. */
export const unwatched: Watch = { count: () => {}, took: () => {} };
