import type { CommandList } from '../chat/command.ts';
import type { Room } from '../chat/dispatch.ts';
import type { Facts } from '../chat/facts.ts';
import type { Recipe, Reply } from '../chat/reply.ts';
import type { Watch } from '../chat/watch.ts';

/** The operator's log. Text of members goes in as data, never as the message. */
export interface Log {
  debug(details: object, message: string): void;
  info(details: object, message: string): void;
  warn(details: object, message: string): void;
  error(details: object, message: string): void;
}

/** What every platform is handed: nothing of how the rest is done. */
export interface PlatformNeeds {
  readonly room: Room;
  readonly commands: CommandList;
  readonly facts: Facts;
  readonly watch: Watch;
  readonly log: Log;
  /** Makes a picture or file of a reply. */
  draw(recipe: Recipe): Promise<Uint8Array>;
  now(): Date;
  /** Called when the platform has ended by itself and will not come back. */
  ended(why: Ended): void;
}

/** A platform that is up. */
export interface Platform {
  readonly name: string;
  /** Says something that nobody asked for just now (a reminder). The same `once` is said one time only. */
  tell(place: string, reply: Reply, once: string): Promise<void>;
  /** Stops taking asks, finishes those begun, and lets go. */
  stop(): Promise<void>;
}

/** Exit statuses that a service manager can read (sysexits): do not restart, or try again later. */
export const EXIT = { settings: 78, refused: 77, later: 75 } as const;

/** Why a platform could not start, or ended: one sentence for the operator, and the status to end with. */
export interface Ended {
  readonly sentence: string;
  readonly status: (typeof EXIT)[keyof typeof EXIT];
}

/** Thrown by a platform that cannot start. */
export class CannotStart extends Error {
  override readonly name = 'CannotStart';
  readonly ended: Ended;

  constructor(ended: Ended, cause?: unknown) {
    super(ended.sentence, { cause });
    this.ended = ended;
  }
}
