import type { Repeat } from '../src/calculator/fabric/motif.ts';
import type { Option } from '../src/chat/option.ts';
import { size } from '../src/chat/option-kinds.ts';
import { ok } from '../src/measure/result.ts';

const measures = size('How a print repeats, width x height: one patch is cut round each motif', '4x5in');

/** A repeat by its two measures; a bed is no motif. */
export const motifOption: Option<Repeat, false> = {
  ...measures,
  known: [],
  take(text, context) {
    const taken = measures.take(text, context);
    if (!taken?.ok) return taken;
    const { value, rest } = taken.value;
    return value.bed ? null : ok({ value: { width: value.width, height: value.height }, rest });
  },
  write: ({ width, height }) => measures.write({ width, height }),
};
