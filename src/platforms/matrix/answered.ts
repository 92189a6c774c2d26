import { z } from 'zod';
import type { NotesKept, Whose } from '../../chat/facts.ts';
import { PLATFORM } from './settings.ts';

const answer = z.object({
  /** Where the answer stands; null where the ask was answered with nothing to take back. */
  room: z.string().nullable(),
  main: z.string().nullable(),
  others: z.array(z.string()),
  reactions: z.array(z.string()),
});

/** What was sent for an ask: its message, its pictures, its numbers. */
export type Answered = z.infer<typeof answer>;

export const NOTHING_SENT: Answered = { room: null, main: null, others: [], reactions: [] };

const choices = z.object({
  meantFor: z.string(),
  thread: z.string().nullable(),
  asks: z.array(z.object({ ask: z.string(), open: z.boolean() })),
});

/** What the numbers under a message stand for. */
export type Choices = z.infer<typeof choices>;

const token = z.object({ token: z.string() });
const room = z.object({ room: z.string() });

/** What is remembered across a restart, in the notes; what cannot be read back is taken for not there. */
export class Memory {
  readonly #notes: NotesKept;

  constructor(notes: NotesKept) {
    this.#notes = notes;
  }

  answerTo = (event: string): Promise<Answered | undefined> => this.#read(`answered:${event}`, answer);
  keepAnswer = (event: string, sent: Answered, whose: Whose): Promise<void> =>
    this.#notes.keep(PLATFORM, `answered:${event}`, sent, whose);

  choicesUnder = (message: string): Promise<Choices | undefined> => this.#read(`choices:${message}`, choices);
  keepChoices = (message: string, kept: Choices, whose: Whose): Promise<void> =>
    this.#notes.keep(PLATFORM, `choices:${message}`, kept, whose);
  dropChoices = (message: string): Promise<void> => this.#notes.remove(PLATFORM, `choices:${message}`);

  readTo = async (): Promise<string | undefined> => (await this.#read('sync', token))?.token;
  keepReadTo = (read: string): Promise<void> => this.#notes.keep(PLATFORM, 'sync', { token: read });

  directRoom = async (user: string): Promise<string | undefined> =>
    (await this.#read(`direct:${user}`, room))?.room;
  keepDirectRoom = (user: string, id: string): Promise<void> =>
    this.#notes.keep(PLATFORM, `direct:${user}`, { room: id }, { guild: `alone:${user}`, member: user });

  standing = async (place: string, name: string): Promise<string | undefined> =>
    (await this.#read(`standing:${place}:${name}`, room))?.room;
  keepStanding = (place: string, name: string, message: string): Promise<void> =>
    this.#notes.keep(PLATFORM, `standing:${place}:${name}`, { room: message });

  wasTold = async (once: string): Promise<boolean> =>
    (await this.#notes.find(PLATFORM, `told:${once}`)) !== undefined;
  keepTold = (once: string): Promise<void> => this.#notes.keep(PLATFORM, `told:${once}`, {});

  /** Forgets what nobody will come back to. */
  async prune(before: Date): Promise<void> {
    for (const kind of ['answered:', 'choices:', 'told:']) await this.#notes.prune(PLATFORM, kind, before);
  }

  async #read<T>(key: string, shape: z.ZodType<T>): Promise<T | undefined> {
    const found = shape.safeParse(await this.#notes.find(PLATFORM, key));
    return found.success ? found.data : undefined;
  }
}
