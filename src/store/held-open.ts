import { realpathSync } from 'node:fs';

/*
 * The databases that this process holds open, with how often. A second SQLite library in one process must
 * stay away from them: when it closes the file, the system drops the locks of the first.
 */
const held = new Map<string, number>();

/** Marks the file as held open, until what is returned is called. */
export function holdOpen(file: string): () => void {
  const path = realpathSync(file);
  const change = (by: number) => held.set(path, (held.get(path) ?? 0) + by);
  change(1);
  let holding = true;
  return () => {
    if (holding) change(-1);
    holding = false;
  };
}

export const isHeldOpen = (file: string): boolean => (held.get(realpathSync(file)) ?? 0) > 0;
