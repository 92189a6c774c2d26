import type { Reply } from '../../chat/reply.ts';
import type { Platform, PlatformNeeds } from '../platform.ts';
import { dropHistory, earlierLines, rememberIn } from './history.ts';
import { openTerminal } from './room.ts';

/** The guild of everyone who asks from this machine's shell or terminal. */
export const HOME_GUILD = 'terminal';

export interface TerminalStart extends PlatformNeeds {
  /** Where the lines typed at the terminal are remembered; null where they are not. */
  readonly history: string | null;
  /** The folder that pictures are drawn into when they are asked for. */
  readonly pictures: string;
}

/** Opens the terminal room on the program's own streams; when it is left, the program ends well. */
export async function startTerminal(needs: TerminalStart): Promise<Platform> {
  const { room, commands, facts, history, draw, watch, ended } = needs;
  const input = process.stdin;
  const output = process.stdout;
  const remembered = input.isTTY ? history : null;
  let say: (reply: Reply) => void = () => {};
  const left = openTerminal({
    ...{ room, commands, facts, guild: HOME_GUILD, input, output },
    write: async (pictures) =>
      (await import('./pictures-out.ts')).writePictures(pictures, needs.pictures, draw),
    history: remembered === null ? [] : earlierLines(remembered),
    remember: remembered === null ? () => {} : rememberIn(remembered),
    dropHistory: () => {
      if (history !== null) dropHistory(history);
    },
    saying: (way) => {
      say = way;
    },
  });
  left.then(() => ended({ sentence: '', status: 75 }));
  return {
    name: 'terminal',
    async tell(_place, reply) {
      say(reply);
      watch.count('reminders_total', { platform: 'terminal' });
    },
    stop: async () => {
      input.destroy();
    },
  };
}
