import { type Allotment, HAIR } from './swap-allotment.ts';
import { makeFair } from './swap-fair.ts';
import type { Path, Paths } from './swap-paths.ts';

/** So many members long may a round of favours be: she sends, so she is sent, so another is sent. */
const LONGEST_ROUND = 5;

/** So many senders are tried for one wish. */
const TRIED = 4;

/**
 * Gives more where it can be given fairly: straight away where a sender has room, and else in a round, where
 * each who sends more is sent more by the next, until one has room. All or nothing: a round that does not close
 * is taken back.
 */
export function giveMore(all: Allotment, paths: Paths): void {
  const rounds = new Rounds(all, paths);
  for (let more = true; more && paths.looks > 0; ) {
    more = false;
    for (const want of all.wants.keys()) if (rounds.grow(want)) more = true;
  }
}

/**
 * Tries without each link in turn: it is left out, the rest made fair and given more, and the better of both
 * kept. Finds what no round can, because something must first be given up for it.
 */
export function giveOtherwise(all: Allotment, paths: Paths): void {
  for (let better = true; better && paths.looks > 0; ) {
    better = false;
    for (const link of all.links()) {
      if (paths.looks <= 0) return;
      const before = { area: all.area, links: all.links() };
      if (!before.links.some(({ offer, want }) => offer === link.offer && want === link.want)) continue;
      all.link(link.offer, link.want, -link.count);
      makeFair(all, paths);
      giveMore(all, paths);
      if (all.area > before.area + HAIR) better = true;
      else all.setLinks(before.links);
    }
  }
}

/** Somebody who receives nothing is given one piece by somebody who can spare it: the area stays the same. */
export function giveToAll(all: Allotment, paths: Paths): void {
  for (const [want, { who, left, area }] of all.wants.entries()) {
    if (left === 0 || all.received[who]! > 0) continue;
    const path = paths.find(want, {
      want: (lost) => {
        const from = all.wants[lost]!.who;
        return all.received[from]! >= 2 * area && all.room(from) >= area - HAIR;
      },
    });
    if (path) paths.give(path, 1);
  }
}

interface Given {
  readonly path: Path;
  readonly count: number;
}

class Rounds {
  readonly #all: Allotment;
  readonly #paths: Paths;
  readonly #wantsOf: ReadonlyMap<number, number[]>;
  /** What was given since the round began, to be taken back if it does not close. */
  #given: Given[] = [];

  constructor(all: Allotment, paths: Paths) {
    this.#all = all;
    this.#paths = paths;
    this.#wantsOf = Map.groupBy(all.wants.keys(), (want) => all.wants[want]!.who);
  }

  /** Gives a wish more, if a round can be closed by it. */
  grow(want: number): boolean {
    const tried = new Set<number>();
    while (this.#all.wants[want]!.left > 0 && tried.size < TRIED && this.#paths.looks > 0) {
      const path = this.#nextSender(want, tried, NOBODY);
      if (!path) return false;
      const sender = this.#senderOf(path);
      tried.add(sender);
      for (const count of new Set([path.most, Math.ceil(path.most / 2), 1])) {
        this.#given = [];
        this.#give(path, count);
        if (this.#makeUpFor(sender, LONGEST_ROUND, new Set([sender]))) return true;
        this.#takeBackTo(0);
      }
    }
    return false;
  }

  /** A path from a sender not tried yet: from one who has room, else from one who is not in the round already. */
  #nextSender(want: number, tried: ReadonlySet<number>, inRound: ReadonlySet<number>): Path | null {
    const { offers, wants } = this.#all;
    const untried = (offer: number) => !tried.has(offers[offer]!.who);
    const ready = this.#paths.find(want, {
      offer: (offer) => untried(offer) && this.#all.maySend(offers[offer]!.who, wants[want]!.area),
    });
    if (ready) return ready;
    return this.#paths.find(want, {
      offer: (offer) => untried(offer) && !inRound.has(offers[offer]!.who),
    });
  }

  #senderOf({ offer = 0 }: Path): number {
    return this.#all.offers[offer]!.who;
  }

  /** Whether she can be brought up to where she must be, by sending her more. */
  #makeUpFor(who: number, depth: number, inRound: ReadonlySet<number>): boolean {
    if (this.#all.room(who) >= -HAIR) return true;
    if (depth === 0 || this.#paths.looks <= 0) return false;
    return (this.#wantsOf.get(who) ?? []).some(
      (want) => this.#all.wants[want]!.left > 0 && this.#sendHerMore(want, depth, inRound),
    );
  }

  #sendHerMore(want: number, depth: number, inRound: ReadonlySet<number>): boolean {
    const { who } = this.#all.wants[want]!;
    const mark = this.#given.length;
    if (this.#spare(want) && this.#makeUpFor(who, depth - 1, inRound)) return true;
    this.#takeBackTo(mark);
    const tried = new Set<number>();
    while (tried.size < TRIED) {
      const path = this.#nextSender(want, tried, inRound);
      if (!path) return false;
      const sender = this.#senderOf(path);
      tried.add(sender);
      this.#give(path, Math.min(path.most, this.#short(want)));
      const round = new Set([...inRound, sender]);
      if (this.#makeUpFor(sender, depth - 1, round) && this.#makeUpFor(who, depth - 1, round)) return true;
      this.#takeBackTo(mark);
    }
    return false;
  }

  /** Lets somebody who has room give up pieces for this wish. */
  #spare(want: number): boolean {
    const { who, area } = this.#all.wants[want]!;
    const roomOf = (lost: number) => this.#all.room(this.#all.wants[lost]!.who);
    const path = this.#paths.find(want, {
      want: (lost) => this.#all.wants[lost]!.who !== who && roomOf(lost) >= area - HAIR,
    });
    if (path?.lost === undefined) return false;
    this.#give(
      path,
      Math.min(path.most, this.#short(want), Math.max(1, Math.floor(roomOf(path.lost) / area + 1e-9))),
    );
    return true;
  }

  /** So many pieces would bring the wish's member up to where she must be. */
  #short(want: number): number {
    const { who, area } = this.#all.wants[want]!;
    return Math.max(1, Math.ceil(-this.#all.room(who) / area - 1e-9));
  }

  #give(path: Path, count: number): void {
    this.#paths.give(path, count);
    this.#given.push({ path, count });
  }

  #takeBackTo(mark: number): void {
    while (this.#given.length > mark) {
      const { path, count } = this.#given.pop()!;
      this.#paths.takeBack(path, count);
    }
  }
}

const NOBODY: ReadonlySet<number> = new Set();
