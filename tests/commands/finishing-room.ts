import { commands } from '../../commands/index.ts';
import { openRoom } from '../../src/chat/dispatch.ts';
import type { Facts } from '../../src/chat/facts.ts';
import type { Reply } from '../../src/chat/reply.ts';

export interface Asker {
  readonly id: string;
  readonly organiser?: boolean;
}

export const ADA: Asker = { id: 'Ada' };
export const NOW = new Date('2026-12-01T10:00:00Z');

/** Asks a room of the real commands over the given facts. */
export function askIn(facts: Facts, guild = 'quiet needles') {
  const room = openRoom({
    commands,
    facts,
    onFault: (error) => {
      throw error;
    },
  });
  return (
    words: string,
    { id, organiser = false }: Asker = ADA,
    event: string | null = null,
  ): Promise<Reply> =>
    room.answer({ who: { id, name: id, organiser }, guild, place: 'home', event, words, now: NOW });
}

/** The numbers of a reply by their names. */
export const numbers = ({ figures }: Reply): Record<string, unknown> =>
  Object.fromEntries(Object.entries(figures).map(([name, { value }]) => [name, value]));
