import { createInterface, type Interface } from 'node:readline';
import type { Ask, CommandList, Member } from '../../chat/command.ts';
import { complete } from '../../chat/complete.ts';
import type { Room } from '../../chat/dispatch.ts';
import type { Facts } from '../../chat/facts.ts';
import type { SuggestWhere } from '../../chat/option.ts';
import { type Reply, reply } from '../../chat/reply.ts';
import { CONTROL } from '../../measure/tidy.ts';
import { render } from './render.ts';
import { wrap } from './wrap.ts';

export interface TerminalNeeds {
  readonly room: Room;
  readonly commands: CommandList;
  /** What is kept, for completion while typing. */
  readonly facts: Facts;
  readonly guild: string;
  readonly input: NodeJS.ReadStream;
  readonly output: NodeJS.WriteStream;
  /** Draws the pictures of a reply; gives the file of each by its name. */
  write(pictures: Reply['pictures']): Promise<ReadonlyMap<string, string>>;
  /** Earlier lines, the newest first, and where a new one goes. */
  readonly history: readonly string[];
  remember(line: string): void;
  /** Drops all of them. */
  dropHistory(): void;
  /** Handed a way to say something that nobody asked for, between the lines that are typed. */
  saying?(say: (reply: Reply) => void): void;
}

const TRY = ['/cut hexagon 1 1/2in', '/count rosette rounds:3', 'how many 1in hexagons from a fat quarter?'];

const greeting = (width: number): string =>
  [
    wrap(
      'Honeycount works out hand-pieced hexagons and diamonds: cut sizes, counts, cloth and time. Ask in plain words or with a command:',
      width,
    ),
    TRY.map((ask) => `  ${ask}`).join('\n'),
    wrap('/help shows the rest, /pictures draws the last answer, Tab completes, Ctrl-D leaves.', width),
    '',
  ].join('\n\n');

/** The terminal is one room. */
const PLACE = 'home';
const WIDEST = 84;
const widthOf = ({ columns }: NodeJS.WriteStream): number => Math.min(columns ?? 72, WIDEST);

/** A guild room at a terminal: members take turns at one keyboard with `/as NAME`. */
export async function openTerminal(needs: TerminalNeeds): Promise<void> {
  const { input, output } = needs;
  const live = input.isTTY === true;
  const talk = new Conversation(needs);
  output.write(live ? greeting(widthOf(output)) : '');
  const lines = createInterface({
    input,
    ...(live
      ? {
          output,
          terminal: true,
          history: [...needs.history],
          historySize: 500,
          removeHistoryDuplicates: true,
        }
      : {}),
    crlfDelay: Number.POSITIVE_INFINITY,
    completer: (line: string, done: (error: null, found: [string[], string]) => void) => {
      complete(needs.commands, line, { ...talk.where, facts: needs.facts })
        .catch(() => ({ words: [], replaces: line }))
        .then(({ words, replaces }) => done(null, [words, replaces]));
    },
  });
  needs.saying?.((reply) => {
    output.write(live ? '\r\u001b[K' : '');
    talk.say(reply);
    if (live) lines.prompt(true);
  });
  if (live) await converse(lines, talk);
  else for await (const line of lines) await talk.hear(line);
  output.write(live ? '\n' : '');
}

/** What somebody types who does not know Ctrl-D. */
const LEAVING = /^\s*[/!]?(?:exit|quit|bye)\s*$/i;

async function converse(lines: Interface, talk: Conversation): Promise<void> {
  lines.setPrompt(talk.prompt);
  lines.prompt();
  lines.on('SIGINT', () => lines.close());
  for await (const line of lines) {
    if (LEAVING.test(line)) break;
    await talk.hear(line);
    lines.setPrompt(talk.prompt);
    lines.prompt();
  }
}

/** Who is at the keyboard, and what the numbers under the last reply stand for. */
class Conversation {
  readonly #needs: TerminalNeeds;
  #who: Member = { id: 'you', name: 'you', organiser: true };
  #choices: Reply['choices'] = [];
  #pictures: Reply['pictures'] = [];

  constructor(needs: TerminalNeeds) {
    this.#needs = needs;
  }

  /** Who is at the keyboard, and where. */
  get where(): Omit<SuggestWhere, 'facts'> {
    return { guild: this.#needs.guild, place: PLACE, member: this.#who.id };
  }

  get prompt(): string {
    return `${this.#who.name}> `;
  }

  async hear(line: string): Promise<void> {
    const words = line.trim();
    if (words === '') return;
    this.#needs.remember(words);
    const other = /^[/!]as(?:\s+(.*?)(\s+organiser)?)?$/i.exec(words);
    if (other) return this.#takeTurn(other[1] ?? '', other[2] !== undefined);
    if (/^[/!]pictures?\s*$/i.test(words)) return this.#draw();
    const chosen = /^\d+$/.test(words) ? this.#choices[Number(words) - 1] : undefined;
    const answered = await this.#needs.room.answer(this.#ask(chosen?.ask ?? words));
    if (answered.forgets) this.#needs.dropHistory();
    this.say(answered);
  }

  /** Draws what belongs to the last reply, and says where it is. */
  async #draw(): Promise<void> {
    const pictures = this.#pictures;
    if (pictures.length === 0) return this.#write('There is nothing to draw for the last answer.\n\n');
    const files = await this.#needs.write(pictures);
    this.#print(reply({ pictures }), files);
  }

  #ask(words: string): Ask {
    return { who: this.#who, guild: this.#needs.guild, place: PLACE, event: null, words, now: new Date() };
  }

  #takeTurn(name: string, organiser: boolean): void {
    if (name === '' || CONTROL.test(name)) {
      this.#write('Who? For example /as Ada, or /as Ada organiser.\n\n');
      return;
    }
    this.#who = { id: name, name, organiser: organiser || name === 'you' };
    this.#choices = [];
    this.#pictures = [];
    this.#write(`${name} is at the keyboard${this.#who.organiser ? ', as an organiser' : ''}.\n\n`);
  }

  /** Says a reply; the numbers under it are what a number typed next stands for. */
  say(reply: Reply): void {
    this.#choices = reply.choices;
    this.#pictures = reply.pictures;
    this.#print(reply);
  }

  #print(reply: Reply, files?: ReadonlyMap<string, string>): void {
    const { output } = this.#needs;
    const width = widthOf(output);
    const colour = output.isTTY === true && process.env.NO_COLOR === undefined;
    this.#write(`${render(reply, { width, colour, files })}\n\n`);
  }

  #write(text: string): void {
    this.#needs.output.write(text);
  }
}
