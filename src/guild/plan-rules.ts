import type { Member } from '../chat/command.ts';
import type { KeptPlan } from './plan-facts.ts';

/** Plans that one guild may keep. */
export const MOST_PLANS = 200;

/** Characters of a plan's name. */
export const LONGEST_PLAN_NAME = 60;

/**
 * A name as it is compared: capitals, wide letters and doubled blanks make no other plan of it.
 *
 * @example
 * planKey('  Spring  GARDEN ') // "spring garden"
 * planKey('Ｓｐｒｉｎｇ') // "spring"
 */
export const planKey = (name: string): string =>
  name.normalize('NFKC').toLowerCase().replace(/\s+/gu, ' ').trim();

/** A plan is changed or removed by the member who keeps it, and by organisers. */
export const mayChange = (
  { id, organiser }: Pick<Member, 'id' | 'organiser'>,
  { owner }: KeptPlan,
): boolean => organiser || (owner !== '' && owner === id);
