import { DefaultRestOptions, type RESTOptions } from 'discord.js';

/** How the library sends a request. */
type MakeRequest = RESTOptions['makeRequest'];

/** A failure of the way there, which another try may find mended: the codes of Node and of its HTTP client. */
const ON_THE_WAY: ReadonlySet<unknown> = new Set([
  ...['ECONNREFUSED', 'ECONNRESET', 'EPIPE', 'ETIMEDOUT', 'EAI_AGAIN', 'ENETUNREACH', 'EHOSTUNREACH'],
  ...['UND_ERR_SOCKET', 'UND_ERR_CONNECT_TIMEOUT', 'UND_ERR_HEADERS_TIMEOUT'],
]);

/** So long before the library tries again, milliseconds: five tries fit into the three seconds of an event. */
const PAUSE = 300;

const pause = () => new Promise((done) => setTimeout(done, PAUSE));

/**
 * The library tries again at once after a 5xx answer, and after no other failure of the network than a reset.
 * This waits a little first, and calls every failure of the way there a reset. What is sent twice so is taken
 * once: an event is acknowledged once, a message has a nonce.
 */
export function patiently(makeRequest: MakeRequest = DefaultRestOptions.makeRequest): MakeRequest {
  return async (url, init) => {
    try {
      const response = await makeRequest(url, init);
      if (response.status >= 500) await pause();
      return response;
    } catch (error) {
      if (!(error instanceof Error) || !ON_THE_WAY.has(codeOf(error))) throw error;
      await pause();
      throw Object.assign(new Error(error.message, { cause: error }), { code: 'ECONNRESET' });
    }
  };
}

const codeOf = (error: Error): unknown =>
  'code' in error ? error.code : error.cause instanceof Error ? codeOf(error.cause) : undefined;
