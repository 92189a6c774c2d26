/** One line of a swap: so many pieces of one kind that a member offers, or that she would like. */
export interface SwapLine {
  readonly member: string;
  /** Pieces of one kind are alike but for colour and print. */
  readonly kind: string;
  /** What is said of colour and print, a word each: a wish is met by an offer that says all of its words. */
  readonly words: readonly string[];
  /** The area of one piece, square inches: the same for all of a kind. */
  readonly area: number;
  readonly count: number;
}

/** Areas that a member has sent and received, square inches. */
export interface Exchanged {
  readonly sent: number;
  readonly received: number;
}

export interface SwapTerms {
  /** By how much less area than she sends somebody may receive, as a part of one. */
  readonly share: number;
  /** What was exchanged before, and counts with what is matched now. */
  readonly before?: ReadonlyMap<string, Exchanged>;
}

const NOTHING: Exchanged = { sent: 0, received: 0 };

/** An offer or a wish while the swap is being matched, with who and how many are left. */
export interface OpenLine {
  readonly who: number;
  readonly area: number;
  readonly count: number;
  left: number;
  /** Lines of the other side that it is linked with, and by how many pieces. */
  readonly links: Map<number, number>;
  /** Of a wish: the offers that would meet it. Shared by wishes that are alike, so its own member's may be among them. */
  readonly options: readonly number[];
}

/** So many pieces of an offer given to a wish. */
export interface Link {
  readonly offer: number;
  readonly want: number;
  readonly count: number;
}

/** Less than this is no area, square inches: sums of areas are not exact. */
export const HAIR = 1e-6;

/**
 * Who gives how many pieces to whom, while it is being settled. All changes go through `link`, so that what is
 * given is always received, never more than was offered or wished, and never one's own.
 */
export class Allotment {
  readonly members: readonly string[];
  readonly offers: readonly OpenLine[];
  readonly wants: readonly OpenLine[];
  readonly sent: Float64Array;
  readonly received: Float64Array;
  /** Of what she sends, a member must receive at least this part. */
  readonly least: number;
  /** Pieces that each member sends to each other, row by row. */
  readonly #between: Int32Array;

  readonly #before: readonly Exchanged[];

  constructor(
    offers: readonly SwapLine[],
    wants: readonly SwapLine[],
    { share, before = new Map() }: SwapTerms,
  ) {
    this.members = [...new Set([...offers, ...wants].map(({ member }) => member))];
    const index = new Map(this.members.map((member, i) => [member, i]));
    const opened = (line: SwapLine, options: readonly number[]): OpenLine => ({
      who: index.get(line.member) ?? 0,
      area: line.area,
      count: line.count,
      left: line.count,
      links: new Map(),
      options,
    });
    const optionsOf = optionsAmong(offers);
    this.offers = offers.map((line) => opened(line, []));
    this.wants = wants.map((line) => opened(line, optionsOf(line)));
    this.#before = this.members.map((member) => before.get(member) ?? NOTHING);
    this.sent = Float64Array.from(this.#before, ({ sent }) => sent);
    this.received = Float64Array.from(this.#before, ({ received }) => received);
    this.#between = new Int32Array(this.members.length ** 2);
    this.least = 1 - share;
  }

  /** What a member may still lose or send before she receives too little; below zero where she does already. */
  room(who: number): number {
    return this.received[who]! - this.least * this.sent[who]!;
  }

  /** Whether one member sends something to another already. */
  sends(from: number, to: number): boolean {
    return this.#between[from * this.members.length + to]! > 0;
  }

  /** Whether she may send so much more. */
  maySend(who: number, area: number): boolean {
    return this.room(who) >= this.least * area - HAIR;
  }

  /** Gives so many pieces of an offer to a wish; takes them back where `count` is below zero. */
  link(offer: number, want: number, count: number): void {
    const [from, to] = [this.offers[offer]!, this.wants[want]!];
    const linked = (from.links.get(want) ?? 0) + count;
    if (linked === 0) {
      from.links.delete(want);
      to.links.delete(offer);
    } else {
      from.links.set(want, linked);
      to.links.set(offer, linked);
    }
    from.left -= count;
    to.left -= count;
    this.#between[from.who * this.members.length + to.who]! += count;
    this.sent[from.who]! += count * from.area;
    this.received[to.who]! += count * from.area;
  }

  /** All that is given, in the order of the offers and of the wishes. */
  links(): Link[] {
    return [...this.offers.entries()].flatMap(([offer, { links }]) =>
      [...links].sort(([one], [other]) => one - other).map(([want, count]) => ({ offer, want, count })),
    );
  }

  /** Takes all back and gives these instead. */
  setLinks(links: readonly Link[]): void {
    for (const { offer, want, count } of this.links()) this.link(offer, want, -count);
    this.sent.set(this.#before.map(({ sent }) => sent));
    this.received.set(this.#before.map(({ received }) => received));
    for (const { offer, want, count } of links) this.link(offer, want, count);
  }

  /** The area of all that is given now, without what was exchanged before. */
  get area(): number {
    return this.sent.reduce((sum, area, who) => sum + area - this.#before[who]!.sent, 0);
  }
}

/** For each wish the offers that would meet it; the list is made once for wishes that are alike. */
function optionsAmong(offers: readonly SwapLine[]): (want: SwapLine) => readonly number[] {
  const ofKind = Map.groupBy(offers.keys(), (i) => offers[i]!.kind);
  const said = offers.map(({ words }) => new Set(words));
  const made = new Map<string, readonly number[]>();
  return ({ kind, words }) => {
    const key = JSON.stringify([kind, ...words.toSorted()]);
    const known = made.get(key);
    if (known) return known;
    const options = (ofKind.get(kind) ?? []).filter((i) => words.every((word) => said[i]!.has(word)));
    made.set(key, options);
    return options;
  };
}
