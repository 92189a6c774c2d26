import type { Problem } from '../measure/result.ts';
import { readingOnly } from './peek-file.ts';
import { survey } from './survey.ts';
import { codeOf, storeProblem } from './trouble.ts';

/** Why a peek saw nothing. What is no trouble of the database is thrown on. */
export function peekProblems(thrown: unknown, file: string): readonly Problem[] {
  if (codeOf(thrown) === 'SQLITE_ERROR') return missingTable(file);
  const problem = storeProblem(thrown, file);
  if (!problem) throw thrown;
  return [problem];
}

/** A database that is empty or older has nothing yet, which is no problem; a newer or another's is one. */
function missingTable(file: string): readonly Problem[] {
  try {
    const taken = readingOnly(file, (database) => survey(database, file));
    return taken.ok ? [] : [taken.problem];
  } catch (thrown) {
    return [storeProblem(thrown, file) ?? { code: 'store-failed', path: file }];
  }
}
