import { describe, expect, it, vi } from 'vitest';
import { type Command, form, type Here } from '../../src/chat/command.ts';
import { bare, otherwise, required } from '../../src/chat/option.ts';
import { choice, length, whole } from '../../src/chat/option-kinds.ts';
import { count, type Reply, reply } from '../../src/chat/reply.ts';
import { wrong } from '../../src/measure/result.ts';
import { ADA, ask, BEA, listOf, roomOf } from './fakes.ts';

/** What the last run of the command was handed. */
interface Seen {
  values?: Readonly<Record<string, unknown>>;
  here?: Here;
  runs: number;
}

function beeCommand(): { bee: Command; seen: Seen } {
  const seen: Seen = { runs: 0 };
  const note = (values: Readonly<Record<string, unknown>>, here: Here) => {
    Object.assign(seen, { values, here });
    seen.runs++;
  };
  const bee: Command = {
    name: 'bee',
    summary: 'A command for tests',
    standing: 'show',
    forms: [
      form({
        name: 'show',
        summary: 'Shows what it was handed',
        examples: ['/bee show 1in'],
        options: {
          size: bare(length('How large')),
          shape: otherwise(
            bare(
              choice('What', [
                { name: 'hexagon', title: 'hexagon' },
                { name: 'kite', title: 'kite' },
              ]),
            ),
            'hexagon',
          ),
          rounds: whole('How many', 0, 9),
        },
        run(values, here) {
          note(values, here);
          return reply({ title: 'Seen', figures: { size: count(values.size ?? 0) } });
        },
      }),
      form({
        name: 'close',
        summary: 'Closes',
        examples: ['/bee close'],
        options: {},
        organisers: true,
        run: (values, here) => {
          note(values, here);
          return reply({ title: 'Closed' });
        },
      }),
      form({
        name: 'set',
        summary: 'Keeps a seam',
        examples: ['/bee set 1/4in'],
        options: { seam: required(bare(length('Seam'))) },
        keeps: true,
        audience: 'asker',
        async run({ seam }, here) {
          note({ seam }, here);
          const kept = await here.facts.defaults.set(here.guild, here.who.id, { seam });
          if (seam > 3) throw new Error('secret: the needle broke');
          return reply({ title: 'Kept', lines: [`seam ${kept.seam}`] });
        },
      }),
      form({
        name: 'refuse',
        summary: 'Always a problem',
        examples: ['/bee refuse'],
        options: {},
        run: () => wrong('nothing-to-sew'),
      }),
      form({
        name: 'break',
        summary: 'Always a fault',
        examples: ['/bee break'],
        options: {},
        run() {
          throw new TypeError('secret: cannot read properties of undefined');
        },
      }),
    ],
  };
  return { bee, seen };
}

function hive() {
  const { bee, seen } = beeCommand();
  return { ...roomOf(listOf(bee)), seen };
}

const code = ({ error }: Reply) => error?.code;

describe('finding what is asked', () => {
  it.each(['/bee show 1in', '!bee show 1in', '/ bee show 1in', '/BEE Show 1in', '/bee 1in'])(
    '%s',
    async (words) => {
      const { room, seen } = hive();
      expect(code(await room.answer(ask(words)))).toBeUndefined();
      expect(seen.values).toMatchObject({ size: 1 });
    },
  );

  it('options that a platform hands over by name, tidied as typed words are', async () => {
    const { room, seen } = hive();
    const answered = await room.answer(
      ask({ command: 'bee', form: 'show', options: { size: ' 1½″ ', shape: 'Kites' } }),
    );
    expect(answered.error).toBeNull();
    expect(seen.values).toMatchObject({ size: 1.5, shape: 'kite' });
  });

  it.each([
    ['/wasp 1in', 'command-unknown'],
    ['/', 'nothing-asked'],
    ['   ', 'nothing-asked'],
    ['good morning', 'question-unread'],
    ['x'.repeat(2001), 'text-long'],
    ['/bee \u0007', 'control-characters'],
    ['/bee \ud800', 'control-characters'],
    ['/bee fish', 'words-unread'],
    ['/bee show wings:2', 'option-unknown'],
  ])('%s is told what was wrong', async (words, wanted) => {
    const { room, seen } = hive();
    expect(code(await room.answer(ask(words)))).toBe(wanted);
    expect(seen.runs).toBe(0);
  });

  it.each(['__proto__', 'constructor', 'toString', 'hasOwnProperty', 'valueOf'])(
    '%s is no command, form, option or choice',
    async (name) => {
      const { room, faults } = hive();
      const asks = [
        ask(`/${name}`),
        ask(`/bee ${name}`),
        ask(`/bee show ${name}:1`),
        ask(`/bee show shape:${name}`),
        ask({ command: name, form: '', options: {} }),
        ask({ command: 'bee', form: name, options: {} }),
        ask({ command: 'bee', form: 'show', options: { [name]: '1' } }),
        ask({ command: 'bee', form: 'show', options: { shape: name } }),
      ];
      for (const one of asks) expect((await room.answer(one)).error?.message).toMatch(/\w+/);
      expect(faults).toEqual([]);
    },
  );

  it('platform options are refused as typed ones are', async () => {
    const { room } = hive();
    const of = (size: string) => room.answer(ask({ command: 'bee', form: 'show', options: { size } }));
    expect(code(await of('1\u202ein'))).toBe('control-characters');
    expect(code(await of('1'.repeat(3000)))).toBe('text-long');
    expect(code(await of(''))).toBe('option-empty');
    expect(code(await of('1in of cloth'))).toBe('option-unread');
  });
});

describe('permission', () => {
  it('a member is refused what is for organisers, and nothing runs', async () => {
    const { room, seen } = hive();
    const refused = await room.answer(ask('/bee close', { who: ADA }));
    expect(code(refused)).toBe('organisers-only');
    expect(refused.error?.message).toContain('/bee close');
    expect(refused.audience).toBe('asker');
    expect(seen.runs).toBe(0);
  });

  it('an organiser is not', async () => {
    const { room } = hive();
    expect((await room.answer(ask('/bee close', { who: BEA }))).title).toBe('Closed');
  });
});

describe('an event delivered again', () => {
  it('gets the kept reply, and its effect happens once', async () => {
    const { room, facts, seen } = hive();
    const first = await room.answer(ask('/bee set 1/2in', { event: 'e1' }));
    await facts.defaults.set('bees', 'ada', { seam: 9 });
    const again = await room.answer(ask('/bee set 1/2in', { event: 'e1' }));
    expect(again).toEqual(first);
    expect(seen.runs).toBe(1);
    expect(await facts.defaults.read('bees', 'ada')).toEqual({ seam: 9 });
  });

  it('another event, or the same in another guild, is another ask', async () => {
    const { room, seen } = hive();
    await room.answer(ask('/bee set 1/2in', { event: 'e1' }));
    await room.answer(ask('/bee set 1/2in', { event: 'e2' }));
    await room.answer(ask('/bee set 1/2in', { event: 'e1', guild: 'moths' }));
    expect(seen.runs).toBe(3);
  });

  it('the effect and the answer are kept in one work', async () => {
    const { room, facts } = hive();
    await room.answer(ask('/bee set 1/2in', { event: 'e1' }));
    expect(facts.calls[0]).toBe('together');
    expect(facts.calls.slice(1).every((call) => call.endsWith(' inside'))).toBe(true);
    expect(facts.calls).toContain('set inside');
    expect(facts.calls.at(-1)).toBe('keep inside');
  });

  it('a mistake is kept too, so that the same words give the same sentence', async () => {
    const { room } = hive();
    const first = await room.answer(ask('/bee set -1in', { event: 'e1' }));
    expect(code(first)).toBe('below-zero');
    expect(await room.answer(ask('/bee set 1in', { event: 'e1' }))).toEqual(first);
  });

  it('a fault keeps neither: delivered again it is tried again', async () => {
    const { room, facts, seen, faults } = hive();
    expect(code(await room.answer(ask('/bee set 4in', { event: 'e1' })))).toBe('fault');
    expect(await facts.defaults.read('bees', 'ada')).toEqual({});
    await room.answer(ask('/bee set 4in', { event: 'e1' }));
    expect(seen.runs).toBe(2);
    expect(faults).toHaveLength(2);
  });

  it('where the kept reply cannot be read any more nothing is done twice, and that is said', async () => {
    const { room, facts, seen } = hive();
    await room.answer(ask('/bee set 1/2in', { event: 'e1' }));
    facts.spoil('bees', 'e1');
    const again = await room.answer(ask('/bee set 1/2in', { event: 'e1' }));
    expect(again.lines.join(' ')).toMatch(/already/);
    expect(again.error).toBeNull();
    expect(seen.runs).toBe(1);
  });
});

describe('what keeps something', () => {
  it('without an event has a work of its own, and a fault leaves nothing behind', async () => {
    const { room, facts } = hive();
    await room.answer(ask('/bee set 1/2in'));
    expect(facts.calls).toEqual(['both', 'together', 'set inside']);
    await room.answer(ask('/bee set 4in'));
    expect(await facts.defaults.read('bees', 'ada')).toEqual({ seam: 0.5 });
  });

  it('what keeps nothing asks for no work', async () => {
    const { room, facts } = hive();
    await room.answer(ask('/bee show 1in'));
    expect(facts.calls).toEqual(['both']);
  });
});

describe('faults', () => {
  it('the member gets a reference and nothing of the fault; the operator gets both', async () => {
    const { room, faults } = hive();
    const told = await room.answer(ask('/bee break'));
    expect(code(told)).toBe('fault');
    const text = JSON.stringify(told);
    expect(text).not.toMatch(/secret|TypeError|\.ts|\bat \w+/);
    expect(faults).toHaveLength(1);
    expect(faults[0]?.error).toBeInstanceOf(TypeError);
    expect(told.error?.message).toContain(faults[0]?.reference ?? 'no reference');
    expect(faults[0]?.reference).toMatch(/^[0-9a-z]{5}-[0-9a-z]{3}$/);
  });

  it('facts out of reach: her own sentence, no path, nothing of the code', async () => {
    for (const trouble of ['store-busy', 'store-full', 'store-unreachable', 'store-new-kind']) {
      const { room, facts, faults } = hive();
      facts.trouble = trouble;
      const told = await room.answer(ask('/bee show 1in'));
      expect(code(told)).toBe('fault');
      expect(told.title).toBe('Not now');
      expect(told.error?.message).toMatch(/Nothing was changed/);
      expect(told.error?.message).toContain(faults[0]?.reference ?? 'no reference');
      expect(JSON.stringify(told)).not.toMatch(/secret|store-|\.db/);
    }
  });

  it('the same for an event', async () => {
    const { room, facts } = hive();
    facts.trouble = 'store-busy';
    expect((await room.answer(ask('/bee set 1in', { event: 'e1' }))).error?.message).toMatch(/in a moment/);
    facts.trouble = null;
    expect((await room.answer(ask('/bee set 1in', { event: 'e1' }))).title).toBe('Kept');
  });

  it('a problem that a command finds is a sentence, not a fault', async () => {
    const { room, faults } = hive();
    const told = await room.answer(ask('/bee refuse'));
    expect(code(told)).toBe('nothing-to-sew');
    expect(told.command).toBe('bee');
    expect(faults).toEqual([]);
  });
});

describe('what a command is handed', () => {
  it('hers before the guild’s before what is usual', async () => {
    const { room, facts, seen } = hive();
    await facts.defaults.set('bees', '', { seam: 0.5, width: 40, unit: 'cm' });
    await facts.defaults.set('bees', 'ada', { seam: 0.375 });
    await room.answer(ask('/bee show 2'));
    expect(seen.here?.defaults).toMatchObject({
      seam: { value: 0.375, from: 'you' },
      width: { value: 40, from: 'guild' },
      unit: { value: 'cm', from: 'guild' },
      reading: { value: 'metric', from: 'guild' },
      zone: { value: 'UTC', from: 'usual' },
    });
    expect(seen.values?.size).toBeCloseTo(2 / 2.54, 12);
    await room.answer(ask('/bee show 2', { guild: 'moths' }));
    expect(seen.here?.defaults.seam).toEqual({ value: 0.25, from: 'usual' });
    expect(seen.values?.size).toBe(2);
  });

  it('her date in her zone', async () => {
    const { room, facts, seen } = hive();
    await facts.defaults.set('bees', 'ada', { zone: 'Pacific/Auckland' });
    await room.answer(ask('/bee show', { now: new Date('2026-12-01T12:00:00Z') }));
    expect(seen.here?.today).toBe('2026-12-02');
  });

  it('which options were given, which stood bare, and the fallbacks in place', async () => {
    const { room, seen } = hive();
    await room.answer(ask('/bee show 2in rounds:3'));
    expect(seen.values).toEqual({ size: 2, rounds: 3, shape: 'hexagon' });
    expect([...(seen.here?.given ?? [])]).toEqual(['size', 'rounds']);
    expect([...(seen.here?.bare ?? [])]).toEqual(['size']);
  });

  it('the ask written out again, with other values, and without those taken away', async () => {
    const { room, seen } = hive();
    await room.answer(ask('/bee show 1 1/2in rounds:3'));
    expect(seen.here?.again({})).toBe('/bee show size:1 1/2in rounds:3');
    expect(seen.here?.again({ rounds: 4, shape: 'kite' })).toBe('/bee show size:1 1/2in shape:kite rounds:4');
    expect(seen.here?.again({ size: null })).toBe('/bee show rounds:3');
  });

  it('what is written out again is read as the same', async () => {
    const { room, seen } = hive();
    await room.answer(ask('/bee show 1 1/2in kite rounds:3'));
    const { values, here } = seen;
    await room.answer(ask(here?.again({}) ?? ''));
    expect(seen.values).toEqual(values);
  });

  it('a caution once a day for each member', async () => {
    const { room, seen } = hive();
    const first = async (who = ADA, now = '2026-12-01T10:00:00Z') => {
      await room.answer(ask('/bee show', { who, now: new Date(now) }));
      return seen.here?.firstToday('blade');
    };
    expect([
      await first(),
      await first(),
      await first(BEA),
      await first(ADA, '2026-12-02T10:00:00Z'),
    ]).toEqual([true, false, true, true]);
  });

  it('the audience of the form goes with the reply', async () => {
    const { room } = hive();
    expect((await room.answer(ask('/bee set 1in'))).audience).toBe('asker');
    expect((await room.answer(ask('/bee show'))).audience).toBe('everyone');
  });
});

it('a command is loaded when it is first asked for, and once', async () => {
  const { bee } = beeCommand();
  const load = vi.fn(async () => bee);
  const other = vi.fn(async () => ({ ...bee, name: 'wasp' }));
  const { room } = roomOf({ bee: load, wasp: other });
  expect(load).not.toHaveBeenCalled();
  await room.answer(ask('/bee 1in'));
  await room.answer(ask('/bee 2in'));
  expect(load).toHaveBeenCalledTimes(1);
  expect(other).not.toHaveBeenCalled();
});
