import type { Path } from '../src/calculator/layouts/garden.ts';
import type { Here } from '../src/chat/command.ts';
import { count, type Figure, inches } from '../src/chat/reply.ts';
import { grouped } from '../src/measure/ruler.ts';
import type { Counted } from './layouts.ts';

/** The figures that every layout has. */
export function layoutFigures({ counted, width, height, edge }: Counted): Record<string, Figure> {
  return {
    total: count(counted.total),
    seams: count(counted.seams),
    setIns: count(counted.setIns),
    seamLength: inches(counted.seamLength * edge),
    width: inches(width),
    height: inches(height),
  };
}

/** The size, and the seams with their length: the two lines that every layout ends on. */
export function layoutLines({ counted, width, height, edge }: Counted, { say }: Here): string[] {
  const setIns = counted.setIns > 0 ? `, ${grouped(counted.setIns)} corners set in` : '';
  return [
    `Finishes at ${say.size(width, height)}.`,
    `${grouped(counted.seams)} seams, ${say.run(counted.seamLength * edge)} of sewing${setIns}.`,
  ];
}

/** The counts by role as rows, those that are none left out. */
export function roleRows({ counted }: Counted, words: Readonly<Record<string, string>>): string[][] {
  return Object.entries(words)
    .filter(([role]) => (counted.byRole[role] ?? 0) > 0)
    .map(([role, said]) => [said, grouped(counted.byRole[role] ?? 0)]);
}

/** What lies between rosettes. */
export const PATH_WORDS: Readonly<Record<Path, string>> = {
  none: 'no path',
  one: 'a shared path',
  own: 'a path to each',
};
