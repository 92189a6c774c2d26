/** How much of a layout is of one cloth. */
export interface Cloth {
  readonly name: string;
  readonly pieces: number;
  /** Which rounds or rows it is of: their places in the list, from 0. */
  readonly places: readonly number[];
}

/**
 * Rounds or rows by a list of cloths that is begun again when it ends: round and round. A cloth that is in the
 * list more than once is counted together.
 *
 * @example
 * byCloth([1, 6, 12, 18], ['red', 'blue', 'white']).map((cloth) => cloth.pieces) // [19, 6, 12]
 * byCloth([1, 6, 12], ['red', 'white', 'red'])[0].places // [0, 2]
 */
export function byCloth(counts: readonly number[], cloths: readonly string[]): Cloth[] {
  const found = new Map<string, { pieces: number; places: number[] }>();
  counts.forEach((count, place) => {
    const name = cloths[place % cloths.length]!;
    const cloth = found.get(name) ?? { pieces: 0, places: [] };
    cloth.pieces += count;
    cloth.places.push(place);
    found.set(name, cloth);
  });
  // A cloth whose turn never came is none of it.
  for (const name of cloths) if (!found.has(name)) found.set(name, { pieces: 0, places: [] });
  return [...found].map(([name, { pieces, places }]) => ({ name, pieces, places }));
}
