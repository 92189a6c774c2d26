import { isScraps } from '../src/calculator/plan/cloths.ts';
import type { RoleCloth } from '../src/calculator/plan/wish.ts';
import { ok, type Result, wrong } from '../src/measure/result.ts';

/** Parts beside the patches that may be given a cloth; `all` is every part of the top. */
const BESIDE = ['backing', 'binding', 'border', 'all'];

/** What a part may be called, beside its own name and the plural of it. */
const ALSO: Readonly<Record<string, readonly string[]>> = {
  centre: ['center', 'middle'],
  petal: ['rounds', 'round', 'ring'],
  field: ['hexagon', 'hexagons', 'patches', 'top'],
  half: ['halves', 'half-hexagon'],
  between: ['background', 'between the stars'],
  star: ['point'],
  pieces: ['patches', 'piece'],
  backing: ['back'],
  all: ['everything', 'rest'],
};

/** The longest name of a cloth. */
const LONGEST = 40;

/**
 * Reads "centre yellow, petal scraps, path white": each part's name first, or last. A part that is not in the
 * layout, or there twice, is a problem.
 *
 * @example
 * readCloths('centre yellow, white path', ['centre', 'petal', 'path']).value // [{"role":"centre","cloth":"yellow"},{"role":"path","cloth":"white"}]
 * readCloths('sky blue', ['centre', 'petal']).problem.code // "cloth-part-unknown"
 * readCloths('my scraps', ['centre', 'petal']).value // [{"role":"all","cloth":"my scraps"}]
 */
export function readCloths(text: string, roles: readonly string[]): Result<RoleCloth[]> {
  const parts = [...new Set([...roles, ...BESIDE])];
  const spoken = parts
    .flatMap((role) => [role, ...(ALSO[role] ?? [])].map((word) => ({ role, word })))
    .sort((a, b) => b.word.length - a.word.length);
  const cloths: RoleCloth[] = [];
  for (const entry of text.split(/[,;]/).map((one) => one.trim())) {
    if (entry === '') continue;
    const found = readEntry(entry, spoken) ?? forAll(entry, text);
    if (!found) return wrong('cloth-part-unknown', { got: entry, known: parts });
    if (found.cloth.length > LONGEST)
      return wrong('text-too-long', {
        option: 'cloths',
        got: String(found.cloth.length),
        most: String(LONGEST),
      });
    if (cloths.some(({ role }) => role === found.role)) return wrong('cloth-part-twice', { got: found.role });
    cloths.push(found);
  }
  return ok(cloths);
}

const WORD = /^[\p{L}'’-]+$/u;

/** One cloth named alone, with no part, is for all of them: `scraps`, `blue`. */
const forAll = (entry: string, text: string): RoleCloth | null =>
  !/[,;]/.test(text) && (WORD.test(entry) || isScraps(entry)) ? { role: 'all', cloth: entry } : null;

type Spoken = readonly { readonly role: string; readonly word: string }[];

function readEntry(entry: string, spoken: Spoken): RoleCloth | null {
  for (const { role, word } of spoken) {
    const named = word.replace(/[- ]/g, '[- ]?');
    const first = new RegExp(`^(?:the )?${named}(?:e?s)?\\s*[:= ]\\s*(?:(?:in|of|from) )?(.+)$`, 'iu').exec(
      entry,
    );
    if (first?.[1]) return { role, cloth: first[1].trim() };
  }
  for (const { role, word } of spoken) {
    const last = new RegExp(`^(.+?) (?:for )?(?:the )?${word.replace(/[- ]/g, '[- ]?')}(?:e?s)?$`, 'iu').exec(
      entry,
    );
    if (last?.[1]) return { role, cloth: last[1].trim() };
  }
  return null;
}

/** The cloths written as they can be read again. */
export const writeCloths = (cloths: readonly RoleCloth[]): string =>
  cloths.map(({ role, cloth }) => `${role} ${cloth}`).join(', ');
