import { dayAfter, monthAfter } from './days.ts';
import type { Every, MonthBlock } from './month-facts.ts';

/**
 * The day of slot i, the first being 0.
 *
 * @example
 * dayOfSlot('2027-01-31', 'month', 1) // "2027-02-28"
 * dayOfSlot('2027-01-04', 'week', 3) // "2027-01-25"
 */
export function dayOfSlot(first: string, every: Every, i: number): string {
  if (every === 'month') return monthAfter(first, i);
  return dayAfter(first, i * { day: 1, week: 7, 'two-weeks': 14 }[every]);
}

/** A block before it has a day. */
export type Undated = Omit<MonthBlock, 'slot' | 'opens' | 'block'>;

const NOTHING: Undated = { words: 'catch up', pieces: [], inside: 0, joining: 0, width: 0, height: 0 };

/**
 * Blocks in order, each with its day. After every `catchUp` blocks a slot is left free to catch up; 0 leaves
 * none free.
 */
export function scheduled(
  blocks: readonly Undated[],
  { first, every, catchUp }: { first: string; every: Every; catchUp: number },
): MonthBlock[] {
  const slots: MonthBlock[] = [];
  const put = (block: Undated, number: number | null) =>
    slots.push({
      ...block,
      slot: slots.length + 1,
      opens: dayOfSlot(first, every, slots.length),
      block: number,
    });
  blocks.forEach((block, i) => {
    put(block, i + 1);
    if (catchUp > 0 && (i + 1) % catchUp === 0) put(NOTHING, null);
  });
  return slots;
}
