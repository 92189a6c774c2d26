import type { Problem } from '../measure/result.ts';
import { type Reply, reply } from './reply.ts';
import { WORDINGS } from './wordings.ts';

/** Where the mistake was made, for the lines that show what to type instead. */
export interface MistakeContext {
  readonly command: string;
  /** Asks that work: this one put right where that can be told, or examples. */
  readonly instead: readonly string[];
}

/**
 * The reply to a mistake.
 *
 * @example
 * mistake({ code: 'size-missing', example: 'size:1in' }, { command: 'cut', instead: [] }).error.code // "size-missing"
 * mistake({ code: 'nothing-asked' }, { command: '', instead: ['/help'] }).lines // ["There is nothing to answer yet.", "`/help`"]
 */
export function mistake(problem: Problem, { command, instead }: MistakeContext): Reply {
  const wording = WORDINGS[problem.code];
  const sentence = (wording?.(problem, command) ?? `That does not work (${problem.code}).`)
    .replace(/ {2,}/g, ' ')
    .trim();
  const lines = [sentence, ...instead.map((ask) => `\`${ask}\``)];
  return refusal({ command, title: 'Not yet', lines, code: problem.code });
}

/** The codes that have a sentence, so that a test can see that none lacks one. */
export const WORDED: ReadonlySet<string> = new Set(Object.keys(WORDINGS));

/** The reply to a fault of ours: nothing of it but a short reference that the operator's log has too. */
export function fault(command: string, reference: string): Reply {
  const line = `That went wrong on my side, not yours. Nothing was changed. Tell an organiser: reference ${reference}.`;
  return refusal({ command, title: 'My fault', lines: [line], code: 'fault' });
}

/** What a member is told when the facts are out of reach; what is wrong with them is for the operator's log. */
const TROUBLES: Readonly<Record<string, string>> = {
  'store-busy': 'Somebody else is just being answered. Ask again in a moment.',
  'store-full': 'I have no room left to keep anything.',
  'store-read-only': 'I may not write where things are kept.',
  'store-restoring': 'A backup is just being put back. Ask again in a moment.',
};

/** The reply when the facts are out of reach: no mistake of the member, and nothing that she asked was done. */
export function trouble({ code }: Problem, command: string, reference: string): Reply {
  const what = TROUBLES[code] ?? 'I cannot reach what is kept just now.';
  const line = `${what} Nothing was changed. If it stays so, tell an organiser: reference ${reference}.`;
  return refusal({ command, title: 'Not now', lines: [line], code: 'fault' });
}

/** The reply to an event that was answered before, where that answer cannot be read any more. */
export const answeredBefore = (command: string): Reply =>
  reply({
    command,
    title: 'Answered before',
    lines: ['I did that already, and have not done it twice.'],
    audience: 'asker',
  });

interface Refusal {
  readonly command: string;
  readonly title: string;
  readonly lines: readonly string[];
  readonly code: string;
}

const refusal = ({ command, title, lines, code }: Refusal): Reply =>
  reply({ command, title, lines, error: { code, message: lines.join(' ') }, audience: 'asker' });
