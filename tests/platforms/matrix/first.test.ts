import { expect, test } from 'vitest';
import { ADA, BEA, bodyOf, running, said, Voice } from './bot.ts';

for (let i = 0; i < 3; i++)
  test('first' + i, async () => {
    const t = performance.now();
    const bot = await running();
    console.info('start', performance.now() - t);
    const room = bot.standIn.makeRoom({ members: [ADA, BEA] });
    const ada = new Voice(bot.standIn, room, ADA);
    const answer = await ada.ask('!cut hexagon 1in');
    expect(bodyOf(answer)).toContain('Hexagon');
    console.info('all', performance.now() - t, said(bot));
    const u = performance.now();
    await bot.stop();
    console.info('stop', performance.now() - u);
    console.info(bot.standIn.requests.map((r) => r.operation || r.path).join(' '));
  });
