import type { Facts } from '../../src/chat/facts.ts';
import { openStore, type Store } from '../../src/store/open.ts';

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
  return new Proxy({} as Facts, {
    get: (_, name) => ({ together, forgetGuild })[String(name)] ?? slice(String(name)),
  });
}
