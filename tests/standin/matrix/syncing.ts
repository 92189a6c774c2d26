import type { Accounts } from './accounts.ts';
import { invitedPart, joinedPart, placeIn, tokenOf } from './answers.ts';
import type { House } from './house.ts';
import { BOT } from './names.ts';
import { type Outcome, ok, type Request, refusal } from './requests.ts';
import { filterFaults, syncFaults } from './rules.ts';

interface SyncingNeeds {
  readonly house: House;
  readonly accounts: Accounts;
  fault(...faults: readonly string[]): void;
}

export interface SyncAnswer {
  next_batch: string;
  rooms: {
    join: Record<string, { timeline: { events: unknown[]; limited: boolean }; state: { events: unknown[] } }>;
    invite: Record<string, unknown>;
    leave: Record<string, unknown>;
  };
  [more: string]: unknown;
}

interface Filter {
  readonly room?: { readonly timeline?: { readonly limit?: number } };
}

/** Where a filter says nothing, a sync brings so many events of a room, as real homeservers do. */
const LIMIT = 10;

/** What the bot is told, and what it has stored at its account. */
export class Syncing {
  /** Changes the next answers before they are given: what no sound server would say. */
  readonly spoil: ((answer: SyncAnswer) => void)[] = [];
  readonly #needs: SyncingNeeds;
  readonly #filters: Filter[] = [];
  readonly #accountData = new Map<string, { at: number; content: unknown }>();

  constructor(needs: SyncingNeeds) {
    this.#needs = needs;
  }

  readonly routes: Readonly<Record<string, (request: Request) => Outcome | Promise<Outcome>>> = {
    defineFilter: ({ body }) => ok({ filter_id: `f${this.#filters.push(body as Filter)}` }),
    sync: (request) => this.#sync(request),
    getAccountData: ({ parts: [, type = ''] }) => {
      const found = this.#accountData.get(type);
      return found ? ok(found.content) : refusal(404, 'M_NOT_FOUND');
    },
    setAccountData: ({ parts: [, type = ''], body }) => {
      this.#accountData.set(type, { at: this.#needs.house.next(), content: body });
      this.#needs.house.wake();
      return ok();
    },
  };

  async #sync({ query }: Request): Promise<Outcome> {
    const { house, fault } = this.#needs;
    const since = placeIn(query.get('since'));
    const { room } = this.#filterOf(query.get('filter'));
    const wait = Number(query.get('timeout') ?? 0);
    if (since !== null && since >= house.at && wait > 0) await house.somethingNew(wait);
    const said = this.#answer(since, room?.timeline?.limit ?? LIMIT);
    fault(...syncFaults(said));
    const spoiled = JSON.parse(JSON.stringify(said)) as SyncAnswer;
    for (const change of this.spoil.splice(0)) change(spoiled);
    return ok(spoiled);
  }

  #filterOf(named: string | null): Filter {
    if (!named) return {};
    if (!named.startsWith('{')) return this.#filters[Number(named.slice(1)) - 1] ?? {};
    const filter = JSON.parse(named) as Filter;
    this.#needs.fault(...filterFaults(filter).map((fault) => `filter: ${fault}`));
    return filter;
  }

  #answer(since: number | null, limit: number): SyncAnswer {
    const { house, accounts } = this.#needs;
    const rooms: SyncAnswer['rooms'] = { join: {}, invite: {}, leave: {} };
    for (const room of house.rooms.values()) {
      const membership = room.membershipOf(BOT);
      const changed = room.memberSince(BOT) > (since ?? 0);
      if (membership === 'join') {
        const part = joinedPart(room, BOT, { since, limit });
        if (part) rooms.join[room.id] = part;
      } else if (membership === 'invite' && changed) rooms.invite[room.id] = invitedPart(room, BOT);
      else if (since !== null && changed) {
        const events = room.stateBetween(since, Number.POSITIVE_INFINITY);
        rooms.leave[room.id] = {
          state: { events: [] },
          timeline: { events, limited: false, prev_batch: 's0' },
        };
      }
    }
    const data = [...this.#accountData].filter(([, { at }]) => at > (since ?? 0));
    return {
      next_batch: tokenOf(house.at),
      account_data: { events: data.map(([type, { content }]) => ({ type, content })) },
      to_device: { events: [] },
      device_lists: { changed: [], left: [] },
      device_one_time_keys_count: { signed_curve25519: accounts.oneTimeKeys },
      device_unused_fallback_key_types: ['signed_curve25519'],
      rooms,
    };
  }
}
