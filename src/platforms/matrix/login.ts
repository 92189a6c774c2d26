import { setTimeout as after } from 'node:timers/promises';
import { z } from 'zod';
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

const owner = z.object({ user_id: z.string(), device_id: z.string().optional() });
const newSession = z.object({ user_id: z.string(), device_id: z.string(), access_token: z.string() });

/** What a homeserver says when all is well; whoever says something else is none. */
function wellSaid<T>(shape: z.ZodType<T>, { body }: Answer, { homeserver }: Door): T {
  const read = shape.safeParse(body);
  if (read.success) return read.data;
  throw new CannotStart({
    sentence: `What answers at ${homeserver} is no Matrix homeserver. Look at "matrix.homeserver" in the settings.`,
    status: EXIT.settings,
  });
}

/** The homeserver's own code for a token that it does not know. */
const UNKNOWN = 'M_UNKNOWN_TOKEN';

const whoAmI = (door: Door, token: string): Promise<Answer> =>
  call(door, { method: 'GET', path: '/_matrix/client/v3/account/whoami', token });

export type Standing = 'good' | 'soft-logout' | 'gone';

/** Whether the homeserver still knows a session. Whatever does not clearly say that it does not is trouble for now. */
export async function standingOf(door: Door, { accessToken, deviceId, user }: Session): Promise<Standing> {
  const answer = await whoAmI(door, accessToken);
  const { status, body } = answer;
  if (status === 200) {
    const { user_id, device_id } = wellSaid(owner, answer, door);
    return device_id === deviceId && user_id === user ? 'good' : 'gone';
  }
  if (body.soft_logout === true) return 'soft-logout';
  if (body.errcode === UNKNOWN) return 'gone';
  throw unreachable(door.homeserver, new Error(`status ${status}`));
}

/** Logs a device out, where the homeserver still knows it. */
export async function logOut(door: Door, { accessToken }: Session): Promise<void> {
  await call(door, { method: 'POST', path: '/_matrix/client/v3/logout', token: accessToken, body: {} });
}

/** A new session by the password; with `deviceId`, the same device again. */
async function byPassword(needs: MatrixStart, password: string, deviceId?: string): Promise<Session> {
  const { homeserver, user } = needs;
  const answer = await call(needs, {
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
  if (answer.status !== 200) {
    const code = String(answer.body.errcode ?? answer.status);
    const sentence = `The homeserver does not take the password of ${user} (${code}). Look at "matrix.user" and "matrix.password" in the settings.`;
    throw new CannotStart({ sentence, status: EXIT.settings });
  }
  const made = wellSaid(newSession, answer, needs);
  // By another name it would not know its own messages.
  if (made.user_id !== user) {
    const sentence = `The homeserver calls the account ${made.user_id}. Write that in "matrix.user" in the settings.`;
    throw new CannotStart({ sentence, status: EXIT.settings });
  }
  return { homeserver, user, deviceId: made.device_id, accessToken: made.access_token, ...NEW };
}

async function byToken(needs: MatrixStart, accessToken: string): Promise<Session> {
  const { homeserver, user } = needs;
  const answer = await whoAmI(needs, accessToken);
  if (answer.status !== 200) {
    const code = String(answer.body.errcode ?? answer.status);
    const sentence = `The token in "matrix.accessToken" is not taken by the homeserver (${code}). Copy it anew, or give a "password" in its place.`;
    throw new CannotStart({ sentence, status: EXIT.settings });
  }
  const { user_id, device_id: deviceId } = wellSaid(owner, answer, needs);
  if (user_id === user && deviceId) return { homeserver, user, deviceId, accessToken, ...NEW };
  const sentence = deviceId
    ? `The token in "matrix.accessToken" belongs to ${user_id}, not to ${user}. Copy it anew, or give a "password" in its place.`
    : 'The token in "matrix.accessToken" belongs to no device, so no encrypted room could be read with it. Give a "password" in its place.';
  throw new CannotStart({ sentence, status: EXIT.settings });
}

/** A device's keys are made after its login. */
const NEW = { keys: false, owesWord: false };

/** A new session, by the password or else by the token of the settings. */
export function logIn(needs: MatrixStart): Promise<Session> {
  const { password, accessToken } = needs;
  if (password) return byPassword(needs, password);
  return byToken(needs, accessToken ?? '');
}

/**
 * The same device with a new token, by the password or because the settings have a new one of that device.
 * Undefined where a new device must be begun.
 */
export async function logInAgain(
  needs: MatrixStart,
  { deviceId, accessToken, keys, owesWord }: Session,
  standing: Exclude<Standing, 'good'>,
): Promise<Session | undefined> {
  const isGone = standing === 'gone';
  const again = (made: Session): Session => ({ ...made, keys, owesWord });
  const { password, accessToken: given } = needs;
  if (password) return isGone ? undefined : again(await byPassword(needs, password, deviceId));
  if (given && given !== accessToken) {
    const made = await byToken(needs, given);
    return made.deviceId === deviceId ? again(made) : undefined;
  }
  if (isGone) return undefined;
  throw new CannotStart({
    sentence:
      'The homeserver wants the bot to log in again, and there is only a token. Put a new one in "matrix.accessToken", or a "password".',
    status: EXIT.settings,
  });
}
