import type { Facts } from '../../src/chat/facts.ts';
import { openStore, type Store } from '../../src/store/open.ts';

const SLICES: readonly (keyof Facts)[] = [
  ...(['defaults', 'answered', 'notes', 'keptOf', 'swaps'] as const),
  ...(['plans', 'challenges', 'months', 'reminders'] as const),
];

/** Facts kept in this process only, opened with the first call, for tests that are not about how facts are kept. */
export function memoryFacts(): Facts {
  let opening: Promise<Store> | undefined;
  const opened = () => {
    opening ??= openStore(':memory:').then((store) => {
      if (!store.ok) throw new Error(store.problem.code);
      return store.value;
    });
    return opening;
  };
  const together: Facts['together'] = async (work) => (await opened()).together(work);
  const forgetGuild: Facts['forgetGuild'] = async (guild) => (await opened()).forgetGuild(guild);
  const slice = (name: string) =>
    new Proxy(
      {},
      {
        get:
          (_, call) =>
          async (...given: unknown[]) => {
            const calls = (await opened())[name as 'answered'] as unknown as Record<
              PropertyKey,
              (...given: unknown[]) => unknown
            >;
            return calls[call]?.(...given);
          },
      },
    );
  const slices = Object.fromEntries(SLICES.map((name) => [name, slice(name)]));
  return { ...slices, together, forgetGuild } as unknown as Facts;
}
