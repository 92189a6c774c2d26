import type { Recipe } from './draw.ts';

type Draw = (recipe: Recipe) => Promise<Uint8Array>;

/** So many bytes of drawings are kept at hand: some two hundred pictures of a patch. */
const MOST_BYTES = 8 * 1024 * 1024;

/**
 * The same drawing, with what was drawn last kept at hand: a guild asks for the same few sizes again and again,
 * and a recipe always gives the same picture. Those asked for longest ago go first when there are too many.
 */
export function drawnBefore(draw: Draw, mostBytes = MOST_BYTES): Draw {
  const kept = new Map<string, Uint8Array>();
  const begun = new Map<string, Promise<Uint8Array>>();
  let bytes = 0;

  function keep(key: string, picture: Uint8Array): Uint8Array {
    if (picture.length > mostBytes) return picture;
    kept.set(key, picture);
    bytes += picture.length;
    for (const [oldest, { length }] of kept) {
      if (bytes <= mostBytes) break;
      kept.delete(oldest);
      bytes -= length;
    }
    return picture;
  }

  function begin(key: string, recipe: Recipe): Promise<Uint8Array> {
    const drawing = draw(recipe)
      .then((picture) => keep(key, picture))
      .finally(() => begun.delete(key));
    begun.set(key, drawing);
    return drawing;
  }

  return async (recipe) => {
    const key = JSON.stringify(recipe);
    const before = kept.get(key);
    if (before) {
      kept.delete(key);
      kept.set(key, before);
      return before;
    }
    return begun.get(key) ?? begin(key, recipe);
  };
}
