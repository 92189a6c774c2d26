import type { SwapParcel, Swapper } from './swap-facts.ts';
import { areaOf } from './swap-plan.ts';

/**
 * How a parcel stands: still to be sent; on its way; come; no longer to be sent, because one of the two is out;
 * or to be sent back, because the one it went to is out and it has not come.
 */
export type Standing = 'to send' | 'on its way' | 'come' | 'dropped' | 'to send back';

/** How a parcel stands while these are in the swap. */
export function standingOf(
  { from, to, sentAt, receivedAt }: SwapParcel,
  isIn: ReadonlySet<string>,
): Standing {
  if (receivedAt !== null) return 'come';
  if (sentAt !== null) return isIn.has(to) ? 'on its way' : 'to send back';
  return isIn.has(from) && isIn.has(to) ? 'to send' : 'dropped';
}

export const membersIn = (people: readonly Swapper[]): Set<string> =>
  new Set(people.filter(({ state }) => state === 'in').map(({ member }) => member));

/** How one member stands at the end of a swap. Areas, square inches. */
export interface Account {
  readonly member: string;
  readonly name: string;
  readonly state: Swapper['state'];
  readonly sent: number;
  readonly toSend: number;
  readonly come: number;
  readonly onItsWay: number;
  readonly toCome: number;
  /** By how much what has come and will come falls short of what she must receive for what she has sent. */
  readonly short: number;
}

/** The settling list: every member of the swap, in the order in which they came. */
export function accounts(
  people: readonly Swapper[],
  parcels: readonly SwapParcel[],
  share: number,
): Account[] {
  const isIn = membersIn(people);
  const standing = parcels.map((parcel) => ({ ...parcel, is: standingOf(parcel, isIn) }));
  const sum = (of: typeof standing) => of.reduce((area, { good, count }) => area + areaOf(good, count), 0);
  return people.map(({ member, name, state }) => {
    const hers = standing.filter(({ from }) => from === member);
    const forHer = standing.filter(({ to }) => to === member);
    const sent = sum(hers.filter(({ is, sentAt }) => sentAt !== null && is !== 'to send back'));
    const come = sum(forHer.filter(({ is }) => is === 'come'));
    const onItsWay = sum(forHer.filter(({ is }) => is === 'on its way'));
    const toCome = sum(forHer.filter(({ is }) => is === 'to send'));
    return {
      ...{ member, name, state, sent, come, onItsWay, toCome },
      toSend: sum(hers.filter(({ is }) => is === 'to send')),
      short: Math.max(0, (1 - share) * sent - come - onItsWay - toCome),
    };
  });
}
