import { describe, expect, it } from 'vitest';
import { commands } from '../../commands/index.ts';
import { inFigures } from '../../src/chat/number-words.ts';
import { readQuestion } from '../../src/chat/question.ts';
import { optionWords } from '../../src/chat/question-words.ts';
import { readOptions } from '../../src/chat/read-options.ts';
import { writeAsk } from '../../src/chat/write-ask.ts';
import { tidy } from '../../src/measure/tidy.ts';
import { ask, roomOf } from './fakes.ts';

/** A plain question as the command that it is read as, every option named; or what was missing; or null. */
async function readAs(words: string): Promise<string | null> {
  const meant = readQuestion(tidy(words));
  if (!meant) return null;
  const command = await commands[meant.command]?.();
  const form = command?.forms.find((one) => one.name === meant.form);
  if (!form) return `no form for ${meant.command} ${meant.form}`;
  const read = readOptions(form.options, meant.words, { unit: 'in', today: '2026-12-01' }, 'question');
  return read.ok
    ? writeAsk(meant.command, form, read.value.values)
    : `${read.problem.code} ${read.problem.option}`;
}

/** Messages as members send them, and the ask that each stands for. */
const MESSAGES: readonly (readonly [message: string, asked: string])[] = [
  // How large to cut.
  ['what do i cut 2in 60 degree diamonds at', '/cut shape:diamond size:2in'],
  ['¾ inch hexies how big to cut', '/cut shape:hexagon size:3/4in'],
  ['what size do I cut 1 1/2" hexagons', '/cut shape:hexagon size:1 1/2in'],
  ['what do I set my ruler to for 1 inch hexies with a 3/8 seam', '/cut shape:hexagon size:1in seam:3/8in'],
  ['whats the cut size of a 1½" hexie with ⅜ seams', '/cut shape:hexagon size:1 1/2in seam:3/8in'],
  ['cut size for 1 inch hexagon', '/cut shape:hexagon size:1in'],
  ['half hexagons 1in cut size', '/cut shape:half-hexagon size:1in'],
  ['kite 2in cut size quarter inch seam', '/cut shape:kite size:2in seam:1/4in'],
  ['my hexagon is 3in flat to flat, what size to cut', '/cut shape:hexagon flats:3in'],
  [
    'i cut my hexies at 3 inches flat to flat, what do they finish at',
    '/cut shape:hexagon given:cut flats:3in',
  ],
  ['25mm hexagons, what do I cut?', '/cut shape:hexagon size:25mm'],
  ['what ruler line for 1in equilateral triangles', '/cut shape:triangle size:1in'],
  ['how wide do i cut strips for 2 inch 60° diamonds', '/cut shape:diamond size:2in'],
  ['2 x 3 inch rectangles, what do i cut', '/cut shape:rectangle size:2x3in'],
  ['two and a half inch hexagons, whats flat to flat', '/cut shape:hexagon size:2 1/2in'],
  ['three quarter inch hexie how big point to point', '/cut shape:hexagon size:3/4in'],
  ['how big is a 2in hexagon point to point', '/cut shape:hexagon size:2in'],
  ['how wide is a 1 inch hexie?', '/cut shape:hexagon size:1in'],
  ['4 inch hexagon', '/cut shape:hexagon size:4in'],

  // How many from a piece.
  ['how many 1 inch hexagons from a fat quarter?', '/yield shape:hexagon size:1in cloth:fat-quarter'],
  ['hi! how many one inch hexies from a FQ', '/yield shape:hexagon size:1in cloth:fat-quarter'],
  ['i have 3 fat quarters, how many 1in hexagons', '/yield shape:hexagon size:1in have:3 fat quarters'],
  [
    'how many 1 inch hexies from a fat quarter with a 3/8" seam?',
    '/yield shape:hexagon size:1in seam:3/8in cloth:fat-quarter',
  ],
  [
    'is a fat quarter enough for 60 one inch hexies',
    '/yardage pieces:60 shape:hexagon size:1in have:fat quarter',
  ],
  [
    'can i get 50 1 inch hexies from a fat eighth?',
    '/yield shape:hexagon size:1in cloth:fat-eighth pieces:50',
  ],
  [
    'anyone know how many inch hexies you get out of a fat eighth',
    '/yield shape:hexagon size:1in cloth:fat-eighth',
  ],
  [
    'can you get 50 1/2 inch hexies out of a charm square',
    '/yield shape:hexagon size:1/2in cloth:5in-square pieces:50',
  ],
  ['10" squares, how many 1 inch hexies each', '/yield shape:hexagon size:1in cloth:10in-square'],
  ['how many half hexies from a 10in square, 1 inch', '/yield shape:half-hexagon size:1in cloth:10in-square'],
  ['how many 1in hexagons out of a 2.5 inch strip', '/yield shape:hexagon size:1in cloth:strip'],
  ['how many 2 inch diamonds can i get out of half a yard', '/yield shape:diamond size:2in cloth:18in'],
  ['how many 1in hexies from 1 1/2 yards', '/yield shape:hexagon size:1in cloth:54in'],
  ['how many strips of 2in hexagons from 1/2 yard', '/yield shape:hexagon size:2in cloth:18in'],
  ['hexagons 2in flat to flat from 1m', '/yield shape:hexagon flats:2in cloth:1000mm'],
  ['how many 2x3in rectangles from a fat quarter', '/yield shape:rectangle size:2x3in cloth:fat-quarter'],
  [
    'how many papers do i get from a sheet of letter, 1 inch hexies',
    '/yield shape:hexagon size:1in cloth:letter',
  ],
  ['hey, quick q: how many 3/4" hexies fit on an A4?', '/yield shape:hexagon size:3/4in cloth:a4'],

  // How much to buy.
  ['how much fabric for 240 1in hexies at 40 wide', '/yardage pieces:240 shape:hexagon size:1in width:40in'],
  ['how much fabric for 240 1/2in hexies', '/yardage pieces:240 shape:hexagon size:1/2in'],
  ['how many yards do I need for 500 1" hexagons', '/yardage pieces:500 shape:hexagon size:1in'],
  ['how much fabric do I need for 300 diamonds 2in', '/yardage pieces:300 shape:diamond size:2in'],
  [
    'need fabric for 300 1 1/2 inch hexagons, 42 wide',
    '/yardage pieces:300 shape:hexagon size:1 1/2in width:42in',
  ],
  [
    'do i have enough in 2 yards for 400 1in hexies',
    '/yardage pieces:400 shape:hexagon size:1in have:2 yards',
  ],
  [
    'how many metres of 110cm fabric for 400 25mm hexies',
    '/yardage pieces:400 shape:hexagon size:25mm width:1100mm',
  ],
  ['how much yardage for a rosette of 3 rounds in 1 inch', '/yardage rosette:3 size:1in'],
  ['how many yards for a queen quilt in 1in hexagons?', '/yardage field:queen shape:hexagon size:1in'],
  ['how much cloth for 100 tumbling blocks 2in', '/yardage blocks:100 size:2in'],
  [
    'how much yardage if i need 96 2in diamonds and shrink is 3%',
    '/yardage pieces:96 shape:diamond size:2in shrink:3%',
  ],

  // How many for a layout.
  ['how many hexagons for a 60x72 quilt 1in', '/count field quilt:60x72in size:1in'],
  ['queen size, 1-inch, out of my scraps', '/plan make size:1in quilt:queen cloths:all scraps'],
  [
    'how many hexies do i need for a king size quilt with 1.5" hexies',
    '/count field quilt:king size:1 1/2in',
  ],
  ['how many hexagons for a 50 by 60 throw if they are 3/4 inch', '/count field quilt:50x60in size:3/4in'],
  ['quilt 140cm x 200cm with 25 mm hexagons', '/count field quilt:1400x2000mm size:25mm'],
  ['baby quilt 30 x 40 in one inch hexies', '/count field quilt:crib 30x40in size:1in'],
  ['lap quilt 1 in hexies sides straight', '/count field quilt:lap size:1in sides:straight'],
  ['field of hexagons 60x72 flats up 1in', '/count field quilt:60x72in size:1in rows:down'],
  ['two round rosette', '/count rosette rounds:2'],
  ['how many hexies in a 3 round flower', '/count rosette rounds:3'],
  ['how many hexagons in a rosette with 4 rounds', '/count rosette rounds:4'],
  ['how many pieces for 7 rosettes with a path', '/count garden rosettes:7'],
  ['19 rosettes, 1 round, no path', '/count garden rosettes:19 rounds:1 path:none'],
  ['garden of 6 rows of 5 rosettes, 2 rounds, double path', '/count garden rosettes:6x5 rounds:2 path:own'],
  [
    'i want 7 flowers with 2 rounds each and a path, 1 inch, how many hexagons in all',
    '/count garden rosettes:7 rounds:2 size:1in',
  ],
  ['how many diamonds in a six point star 4 per side', '/count star side:4'],
  ['how many diamonds in a star with 5 on each side', '/count star side:5'],
  ['seven stars set with hexagons, 1 inch', '/count stars stars:7 set:hexagons size:1in'],
  ['how many diamonds for 100 tumbling blocks', '/count blocks blocks:100'],
  ['diamond field from a 4 centre with 3 rounds', '/count diamonds from:4 rounds:3'],

  // How long it takes.
  ['how long will a 2 round rosette take me', '/time rosette:2'],
  ['how long to stitch 42 seams by hand', '/time seams:42'],
  ['when will i finish a 2 round rosette at 5 hours a week', '/time rosette:2 hours:5'],
  ['how long to sew a queen quilt in 1in hexies, an hour a night', '/time field:queen size:1in hours:7'],
  ['how many hours for a 60x72 in 1in hexies', '/time field:60x72in size:1in'],
  [
    'how much thread for a 60x72 quilt of 1 inch hexies, running stitch',
    '/time field:60x72in size:1in method:running',
  ],
  ['how many needlefuls for 90 seams', '/time seams:90'],

  // To print.
  ['print me templates for 1 1/2 inch hexagons', '/template shape:hexagon size:1 1/2in'],
  [
    '120 papers to print for 1in hexies on a4',
    '/template papers:120 shape:hexagon size:1in seam:0in sheet:a4',
  ],
  ['printable papers, 3/4 inch diamonds', '/template shape:diamond size:3/4in seam:0in'],

  // Other things.
  ['hello', '/help'],
  ['help with count', '/help about:count'],
  ['what are my settings', '/me show'],
];

describe('plain questions', () => {
  it.each(MESSAGES)('%s', async (message, asked) => {
    expect(await readAs(message)).toBe(asked);
  });

  it('are many', () => {
    expect(MESSAGES.length).toBeGreaterThanOrEqual(60);
  });

  it.each(MESSAGES)('%s, answered as that ask is', async (message, asked) => {
    const { room } = roomOf(commands);
    const plain = await room.answer(ask(message));
    const command = await room.answer(ask(asked));
    expect(plain.error).toBeNull();
    // A size that stands alone is asked back; said as `size:` it is taken for the side.
    if (plain.asks === null) expect(plain.figures).toEqual(command.figures);
    else expect(plain.choices.length).toBeGreaterThan(1);
  });

  it.each([
    'thanks!',
    'good morning all',
    'cost of fabric?',
    'how old are you',
    'i love hexies',
    'see you at 3',
    '1.5',
    '?',
  ])('%s is not answered with a guess', async (message) => {
    expect(await readAs(message)).toBeNull();
    const { room } = roomOf(commands);
    const { error, lines } = await room.answer(ask(message));
    expect(error?.code).toBe('question-unread');
    expect(lines.slice(1)).toHaveLength(3);
  });

  it('what is missing is asked for, with what was understood', async () => {
    const { room } = roomOf(commands);
    const told = async (words: string) => (await room.answer(ask(words))).lines;
    expect(await told('how many hexies from a fat quarter')).toEqual([
      expect.stringContaining('How large'),
      '`/yield shape:hexagon size:1 1/2in cloth:fat-quarter`',
    ]);
    expect(await told('how many diamonds in a star')).toEqual([
      expect.stringContaining('I still need side'),
      '`/count star side:4`',
    ]);
  });

  it('a crib keeps its caution, also where its size is given in figures', async () => {
    const { room } = roomOf(commands);
    for (const words of ['baby quilt 30 x 40 in one inch hexies', 'how many 1in hexies for a crib quilt'])
      expect((await room.answer(ask(words))).cautions.join(' ')).toMatch(/crib/);
  });
});

describe('a command whose form is not named', () => {
  it.each([
    ['/count 7 rosettes 2 rounds', '/count garden rosettes:7 rounds:2'],
    ['/count a star, 4 a side', '/count star side:4'],
    ['/count hexagons for a queen', '/count field quilt:queen'],
  ])('%s is told by what it is about', async (words, asked) => {
    const { room } = roomOf(commands);
    expect((await room.answer(ask(words))).figures).toEqual((await room.answer(ask(asked))).figures);
  });

  it.each([
    ['/count 3', 'form-missing'],
    ['/count fish', 'form-unknown'],
    ['/count 1in hexagon to cut', 'form-missing'],
    ['/me seam 3/8', 'form-unknown'],
  ])('%s is asked for it', async (words, code) => {
    const { room } = roomOf(commands);
    const { error, lines } = await room.answer(ask(words));
    expect(error?.code).toBe(code);
    expect(lines).toHaveLength(4);
  });
});

describe('numbers in words', () => {
  it.each([
    ['one inch hexies', '1 inch hexies'],
    ['a one inch hexie', '1 inch hexie'],
    ['one and a half inch', '1 1/2 inch'],
    ['an inch and a half', '1 1/2 inch'],
    ['two and a quarter inch', '2 1/4 inch'],
    ['half inch hexies', '1/2 inch hexies'],
    ['half an inch', '1/2 inch'],
    ['quarter inch seams', '1/4 inch seams'],
    ['three-quarter inch', '3/4 inch'],
    ['three eighths of an inch', '3/8 inch'],
    ['two round rosette', '2 round rosette'],
    ['seven rosettes and twelve stars', '7 rosettes and 12 stars'],
    ['an hour a night', '1 hour a night'],
  ])('%s', (said, figures) => {
    expect(inFigures(said)).toBe(figures);
  });

  it.each([
    'one path',
    'fat quarter',
    'half a yard',
    'half hexagons',
    'six point star',
    'a quarter of them',
    'no one knows',
    'an old quilt',
  ])('%s stays as it is', (said) => {
    expect(inFigures(said)).toBe(said);
  });
});

describe('words that say an option without its name', () => {
  it('are named in front, where the command has that option', () => {
    expect(optionWords('yardage', '300 hexies 42 wide')).toBe('width:42, pieces:300, hexies');
    expect(optionWords('cut', '3in hexie 42 wide')).toBe('3in hexie 42 wide');
    expect(optionWords('time', 'star with 4 a side')).toBe('star:4, star with');
    expect(optionWords('count star', 'star with 4 a side')).toBe('side:4, star with');
  });

  it('a number before a length is how many there are of it', () => {
    expect(optionWords('yardage', '240 1/2in hexies')).toBe('pieces:240, 1/2in hexies');
    expect(optionWords('yardage', '1 1/2in hexies')).toBe('1 1/2in hexies');
    expect(optionWords('yield', '50 1in hexies')).toBe('pieces:50, 1in hexies');
  });

  it('figures are surer than the name of a bed', () => {
    expect(optionWords('count field', 'queen quilt about 96 x 108')).toBe('quilt:96 x 108, about');
  });
});
