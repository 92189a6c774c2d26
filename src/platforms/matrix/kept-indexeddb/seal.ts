import { createCipheriv, createDecipheriv, createHmac, hkdfSync, randomBytes } from 'node:crypto';

/** Locks what is written and tells two records apart without showing their keys. */
export interface Seal {
  /** A name for a record's key that says nothing of it, the same each time. */
  nameOf(where: string, key: Uint8Array): Buffer;
  lock(where: string, plain: Uint8Array): Buffer;
  /** Throws where the bytes are not what was locked, or were locked with another key. */
  unlock(where: string, locked: Uint8Array): Buffer;
}

const NONCE = 12;
const TAG = 16;

/** A seal made from a secret of any length: AES-256-GCM for what is kept, HMAC-SHA-256 for its name. */
export function sealWith(secret: string): Seal {
  const key = Buffer.from(hkdfSync('sha256', secret, 'honeycount', 'matrix store: contents', 32));
  const naming = Buffer.from(hkdfSync('sha256', secret, 'honeycount', 'matrix store: names', 32));
  return {
    nameOf: (where, plain) => createHmac('sha256', naming).update(where).update('\0').update(plain).digest(),
    lock(where, plain) {
      const nonce = randomBytes(NONCE);
      const cipher = createCipheriv('aes-256-gcm', key, nonce).setAAD(Buffer.from(where));
      const body = Buffer.concat([cipher.update(plain), cipher.final()]);
      return Buffer.concat([nonce, cipher.getAuthTag(), body]);
    },
    unlock(where, locked) {
      const nonce = locked.subarray(0, NONCE);
      const decipher = createDecipheriv('aes-256-gcm', key, nonce).setAAD(Buffer.from(where));
      decipher.setAuthTag(locked.subarray(NONCE, NONCE + TAG));
      return Buffer.concat([decipher.update(locked.subarray(NONCE + TAG)), decipher.final()]);
    },
  };
}
