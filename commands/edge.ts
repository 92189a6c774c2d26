import type { Here } from '../src/chat/command.ts';
import { bare, usually } from '../src/chat/option.ts';
import { length } from '../src/chat/option-kinds.ts';
import { type Reply, reply } from '../src/chat/reply.ts';
import { INCHES } from '../src/measure/length.ts';
import { ok, type Result, wrong } from '../src/measure/result.ts';
import { CORNERS, FLATS, followed, measured } from './measured.ts';

/** The size of the patches of a layout: the finished side, flat to flat or point to point. */
export const edgeOptionsOf = (nouns: RegExp) => ({
  size: usually(bare(followed(length('The finished side of one patch'), nouns)), '1in, said in the reply'),
  edge: length('The same, said outright'),
  flats: measured(length('The patch’s size, flat to flat'), FLATS),
  corners: measured(length('The patch’s size, point to point'), CORNERS),
});

/** Nothing follows: in these forms the noun says something of its own. */
export const edgeOptions = edgeOptionsOf(/^(?!)/);
export const hexagonEdge = edgeOptionsOf(/^[\s-]*(?:hexagons?|hex(?:ies?|es|y)?|patch(?:es)?)\b/i);
export const diamondEdge = edgeOptionsOf(/^[\s-]*(?:diamonds?|patch(?:es)?)\b/i);

interface EdgeValues {
  readonly size?: number;
  readonly edge?: number;
  readonly flats?: number;
  readonly corners?: number;
}

/** What each measure of a patch is in sides. A diamond's flats are its height; it has no point to point here. */
const IN_EDGES = {
  hexagon: { flats: Math.sqrt(3), corners: 2 },
  diamond: { flats: Math.sqrt(3) / 2, corners: Math.sqrt(3) },
} as const;

export interface Edge {
  readonly edge: number;
  readonly assumed: readonly string[];
  readonly otherwise: Reply['choices'];
}

const DOUBTFUL_FROM = 3;

/** The finished side of a layout's patches: said, taken as 1 in, or asked back where it may be flat to flat. */
export function askedEdge(
  values: EdgeValues,
  here: Here,
  of: keyof typeof IN_EDGES,
): Result<Edge> | { readonly asks: Reply } {
  const said = (['size', 'edge', 'flats', 'corners'] as const).filter((name) => values[name] !== undefined);
  if (said.length > 1) return wrong('size-twice', { got: said.join(', ') });
  const [name] = said;
  if (!name) return ok({ edge: 1, assumed: [`${here.say.plain(1)} side`], otherwise: [] });
  const value = values[name] ?? 0;
  if (name === 'flats' || name === 'corners')
    return ok({ edge: value / IN_EDGES[of][name], assumed: [], otherwise: [] });
  if (name === 'edge' || value < DOUBTFUL_FROM - 1e-9) return ok({ edge: value, assumed: [], otherwise: [] });
  const readings = of === 'hexagon' ? READINGS : READINGS.slice(0, 2);
  const choices = readings.map(([key, words]) => ({
    label: `${here.say.plain(value)} ${words}`,
    ask: here.again({ size: null, [key]: value }),
  }));
  if (!here.bare.has('size'))
    return ok({ edge: value, assumed: ['the size is one side'], otherwise: choices.slice(1) });
  return {
    asks: reply({
      title: `${here.say.plain(value)} ${of}s: which way?`,
      asks: `Is ${here.say.plain(value)} ${readings.map(([, words]) => (words === 'side' ? 'the side' : words)).join(', or ')}?`,
      choices,
    }),
  };
}

const READINGS = [
  ['edge', 'side'],
  ['flats', 'flat to flat'],
  ['corners', 'point to point'],
] as const;

/** A whole number by itself, with no unit behind it and no other number near. */
const LONE = /(?<![\d.,/:=x-])(?<!\d\s)(\d{1,2})(?![\d.,/]|\s+\d|\s*(?:in\b|inch|["'″′]|cm|mm|ft|x\s*\d))/i;

/**
 * The number that was read as a size though it may say how many: "/count rosette 3" is as likely of 3 rounds.
 * Null where the size was said with its name or its unit.
 */
export function loneNumber({ size }: EdgeValues, { typed, bare: nameless, defaults }: Here): number | null {
  if (size === undefined || !nameless.has('size') || typeof typed !== 'string') return null;
  const said = Number(LONE.exec(typed)?.[1] ?? Number.NaN);
  return Math.abs(said * INCHES[defaults.unit.value] - size) < 1e-6 ? said : null;
}

/** A question which way a size is meant, with another reading of the number before the sizes. */
export const orElse = (asks: Reply, ask: string, words: string): Reply =>
  reply({
    ...asks,
    asks: `Is that ${words}, or patches of this size?`,
    choices: [{ label: words, ask }, ...asks.choices],
  });
