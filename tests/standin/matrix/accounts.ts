import { another, BOT, PASSWORD } from './names.ts';
import { type Outcome, ok, type Request, refusal } from './requests.ts';

export interface Device {
  readonly id: string;
  standing: 'good' | 'soft-logout' | 'gone';
}

interface Login {
  readonly identifier: { readonly user: string };
  readonly password: string;
  readonly device_id?: string;
}

/** The bot's devices by their tokens, and what they have shown of their keys. */
export class Accounts {
  readonly devices = new Map<string, Device>();
  readonly #keys = new Map<string, unknown>();
  #oneTimeKeys = 0;

  get oneTimeKeys(): number {
    return this.#oneTimeKeys;
  }

  /** A token as if it had been given out. */
  giveToken(device = `DEVICE${another()}`): { token: string; device: string } {
    const token = `secret-token-${another()}-${Math.random().toString(36).slice(2)}`;
    this.devices.set(token, { id: device, standing: 'good' });
    return { token, device };
  }

  deviceOf = ({ token }: Request): string => this.devices.get(token)?.id ?? '';

  /** The answer to whoever has no right token. */
  unknown({ operation, token }: Request): Outcome | undefined {
    if (operation === 'login' || operation === 'getVersions') return undefined;
    const device = this.devices.get(token);
    if (device?.standing === 'good') return undefined;
    if (device?.standing === 'soft-logout') return refusal(401, 'M_UNKNOWN_TOKEN', { soft_logout: true });
    return refusal(401, token ? 'M_UNKNOWN_TOKEN' : 'M_MISSING_TOKEN');
  }

  readonly routes = {
    getTokenOwner: (request: Request) => ok({ user_id: BOT, device_id: this.deviceOf(request) }),
    login: ({ body }: Request) => this.#login(body as Login),
    logout: ({ token }: Request) => {
      this.devices.delete(token);
      return ok();
    },
    uploadKeys: (request: Request) => this.#uploadKeys(request),
    queryKeys: ({ body }: Request) => {
      const asked = Object.keys((body as { device_keys: object }).device_keys);
      const keysOf = (user: string) => (user === BOT ? Object.fromEntries(this.#keys) : {});
      return ok({ device_keys: Object.fromEntries(asked.map((user) => [user, keysOf(user)])), failures: {} });
    },
    claimKeys: () => ok({ one_time_keys: {}, failures: {} }),
    sendToDevice: () => ok(),
    uploadCrossSigningKeys: () => ok(),
    uploadCrossSigningSignatures: () => ok({ failures: {} }),
    getRoomKeysVersionCurrent: () => refusal(404, 'M_NOT_FOUND'),
  };

  #login({ identifier, password, device_id }: Login): Outcome {
    if (password !== PASSWORD || ![BOT, 'bee'].includes(identifier.user)) return refusal(403, 'M_FORBIDDEN');
    const { token, device } = this.giveToken(device_id);
    return ok({ user_id: BOT, device_id: device, access_token: token });
  }

  #uploadKeys(request: Request): Outcome {
    const { device_keys, one_time_keys = {} } = request.body as {
      device_keys?: unknown;
      one_time_keys?: object;
    };
    if (device_keys) this.#keys.set(this.deviceOf(request), device_keys);
    this.#oneTimeKeys += Object.keys(one_time_keys).length;
    return ok({ one_time_key_counts: { signed_curve25519: this.#oneTimeKeys } });
  }
}
