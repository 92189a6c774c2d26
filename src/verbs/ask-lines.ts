import { createInterface } from 'node:readline';
import { z } from 'zod';
import type { Ask } from '../chat/command.ts';
import type { Room } from '../chat/dispatch.ts';
import { mistake } from '../chat/errors.ts';
import { ok, type Result, wrong } from '../measure/result.ts';
import { askOf, print, statusOf } from './answering.ts';
import { type AskFlags, readMoment, YOU } from './ask-flags.ts';

const LINE = z.strictObject({
  ask: z.string(),
  as: z.string().trim().min(1).optional(),
  organiser: z.boolean().optional(),
  place: z.string().min(1).optional(),
  event: z.string().min(1).max(200).optional(),
  now: z.string().optional(),
});

/** Answers one ask a line, in order, each reply printed before the next line is read. */
export async function askLines(room: Room, flags: AskFlags): Promise<number> {
  let status = 0;
  for await (const line of createInterface({ input: process.stdin, crlfDelay: Number.POSITIVE_INFINITY })) {
    if (line.trim() === '') continue;
    const ask = readLine(line, flags);
    const reply = ask.ok
      ? await room.answer(ask.value)
      : mistake(ask.problem, { command: '', form: '', example: null });
    await print(reply, flags);
    if (statusOf(reply) === 1) status = 1;
  }
  return status;
}

function readLine(line: string, flags: AskFlags): Result<Ask> {
  if (!line.trimStart().startsWith('{')) return ok(askOf(flags, line));
  const read = LINE.safeParse(parsed(line));
  if (!read.success) return wrong('not-a-line', { got: z.prettifyError(read.error).replaceAll('\n', ' ') });
  const { ask, as = flags.as, organiser, place = flags.place, event = null, now } = read.data;
  const moment = now === undefined ? ok(flags.now) : readMoment(now);
  if (!moment.ok) return moment;
  const may = organiser ?? (as === flags.as ? flags.organiser : as === YOU);
  return ok({ ...askOf({ ...flags, as, organiser: may, place, now: moment.value }, ask), event });
}

function parsed(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    return undefined;
  }
}
