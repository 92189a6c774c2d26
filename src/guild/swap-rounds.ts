/**
 * What an even swap among `members` comes to, where each gives `each` pieces to every other.
 *
 * @example
 * evenSwap(12, 10) // {"makePerMember":110,"exchanged":1320}
 */
export const evenSwap = (
  members: number,
  each: number,
): { readonly makePerMember: number; readonly exchanged: number } => ({
  makePerMember: each * (members - 1),
  exchanged: each * members * (members - 1),
});

/** One member sends to another, each by her place in the list, from 0. */
export interface Sending {
  readonly from: number;
  readonly to: number;
}

/**
 * Who sends to whom, round by round: in round k each sends to the one k places on. In every round each sends
 * once and receives once, nobody to herself; after all of them everyone has sent to everyone once.
 *
 * @example
 * swapRounds(3) // [[{"from":0,"to":1},{"from":1,"to":2},{"from":2,"to":0}],[{"from":0,"to":2},{"from":1,"to":0},{"from":2,"to":1}]]
 */
export function swapRounds(members: number): Sending[][] {
  const around = Array.from({ length: members }, (_, from) => from);
  return around.slice(1).map((k) => around.map((from) => ({ from, to: (from + k) % members })));
}

/**
 * The rounds that are left when some sendings are done, or when members came later or stayed away: the rounds
 * of those who are in now, without what has been sent. Rounds in which nothing is left are not there.
 *
 * @example
 * roundsLeft(['Ada', 'Bea', 'Cora'], (from, to) => from === 'Ada' && to === 'Bea').map((round) => round.length) // [2, 3]
 */
export function roundsLeft(
  members: readonly string[],
  done: (from: string, to: string) => boolean,
): { readonly from: string; readonly to: string }[][] {
  return swapRounds(members.length)
    .map((round) =>
      round
        .map(({ from, to }) => ({ from: members[from]!, to: members[to]! }))
        .filter(({ from, to }) => !done(from, to)),
    )
    .filter((round) => round.length > 0);
}
