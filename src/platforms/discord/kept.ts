import { z } from 'zod';
import type { Reply } from '../../chat/reply.ts';

/*
 * What the platform keeps of its own across a restart, checked as it is read back: what an older version has
 * kept otherwise counts as not kept.
 */

const filling = z.object({ ask: z.string(), names: z.array(z.string()) });
const choice = filling.extend({ meantFor: z.string(), guild: z.string().optional() });
const standing = z.object({ message: z.string() });

const scope = z.object({ guild: z.string() });

const words = z.array(z.string());
const reply = z.looseObject({
  title: z.string(),
  lines: words,
  table: z.object({ columns: words, rows: z.array(words) }).nullable(),
  notes: words,
  cautions: words,
  choices: z.array(z.looseObject({ label: z.string(), ask: z.string() })),
  pictures: z.array(
    z.looseObject({ name: z.string(), alt: z.string(), of: z.looseObject({ draw: z.string() }) }),
  ),
});
const pages = z.object({ meantFor: z.string(), reply });

const reading =
  <T>(schema: z.ZodType<T>) =>
  (value: unknown): T | null =>
    schema.safeParse(value).data ?? null;

/** The ask of a form, and the names of what is filled in on it. */
export const keptFilling = reading(filling);

/** The ask of a choice, what is filled in first, and whom it is meant for. */
export const keptChoice = reading(choice);

/** The message that stands in a place. */
export const keptStanding = reading(standing);

/** Where the commands are registered. */
export const keptScope = reading(scope);

/** A reply of several pages, and whom it answers. */
export const keptPages = (value: unknown): { readonly meantFor: string; readonly reply: Reply } | null => {
  const read = pages.safeParse(value).data;
  return read ? { meantFor: read.meantFor, reply: read.reply as unknown as Reply } : null;
};
