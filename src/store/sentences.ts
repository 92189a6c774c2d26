import type { Problem } from '../measure/result.ts';

/** What the person who keeps the program running is told when the store cannot be used: what, and what to do. */
const sentences: Readonly<Record<string, (problem: Problem) => string>> = {
  'store-busy': ({ path }) => `Another program is writing to ${path}. Try again when it is done.`,
  'store-bot-runs': ({ path, process, since }) =>
    `A bot is running on ${path} already${process ? ` (process ${process}, since ${since})` : ''}. Stop it first, or name another folder as "data" in the settings.`,
  'store-restoring': ({ path }) => `A backup is being restored to ${path}. Try again when it is done.`,
  'store-in-use': ({ path }) => `Somebody is asking with ${path} just now. Try again when they are done.`,
  'store-read-only': ({ path }) =>
    `I may not write in ${path}. Allow it, or name another folder as "data" in the settings.`,
  'store-no-access': ({ path }) =>
    `I may not look into ${path}. Allow it, or name another folder as "data" in the settings.`,
  'store-full': ({ path }) =>
    `The disk is full, so nothing more can be kept in ${path}. Make room and try again.`,
  'store-damaged': ({ path }) => `The database ${path} is damaged. Put it aside and restore the last backup.`,
  'store-not-a-database': ({ path }) =>
    `${path} is not a database. Name another file, or move this one away and a new one is made.`,
  'store-foreign': ({ path }) =>
    `${path} is another program's database, and I leave it as it is. Name another file.`,
  'store-newer': ({ path, has, knows }) =>
    `${path} was made by a newer version of this program (step ${has}; this one knows ${knows}). Update the program.`,
  'store-none': ({ path }) => `There is no ${path} yet, so there is nothing to copy or to check.`,
  'store-empty': ({ path }) => `Nothing is kept in ${path}: it is empty.`,
  'store-same-file': ({ path }) => `${path} is the database itself. Name a backup of it.`,
  'store-is-a-folder': ({ path }) => `${path} is a folder, not a database. Name a file in it.`,
  'store-unreachable': ({ path }) =>
    `I cannot open ${path}. Look whether its folder is there, or name another.`,
  'store-disk': ({ path }) => `The disk failed while I used ${path}. Look at the disk, then try again.`,
  'store-failed': ({ path }) => `The database ${path} could not do what I asked. The log says why.`,
  'store-not-served': ({ kind }) =>
    `A ${kind} database is not served yet. Write "store": "sqlite" in the settings, or leave it out.`,
  'store-trace-left': ({ path, why }) =>
    `A member was forgotten, but traces may be left in ${path} (${why}). I try again after the next thing kept.`,
  'store-not-pruned': ({ path, why }) => `Old answers could not be cleared from ${path} (${why}).`,
  'store-bad-row': ({ table, guild, names }) =>
    `Left out a row of ${table} in ${guild} that makes no sense${names ? `: ${names}` : ''}.`,
};

/** The sentence for a problem of the store, or undefined when the problem is another's. */
export const storeSentence = (problem: Problem): string | undefined => sentences[problem.code]?.(problem);
