import type { Allotment } from './swap-allotment.ts';

/** One link that changes along a path: pieces of an offer given to a wish, or taken back from it. */
interface Step {
  readonly offer: number;
  readonly want: number;
  readonly give: boolean;
}

/** Where a path may end: at an offer that has pieces left, or at a wish that gives up what it had. */
export interface Ends {
  offer?(offer: number): boolean;
  want?(want: number): boolean;
  /** Wishes that need not be looked at: nothing is to be had from there. */
  readonly hopeless?: ReadonlySet<number>;
}

/** A way to give a wish more by passing pieces on: each wish on the way is met by another offer than before. */
export interface Path {
  readonly steps: readonly Step[];
  /** The offer that gives more, or the wish that gives up. */
  readonly offer?: number;
  readonly lost?: number;
  /** How many pieces can be passed on at once. */
  readonly most: number;
}

/** How far one search has looked through a list of options, which many wishes share. */
interface Scanned {
  search: number;
  /** Options passed over because they are the first wish's own member's. */
  own: number[];
}

/**
 * Finds ways to pass pieces on. Breadth first, lines in their order: the same ways for the same swap. A list of
 * options is looked through once in a search, however many wishes share it.
 */
export class Paths {
  readonly #all: Allotment;
  readonly #scanned = new Map<readonly number[], Scanned>();
  readonly #offerSeen: Int32Array;
  readonly #wantSeen: Int32Array;
  readonly #cameFromWant: Int32Array;
  readonly #cameFromOffer: Int32Array;
  #search = 0;
  /** How many more lines may be looked at: a bound on the time that is the same on every machine. */
  looks: number;

  constructor(all: Allotment, looks: number) {
    this.#all = all;
    this.#offerSeen = new Int32Array(all.offers.length);
    this.#wantSeen = new Int32Array(all.wants.length);
    this.#cameFromWant = new Int32Array(all.offers.length);
    this.#cameFromOffer = new Int32Array(all.wants.length);
    for (const { options } of all.wants) this.#scanned.set(options, { search: 0, own: [] });
    this.looks = looks;
  }

  /** The shortest path that gives `want` more, or null. */
  find(want: number, ends: Ends): Path | null {
    this.#search++;
    return this.#walk(want, ends);
  }

  /**
   * Gives each wish all that it can be given by passing pieces on, until no wish can be given more. Lines that a
   * search without success came by are passed over from then on: what they could not reach they never will.
   */
  giveAll(): void {
    const hopeless = new Set<number>();
    for (const want of this.#all.wants.keys())
      while (this.#all.wants[want]!.left > 0 && !hopeless.has(want)) {
        const path = this.find(want, { offer: () => true, hopeless });
        if (path) this.give(path, path.most);
        else for (const seen of this.#queue) hopeless.add(seen);
      }
  }

  /** The wishes that the last search came by. */
  #queue: number[] = [];

  #walk(start: number, ends: Ends): Path | null {
    this.#queue = [start];
    this.#wantSeen[start] = this.#search;
    for (let at = 0; at < this.#queue.length && this.looks >= 0; at++) {
      const want = this.#queue[at]!;
      for (const offer of this.#unseenBy(want)) {
        this.looks--;
        this.#offerSeen[offer] = this.#search;
        this.#cameFromWant[offer] = want;
        if (this.#all.offers[offer]!.left > 0 && ends.offer?.(offer)) return this.#path(start, { offer });
        const lost = this.#linkedWith(offer, ends);
        if (lost !== undefined) return this.#path(start, { lost });
      }
    }
    return null;
  }

  /** Options of a wish that this search has not seen: all of its list the first time, then what was passed over. */
  #unseenBy(want: number): readonly number[] {
    const { options, who } = this.#all.wants[want]!;
    const { offers } = this.#all;
    const scanned = this.#scanned.get(options)!;
    const first = scanned.search !== this.#search;
    const open = first ? options : scanned.own;
    if (first) {
      scanned.search = this.#search;
      scanned.own = options.filter((offer) => offers[offer]!.who === who);
    }
    return open.filter((offer) => this.#offerSeen[offer] !== this.#search && offers[offer]!.who !== who);
  }

  /** Comes by the wishes that an offer is linked with; stops at one that is an end. */
  #linkedWith(offer: number, ends: Ends): number | undefined {
    for (const want of this.#all.offers[offer]!.links.keys()) {
      this.looks--;
      if (this.#wantSeen[want] === this.#search || ends.hopeless?.has(want)) continue;
      this.#wantSeen[want] = this.#search;
      this.#cameFromOffer[want] = offer;
      if (ends.want?.(want)) return want;
      this.#queue.push(want);
    }
    return undefined;
  }

  #path(start: number, end: { offer: number } | { lost: number }): Path {
    const steps: Step[] = [];
    let offer = 'offer' in end ? end.offer : this.#cameFromOffer[end.lost]!;
    let most = 'offer' in end ? this.#all.offers[end.offer]!.left : Number.POSITIVE_INFINITY;
    if ('lost' in end) steps.push({ offer, want: end.lost, give: false });
    for (;;) {
      const want = this.#cameFromWant[offer]!;
      steps.push({ offer, want, give: true });
      if (want === start) break;
      offer = this.#cameFromOffer[want]!;
      steps.push({ offer, want, give: false });
    }
    for (const { offer, want, give } of steps)
      if (!give) most = Math.min(most, this.#all.offers[offer]!.links.get(want) ?? 0);
    return { steps, most: Math.min(most, this.#all.wants[start]!.left), ...end };
  }

  /** Passes so many pieces on along a path. */
  give({ steps }: Path, count: number): void {
    for (const { offer, want, give } of steps) if (!give) this.#all.link(offer, want, -count);
    for (const { offer, want, give } of steps) if (give) this.#all.link(offer, want, count);
  }

  /** Undoes `give`. */
  takeBack({ steps }: Path, count: number): void {
    for (const { offer, want, give } of steps) if (give) this.#all.link(offer, want, -count);
    for (const { offer, want, give } of steps) if (!give) this.#all.link(offer, want, count);
  }
}
