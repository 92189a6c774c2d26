/** An event as the server gives it out. */
export interface WireEvent {
  readonly event_id: string;
  readonly type: string;
  readonly sender: string;
  readonly origin_server_ts: number;
  content: Record<string, unknown>;
  readonly state_key?: string;
  readonly redacts?: string;
  unsigned?: Record<string, unknown>;
}

export interface Draft {
  readonly type: string;
  readonly sender: string;
  readonly content: Record<string, unknown>;
  readonly state_key?: string;
  readonly redacts?: string;
  /** When it was said, milliseconds; now where it is not given. */
  readonly at?: number;
  readonly unsigned?: Record<string, unknown>;
}

interface Placed {
  readonly at: number;
  readonly event: WireEvent;
}

let events = 0;

/** A room of the stand-in: what was said in order, and how its state stands. */
export class Place {
  readonly id: string;
  readonly timeline: Placed[] = [];
  readonly #state = new Map<string, Placed>();
  /** The next place in the server's one order of all events. */
  readonly #next: () => number;

  constructor(id: string, next: () => number) {
    this.id = id;
    this.#next = next;
  }

  add({ at, ...draft }: Draft): WireEvent {
    const event: WireEvent = {
      event_id: `$event${++events}`,
      origin_server_ts: at ?? Date.now(),
      ...draft,
    };
    const placed = { at: this.#next(), event };
    this.timeline.push(placed);
    if (event.state_key !== undefined) this.#state.set(`${event.type} ${event.state_key}`, placed);
    if (event.redacts) this.#redact(event.redacts, event);
    return event;
  }

  #redact(id: string, because: WireEvent): void {
    const event = this.find(id);
    if (!event) return;
    event.content = {};
    event.unsigned = { ...event.unsigned, redacted_because: because };
  }

  find(id: string): WireEvent | undefined {
    return this.timeline.find(({ event }) => event.event_id === id)?.event;
  }

  stateOf(type: string, key = ''): Record<string, unknown> | undefined {
    return this.#state.get(`${type} ${key}`)?.event.content;
  }

  membershipOf(user: string): string | undefined {
    return this.stateOf('m.room.member', user)?.membership as string | undefined;
  }

  membersWith(membership: string): string[] {
    return [...this.#state.values()]
      .filter(({ event }) => event.type === 'm.room.member' && event.content.membership === membership)
      .map(({ event }) => event.state_key ?? '');
  }

  /** The state's events that were placed between two points, the first left out. */
  stateBetween(after: number, before: number): WireEvent[] {
    return [...this.#state.values()].filter(({ at }) => at > after && at < before).map(({ event }) => event);
  }

  /** Where a member's membership came to be what it is. */
  memberSince(user: string): number {
    return this.#state.get(`m.room.member ${user}`)?.at ?? 0;
  }

  powerOf(user: string): number {
    const levels = this.stateOf('m.room.power_levels') as Levels | undefined;
    return levels?.users?.[user] ?? levels?.users_default ?? 0;
  }

  /** Whether a member may send an event of a type ("m.room.power_levels"). */
  maySend(user: string, type: string, isState: boolean): boolean {
    if (this.membershipOf(user) !== 'join') return false;
    const levels = this.stateOf('m.room.power_levels') as Levels | undefined;
    const otherwise = isState ? (levels?.state_default ?? 50) : (levels?.events_default ?? 0);
    return this.powerOf(user) >= (levels?.events?.[type] ?? otherwise);
  }
}

export interface Levels {
  readonly users?: Readonly<Record<string, number>>;
  readonly users_default?: number;
  readonly events?: Readonly<Record<string, number>>;
  readonly events_default?: number;
  readonly state_default?: number;
}
