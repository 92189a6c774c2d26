import { randomBytes } from 'node:crypto';
import type { MatrixClient } from 'matrix-js-sdk';
import type { CryptoCallbacks } from 'matrix-js-sdk/lib/crypto-api/index.js';
import { decodeRecoveryKey, encodeRecoveryKey } from 'matrix-js-sdk/lib/crypto-api/recovery-key.js';
import { CannotStart, EXIT, type Log } from '../platform.ts';
import { brings } from './trouble.ts';

/** The bytes of a recovery key as it is written down. */
export function readRecoveryKey(written: string): Uint8Array<ArrayBuffer> {
  try {
    return decodeRecoveryKey(written);
  } catch (error) {
    throw new CannotStart(
      {
        sentence:
          '"matrix.recoveryKey" is no recovery key of Matrix (twelve groups of four signs). Make one with npm run -s recovery-key, or copy the one the account has.',
        status: EXIT.settings,
      },
      error,
    );
  }
}

/** A new recovery key, as it is written down. */
export function newRecoveryKey(): string {
  const written = encodeRecoveryKey(new Uint8Array(randomBytes(32)));
  if (!written) throw new Error('a recovery key could not be written');
  return written;
}

/** The library asks for the key where a secret of the account is locked with it. */
export const withRecoveryKey = (
  key: Uint8Array<ArrayBuffer> | undefined,
  client: () => MatrixClient | undefined,
): CryptoCallbacks => ({
  getSecretStorageKey: async ({ keys }) => {
    if (!key) return null;
    for (const [id, description] of Object.entries(keys))
      if (await client()?.secretStorage.checkKey(key, description)) return [id, key];
    return null;
  },
});

/**
 * Signs this device with the account's own keys, making them where there are none, so that members' clients show
 * no warning. Needs a running sync.
 */
export async function signDevice(
  client: MatrixClient,
  key: Uint8Array<ArrayBuffer>,
  { user, password, log }: { user: string; password: string | undefined; log: Log },
): Promise<void> {
  const crypto = client.getCrypto();
  if (!crypto) return;
  try {
    await crypto.bootstrapSecretStorage({
      createSecretStorageKey: async () => ({
        privateKey: key,
        encodedPrivateKey: encodeRecoveryKey(key) ?? '',
      }),
    });
    await crypto.bootstrapCrossSigning({
      authUploadDeviceSigningKeys: async (upload) => {
        const identifier = { type: 'm.id.user', user };
        await upload(password ? { type: 'm.login.password', identifier, user, password } : null);
      },
    });
  } catch (error) {
    log.warn(
      brings(error),
      'the device could not be signed: members’ clients will show a warning. Is matrix.recoveryKey the one of this account?',
    );
  }
}
