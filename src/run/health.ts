import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Metrics } from './metrics.ts';

/** What is up and what is not, by platform. */
export type Standing = ReadonlyMap<string, boolean>;

export interface HealthNeeds {
  readonly host: string;
  readonly port: number;
  readonly metrics: Metrics;
  standing(): Standing;
}

/** A small server for whoever watches the program: `/health` (200 while all is up, else 503) and `/metrics`. */
export async function openHealth(needs: HealthNeeds): Promise<{ port: number; close(): Promise<void> }> {
  const server = createServer(async (request, response) => {
    if (request.method !== 'GET' && request.method !== 'HEAD') return void response.writeHead(405).end();
    if (request.url === '/metrics') {
      response.setHeader('content-type', needs.metrics.contentType);
      return void response.end(await needs.metrics.text());
    }
    if (request.url !== '/health') return void response.writeHead(404).end();
    const standing = needs.standing();
    const well = [...standing.values()].every(Boolean);
    response.writeHead(well ? 200 : 503, { 'content-type': 'application/json' });
    response.end(JSON.stringify({ well, platforms: Object.fromEntries(standing) }));
  });
  await listening(server, needs);
  const { port } = server.address() as AddressInfo;
  return {
    port,
    close: () =>
      new Promise((done) => {
        server.close(() => done());
        server.closeAllConnections();
      }),
  };
}

const listening = (server: Server, { host, port }: HealthNeeds) =>
  new Promise<void>((done, failed) => {
    server.once('error', failed);
    server.listen(port, host, done);
  });
