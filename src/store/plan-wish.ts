import { z } from 'zod';
import type { PlanWish } from '../guild/plan-facts.ts';
import { isKnownShape } from '../guild/plan-shape.ts';

const length = z.number().positive().max(100_000);
const count = z.number().int().positive().max(10_000_000);
const share = z.number().min(0).max(1);
const words = z.string().min(1).max(100);

const arrangement = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('rings'), rings: z.number().int().min(0).max(1000) }),
  z.strictObject({
    kind: z.literal('rows'),
    rows: count,
    perRow: count,
    second: z.union([z.literal(1), z.literal(-1)]).optional(),
  }),
]);

/** A wish as it lies in a row. What a later version adds to it is left out by an earlier one, not refused. */
const WISH = z.object({
  layout: z.enum(['field', 'rosette', 'garden', 'star', 'stars', 'diamonds', 'blocks', 'pieces']),
  edge: length,
  quilt: z.object({ width: length, height: length, bed: words.optional() }).optional(),
  shape: words.refine(isKnownShape).optional(),
  number: count.optional(),
  rosettes: arrangement.optional(),
  stars: arrangement.optional(),
  blocks: count.optional(),
  rounds: z.number().int().min(0).max(1000).optional(),
  path: z.enum(['none', 'one', 'own', 'diamonds']).optional(),
  outer: z.boolean().optional(),
  set: z.enum(['diamonds', 'hexagons']).optional(),
  side: count.optional(),
  sides: z.enum(['whole', 'cover', 'straight']).optional(),
  rows: z.enum(['across', 'down']).optional(),
  cloths: z.array(z.object({ role: words, cloth: words })).max(100),
  seam: z.number().min(0).max(10),
  width: length,
  spare: share,
  shrink: share.max(0.9),
  method: z.enum(['running', 'whip']),
  stitches: z.number().positive().max(100),
  pace: z.number().positive().max(600).optional(),
  paceFrom: z.literal('logs').optional().catch(undefined),
  hours: z.number().positive().max(168),
  start: z.iso.date(),
  border: length.optional(),
});

/** The wish in one row, or undefined where it makes no sense. */
export function readWish(text: string): PlanWish | undefined {
  try {
    const read = WISH.safeParse(JSON.parse(text));
    return read.success ? (read.data as PlanWish) : undefined;
  } catch {
    return undefined;
  }
}
