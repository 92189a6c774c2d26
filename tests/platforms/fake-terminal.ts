import { PassThrough } from 'node:stream';
import { setTimeout } from 'node:timers/promises';
import { stripVTControlCharacters } from 'node:util';
import { commands } from '../../commands/index.ts';
import type { Ask } from '../../src/chat/command.ts';
import { openRoom } from '../../src/chat/dispatch.ts';
import type { Reply } from '../../src/chat/reply.ts';
import { openTerminal } from '../../src/platforms/terminal/room.ts';
import { memoryFacts } from '../standin/memory-facts.ts';

export interface FakeSettings {
  /** Whether it looks like a keyboard and a screen. */
  readonly live?: boolean;
  readonly columns?: number;
  readonly history?: readonly string[];
}

/** The terminal room on streams that a test can type on and read. */
export function fakeTerminal({ live = false, columns = 80, history = [] }: FakeSettings = {}) {
  const input = Object.assign(new PassThrough(), live ? { isTTY: true, setRawMode: () => input } : {});
  const output = Object.assign(
    new PassThrough(),
    live ? { isTTY: true, columns, rows: 40, getColorDepth: () => 1 } : {},
  );
  let shown = '';
  output.setEncoding('utf8').on('data', (part: string) => (shown += part));
  const replies: Reply[] = [];
  const asks: Ask[] = [];
  const remembered: string[] = [];
  const facts = memoryFacts();
  const room = openRoom({
    commands,
    facts,
    onFault(error) {
      throw error;
    },
  });
  const left = openTerminal({
    room: {
      async answer(ask) {
        asks.push(ask);
        const reply = await room.answer(ask);
        replies.push(reply);
        return reply;
      },
    },
    commands,
    facts,
    guild: 'terminal',
    input: input as never,
    output: output as never,
    write: async (pictures) => new Map(pictures.map(({ name }) => [name, `drawn/${name}`])),
    history,
    remember: (line) => remembered.push(line),
    dropHistory: () => {
      remembered.length = 0;
    },
  });
  return {
    input,
    replies,
    asks,
    remembered,
    left,
    get screen() {
      return stripVTControlCharacters(shown);
    },
    get raw() {
      return shown;
    },
    /** Types, one key after the other as fingers do: a key that comes alone may complete. */
    async type(...keys: readonly string[]) {
      for (const key of keys) {
        input.write(key);
        await setTimeout(15);
      }
    },
    /** Waits until something is true of what is shown. */
    async until(seen: () => boolean, what = 'that') {
      for (let tries = 0; tries < 400; tries++) {
        if (seen()) return;
        await setTimeout(5);
      }
      throw new Error(`never saw ${what}: ${shown}`);
    },
  };
}

export type FakeTerminal = ReturnType<typeof fakeTerminal>;
