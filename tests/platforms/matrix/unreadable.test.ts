import type { MatrixEvent, Room } from 'matrix-js-sdk';
import { expect, test } from 'vitest';
import { Memory } from '../../../src/platforms/matrix/answered.ts';
import { Unreadable } from '../../../src/platforms/matrix/unreadable.ts';
import { memoryFacts } from '../../standin/memory-facts.ts';

/** What cannot be made to happen at a stand-in, which has no keys to give: here the event itself says how it is. */
function opened() {
  const memory = new Memory(memoryFacts().notes);
  const sent: string[] = [];
  const counted: string[] = [];
  const silent = () => {};
  const unreadable = new Unreadable({
    start: {
      watch: { count: (what: string) => void counted.push(what) },
      log: { debug: silent, info: silent, warn: silent, error: silent },
    } as never,
    memory,
    messages: {
      send: async (_reply: unknown, { to }: { to: string }) => void sent.push(to),
    } as never,
    client: async () => ({ decryptEventIfNeeded: async () => {}, getDeviceId: () => 'D' }) as never,
  });
  return { memory, sent, counted, unreadable };
}

const room = { roomId: '!room' } as Room;

/** A locked message whose key comes after so many milliseconds. */
function locked(id: string, after: number): MatrixEvent {
  const from = performance.now();
  const event = {
    getId: () => id,
    getSender: () => '@ada:bees.test',
    getWireContent: () => ({ session_id: 's' }),
    isDecryptionFailure: () => performance.now() - from < after,
  };
  return event as unknown as MatrixEvent;
}

test('a key that comes a little late opens its message, and nobody is told anything', async () => {
  const { unreadable, sent } = opened();
  const event = locked('$late', 400);
  expect(await unreadable.isReadable(event)).toBe(false);
  expect(await unreadable.becomesReadable(event, room)).toBe(true);
  expect(sent).toEqual([]);
});

test('what was told, or answered by a device before this one, is done with; also after a restart', async () => {
  const { unreadable, sent, counted, memory } = opened();
  const event = locked('$never', Number.POSITIVE_INFINITY);
  expect(await unreadable.becomesReadable(event, room)).toBe(false);
  expect(sent).toEqual(['$never']);
  expect(await memory.answerTo('$never')).toEqual({ did: false, here: null });
  expect(await unreadable.becomesReadable(event, room)).toBe(false);
  expect(sent).toEqual(['$never']);
  expect(counted).toEqual(['undecryptable_total']);
});

test('told to end, it waits for no key, and leaves the message for the next start', async () => {
  const { unreadable, sent, memory } = opened();
  const waiting = unreadable.becomesReadable(locked('$waiting', Number.POSITIVE_INFINITY), room);
  const ended = expect(waiting).rejects.toMatchObject({ name: 'AbortError' });
  unreadable.stop();
  await ended;
  expect(sent).toEqual([]);
  expect(await memory.answerTo('$waiting')).toBeUndefined();
});
