import { createInterface } from 'node:readline';
import { z } from 'zod';
import type { Ask } from '../chat/command.ts';
import type { Room } from '../chat/dispatch.ts';
import { mistake } from '../chat/errors.ts';
import { ok, type Result, wrong } from '../measure/result.ts';
import { askOf, print, statusOf } from './answering.ts';
import { type AskFlags, readMoment, YOU } from './ask-flags.ts';

const NAME = 'a name';

const LINE = z.strictObject({
  ask: z.string({ error: 'words' }),
  as: z.string({ error: NAME }).trim().min(1, { error: NAME }).optional(),
  organiser: z.boolean({ error: 'true or false' }).optional(),
  place: z.string({ error: NAME }).min(1, { error: NAME }).optional(),
  event: z
    .string({ error: 'the event’s id' })
    .min(1, { error: 'the event’s id' })
    .max(200, { error: 'at most 200 characters' })
    .optional(),
  now: z.string({ error: 'a moment' }).optional(),
});

const EXAMPLE = '{"ask": "/cut hexagon 1in", "as": "Ada"}';

/** Answers one ask a line, in order, each reply printed before the next line is read. */
export async function askLines(room: Room, flags: AskFlags): Promise<number> {
  let status = 0;
  for await (const line of createInterface({ input: process.stdin, crlfDelay: Number.POSITIVE_INFINITY })) {
    if (line.trim() === '') continue;
    const ask = readLine(line, flags);
    const reply = ask.ok
      ? await room.answer(ask.value)
      : mistake(ask.problem, { command: '', instead: [EXAMPLE] });
    await print(reply, flags);
    if (statusOf(reply) === 1) status = 1;
  }
  return status;
}

function readLine(line: string, flags: AskFlags): Result<Ask> {
  if (!line.trimStart().startsWith('{')) return ok(askOf(flags, line));
  const given = parsed(line);
  if (given === undefined) return wrong('not-a-line', { got: 'it is not JSON' });
  const read = LINE.safeParse(given);
  if (!read.success) return wrong('not-a-line', { got: whyNot(read.error.issues[0]) });
  const { ask, as = flags.as, organiser, place = flags.place, event = null, now } = read.data;
  const moment = now === undefined ? ok(flags.now) : readMoment(now);
  if (!moment.ok) return wrong('not-a-line', { got: 'its "now" should be a moment, 2026-12-01T10:00:00Z' });
  const may = organiser ?? (as === flags.as ? flags.organiser : as === YOU);
  return ok({ ...askOf({ ...flags, as, organiser: may, place, now: moment.value }, ask), event });
}

function whyNot(issue: z.core.$ZodIssue | undefined): string {
  if (issue?.code !== 'unrecognized_keys')
    return `its "${issue?.path.join('.')}" should be ${issue?.message}`;
  return `I know no "${issue.keys[0]}" in it, only ${Object.keys(LINE.shape).join(', ')}`;
}

function parsed(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    return undefined;
  }
}
