import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { writeLength } from '../../src/chat/option-kinds.ts';
import type { Reply } from '../../src/chat/reply.ts';
import {
  type Asker,
  alone,
  answered,
  declared,
  examples,
  numberOf,
  openAsking,
  TOGETHER,
  wordsOf,
} from './asking.ts';

/** What must hold of any reply to any ask whatever; the asker throws on a fault of the program. */
function expectSound(reply: Reply, words: string): void {
  expect(reply.title !== '' || reply.error !== null, words).toBe(true);
  for (const [name, { value, unit }] of Object.entries(reply.figures)) {
    for (const one of [value].flat()) {
      if (typeof one === 'number') expect(Number.isFinite(one), `${words}: ${name}`).toBe(true);
      else expect(one, `${words}: ${name}`).not.toBe('');
    }
    expect(unit, `${words}: ${name}`).toBeTypeOf('string');
  }
  // What she typed is read back to her in quotation marks; it may hold any word.
  const said = wordsOf(reply).replaceAll(/‘[^’]*’/gu, '');
  if (!/NaN|undefined|Infinity/i.test(words))
    expect(said, words).not.toMatch(/NaN|undefined|Infinity|\[object/);
  expect(reply.table?.rows.every((row) => row.length === reply.table?.columns.length) ?? true, words).toBe(
    true,
  );
}

const sound = (ask: Asker) => async (words: string) =>
  expectSound(await ask(words, { organiser: true }), words);

const NUMBERS = [
  '0',
  '1',
  '1/2',
  '1 1/2',
  '3/8',
  '2.5',
  '4',
  '12',
  '48',
  '100',
  '1,000',
  '999999',
  '1e400',
  '-1',
  '1/0',
  '½',
  '.5',
  '1.2.3',
];
const UNITS = ['', 'in', '"', ' inches', 'mm', 'cm', ' cm', 'm', 'ft', 'yd', '%', 'x', '°', 'in2'];
const number = fc.constantFrom(...NUMBERS);
const length = fc.tuple(number, fc.constantFrom(...UNITS)).map(([n, unit]) => `${n}${unit}`);
const size = fc
  .tuple(number, number, fc.constantFrom('', 'in', 'cm', 'ft'))
  .map(([w, h, unit]) => `${w}x${h}${unit}`);

const values = declared.flatMap(({ form }) =>
  Object.values(form.options).flatMap(({ shape, example }) =>
    shape.as === 'choice' ? shape.choices.map(({ name }) => name) : [example],
  ),
);
const names = [...new Set(declared.flatMap(({ form }) => Object.keys(form.options)))];
const words = fc.constantFrom(
  ...new Set([
    ...values,
    'queen',
    'fat quarter',
    'crib',
    'from',
    'and',
    'hexagons',
    'flat to flat',
    'rounds',
    'seam',
    'today',
    '2026-12-01',
  ]),
);
const value = fc.oneof(length, size, words);
const part = fc.oneof(
  value,
  fc.tuple(fc.constantFrom(...names), fc.constantFrom(':', '=', ' '), value).map((parts) => parts.join('')),
);
const heads = declared.map(({ command, form }) => `/${command.name} ${form.name}`.trim());
const anAsk = fc
  .tuple(fc.constantFrom(...heads, ''), fc.array(part, { maxLength: 6 }))
  .map(([head, parts]) => [head, ...parts].join(' '));

describe('whatever is asked', () => {
  const ask = openAsking();

  test('random asks of every form, with values of every kind', async () => {
    await fc.assert(fc.asyncProperty(anAsk, sound(ask)), { numRuns: 1500 });
  }, 60_000);

  test('examples with one word lost, doubled, swapped or changed', async () => {
    const spoilt = fc
      .tuple(
        fc.constantFrom(...examples),
        fc.nat(),
        fc.nat(),
        fc.constantFrom('lose', 'double', 'swap', 'change'),
        value,
      )
      .map(([example, at, other, how, instead]) => {
        const parts = example.split(' ');
        const [i, j] = [at % parts.length, other % parts.length];
        if (how === 'lose') parts.splice(i, 1);
        if (how === 'double') parts.splice(i, 0, parts[i]!);
        if (how === 'swap') [parts[i], parts[j]] = [parts[j]!, parts[i]!];
        if (how === 'change') parts[i] = instead;
        return parts.join(' ');
      });
    await fc.assert(fc.asyncProperty(spoilt, sound(ask)), { numRuns: 800 });
  });

  test('any text at all', async () => {
    const sign = fc.constantFrom(
      ...'½¾″′×–,.:;=/\\"\'`*_<>&%$#@!?()[]{}0123456789 \t\n',
      '🐝',
      '👩‍👧',
      'é',
      'ß',
      'ש',
      '界',
      '\u0000',
      '\u200b',
      '\u202e',
      '\ud83d',
    );
    const text = fc.oneof(
      fc.string({ maxLength: 80 }),
      fc.string({ unit: sign, maxLength: 40 }),
      fc.string({ unit: 'grapheme', maxLength: 30 }),
    );
    const head = fc.constantFrom('', '/', '!', '/cut ', '/count ', '/count garden ', '/me set ', '/help ');
    await fc.assert(
      fc.asyncProperty(
        fc.tuple(head, text).map((parts) => parts.join('')),
        sound(ask),
      ),
      { numRuns: 400 },
    );
  });

  test('options handed over by name, as a platform does', async () => {
    const room = openAsking();
    const options = fc.dictionary(fc.constantFrom(...names), value, { maxKeys: 5 });
    const form = fc.constantFrom(...declared);
    await fc.assert(
      fc.asyncProperty(form, options, async ({ command, form: { name } }, given) => {
        const reply = await room({ command: command.name, form: name, options: given } as never);
        expectSound(reply, JSON.stringify([command.name, name, given]));
      }),
      { numRuns: 800 },
    );
  });

  test('every choice of every reply is itself an ask that is answered', async () => {
    await fc.assert(
      fc.asyncProperty(anAsk, async (typed) => {
        for (const choice of (await ask(typed, { organiser: true })).choices) {
          if (TOGETHER.test(choice.ask)) continue;
          const then = await ask(choice.ask);
          expect(then.asks, `${typed} -> ${choice.ask}`).toBeNull();
          // A reading may be impossible (nothing left inside the seams, too wide for the cloth), never unread.
          expect([
            '',
            'nothing-left',
            'patch-wider-than-cloth',
            'too-many-patches',
            'no-patch-fits',
            'too-far',
            'too-small',
            'what-to-cut',
            'what-to-sew',
            'nothing-to-sew',
            'plan-needs',
            'bed-or-mattress',
            'one-of-these',
            'layout-shape',
            'method-not-for-shape',
            'blocks-or-side',
            // Kept under that name by an ask before.
            'plan-name-taken',
          ]).toContain(then.error?.code ?? '');
        }
      }),
      { numRuns: 600 },
    );
  });
});

describe('what the figures keep to', () => {
  const ask = openAsking();
  const sixteenths = (from: number, to: number) =>
    fc.integer({ min: from * 16, max: to * 16 }).map((n) => n / 16);
  const shape = fc.constantFrom(
    'hexagon',
    'diamond',
    'triangle',
    'half-hexagon',
    'half-hexagon-flats',
    'kite',
    'third',
    'square',
  );

  test('a yield is never above the ceiling, and more cloth never yields less', async () => {
    await fc.assert(
      fc.asyncProperty(
        shape,
        sixteenths(0.5, 2.5),
        sixteenths(6, 40),
        sixteenths(6, 40),
        sixteenths(0, 10),
        async (of, edge, width, long, more) => {
          const best = async (w: number, l: number) => {
            const reply = await answered(
              ask,
              `/yield shape:${of} edge:${writeLength(edge)} seam:1/4in cloth:${w}x${l}in`,
            );
            expect(numberOf(reply, 'best')).toBeLessThanOrEqual(numberOf(reply, 'ceiling'));
            return numberOf(reply, 'best');
          };
          expect(await best(width, long + more)).toBeGreaterThanOrEqual(await best(width, long));
        },
      ),
      { numRuns: 40 },
    );
  });

  test('more patches never need less cloth, and the ways agree with what is bought', async () => {
    await fc.assert(
      fc.asyncProperty(
        shape,
        sixteenths(0.5, 3),
        fc.integer({ min: 1, max: 900 }),
        fc.integer({ min: 0, max: 90 }),
        async (of, edge, pieces, more) => {
          const of_ = async (n: number) =>
            answered(ask, `/yardage pieces:${n} shape:${of} edge:${writeLength(edge)} seam:1/4in width:42in`);
          const [few, many] = [await of_(pieces), await of_(pieces + more)];
          // The search tells lengths apart to less than a millionth of an inch.
          expect(numberOf(many, 'bestLength')).toBeGreaterThanOrEqual(numberOf(few, 'bestLength') - 1e-6);
          expect(numberOf(few, 'bestYards') * 36).toBeGreaterThanOrEqual(numberOf(few, 'bestLength') - 1e-6);
          expect(numberOf(few, 'bestYards') * 36 - 4.5).toBeLessThan(numberOf(few, 'bestLength'));
        },
      ),
      { numRuns: 40 },
    );
  });

  test('a field: whole inside ≤ by area ≤ cover, and the sides chosen is one of them', async () => {
    await fc.assert(
      fc.asyncProperty(
        sixteenths(6, 70),
        sixteenths(6, 70),
        sixteenths(0.5, 2.5),
        fc.constantFrom('across', 'down'),
        async (w, h, edge, rows) => {
          const reply = await answered(
            ask,
            `/count field quilt:${w}x${h}in edge:${writeLength(edge)} rows:${rows}`,
          );
          expect(numberOf(reply, 'inside')).toBeLessThanOrEqual(numberOf(reply, 'byArea') + 1e-9);
          expect(numberOf(reply, 'cover')).toBeGreaterThanOrEqual(numberOf(reply, 'byArea') - 1e-9);
          expect(numberOf(reply, 'total')).toBe(numberOf(reply, 'cover'));
          const turned = await answered(
            ask,
            `/count field quilt:${h}x${w}in edge:${writeLength(edge)} rows:${rows === 'across' ? 'down' : 'across'}`,
          );
          for (const name of ['inside', 'cover', 'straightWhole', 'straightHalf', 'seams'])
            expect(numberOf(turned, name), name).toBe(numberOf(reply, name));
        },
      ),
      { numRuns: 40 },
    );
  });

  test('the same ask twice has the same reply, the caution of the day aside', async () => {
    for (const words of alone.filter((one) => !/ (?:set|reset|keep|change|remove)\b/.test(one))) {
      const [first, second] = [await ask(words, { organiser: true }), await ask(words, { organiser: true })];
      expect({ ...second, cautions: [] }).toEqual({ ...first, cautions: [] });
    }
  });
});
