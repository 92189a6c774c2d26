import type { Here } from '../src/chat/command.ts';
import { type Wrong, wrong } from '../src/measure/result.ts';
import { manyWords } from './count-field.ts';

/** How much is laid out, as an example. */
const EXAMPLES: Readonly<Record<string, { readonly value: unknown; readonly words: string }>> = {
  quilt: { value: { width: 60, height: 72 }, words: '60x72in' },
  rosettes: { value: { kind: 'rings', rings: 1 }, words: '7' },
  stars: { value: { kind: 'rings', rings: 1 }, words: '7' },
  blocks: { value: 100, words: '100' },
  side: { value: 8, words: '8' },
  number: { value: 240, words: '240' },
};

/** What is still to be said, each with an example, and her own ask with the first of them. */
function neededWords(needs: readonly string[], { again }: Here): Wrong {
  const [first = ''] = needs;
  return wrong('plan-needs', {
    needs: needs.map((name) => `${name}:${EXAMPLES[name]?.words ?? ''}`),
    instead: again({ [first]: EXAMPLES[first]?.value }),
  });
}

/** What is wrong with a plan, its numbers in the words and units of the asker. */
export function planProblem(found: Wrong, here: Here): Wrong {
  const { say } = here;
  const { code, shape, needs, width, height } = found.problem;
  if (code === 'plan-needs' && Array.isArray(needs)) return neededWords(needs, here);
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
