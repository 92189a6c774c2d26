import { parseArgs } from 'node:util';
import { ok, type Result, wrong } from '../measure/result.ts';

/** How one ask from a shell is to be answered. */
export interface AskFlags {
  /** The ask, or `-` for one a line from standard input. */
  readonly words: string;
  readonly json: boolean;
  readonly as: string;
  readonly organiser: boolean;
  readonly place: string;
  readonly data: string | undefined;
  readonly config: string | undefined;
  readonly now: Date | undefined;
  readonly pictures: string | undefined;
}

/** Who asks when nobody is named: the one at the keyboard, an organiser. */
export const YOU = 'you';

const ISO = /^\d{4}-\d{2}-\d{2}(?:T\d{2}:\d{2}(?::\d{2}(?:\.\d{1,9})?)?(?:Z|[+-]\d{2}:?\d{2})?)?$/;

const FLAGS = {
  json: { type: 'boolean' },
  as: { type: 'string' },
  organiser: { type: 'boolean' },
  place: { type: 'string' },
  data: { type: 'string' },
  config: { type: 'string' },
  now: { type: 'string' },
  pictures: { type: 'string' },
} as const;

/** Reads the flags and the ask. Words that come in several arguments are one ask. */
export function readFlags(args: readonly string[]): Result<AskFlags> {
  const parsed = parse(args);
  if (!parsed.ok) return parsed;
  const { values, positionals } = parsed.value;
  const now = values.now === undefined ? ok(undefined) : readMoment(values.now);
  if (!now.ok) return now;
  if (positionals.length === 0) return wrong('flag-no-ask');
  const as = values.as?.trim() || YOU;
  return ok({
    words: positionals.join(' '),
    json: values.json ?? false,
    as,
    organiser: values.organiser ?? as === YOU,
    place: values.place ?? 'home',
    data: values.data || undefined,
    config: values.config || undefined,
    now: now.value,
    pictures: values.pictures,
  });
}

function parse(args: readonly string[]) {
  try {
    return ok(parseArgs({ args: [...args], options: FLAGS, allowPositionals: true }));
  } catch (error) {
    return wrong('flag-unread', {
      got: error instanceof Error ? error.message.split('. ')[0] : '',
      known: Object.keys(FLAGS),
    });
  }
}

/** A moment in ISO form; without a zone it is UTC. */
export function readMoment(text: string): Result<Date> {
  const zoned = /(?:Z|[+-]\d{2}:?\d{2})$/.test(text) || !text.includes('T') ? text : `${text}Z`;
  const moment = new Date(zoned);
  return ISO.test(text) && !Number.isNaN(moment.getTime())
    ? ok(moment)
    : wrong('moment-unread', { got: text });
}
