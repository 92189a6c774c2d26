import { CATALOGUE } from '../calculator/shapes/catalogue.ts';

/**
 * Whether a plan's loose pieces are of a shape that is known.
 *
 * @example
 * isKnownShape('kite') // true
 * isKnownShape('toString') // false
 */
export const isKnownShape = (name: string): boolean => Object.hasOwn(CATALOGUE, name);
