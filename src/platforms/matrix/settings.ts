import type { PlatformNeeds } from '../platform.ts';

export const PLATFORM = 'matrix';

/** Everything the platform is started with; secrets are already read. */
export interface MatrixStart extends PlatformNeeds {
  readonly homeserver: string;
  readonly user: string;
  readonly password?: string | undefined;
  readonly accessToken?: string | undefined;
  /** Locks what is kept on the disk for encrypted rooms. */
  readonly storeKey: string;
  readonly recoveryKey?: string | undefined;
  readonly prefix: string;
  readonly inviteFrom: readonly string[];
  /** Where the session and the keys are kept. */
  readonly folder: string;
}

/** A message older than this is not answered any more, milliseconds: nobody is waiting for it. */
export const TOO_OLD = 60 * 60 * 1000;
