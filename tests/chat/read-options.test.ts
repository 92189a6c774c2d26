import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alsoNamed, bare, otherwise, required } from '../../src/chat/option.ts';
import { choice, cloth, length, percent, size, whole, words } from '../../src/chat/option-kinds.ts';
import { type Manner, readNamedOptions, readOptions } from '../../src/chat/read-options.ts';
import { readAs } from './read-as.ts';

const SHAPES = [
  { name: 'hexagon', title: 'hexagon', words: ['hexie', 'hex'] },
  { name: 'half-hexagon', title: 'half-hexagon', words: ['half hexie'] },
  { name: 'diamond', title: 'diamond' },
] as const;

/** Options of every sort that a command has. */
const OPTIONS = {
  shape: otherwise(bare(choice('Shape', SHAPES)), 'hexagon'),
  size: bare(length('Size')),
  seam: length('Seam', 0, 6, '1/4in'),
  width: length('Width', 4, 200, '42in'),
  rounds: alsoNamed(whole('Rounds', 0, 99, '3'), 'round', 'rings'),
  spare: percent('Spare', 100, '5%'),
  quilt: bare(size('Quilt')),
  note: words('Note', 60, 'for Bea'),
};

const IN = { unit: 'in', today: '2026-12-01' } as const;

const read = (text: string, manner: Manner = 'command') => readOptions(OPTIONS, text, IN, manner);
const values = (text: string, manner: Manner = 'command') => {
  const made = read(text, manner);
  return made.ok ? made.value.values : made.problem.code;
};
const problem = (text: string, manner: Manner = 'command') => {
  const made = read(text, manner);
  return made.ok ? null : made.problem;
};

describe('the ways to give an option', () => {
  it.each([
    ['named', 'size:1 1/2in', { size: 1.5 }],
    ['with an equals sign', 'size=1.5', { size: 1.5 }],
    ['with blanks about the sign', 'size : 1 1/2 in  shape = diamond', { size: 1.5, shape: 'diamond' }],
    ['bare', 'hexagon 1 1/2', { shape: 'hexagon', size: 1.5 }],
    ['bare in the other order', '1 1/2 hexagon', { shape: 'hexagon', size: 1.5 }],
    ['by its name alone', 'seam 3/8', { seam: 0.375 }],
    ['its name joined on', 'seam allowance of 3/8in', { seam: 0.375 }],
    ['the name after', '3 rounds', { rounds: 3 }],
    ['the name after, with a unit', '1/4 in seam', { seam: 0.25 }],
    ['the name after, joined on', '1/4-inch seam allowance', { seam: 0.25 }],
    ['by another name', 'rings:2', { rounds: 2 }],
    ['in the singular', '1 round', { rounds: 1 }],
    ['in capitals', 'SIZE:2IN Shape:Diamond', { size: 2, shape: 'diamond' }],
    ['a choice in other words, in the plural', 'half hexies', { shape: 'half-hexagon' }],
    ['the longest choice that fits', 'half-hexagon', { shape: 'half-hexagon' }],
    ['a size', '60x72 1in', { quilt: { width: 60, height: 72 }, size: 1 }],
    ['a bed', 'queen, 1in', { quilt: { width: 90, height: 108, bed: 'queen' }, size: 1 }],
    ['a share', 'spare:10%', { spare: 0.1 }],
    ['nothing at all', '', {}],
  ])('%s: %s', (_, text, wanted) => {
    expect(values(text)).toEqual(wanted);
  });

  it('joining words and punctuation are passed over', () => {
    expect(values('a hexagon of 1in, with 2 rounds; and a 1/4in seam.')).toEqual({
      shape: 'hexagon',
      size: 1,
      rounds: 2,
      seam: 0.25,
    });
  });

  it('a value ends where the next name begins', () => {
    expect(values('note:two rounds, for Bea size:1in rounds:2')).toEqual({
      note: 'two rounds, for Bea',
      size: 1,
      rounds: 2,
    });
    expect(values('note:the ratio is 2:1, colours a:b rounds:2')).toEqual({
      note: 'the ratio is 2:1, colours a:b',
      rounds: 2,
    });
  });

  it('what a value leaves over is read on', () => {
    expect(values('size:1in hexagon 3 rounds')).toEqual({ size: 1, shape: 'hexagon', rounds: 3 });
  });

  it('knows which stood bare', () => {
    const made = read('hexagon 1in seam:1/4in 2 rounds');
    expect(made.ok && [...made.value.bare]).toEqual(['shape', 'size']);
  });
});

describe('a name between two lengths', () => {
  it.each([
    ['1 1/2 seam 3/8', 1.5, 0.375],
    ['2in seam 3/8in', 2, 0.375],
    ['1/4in seam 1in', 1, 0.25],
    ['1 seam 1/4', 1, 0.25],
    ['1in seam allowance of 3/8', 1, 0.375],
    ['3/8 in seam 2 in hexagon', 2, 0.375],
  ])('%s', (text, ofSize, seam) => {
    expect(values(text)).toMatchObject({ size: ofSize, seam });
  });

  it('goes with what is usual for it', () => {
    expect(values('1in width 40')).toEqual({ size: 1, width: 40 });
    expect(values('40in width 1in')).toEqual({ size: 1, width: 40 });
    expect(values('1in 1/4in seam 40in width')).toEqual({ size: 1, seam: 0.25, width: 40 });
  });

  it('a count stands before its name', () => {
    expect(values('2 rounds 3/4in')).toEqual({ rounds: 2, size: 0.75 });
    expect(values('2 rounds 3')).toEqual({ rounds: 2, size: 3 });
  });
});

describe('the order does not matter', () => {
  const PARTS = [
    'shape:diamond',
    'size:1 1/2in',
    'seam=3/8',
    '3 rounds',
    '5% spare',
    '60x72in',
    'note:for Bea',
  ];
  const wanted = values(PARTS.join(' '));

  it('of named options, those with their name after, and bare ones', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray(PARTS, { minLength: PARTS.length }), (parts) => {
        // Free words take all up to the next name, so they come last.
        const last = parts.filter((part) => part.startsWith('note'));
        const text = [...parts.filter((part) => !part.startsWith('note')), ...last].join(' ');
        expect(values(text)).toEqual(wanted);
      }),
    );
  });

  it('and what was read is whole', () => {
    expect(wanted).toEqual({
      shape: 'diamond',
      size: 1.5,
      seam: 0.375,
      rounds: 3,
      spare: 0.05,
      quilt: { width: 60, height: 72 },
      note: 'for Bea',
    });
  });
});

describe('mistakes in a command', () => {
  it.each([
    ['size:1in size:2in', { code: 'option-twice', option: 'size' }],
    ['rounds:1 rings:2', { code: 'option-twice', option: 'rounds' }],
    ['wings:2', { code: 'option-unknown', got: 'wings' }],
    ['size:', { code: 'option-empty', option: 'size' }],
    ['size: rounds:2', { code: 'option-empty', option: 'size' }],
    ['size:fish', { code: 'option-unread', option: 'size', got: 'fish' }],
    ['shape:hexgon 1in', { code: 'option-unread', option: 'shape', got: 'hexgon' }],
    ['rounds:2.5', { code: 'not-whole', option: 'rounds', got: '2.5' }],
    ['rounds:100', { code: 'too-large', option: 'rounds', got: '100', most: '99' }],
    ['size:1/16in', { code: 'too-small', option: 'size', got: '1/16in', least: '1/8in' }],
    ['size:41ft', { code: 'too-large', option: 'size', got: '492in', most: '480in' }],
    ['size:-1in', { code: 'below-zero', option: 'size', got: '-1in' }],
    ['size:- 1in', { code: 'below-zero', option: 'size' }],
    ['hexagon -1in', { code: 'below-zero', got: '-1in' }],
    ['quilt:60x9999in', { code: 'too-large', option: 'quilt', got: '9999in' }],
    ['quilt:0x72in', { code: 'too-small', option: 'quilt', got: '0in' }],
    ['spare:101%', { code: 'too-large', option: 'spare', got: '101%' }],
    [`note:${'x'.repeat(61)}`, { code: 'text-too-long', option: 'note', got: '61', most: '60' }],
  ])('%s', (text, wanted) => {
    expect(problem(text)).toMatchObject(wanted);
  });

  it('names the words that were not understood, up to where reading could go on', () => {
    expect(problem('hexagon big fat bees 1in')).toMatchObject({
      code: 'words-unread',
      got: 'big fat bees',
      read: ['hexagon', '1in'],
    });
    expect(problem('1in with bees, seam 1/4')).toMatchObject({ got: 'bees', read: ['1in', '1/4in'] });
  });

  it('reads back no more of it than can be shown', () => {
    const found = problem('1in bees bees bees bees bees bees bees bees bees bees bees');
    expect(String(found?.got).length).toBeLessThanOrEqual(40);
  });

  it('offers the words that could still have stood there', () => {
    const known = problem('hexagon bees')?.known;
    expect(known).toContain('queen');
    expect(known).toContain('rounds');
    expect(known).not.toContain('hexagon');
  });
});

describe('a plain question', () => {
  it('passes over what no option wants, and keeps those words', () => {
    const made = read('hello! how many 1in hexies with 2 rounds would Bea need?', 'question');
    expect(made.ok && made.value.values).toEqual({ size: 1, shape: 'hexagon', rounds: 2 });
    expect(made.ok && made.value.left).toEqual(['hello!', 'how', 'many', 'would', 'Bea', 'need?']);
  });

  it('a word with a colon that is no option is passed over too', () => {
    expect(values('quick one: 1in hexies', 'question')).toEqual({ size: 1, shape: 'hexagon' });
  });

  it('but what cannot be is said, not passed over', () => {
    expect(problem('a hexagon 50ft wide', 'question')).toMatchObject({ code: 'too-large', got: '600in' });
    expect(problem('seam: bees', 'question')).toMatchObject({ code: 'option-unread' });
  });
});

describe('what must be given', () => {
  const NEEDS = { size: bare(length('Size')), cloth: required(bare(cloth('The piece'))) };

  it('is asked for, with what was read already', () => {
    const made = readOptions(NEEDS, '1in', IN, 'command');
    expect(made.ok ? null : made.problem).toMatchObject({
      code: 'option-missing',
      option: 'cloth',
      summary: 'The piece',
      read: ['1in'],
      has: ['size'],
    });
  });

  it('and not when it is there', () => {
    expect(readOptions(NEEDS, 'fat quarter 1in', IN, 'command').ok).toBe(true);
  });
});

describe('options that a platform hands over by name', () => {
  const named = (given: Record<string, string>) => {
    const made = readNamedOptions(OPTIONS, given, IN);
    return made.ok ? made.value.values : made.problem;
  };

  it('each in its own words', () => {
    expect(named({ size: '1 1/2', shape: 'hexie', note: 'size:3in' })).toEqual({
      size: 1.5,
      shape: 'hexagon',
      note: 'size:3in',
    });
  });

  it.each([
    [{ wings: '2' }, { code: 'option-unknown', got: 'wings' }],
    [{ size: '1in hexagon' }, { code: 'option-unread', option: 'size' }],
    [{ size: '' }, { code: 'option-empty', option: 'size' }],
    [
      { rounds: '2', rings: '3' },
      { code: 'option-twice', option: 'rounds' },
    ],
  ])('%j', (given, wanted) => {
    expect(named(given as unknown as Record<string, string>)).toMatchObject(wanted);
  });
});

describe('the unit of the asker', () => {
  it('is that of a bare number', () => {
    const made = readOptions(OPTIONS, 'hexagon 25 seam:6 140x200', { ...IN, unit: 'mm' }, 'command');
    expect(made.ok && made.value.values).toMatchObject({ size: 25 / 25.4, quilt: { width: 140 / 25.4 } });
  });
});

describe('a value without its name', () => {
  it.each([
    ['/standings Winter pace:21', '/standings challenge:Winter pace:21'],
    ['/swap match Stash share:40%', '/swap match share:40% swap:Stash'],
    ['/count field 60x72in size:1in', '/count field quilt:60x72in size:1in'],
  ])('ends where the next name begins: %s', async (typed, read) => {
    expect(await readAs(typed)).toBe(read);
  });
});
