import type { Ask, Command, CommandList, Member } from '../../src/chat/command.ts';
import { openRoom, type Room } from '../../src/chat/dispatch.ts';
import { type Answer, type Facts, FactsTrouble, type KeptDefaults } from '../../src/chat/facts.ts';
import { memoryFacts } from '../standin/memory-facts.ts';

export interface FakeFacts extends Facts {
  /** The calls in their order, with " inside" where one came inside a work that is kept all or none. */
  readonly calls: string[];
  /** When set, every call fails with this. */
  trouble: string | null;
  /** Makes the kept reply of an event unreadable, as a damaged row is. */
  spoil(guild: string, event: string): void;
}

/**
 * Facts kept in memory, whose calls are noted, which forget what a failed work had kept, and which, as a store
 * does, refuse the outer facts while a work is going on.
 */
export function fakeFacts(): FakeFacts {
  let defaults = new Map<string, KeptDefaults>();
  let answers = new Map<string, Answer>();
  let working = false;

  const kept = (inside: boolean): Pick<Facts, 'defaults' | 'answered'> => {
    const reach = (call: string) => {
      if (facts.trouble) throw new FactsTrouble({ code: facts.trouble, path: '/secret/place.db' });
      if (working && !inside) throw new Error('inside together, use the facts that are handed in');
      facts.calls.push(inside ? `${call} inside` : call);
    };
    return {
      defaults: {
        async read(guild, member) {
          reach('read');
          return defaults.get(`${guild} ${member}`) ?? {};
        },
        async both(guild, member) {
          reach('both');
          const of = (whose: string) => defaults.get(`${guild} ${whose}`) ?? {};
          return { own: of(member), guild: of('') };
        },
        async set(guild, member, changes) {
          reach('set');
          const laid = { ...defaults.get(`${guild} ${member}`), ...changes };
          const now = Object.fromEntries(Object.entries(laid).filter(([, value]) => value !== null));
          defaults.set(`${guild} ${member}`, now);
          return now;
        },
        async clear(guild, member) {
          reach('clear');
          defaults.delete(`${guild} ${member}`);
        },
      },
      answered: {
        async find(guild, event) {
          reach('find');
          return answers.get(`${guild} ${event}`);
        },
        async keep(guild, event, answer) {
          reach('keep');
          // As a store does: what JSON cannot carry is not kept.
          answers.set(`${guild} ${event}`, JSON.parse(JSON.stringify(answer)));
          return true;
        },
      },
    };
  };

  const bound: Facts = { ...memoryFacts(), ...kept(true), together: (work) => work(bound) };
  const facts: FakeFacts = {
    ...memoryFacts(),
    ...kept(false),
    calls: [],
    trouble: null,
    spoil(guild, event) {
      const answer = answers.get(`${guild} ${event}`);
      if (answer) answers.set(`${guild} ${event}`, { ...answer, reply: null });
    },
    async together(work) {
      if (facts.trouble) throw new FactsTrouble({ code: facts.trouble });
      if (working) throw new Error('inside together, use the facts that are handed in');
      facts.calls.push('together');
      const before = [new Map(defaults), new Map(answers)] as const;
      working = true;
      try {
        return await work(bound);
      } catch (error) {
        [defaults, answers] = before;
        throw error;
      } finally {
        working = false;
      }
    },
  };
  return facts;
}

export const ADA: Member = { id: 'ada', name: 'Ada', organiser: false };
export const BEA: Member = { id: 'bea', name: 'Bea', organiser: true };

export const ask = (words: Ask['words'], more: Partial<Ask> = {}): Ask => ({
  who: ADA,
  guild: 'bees',
  place: 'home',
  event: null,
  words,
  now: new Date('2026-12-01T10:00:00Z'),
  ...more,
});

export const listOf = (...all: Command[]): CommandList =>
  Object.fromEntries(all.map((command) => [command.name, async () => command]));

export interface Fault {
  readonly error: unknown;
  readonly reference: string;
}

/** A room with facts in memory and its faults noted. */
export function roomOf(commands: CommandList): { room: Room; facts: FakeFacts; faults: Fault[] } {
  const facts = fakeFacts();
  const faults: Fault[] = [];
  const room = openRoom({
    commands,
    facts,
    onFault: (error, reference) => faults.push({ error, reference }),
  });
  return { room, facts, faults };
}
