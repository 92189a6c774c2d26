import { describe, expect, test } from 'vitest';
import { ADA, BEA } from '../../standin/discord/events.ts';
import type { Seen } from '../../standin/discord/standin.ts';
import { memoryFacts } from '../../standin/memory-facts.ts';
import { buttonsOf, embedOf, standIn as openStandIn, running, until } from './bot.ts';
import { fakeCommands } from './fake-commands.ts';

describe('buttons', () => {
  test('work after a restart, for the one they were meant for', async () => {
    const standIn = await openStandIn();
    const facts = memoryFacts();
    const first = await running({ standIn, facts });
    const asked = await standIn.deliver({
      who: ADA,
      does: 'slash',
      name: 'cut',
      options: { shape: 'hexagon', size: '4in' },
    });
    await first.platform.stop();
    await running({ standIn, facts });
    const [flats] = buttonsOf(asked);
    const pressed = await standIn.deliver({ who: ADA, does: 'press', customId: flats?.custom_id ?? '' });
    expect(embedOf(pressed).title).toBe('Hexagon, 4 in flat to flat');
    const other = await standIn.deliver({ who: BEA, does: 'press', customId: flats?.custom_id ?? '' });
    expect(other.alone).toBe(true);
    expect(embedOf(other).description).toContain('answers the member who asked');
    expect(standIn.faults).toEqual([]);
  });

  test('a button of an unknown or forgotten id says so to the presser alone', async () => {
    const { standIn } = await running();
    for (const customId of ['key:nothing', 'page:nothing:1', 'somebody-else', 'ask:', 'fill:x']) {
      const seen = await standIn.deliver({ who: ADA, does: 'press', customId });
      expect(seen.alone, customId).toBe(true);
    }
    expect(standIn.faults).toEqual([]);
  });

  test('an organisers’ ask behind a button is refused to a member who forges it', async () => {
    const { commands } = fakeCommands();
    const { standIn } = await running({ commands });
    const forged = await standIn.deliver({ who: ADA, does: 'press', customId: `ask:${ADA.id}::/organise` });
    expect(embedOf(forged).description).toContain('organisers');
    const allowed = await standIn.deliver({ who: BEA, does: 'press', customId: `ask:${BEA.id}::/organise` });
    expect(embedOf(allowed).title).toBe('Organised');
  });
});

describe('long replies', () => {
  test('are paged with nothing dropped, within every limit', async () => {
    const { commands } = fakeCommands();
    const { standIn } = await running({ commands });
    const rows = 120;
    let seen = await standIn.deliver({ who: ADA, does: 'slash', name: 'long', options: { rows } });
    const fields = new Set<string>();
    const lines = new Set<string>();
    const choices = new Set<string>();
    for (let turned = 0; turned < 40; turned++) {
      for (const { name } of embedOf(seen).fields ?? []) fields.add(name);
      for (const line of (embedOf(seen).description ?? '').split('\n')) lines.add(line.trim());
      for (const { label } of buttonsOf(seen)) choices.add(label);
      const next = buttonsOf(seen).find(({ label }) => label === 'Next page');
      if (!next || next.disabled) break;
      seen = await standIn.deliver({ who: ADA, does: 'press', customId: next.custom_id });
      expect(seen.kind).toBe('update');
    }
    expect(fields.size).toBe(rows);
    expect([...lines].filter((line) => line.startsWith('line ')).length).toBe(rows / 4);
    expect([...choices].filter((label) => label.startsWith('choice ')).length).toBe(43);
    expect(standIn.faults).toEqual([]);
  });
});

test('a page whose pictures take long to draw is promised, and then shown', async () => {
  const { commands } = fakeCommands();
  let drawn = 0;
  const draw = async () => {
    if (drawn++ > 0) await new Promise((done) => setTimeout(done, 1100));
    return new Uint8Array(10);
  };
  const { standIn } = await running({ commands, draw });
  const first = await standIn.deliver({ who: ADA, does: 'slash', name: 'long', options: { rows: 120 } });
  const turn = (from: Seen, label: string) => {
    const { custom_id = '' } = buttonsOf(from).find((one) => one.label === label) ?? {};
    return standIn.deliver({ who: ADA, does: 'press', customId: custom_id });
  };
  const second = await turn(first, 'Next page');
  expect(second.kind).toBe('update');
  expect(second.body.attachments).toEqual([]);
  const back = await turn(second, 'Page before');
  expect(back.kind).toBe('edit');
  expect(back.files).toHaveLength(1);
  expect(embedOf(back)).toEqual(embedOf(first));
  expect(standIn.faults).toEqual([]);
});

describe('the standing message and its form', () => {
  test('stands pinned once and is changed, not repeated', async () => {
    const { commands } = fakeCommands();
    const { standIn } = await running({ commands });
    await standIn.deliver({ who: ADA, does: 'slash', name: 'board' });
    await until(() => standIn.pinned.length === 1);
    await standIn.deliver({ who: ADA, does: 'slash', name: 'board' });
    await until(() => standIn.seen.some(({ kind, id }) => kind === 'edit' && id === standIn.pinned[0]));
    expect(standIn.pinned).toHaveLength(1);
    expect(standIn.faults).toEqual([]);
  });

  test('the Log button opens a form for anybody, and what is filled in is only what it says', async () => {
    const { commands, logged } = fakeCommands();
    const { standIn } = await running({ commands });
    const board = await standIn.deliver({ who: ADA, does: 'slash', name: 'board' });
    const [log] = buttonsOf(board);
    const modal = await standIn.deliver({ who: BEA, does: 'press', customId: log?.custom_id ?? '' });
    expect(modal.kind).toBe('modal');
    const note = 'pieces:900 **blue** @everyone\nsecond line';
    const done = await standIn.deliver({
      ...{ who: BEA, does: 'submit', customId: String(modal.body.custom_id) },
      values: { pieces: '3', note },
    });
    expect(embedOf(done).title).toBe('Entered for Bea');
    expect(logged).toEqual([{ pieces: 3, note: expect.stringContaining('pieces:900') }]);
    expect(standIn.faults).toEqual([]);
  });
});

describe('completion', () => {
  test('offers known words, those that begin as typed first, at most 25', async () => {
    const { standIn } = await running();
    const seen = await standIn.deliver({
      who: ADA,
      does: 'typing',
      name: 'yield',
      options: { cloth: 'fat' },
      focused: 'cloth',
    });
    const offered = (seen.body.choices as unknown as { name: string }[]).map(({ name }) => name);
    expect(offered.slice(0, 2).sort()).toEqual(['fat-eighth', 'fat-quarter']);
    expect(standIn.faults).toEqual([]);
  });
});
