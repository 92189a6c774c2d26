import { describe, expect, it } from 'vitest';
import { commands } from '../../commands/index.ts';
import { find } from '../../src/chat/find.ts';
import { readQuestion } from '../../src/chat/question.ts';
import { readOptions } from '../../src/chat/read-options.ts';
import { writeAsk } from '../../src/chat/write-ask.ts';
import { tidy } from '../../src/measure/tidy.ts';
import { ask, roomOf } from './fakes.ts';
import { MESSY } from './messy-questions.ts';

const CONTEXT = { unit: 'in', today: '2026-12-01' } as const;

/** A plain question, or a command, as the ask that it is read as, every option named. */
async function readAs(words: string): Promise<string> {
  const found = await find(commands, ask(words));
  if (!found.ok) return found.problem.code;
  const { command, form, options, manner } = found.value;
  const read = readOptions(form.options, options as string, CONTEXT, manner);
  return read.ok ? writeAsk(command.name, form, read.value.values) : read.problem.code;
}

describe('messy questions', () => {
  it.each(MESSY)('%s', async (message, asked) => {
    expect(await readAs(message)).toBe(asked);
    // The ask, typed as a command, means the same.
    expect(await readAs(asked)).toBe(asked);
  });

  it('are of every command of the calculator', () => {
    const asked = MESSY.map(([, words]) => words.split(' ')[0]);
    for (const name of [
      'cut',
      'count',
      'yield',
      'yardage',
      'template',
      'time',
      'finish',
      'check',
      'plan',
      'kit',
    ])
      expect(asked.filter((one) => one === `/${name}`).length, name).toBeGreaterThanOrEqual(4);
    expect(MESSY.length).toBeGreaterThan(250);
  });

  // Every ninth is answered too, as the ask that it stands for.
  it.each(MESSY.filter((_, i) => i % 9 === 0))('%s, answered', async (message, asked) => {
    const { room } = roomOf(commands);
    const plain = await room.answer(ask(message));
    const command = await room.answer(ask(asked));
    expect(plain.error?.code).toBe(command.error?.code);
    if (plain.asks === null) expect(plain.figures).toEqual(command.figures);
    else expect(plain.choices.length).toBeGreaterThan(1);
  });
});

describe('a number that no option takes', () => {
  it.each([
    ['240 1 inch hexagons and 300 2 inch hexagons, how much fabric', '300 2'],
    ['we want 200 flower seams by christmas, 12 of us', '12 of us'],
  ])('%s: it is said that it was passed over', async (message, number) => {
    const { room } = roomOf(commands);
    const { notes, error } = await room.answer(ask(message));
    expect(error).toBeNull();
    expect(notes[0]).toBe(`Passed over: ‘${number}’.`);
  });

  it('is in none of the messy questions', async () => {
    for (const [message] of MESSY) {
      const found = await find(commands, ask(message));
      if (!found.ok) throw new Error(message);
      const read = readOptions(found.value.form.options, found.value.options as string, CONTEXT, 'question');
      expect(read.ok && read.value.left.filter((word) => /\d/.test(word)), message).toEqual([]);
    }
  });
});

describe('a question that is not taken', () => {
  it.each([
    ['how long to baste a 60x72 quilt sandwich', /./],
    ['how do i pin and baste three layers of a queen', /./],
    ['row of 20 hexies is out by half an inch', /./],
    ['convert 90 minutes to hours in a yard', /^\/ruler/],
    ['time for 7 star set with hexagons', /star:7/],
    ['papers for 20 people', /papers:20/],
    ['3 inch border on a 50x60 and 4 inch border on a 60x70', /outer:/],
    ['maximum number of hexies from a fat quarter, 1 inch', /pieces:/],
    ['my row of 20 is 34 in long, 1in hexies', /over:/],
    ['scraps 60x72 quilt 1in hexies how many', /^\/yield/],
    ['garden 60x72 1in', /rosettes:/],
    ['how many 1in hexies for a rosette from a yard', /rounds:/],
  ])('%s, as %s', async (message, wrongly) => {
    const read = await readAs(message);
    if (read.startsWith('/')) expect(read).not.toMatch(wrongly);
    else expect(read).toBe('question-unread');
  });

  it('is sewing only, where cutting or basting is done already', async () => {
    for (const message of [
      'how long for a 3 round rosette, all cut',
      'hours for 300 hexies, not counting basting',
    ])
      expect(await readAs(message)).not.toMatch(/work:/);
  });
});

describe('several things that a quilt is finished with', () => {
  it('the first is answered, the others are choices', async () => {
    const { room } = roomOf(commands);
    const { command, choices } = await room.answer(ask('backing and binding for 50x60, and a 3 in border'));
    expect(command).toBe('finish');
    expect(choices).toEqual([
      { label: 'Binding', ask: '/finish binding quilt:50x60in' },
      { label: 'Border', ask: '/finish border quilt:50x60in border:3in' },
    ]);
  });

  it('what is to be left out is none of them', async () => {
    const { room } = roomOf(commands);
    expect((await room.answer(ask('backing for 50x60, no binding'))).choices).toEqual([]);
  });
});

/** Questions that can be read in several ways, which differ too much for one to be taken. */
const DOUBTFUL: readonly (readonly [message: string, asked: RegExp, choices: readonly string[]])[] = [
  [
    'how many rosettes for a crib quilt, 1in',
    /how many rounds/i,
    [
      '/count garden rounds:1 size:1in quilt:crib',
      '/count garden rounds:2 size:1in quilt:crib',
      '/count garden rounds:3 size:1in quilt:crib',
    ],
  ],
  [
    'how many stars for a 36x36',
    /between/,
    ['/count stars set:diamonds quilt:36x36in', '/count stars set:hexagons quilt:36x36in'],
  ],
  [
    'how much fabric for 7 flowers',
    /joined/,
    ['/plan make layout:garden rosettes:7 rounds:1', '/plan make layout:rosette number:7 rounds:1'],
  ],
  [
    'plan 12 rosettes of 2 rounds 1in',
    /joined/,
    [
      '/plan make layout:garden size:1in rosettes:3x4 rounds:2',
      '/plan make layout:rosette size:1in number:12 rounds:2',
    ],
  ],
  [
    'our guild wants to make 30 flowers each 1 inch how much fabric from scraps',
    /joined/,
    [
      '/plan make layout:garden size:1in rosettes:5x6 rounds:1 cloths:all scraps',
      '/plan make layout:rosette size:1in number:30 rounds:1 cloths:all scraps',
    ],
  ],
  [
    'papers for 12 rosettes of 2 rounds 1in',
    /joined/,
    [
      '/plan make layout:garden size:1in rosettes:3x4 rounds:2 method:whip',
      '/plan make layout:rosette size:1in number:12 rounds:2 method:whip',
    ],
  ],
  [
    'how long do 19 rosettes of 2 rounds take',
    /joined/,
    ['/plan make layout:garden rosettes:19 rounds:2', '/plan make layout:rosette number:19 rounds:2'],
  ],
  [
    'kits of 7 rosettes with 2 rounds for 8 members',
    /joined/,
    ['/kit members:8 layout:garden rosettes:7 rounds:2', '/kit members:8 layout:rosette number:7 rounds:2'],
  ],
  [
    'cushion 20x20 3/4 in, how many',
    /patches/,
    ['/count field quilt:20x20in size:3/4in', '/count field quilt:20x20.75in size:1in'],
  ],
  [
    `what's the difference between a 1" and 1 1/4" hexie`,
    /which size/i,
    ['/cut shape:hexagon size:1in', '/cut shape:hexagon size:1 1/4in'],
  ],
  ["what's the difference between 1 and 1 1/4", /which size/i, ['/cut size:1in', '/cut size:1 1/4in']],
  [
    'how many 1 inch hexagons and how many 2 inch hexagons for a twin',
    /which size/i,
    ['/count field quilt:twin size:1in', '/count field quilt:twin size:2in'],
  ],
  [
    'should I use 1 or 1.5 inch hexies for a queen',
    /which size/i,
    ['/count field quilt:queen size:1in', '/count field quilt:queen size:1 1/2in'],
  ],
  [
    'compare 20mm and 1 inch hexagons from a fat quarter',
    /which size/i,
    ['/yield shape:hexagon size:20mm cloth:fat-quarter', '/yield shape:hexagon size:1in cloth:fat-quarter'],
  ],
  [
    'how much fabric for a 60x72 in 1 inch vs 1 1/2 inch hexagons',
    /which size/i,
    ['/yardage field:60x72in shape:hexagon size:1in', '/yardage field:60x72in shape:hexagon size:1 1/2in'],
  ],
  [
    'how long would a queen take with 2cm compared to 3cm hexagons',
    /which size/i,
    ['/time field:queen size:20mm', '/time field:queen size:30mm'],
  ],
  [
    'cut size for 1, 1 1/2 and 2 inch diamonds',
    /which size/i,
    ['/cut shape:diamond size:1in', '/cut shape:diamond size:1 1/2in', '/cut shape:diamond size:2in'],
  ],
  [
    'plan a queen from scraps in 1 inch or 1 1/2 inch hexagons, how much fabric',
    /which size/i,
    [
      '/plan make shape:hexagon size:1in quilt:queen cloths:all scraps',
      '/plan make shape:hexagon size:1 1/2in quilt:queen cloths:all scraps',
    ],
  ],
];

describe('a question that can be read in several ways', () => {
  it.each(DOUBTFUL)('%s is asked back', async (message, asks, choices) => {
    const { room } = roomOf(commands);
    const asked = await room.answer(ask(message));
    expect(asked.error).toBeNull();
    expect(asked.asks).toMatch(asks);
    expect(asked.choices.map((one) => one.ask)).toEqual(choices);
    expect(asked.table?.rows.map(([label]) => label)).toEqual(asked.choices.map(({ label }) => label));
    const told = asked.table?.rows.map(([, then]) => then) ?? [];
    expect(new Set(told).size).toBe(choices.length);
    for (const one of asked.choices) expect((await room.answer(ask(one.ask))).error).toBeNull();
  });

  it('keeps the caution of an infant’s quilt', async () => {
    const { room } = roomOf(commands);
    expect((await room.answer(ask('how many rosettes for a crib quilt'))).cautions.join(' ')).toMatch(/crib/);
  });

  it('what is missing of it is asked for first', async () => {
    const { room } = roomOf(commands);
    const { error } = await room.answer(ask('how long do 7 rosettes of 9999 rounds take'));
    expect(error?.code).toBe('too-large');
  });

  it.each([
    'how many rosettes of 2 rounds for a crib quilt',
    'how many stars set with hexagons for a 36x36',
    'how much fabric for 7 flowers with a path, 1in',
    '7 rosettes of 2 rounds, each by itself, apart, how long',
    'cushion 20x20in, 3/4in hexies',
    '1 and 1/2 inch hexagons for a twin',
    '1 inch hexagons and 1/4 inch seam',
    '1 inch hexies with 2 yards',
    '240 1 inch hexagons and 300 2 inch hexagons, how much fabric',
    '2 inch border and 2 1/2 inch binding for 60x72',
    '1 inch hexagons from 5in and 10in squares',
    'is a 1 round or 2 round rosette better in 1 inch hexagons',
  ])('%s is not', async (message) => {
    const meant = readQuestion(tidy(message));
    expect(meant).not.toBeNull();
    expect(meant?.doubt).toBeUndefined();
  });
});
