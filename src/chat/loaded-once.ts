import type { Command, CommandList } from './command.ts';

/** The same list, each command loaded once and then at hand: looking up a loaded module again takes its time. */
export function loadedOnce(commands: CommandList): CommandList {
  const loaded = new Map<string, Promise<Command>>();
  return Object.fromEntries(
    Object.entries(commands).map(([name, load]) => [
      name,
      () => {
        const at = loaded.get(name) ?? load();
        loaded.set(name, at);
        return at;
      },
    ]),
  );
}
