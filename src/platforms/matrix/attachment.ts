import { createCipheriv, createHash, randomBytes } from 'node:crypto';
import type { Picture } from '../../chat/reply.ts';

/** A file locked for an encrypted room, as the specification has it ("Sending encrypted attachments", v2). */
export interface Locked {
  readonly bytes: Buffer;
  readonly file: {
    readonly v: 'v2';
    readonly key: object;
    readonly iv: string;
    readonly hashes: { readonly sha256: string };
  };
}

const unpadded = (bytes: Buffer): string => bytes.toString('base64').replace(/=+$/, '');

/** Locks a file with a key of its own: AES-256 in counter mode, the counter's low half beginning at zero. */
export function lockFile(bytes: Uint8Array): Locked {
  const key = randomBytes(32);
  const iv = Buffer.concat([randomBytes(8), Buffer.alloc(8)]);
  const cipher = createCipheriv('aes-256-ctr', key, iv);
  const locked = Buffer.concat([cipher.update(bytes), cipher.final()]);
  return {
    bytes: locked,
    file: {
      v: 'v2',
      key: {
        kty: 'oct',
        key_ops: ['encrypt', 'decrypt'],
        alg: 'A256CTR',
        k: key.toString('base64url'),
        ext: true,
      },
      iv: unpadded(iv),
      hashes: { sha256: unpadded(createHash('sha256').update(locked).digest()) },
    },
  };
}

const TYPES: Readonly<Record<string, string>> = {
  png: 'image/png',
  svg: 'image/svg+xml',
  pdf: 'application/pdf',
  csv: 'text/csv',
  json: 'application/json',
  txt: 'text/plain',
};

export const typeOf = (name: string): string =>
  TYPES[name.slice(name.lastIndexOf('.') + 1).toLowerCase()] ?? 'application/octet-stream';

/** A picture or file as a message, once it is uploaded. */
export function attachmentOf(
  { name, alt }: Picture,
  bytes: Uint8Array,
  at: { readonly url: string } | { readonly file: object },
): object {
  const mimetype = typeOf(name);
  const info = { mimetype, size: bytes.byteLength };
  // The name in `filename` makes `body` the words that stand for the picture.
  const named = { body: alt || name, filename: name };
  if (mimetype !== 'image/png') return { msgtype: 'm.file', ...named, info, ...at };
  const { width: w, height: h } = sizeOf(bytes);
  return { msgtype: 'm.image', ...named, info: { ...info, w, h }, ...at };
}

/** A PNG tells its size at a fixed place of its first part (PNG specification, IHDR). */
function sizeOf(bytes: Uint8Array): { width: number; height: number } {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  return { width: view.getUint32(16), height: view.getUint32(20) };
}
