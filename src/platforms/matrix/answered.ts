import { z } from 'zod';
import type { NotesKept, Whose } from '../../chat/facts.ts';
import { PLATFORM } from './settings.ts';

const sent = z.object({
  room: z.string(),
  main: z.string(),
  others: z.array(z.string()),
  reactions: z.array(z.string()),
});

/** One message of ours, with its pictures and its numbers. */
export type Sent = z.infer<typeof sent>;

const answer = z.object({
  /** What she asked for was done and is kept: an edit of the ask does not do it again. */
  did: z.boolean(),
  /** The answer in the room where it was asked; null where there is nothing to edit or to take back. */
  here: sent.nullable(),
});

/** What became of an ask. Nobody is named in it: it is kept though she is forgotten, so that she is not answered anew. */
export type Answered = z.infer<typeof answer>;

const choices = z.object({
  meantFor: z.string(),
  thread: z.string().nullable(),
  /** The room whose guild was asked in: a number pressed in a direct room means that guild. */
  home: z.string(),
  asks: z.array(z.object({ ask: z.string(), open: z.boolean() })),
});

/** What the numbers under a message stand for. */
export type Choices = z.infer<typeof choices>;

const token = z.object({ token: z.string() });
const room = z.object({ room: z.string() });
const standing = z.object({ message: z.string() });

/** What is remembered across a restart, in the notes; what cannot be read back is taken for not there. */
export class Memory {
  readonly #notes: NotesKept;

  constructor(notes: NotesKept) {
    this.#notes = notes;
  }

  answerTo = (event: string): Promise<Answered | undefined> => this.#read(`answered:${event}`, answer);
  keepAnswer = (event: string, sent: Answered, { guild }: Whose): Promise<void> =>
    this.#notes.keep(PLATFORM, `answered:${event}`, sent, { guild, member: '' });

  /** What was sent to the asker alone. */
  apartFrom = (event: string): Promise<Sent | undefined> => this.#read(`apart:${event}`, sent);
  keepApart = (event: string, apart: Sent, whose: Whose): Promise<void> =>
    this.#notes.keep(PLATFORM, `apart:${event}`, apart, whose);
  dropApart = (event: string): Promise<void> => this.#notes.remove(PLATFORM, `apart:${event}`);

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
    (await this.#read(`standing:${place}:${name}`, standing))?.message;
  /** Kept by both its names: it is changed by the one, and taken away by the other. */
  async keepStanding(place: string, name: string, message: string): Promise<void> {
    await this.#notes.keep(PLATFORM, `standing:${place}:${name}`, { message });
    await this.#notes.keep(PLATFORM, `stands:${message}`, { room: `standing:${place}:${name}` });
  }
  async dropStanding(message: string): Promise<void> {
    const kept = await this.#read(`stands:${message}`, room);
    if (!kept) return;
    await this.#notes.remove(PLATFORM, kept.room);
    await this.#notes.remove(PLATFORM, `stands:${message}`);
  }

  wasTold = async (once: string): Promise<boolean> =>
    (await this.#notes.find(PLATFORM, `told:${once}`)) !== undefined;
  keepTold = (once: string): Promise<void> => this.#notes.keep(PLATFORM, `told:${once}`, {});

  /** Forgets what nobody will come back to. */
  async prune(before: Date): Promise<void> {
    for (const kind of ['answered:', 'apart:', 'choices:', 'told:'])
      await this.#notes.prune(PLATFORM, kind, before);
  }

  async #read<T>(key: string, shape: z.ZodType<T>): Promise<T | undefined> {
    const found = shape.safeParse(await this.#notes.find(PLATFORM, key));
    return found.success ? found.data : undefined;
  }
}
