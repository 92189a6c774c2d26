import type { IncomingMessage, ServerResponse } from 'node:http';

/** A request as the stand-in keeps it. */
export interface Request {
  readonly operation: string;
  readonly method: string;
  readonly path: string;
  /** What stands in the path in the place of its names. */
  readonly parts: readonly string[];
  readonly query: URLSearchParams;
  readonly token: string;
  readonly body: unknown;
  readonly bytes: Buffer;
  readonly type: string;
}

export interface Outcome {
  readonly status: number;
  readonly body?: unknown;
  readonly headers?: Readonly<Record<string, string>>;
}

const CLIENT = '/_matrix/client/v3';

/** Every operation that the bot may use: the specification's name for it, and where it is. */
const OPERATIONS: readonly (readonly [operation: string, method: string, path: string])[] = [
  ['getVersions', 'GET', '/_matrix/client/versions'],
  ['getTokenOwner', 'GET', `${CLIENT}/account/whoami`],
  ['login', 'POST', `${CLIENT}/login`],
  ['logout', 'POST', `${CLIENT}/logout`],
  ['getCapabilities', 'GET', `${CLIENT}/capabilities`],
  ['getPushRules', 'GET', `${CLIENT}/pushrules/`],
  ['defineFilter', 'POST', `${CLIENT}/user/{}/filter`],
  ['getFilter', 'GET', `${CLIENT}/user/{}/filter/{}`],
  ['sync', 'GET', `${CLIENT}/sync`],
  ['uploadKeys', 'POST', `${CLIENT}/keys/upload`],
  ['queryKeys', 'POST', `${CLIENT}/keys/query`],
  ['claimKeys', 'POST', `${CLIENT}/keys/claim`],
  ['sendToDevice', 'PUT', `${CLIENT}/sendToDevice/{}/{}`],
  ['uploadCrossSigningKeys', 'POST', `${CLIENT}/keys/device_signing/upload`],
  ['uploadCrossSigningSignatures', 'POST', `${CLIENT}/keys/signatures/upload`],
  ['getRoomKeysVersionCurrent', 'GET', `${CLIENT}/room_keys/version`],
  ['getAccountData', 'GET', `${CLIENT}/user/{}/account_data/{}`],
  ['setAccountData', 'PUT', `${CLIENT}/user/{}/account_data/{}`],
  ['createRoom', 'POST', `${CLIENT}/createRoom`],
  ['joinRoom', 'POST', `${CLIENT}/join/{}`],
  ['leaveRoom', 'POST', `${CLIENT}/rooms/{}/leave`],
  ['sendMessage', 'PUT', `${CLIENT}/rooms/{}/send/{}/{}`],
  ['redactEvent', 'PUT', `${CLIENT}/rooms/{}/redact/{}/{}`],
  ['setRoomStateWithKey', 'PUT', `${CLIENT}/rooms/{}/state/{}/{}`],
  ['getRoomEvents', 'GET', `${CLIENT}/rooms/{}/messages`],
  ['getOneRoomEvent', 'GET', `${CLIENT}/rooms/{}/event/{}`],
  ['getMembersByRoom', 'GET', `${CLIENT}/rooms/{}/members`],
  ['uploadContent', 'POST', '/_matrix/media/v3/upload'],
];

const routes = OPERATIONS.map(([operation, method, path]) => ({
  operation,
  method,
  pattern: new RegExp(`^${path.replaceAll('{}', '([^/]*)')}$`),
}));

/** Reads a request; `operation` is empty where the bot has no business there. */
export async function requestOf(incoming: IncomingMessage): Promise<Request> {
  const chunks: Buffer[] = [];
  for await (const chunk of incoming) chunks.push(chunk as Buffer);
  const bytes = Buffer.concat(chunks);
  const url = new URL(incoming.url ?? '', 'http://standin');
  const method = incoming.method ?? '';
  const found = routes.find((route) => route.method === method && route.pattern.test(url.pathname));
  const parts = found?.pattern.exec(url.pathname)?.slice(1).map(decodeURIComponent) ?? [];
  const type = incoming.headers['content-type'] ?? '';
  const isJson = type.startsWith('application/json') && found?.operation !== 'uploadContent';
  return {
    ...{ operation: found?.operation ?? '', method, path: url.pathname, parts, query: url.searchParams },
    token: /^Bearer (.+)$/.exec(incoming.headers.authorization ?? '')?.[1] ?? '',
    body: bytes.length > 0 && isJson ? JSON.parse(bytes.toString('utf8')) : undefined,
    ...{ bytes, type },
  };
}

export function answer(response: ServerResponse, { status, body, headers = {} }: Outcome): void {
  response.writeHead(status, { 'content-type': 'application/json', ...headers });
  response.end(JSON.stringify(body ?? {}));
}

export const refusal = (status: number, errcode: string, more: object = {}): Outcome => ({
  status,
  body: { errcode, error: `the stand-in says ${errcode}`, ...more },
});

export const ok = (body: unknown = {}): Outcome => ({ status: 200, body });
