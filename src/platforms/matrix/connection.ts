import type { MatrixClient } from 'matrix-js-sdk';
import type { Quiet } from './quiet.ts';
import { withRecoveryKey } from './recovery.ts';
import type { Session } from './session.ts';
import type { MatrixStart } from './settings.ts';
import type { News } from './sync-answer.ts';
import { wireFor } from './wire.ts';

export interface ConnectionNeeds {
  readonly start: MatrixStart;
  readonly quiet: Quiet;
  readonly recoveryKey: Uint8Array<ArrayBuffer> | undefined;
  /** Told of every sync once the library has taken in the rooms and their state. */
  onSynced(news: News): void;
}

/**
 * What the sync asks for: no typing, no receipts, no presence; members only where they speak. A homeserver may give
 * the same answer to the same question for minutes (Synapse does for two): a process that starts soon after another
 * would be told everything anew that the other was told, as if it were so now. So each asks in other words, by a
 * limit on the presence that is not asked for.
 */
const filterAt = (now: Date) => ({
  presence: { types: [], limit: 1 + (Math.floor(now.getTime() / 1000) % 1000) },
  room: {
    ephemeral: { types: [] },
    timeline: { limit: 40, lazy_load_members: true },
    state: { lazy_load_members: true },
  },
});

/** How many messages of each room the first sync of a process brings; more are asked for where they are missing. */
const FIRST_LIMIT = 10;

/** A client for a session, with its keys, not syncing yet. The keys must be open before. */
export async function clientFor(session: Session, needs: ConnectionNeeds): Promise<MatrixClient> {
  const { start, quiet } = needs;
  quiet.hide(session.accessToken);
  const sdk = await import('matrix-js-sdk');
  const wire = wireFor(start);
  class Store extends sdk.MemoryStore {
    override async setSyncData(answer: never): Promise<void> {
      await super.setSyncData(answer);
      const news = wire.newsOf(answer);
      if (news) needs.onSynced(news);
    }
  }
  let client: MatrixClient | undefined;
  client = new sdk.MatrixClient({
    baseUrl: session.homeserver,
    userId: session.user,
    deviceId: session.deviceId,
    accessToken: session.accessToken,
    store: new Store(),
    logger: quiet.logger() as never,
    disableVoip: true,
    cryptoCallbacks: withRecoveryKey(needs.recoveryKey, () => client),
    fetchFn: wire.fetch,
  });
  await client.initRustCrypto();
  // The first sync of a process does not say whose devices have changed meanwhile: ask for all of them anew.
  const crypto = client.getCrypto() as unknown as { markAllTrackedUsersAsDirty(): Promise<void> };
  await crypto.markAllTrackedUsersAsDirty();
  return client;
}

/** Begins to sync; resolves once the rooms are known. */
export async function startSync(client: MatrixClient, now: Date): Promise<void> {
  const sdk = await import('matrix-js-sdk');
  const filter = new sdk.Filter(client.getUserId());
  filter.setDefinition(filterAt(now) as never);
  const prepared = new Promise<void>((done) => {
    const watchFor = (state: string) => {
      if (state !== 'PREPARED') return;
      client.off(sdk.ClientEvent.Sync, watchFor as never);
      done();
    };
    client.on(sdk.ClientEvent.Sync, watchFor as never);
  });
  await client.startClient({
    filter,
    initialSyncLimit: FIRST_LIMIT,
    lazyLoadMembers: true,
    disablePresence: true,
  });
  await prepared;
}
