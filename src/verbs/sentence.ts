import { settingsSentence } from '../config.ts';
import type { Problem } from '../measure/result.ts';
import { storeSentence } from '../store/sentences.ts';

const FLAGS: Readonly<Record<string, (problem: Problem) => string>> = {
  'flag-no-ask': () => "Ask something. For example npm run -s ask -- '/cut hexagon 1in'",
  'flag-one-file': ({ got }) => `One file at a time, not ‘${got}’.`,
  'flag-unread': ({ got, known }) =>
    `${got}. There is ${(known as readonly string[]).map((flag) => `--${flag}`).join(', ')}.`,
  'export-what': () =>
    'Which challenge? For example npm run -s export -- --challenge Spring --out spring.csv',
  'export-format': ({ got }) => `--format is csv or json, not ‘${got}’.`,
  'export-not-written': ({ path }) =>
    `I cannot write ${path}. Look whether its folder is there, may be written and has room, or name another file.`,
  'no-such-challenge': ({ got, guild, known }) =>
    (known as readonly string[]).length === 0
      ? `The guild ${guild} has no challenge. --guild names another.`
      : `The guild ${guild} has no challenge ‘${got}’. It has ${(known as readonly string[]).join(', ')}.`,
  'moment-unread': ({ got }) => `--now is a moment such as 2026-12-01T10:00:00Z, not ‘${got}’.`,
};

/** What the person at the shell is told of settings, flags or the store: what was wrong, and what to write. */
export const sentence = (problem: Problem): string =>
  FLAGS[problem.code]?.(problem) ??
  storeSentence(problem) ??
  settingsSentence(problem) ??
  `That does not work (${problem.code}).`;
