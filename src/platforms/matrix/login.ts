import { setTimeout as after } from 'node:timers/promises';
import { CannotStart, EXIT } from '../platform.ts';
import type { Session } from './session.ts';
import { type MatrixStart, PLATFORM } from './settings.ts';
import { waitOf } from './trouble.ts';

interface Answer {
  readonly status: number;
  readonly body: Readonly<Record<string, unknown>>;
  readonly wait: number | null;
}

interface Call {
  readonly method: 'GET' | 'POST';
  readonly path: string;
  readonly token?: string;
  readonly body?: object;
}

/** How often a server that is busy is asked again before it is given up for now. */
const TRIES = 5;
const LONGEST_WAIT = 60_000;

const unreachable = (homeserver: string, cause: unknown): CannotStart =>
  new CannotStart(
    { sentence: `The homeserver ${homeserver} cannot be reached. Try again later.`, status: EXIT.later },
    cause,
  );

/** The homeserver before the library is there. */
type Door = Pick<MatrixStart, 'homeserver' | 'watch' | 'log'>;

/** One call before the library is there. Busy servers are asked again as they wish. */
async function call(door: Door, { method, path, token, body }: Call): Promise<Answer> {
  const { homeserver, watch, log } = door;
  const count = (what: 'rate_limited_total' | 'server_errors_total') =>
    watch.count(what, { platform: PLATFORM });
  for (let tried = 1; ; tried++) {
    let answer: Answer;
    try {
      const response = await fetch(new URL(path, homeserver), {
        method,
        headers: {
          ...(token ? { authorization: `Bearer ${token}` } : {}),
          'content-type': 'application/json',
        },
        ...(body ? { body: JSON.stringify(body) } : {}),
        signal: AbortSignal.timeout(30_000),
      });
      const said = (await response.json().catch(() => ({}))) as Answer['body'];
      const wait = waitOf(said.retry_after_ms, response.headers.get('retry-after'));
      answer = { status: response.status, body: said, wait };
    } catch (error) {
      count('server_errors_total');
      throw unreachable(homeserver, error);
    }
    if (answer.status >= 500) {
      count('server_errors_total');
      throw unreachable(homeserver, new Error(`status ${answer.status}`));
    }
    if (answer.status !== 429) return answer;
    count('rate_limited_total');
    if (tried === TRIES) throw unreachable(homeserver, new Error('it asks to wait'));
    const wait = Math.min(answer.wait ?? 1000 * 2 ** tried, LONGEST_WAIT);
    if (tried === 1) log.warn({ wait }, 'the homeserver makes us wait before it lets us in');
    await after(wait);
  }
}

export type Standing = 'good' | 'soft-logout' | 'gone';

/** Whether the homeserver still knows a session. */
export async function standingOf(door: Door, { accessToken, deviceId, user }: Session): Promise<Standing> {
  const { status, body } = await whoAmI(door, accessToken);
  if (status === 200) return body.device_id === deviceId && body.user_id === user ? 'good' : 'gone';
  return body.soft_logout === true ? 'soft-logout' : 'gone';
}

const whoAmI = (door: Door, token: string): Promise<Answer> =>
  call(door, { method: 'GET', path: '/_matrix/client/v3/account/whoami', token });

/** Logs a device out, where the homeserver still knows it. */
export async function logOut(door: Door, { accessToken }: Session): Promise<void> {
  await call(door, { method: 'POST', path: '/_matrix/client/v3/logout', token: accessToken, body: {} });
}

/** A new session by the password; with `deviceId`, the same device again. */
async function byPassword(needs: MatrixStart, password: string, deviceId?: string) {
  const { homeserver, user } = needs;
  const { status, body } = await call(needs, {
    method: 'POST',
    path: '/_matrix/client/v3/login',
    body: {
      type: 'm.login.password',
      identifier: { type: 'm.id.user', user },
      password,
      ...(deviceId ? { device_id: deviceId } : {}),
      initial_device_display_name: 'Honeycount',
    },
  });
  if (status === 200)
    return {
      ...{ homeserver, user: String(body.user_id), deviceId: String(body.device_id) },
      ...{ accessToken: String(body.access_token), keys: false },
    };
  throw new CannotStart({
    sentence: `The homeserver does not take the password of ${user} (${String(body.errcode ?? status)}). Look at "matrix.user" and "matrix.password" in the settings.`,
    status: EXIT.settings,
  });
}

async function byToken(needs: MatrixStart, accessToken: string): Promise<Session> {
  const { homeserver, user } = needs;
  const { status, body } = await whoAmI(needs, accessToken);
  if (status === 200 && body.user_id === user && typeof body.device_id === 'string')
    return { homeserver, user, deviceId: body.device_id, accessToken, keys: false };
  const why =
    status === 200
      ? `belongs to ${String(body.user_id)}, not to ${user}`
      : `is not taken by the homeserver (${String(body.errcode ?? status)})`;
  throw new CannotStart({
    sentence: `The token in "matrix.accessToken" ${why}. Copy it anew, or give a "password" in its place.`,
    status: EXIT.settings,
  });
}

/** A new session, by the token or else by the password of the settings. */
export function logIn(needs: MatrixStart): Promise<Session> {
  const { password, accessToken } = needs;
  if (password) return byPassword(needs, password);
  return byToken(needs, accessToken ?? '');
}

/** The same device with a new token, where there is a password to get it with. */
export async function logInAgain(needs: MatrixStart, { deviceId, keys }: Session): Promise<Session> {
  if (needs.password) return { ...(await byPassword(needs, needs.password, deviceId)), keys };
  throw new CannotStart({
    sentence:
      'The homeserver wants the bot to log in again, and there is only a token. Put a new one in "matrix.accessToken", or a "password".',
    status: EXIT.settings,
  });
}
