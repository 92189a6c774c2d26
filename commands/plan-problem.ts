import type { Here } from '../src/chat/command.ts';
import { type Wrong, wrong } from '../src/measure/result.ts';
import { manyWords } from './count-field.ts';

/** What is wrong with a plan, its numbers in the words and units of the asker. */
export function planProblem(found: Wrong, { say }: Here): Wrong {
  const { code, shape, needs, width, height } = found.problem;
  if (code === 'too-many-patches') return manyWords(found);
  if (code === 'no-patch-fits') return wrong(code, { quilt: say.size(Number(width), Number(height)) });
  if (code === 'plan-cloth-narrow') return wrong(code, { cloth: say.plain(Number(width)) });
  if (code === 'patch-wider-than-cloth' && width !== undefined)
    return wrong(code, {
      patch: `${shape} that needs ${say.plain(Number(needs))}`,
      cloth: say.plain(Number(width)),
    });
  return found;
}
