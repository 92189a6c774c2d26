import type { AnyOption, Values } from '../src/chat/option.ts';
import type { ReplyChoice } from '../src/chat/reply.ts';
import { planOptions } from './plan-options.ts';

type Planned = Values<typeof planOptions>;

/** The finished size of the patches as a count is told it. */
interface SizeSaid {
  readonly size?: number;
  readonly edge?: number;
  readonly flats?: number;
  readonly corners?: number;
}

/** From here up, in inches, a size may be meant otherwise than along one side; what it was taken for is said. */
const DOUBTFUL_FROM = 3;

/** The size in the words of a plan; nothing where none was said. */
function sized({ size, edge, flats, corners }: SizeSaid): Partial<Planned> {
  if (flats !== undefined) return { size: flats, measure: 'flats' };
  if (corners !== undefined) return { size: corners, measure: 'corners' };
  const side = size ?? edge;
  if (side === undefined) return {};
  return side < DOUBTFUL_FROM ? { size: side } : { size: side, measure: 'edge' };
}

/**
 * What was counted, worked out whole: the ask of /plan for the same layout.
 *
 * @example
 * planChoice({ layout: 'star', side: 4 }, { size: 1 }).ask // "/plan layout:star size:1in side:4"
 */
export function planChoice(layout: Partial<Planned>, said: SizeSaid): ReplyChoice {
  const values: Partial<Record<string, unknown>> = { ...layout, ...sized(said) };
  const words = Object.entries(planOptions as Record<string, AnyOption>)
    .filter(([key]) => values[key] !== undefined)
    .map(([key, option]) => `${key}:${option.write(values[key])}`);
  return { label: 'The whole plan: cloth, hours, shopping list', ask: ['/plan', ...words].join(' ') };
}

/** More than this of an option is not read. */
const LONGEST = 400;

/** The cloths of a layout's rounds, each named for its part; nothing where they were not named, or are too many. */
export function roundCloths(
  roles: readonly string[],
  colours: readonly string[] | undefined,
): Partial<Planned> {
  if (!colours) return {};
  const cloths = roles.map((role, i) => `${role} ${colours[i % colours.length]}`).join(', ');
  return cloths.length > LONGEST ? {} : { cloths };
}
