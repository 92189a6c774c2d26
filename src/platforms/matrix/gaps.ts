import type { MatrixClient } from 'matrix-js-sdk';
import type { SyncAnswer } from './connection.ts';
import type { Intake } from './intake.ts';
import { joinedAt } from './rights.ts';
import { TOO_OLD } from './settings.ts';

interface Gap {
  readonly room: string;
  /** Where the messages that came begin. */
  readonly from: string;
  /** Where we had read to; unknown on the first start ever. */
  readonly to: string | undefined;
}

/** The rooms whose sync left messages out. */
export const gapsIn = ({ rooms }: SyncAnswer, to: string | undefined): Gap[] =>
  Object.entries(rooms?.join ?? {}).flatMap(([room, { timeline }]) =>
    timeline?.limited && timeline.prev_batch ? [{ room, from: timeline.prev_batch, to }] : [],
  );

const PAGE = 50;

/** Reads what a sync left out, back to where we had read, to where we came in, or to what is too old. */
export async function fillGap(
  gap: Gap,
  client: MatrixClient,
  intake: Intake,
  now: () => Date,
): Promise<void> {
  const room = client.getRoom(gap.room);
  if (!room) return;
  const oldest = Math.max(now().getTime() - TOO_OLD, joinedAt(room, client.getSafeUserId()));
  const mapper = client.getEventMapper();
  let { from } = gap;
  for (;;) {
    const page = await client.http.authedRequest<{ chunk?: { origin_server_ts?: number }[]; end?: string }>(
      'GET' as never,
      `/rooms/${encodeURIComponent(gap.room)}/messages`,
      { dir: 'b', from, limit: String(PAGE), ...(gap.to ? { to: gap.to } : {}) },
    );
    const chunk = page.chunk ?? [];
    for (const raw of chunk) intake.take(mapper(raw as never), room);
    const last = chunk.at(-1);
    if (!last || !page.end || page.end === from || (last.origin_server_ts ?? 0) < oldest) return;
    from = page.end;
  }
}
