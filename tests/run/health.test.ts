import { afterEach, expect, test } from 'vitest';
import { openHealth } from '../../src/run/health.ts';
import { openMetrics } from '../../src/run/metrics.ts';

const closing: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const close of closing.splice(0)) await close();
});

async function serve(standing: Map<string, boolean>) {
  const metrics = openMetrics();
  const health = await openHealth({ host: '127.0.0.1', port: 0, metrics, standing: () => standing });
  closing.push(health.close);
  const ask = (path: string, method = 'GET') => fetch(`http://127.0.0.1:${health.port}${path}`, { method });
  return { metrics, ask };
}

test('health is 200 while every platform is up and 503 when one is not', async () => {
  const standing = new Map([['discord', true]]);
  const { ask } = await serve(standing);
  expect((await ask('/health')).status).toBe(200);
  standing.set('matrix', false);
  const down = await ask('/health');
  expect(down.status).toBe(503);
  expect(await down.json()).toEqual({ well: false, platforms: { discord: true, matrix: false } });
});

test('metrics are in the text format, with what was counted', async () => {
  const { metrics, ask } = await serve(new Map());
  metrics.count('asks_total', { platform: 'terminal' });
  metrics.count('asks_total', { platform: 'terminal' });
  metrics.took('terminal', 0.02);
  const text = await (await ask('/metrics')).text();
  expect(text).toContain('honeycount_asks_total{platform="terminal"} 2');
  expect(text).toContain('honeycount_answer_seconds_bucket{le="0.03",platform="terminal"} 1');
});

test('nothing else is served, and nothing is taken', async () => {
  const { ask } = await serve(new Map());
  expect((await ask('/')).status).toBe(404);
  expect((await ask('/health', 'POST')).status).toBe(405);
});
