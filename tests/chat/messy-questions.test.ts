import { describe, expect, it } from 'vitest';
import { commands } from '../../commands/index.ts';
import { find } from '../../src/chat/find.ts';
import { readQuestion } from '../../src/chat/question.ts';
import { readOptions } from '../../src/chat/read-options.ts';
import { tidy } from '../../src/measure/tidy.ts';
import { ask, roomOf } from './fakes.ts';
import { MESSY } from './messy-questions.ts';
import { CONTEXT, readAs } from './read-as.ts';

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
    ['we want 200 flower seams by christmas, 12 of us', '200 12 of us'],
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
  it('the first is answered, the others are choices that tell theirs', async () => {
    const { room } = roomOf(commands);
    const { command, choices } = await room.answer(ask('backing and binding for 50x60, and a 3 in border'));
    expect(command).toBe('finish');
    expect(choices).toEqual([
      { label: 'Binding: Cut 6 strips of 2 1/2 in: buy 1/2 yd', ask: '/finish binding quilt:50x60in' },
      {
        label: 'Border: Cut 6 strips of 3 1/2 in: buy 5/8 yd',
        ask: '/finish border quilt:50x60in border:3in',
      },
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
    'hexies 1 inch across for a 40x40',
    /flat to flat, or point to point/,
    ['/count field quilt:40x40in flats:1in', '/count field quilt:40x40in corners:1in'],
  ],
  [
    'table runner 14 x 50 3/4 hexies how many',
    /patches/,
    ['/count field quilt:14x50in size:3/4in', '/count field quilt:14x50.75in size:1in'],
  ],
  [
    '3/4 or 1 inch or 1 1/4 for a lap',
    /which size/i,
    [
      '/count field quilt:lap size:3/4in',
      '/count field quilt:lap size:1in',
      '/count field quilt:lap size:1 1/4in',
    ],
  ],
  [
    '1 inch hexagons and 2 inch diamonds from a fat quarter',
    /which shall it be/,
    ['/yield shape:hexagon size:1in cloth:fat-quarter', '/yield shape:diamond size:2in cloth:fat-quarter'],
  ],
  [
    '2 inch diamonds and 1 inch triangles',
    /which shall it be/,
    ['/cut shape:diamond size:2in', '/cut shape:triangle size:1in'],
  ],
  [
    '1in vs 1.5in vs 2in hexies for a throw: hours?',
    /which size/i,
    ['/time field:throw size:1in', '/time field:throw size:1 1/2in', '/time field:throw size:2in'],
  ],
  [
    '0.5 or .75 inch hexagons',
    /which size/i,
    ['/cut shape:hexagon size:1/2in', '/cut shape:hexagon size:3/4in'],
  ],
  [
    'which is quicker, 1" or 1.25" for a 50x60',
    /which size/i,
    ['/time field:50x60in size:1in', '/time field:50x60in size:1 1/4in'],
  ],
  [
    'difference between 1" and 1 1/4" for a twin time wise',
    /which size/i,
    ['/time field:twin size:1in', '/time field:twin size:1 1/4in'],
  ],
  [
    'is 1 inch or 1.25 inch hexagon better for a fat quarter',
    /which size/i,
    [
      '/yield shape:hexagon size:1in cloth:fat-quarter',
      '/yield shape:hexagon size:1 1/4in cloth:fat-quarter',
    ],
  ],
  [
    'queen, hexagons 2 inches wide',
    /flat to flat, or point to point/,
    ['/count field quilt:queen flats:2in', '/count field quilt:queen corners:2in'],
  ],
  [
    '3 in squares and 2 in triangles, cut size',
    /which shall it be/,
    ['/cut shape:square size:3in', '/cut shape:triangle size:2in'],
  ],
  [
    'plan a queen in 2cm hexagons across',
    /flat to flat, or point to point/,
    [
      '/plan make shape:hexagon size:20mm measure:flats quilt:queen',
      '/plan make shape:hexagon size:20mm measure:corners quilt:queen',
    ],
  ],
  [
    '60x72 quilt 25mm hexies',
    /in inches, or in centimetres/,
    ['/count field quilt:600x720mm size:25mm', '/count field quilt:60x72in size:25mm'],
  ],
  [
    'mattress 60x80 drop 30cm',
    /in inches, or in centimetres/,
    ['/finish bed mattress:600x800mm drop:300mm', '/finish bed mattress:60x80in drop:300mm'],
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

  it('tells the numbers that it passed over', async () => {
    const { room } = roomOf(commands);
    const { notes } = await room.answer(ask('if a flower takes me 45 min how long for 60 flowers'));
    expect(notes).toEqual(['Passed over: ‘45 min’.']);
  });

  it('names each size in the unit that it was told in', async () => {
    const { room } = roomOf(commands);
    const { title, choices } = await room.answer(ask('2 cm or 1.5 cm hexagons for a queen'));
    expect(title).toBe('2 cm or 1.5 cm');
    expect(choices.map(({ label }) => label)).toEqual(['2 cm', '1.5 cm']);
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
    'tumbler 3 inch and 2 inch',
    'strip of 2 1/4 or 2 1/2 inch for 1 inch hexagons',
    '10 inch square and 1 inch hexagons, how many',
    'hexagons 2 inches across the points for a queen',
    '20 hexagons across, 1in, how wide',
    '300 1in hexagons 42 inches wide, how much',
    'half hexagons 2 inch across from a fat quarter',
    'queen in 1 inch hexagons, rows going across',
    '1 inch hexagons from 5in and 10in squares',
    'is a 1 round or 2 round rosette better in 1 inch hexagons',
  ])('%s is not', async (message) => {
    const meant = readQuestion(tidy(message));
    expect(meant).not.toBeNull();
    expect(meant?.doubt).toBeUndefined();
  });
});
