import { createDecipheriv, createHash } from 'node:crypto';
import type { Member } from './member.ts';

/** The way that asks who is asking. */
export const AUTHENTICATED = '/_matrix/client/v1/media';
/** The way that homeservers had before, open to everybody. */
export const OPEN = '/_matrix/media/v3';

interface Locked {
  readonly url: string;
  readonly iv: string;
  readonly key: { readonly k: string };
  readonly hashes: { readonly sha256: string };
}

/** The bytes of a picture or file in a message, unlocked where they were locked. */
export async function fetched(content: Record<string, unknown>, member: Member): Promise<Buffer> {
  const file = content.file as Locked | undefined;
  const answer = await download(file?.url ?? String(content.url), member);
  if (!answer.ok) throw new Error(`fetching a picture: ${answer.status}`);
  const bytes = Buffer.from(await answer.arrayBuffer());
  return file ? unlocked(bytes, file) : bytes;
}

/** Asks for something that was uploaded. */
export function download(
  url: string,
  { client }: Member,
  path = AUTHENTICATED,
  token = client.getAccessToken() ?? '',
): Promise<Response> {
  const [, server, media] = /^mxc:\/\/([^/]+)\/(.+)$/.exec(url) ?? [];
  return fetch(`${client.baseUrl}${path}/download/${server}/${media}`, {
    headers: token ? { authorization: `Bearer ${token}` } : {},
  });
}

/** As the specification has a client do it: first the hash of what came, then the key. */
function unlocked(bytes: Buffer, { iv, key, hashes }: Locked): Buffer {
  const hash = createHash('sha256').update(bytes).digest('base64').replace(/=+$/, '');
  if (hash !== hashes.sha256) throw new Error('a locked file is not the one that was sent');
  const unlock = createDecipheriv('aes-256-ctr', Buffer.from(key.k, 'base64url'), Buffer.from(iv, 'base64'));
  return Buffer.concat([unlock.update(bytes), unlock.final()]);
}
