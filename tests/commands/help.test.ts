import { describe, expect, test } from 'vitest';
import { commands } from '../../commands/index.ts';
import { alone, answered, declared, openAsking, wordsOf } from './asking.ts';

const ask = openAsking();

describe('/help', () => {
  test('names every command', async () => {
    const reply = await answered(ask, '/help');
    expect(reply.table?.rows.map(([name]) => name)).toEqual(Object.keys(commands).map((name) => `/${name}`));
  });

  test.each(Object.keys(commands))('/help %s explains it with an example that can be typed', async (name) => {
    const reply = await answered(ask, `/help ${name}`);
    expect(wordsOf(reply)).toContain(`/${name}`);
    const forms = declared.filter(({ command }) => command.name === name);
    for (const { form } of forms) expect(wordsOf(reply), form.name).toContain(form.examples[0]);
  });

  test.each(
    declared.filter(({ form }) => form.name !== '').map(({ command, form }) => [command.name, form.name]),
  )('/help %s %s tells each option with its bounds', async (command, form) => {
    const reply = await answered(ask, `/help ${command} ${form}`);
    const { options } = declared.find((one) => one.command.name === command && one.form.name === form)!.form;
    expect((reply.table?.rows ?? []).map(([name]) => name)).toEqual(Object.keys(options));
    for (const [name, { bounds }] of Object.entries(options))
      expect(reply.table?.rows.find(([key]) => key === name)?.[1]).toContain(bounds);
  });

  test('takes the command with or without its sign, in any case', async () => {
    const plain = await answered(ask, '/help cut');
    for (const words of ['/help /cut', '/help CUT', '!help cut'])
      expect((await answered(ask, words)).title, words).toBe(plain.title);
  });

  test('an unknown command is met with one that is near, if one is', async () => {
    const reply = await ask('/help cutt');
    expect(reply.error?.code).toBe('command-unknown');
    expect(reply.error?.message).toContain('cut');
  });

  test('its choices can be asked', async () => {
    for (const choice of (await answered(ask, '/help')).choices) await answered(ask, choice.ask);
  });
});

describe('the examples that declarations show', () => {
  test('there is one at least for every form', () => {
    for (const { command, form } of declared)
      expect(form.examples.length, `${command.name} ${form.name}`).toBeGreaterThan(0);
  });

  test.each(alone)('%s is answered', async (example) => {
    const reply = await ask(example, { organiser: true });
    expect(reply.error).toBeNull();
    expect(reply.asks).toBeNull();
    expect(reply.title).not.toBe('');
  });

  test('each says the options that it names (none read as another)', async () => {
    for (const { command, form } of declared)
      for (const example of form.examples)
        expect(example, `${command.name} ${form.name}`).toMatch(new RegExp(`^/${command.name}\\b`));
  });
});
