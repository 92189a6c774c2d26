import { type Member, until } from './member.ts';

/** Makes the account's own keys and locks them with a recovery key, as a person does; the key as written down. */
export async function setUpRecovery(member: Member): Promise<string> {
  const crypto = member.client.getCrypto();
  const key = await crypto?.createRecoveryKeyFromPassphrase();
  if (!crypto || !key) throw new Error('no keys');
  member.recovery = key.privateKey;
  const { user, password } = member.account;
  await crypto.bootstrapCrossSigning({
    authUploadDeviceSigningKeys: async (upload) => {
      const identifier = { type: 'm.id.user', user };
      await upload({ type: 'm.login.password', identifier, user, password });
    },
  });
  await crypto.bootstrapSecretStorage({ createSecretStorageKey: async () => key });
  return key.encodedPrivateKey ?? '';
}

/** The devices of an account, as other clients are told of them. */
export async function devicesOf(user: string, { client }: Member): Promise<string[]> {
  return Object.keys((await client.downloadKeysForUsers([user])).device_keys[user] ?? {});
}

/** The key that stands for the person behind an account. */
export async function masterKeyOf(user: string, { client }: Member): Promise<string | undefined> {
  return Object.values((await client.downloadKeysForUsers([user])).master_keys?.[user]?.keys ?? {})[0];
}

/** Waits until a member's client sees a device bear its account's own signature. */
export async function seesSigned({ client }: Member, user: string, device: string): Promise<void> {
  const crypto = client.getCrypto();
  const isSigned = async () => (await crypto?.getDeviceVerificationStatus(user, device))?.signedByOwner;
  await until(async () => (await isSigned()) ?? false, `${device} is signed`);
}

/** Logs another device of the member's account out. */
export async function putAway(device: string, { account, client }: Member): Promise<void> {
  const { user, password } = account;
  const identifier = { type: 'm.id.user', user };
  const ask = (auth?: object) =>
    fetch(`${client.baseUrl}/_matrix/client/v3/devices/${device}`, {
      method: 'DELETE',
      headers: { authorization: `Bearer ${client.getAccessToken()}` },
      body: JSON.stringify(auth ? { auth } : {}),
    });
  const { session } = (await (await ask()).json()) as { session: string };
  const answer = await ask({ type: 'm.login.password', identifier, user, password, session });
  if (!answer.ok) throw new Error(`putting a device away: ${await answer.text()}`);
}

/** The status with which the homeserver meets a token. */
export async function statusOf(token: string, { client }: Member): Promise<number> {
  const answer = await fetch(`${client.baseUrl}/_matrix/client/v3/account/whoami`, {
    headers: { authorization: `Bearer ${token}` },
  });
  return answer.status;
}
