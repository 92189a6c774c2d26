import { describe, expect, test } from 'vitest';
import { answered, openAsking, wordsOf } from './asking.ts';

const ask = openAsking();

/** What cannot be answered, and the code that tells programs why. */
const MISTAKES: readonly (readonly [words: string, code: string, told?: RegExp])[] = [
  // Sizes from 1/8 in to 40 ft.
  ['/cut hexagon 1/16in', 'too-small', /1\/8in to 480in/],
  ['/cut hexagon 3mm', 'too-small', /1\/8in/],
  ['/cut hexagon 41ft', 'too-large', /480in/],
  ['/cut shape:hexagon size:481in', 'too-large', /480in/],
  ['/cut hexagon edge:1/16in', 'too-small'],
  ['/cut hexagon flats:500in', 'too-large'],
  ['/cut hexagon corners:1/100in', 'too-small'],
  ['/cut diamond height:1000in', 'too-large'],
  ['/cut rectangle 2x500in', 'too-large'],
  ['/count field quilt:41ft x 41ft', 'too-large'],
  ['/count field quilt:1/16x1/16in', 'too-small'],
  ['/count rosette size:1/16in', 'too-small'],
  ['/yield hexagon 1in 1/16x4in', 'too-small'],
  ['/yield hexagon 1in 1yd width:1in', 'too-small'],
  // Layouts up to 1,000,000 patches.
  ['/count rosette rounds:577', 'too-large', /576/],
  ['/count field quilt:40x40ft size:1/8in', 'too-many-patches', /1,000,000/],
  ['/count field quilt:40x40ft size:1/8in sides:straight', 'too-many-patches', /[\d,]+ patches/],
  ['/count garden rosettes:500x500 rounds:10', 'too-many-patches', /1,000,000/],
  ['/count garden rosettes:1000x1000 rounds:1 path:diamonds', 'too-many-patches'],
  ['/count stars stars:1000x1000', 'too-many-patches'],
  ['/count star side:409', 'too-large', /408/],
  ['/count blocks side:578', 'too-large', /577/],
  ['/count blocks blocks:333334', 'too-large', /333,333/],
  ['/count diamonds from:4 rounds:500', 'too-large', /499/],
  ['/yardage pieces:1000001 hexagon 1in', 'too-large', /1,000,000/],
  ['/yardage field:40x40ft size:1/8in', 'too-many-patches'],
  ['/time field:40x40ft size:1/8in', 'too-many-patches'],
  // Nothing, less than nothing, no number.
  ['/cut hexagon 0', 'too-small'],
  ['/cut hexagon size:0in', 'too-small'],
  ['/cut hexagon -1', 'below-zero'],
  ['/cut hexagon size:-1in', 'below-zero'],
  ['/cut hexagon 1in seam:-1/4in', 'below-zero'],
  ['/cut hexagon NaN', 'words-unread'],
  ['/cut hexagon size:NaN', 'option-unread'],
  ['/cut hexagon 1e400', 'words-unread'],
  ['/cut hexagon size:1e400', 'option-unread'],
  ['/cut hexagon size:Infinity', 'option-unread'],
  ['/cut hexagon size:1/0in', 'option-unread'],
  ['/cut hexagon size:0/0in', 'option-unread'],
  ['/count rosette rounds:-1', 'below-zero'],
  ['/count rosette rounds:2.5', 'not-whole'],
  ['/count rosette rounds:1e400', 'option-unread'],
  ['/count garden rosettes:0', 'arrangement-unknown'],
  ['/count garden rosettes:0x5', 'too-small'],
  ['/count garden rosettes:8', 'arrangement-unknown', /7 and 19/],
  ['/yardage pieces:0 hexagon 1in', 'too-small'],
  ['/yardage 240 hexagon 1in spare:101%', 'too-large'],
  ['/yardage 240 hexagon 1in shrink:100%', 'too-large'],
  ['/time seams:0', 'too-small'],
  ['/time seams:10 stitches:0', 'too-small'],
  ['/time seams:10 hours:0', 'too-small'],
  ['/time seams:10 hours:200', 'too-large'],
  // A seam wider than there is room for.
  ['/cut hexagon 1in seam:7in', 'too-large'],
  ['/cut hexagon 1/2in flats given:cut seam:1/4in', 'nothing-left'],
  ['/yield hexagon 1in seam:6in cloth:5in-square', 'patch-wider-than-cloth', /5 x 5 in/],
  ['/yardage 10 hexagon 1in seam:6in width:5in', 'patch-wider-than-cloth', /5 in/],
  ['/count field quilt:1x1in size:1in sides:whole', 'no-patch-fits'],
  // Too long, unseen signs.
  [`/cut hexagon ${'1'.repeat(10_000)}`, 'text-long'],
  ['x'.repeat(10_000), 'text-long'],
  [`/help ${'a'.repeat(100)}`, 'text-too-long'],
  ['/cut hexagon 1in\u0000', 'control-characters'],
  ['/cut hexagon \u001b[31m1in', 'control-characters'],
  ['/cut \u202ehexagon 1in', 'control-characters'],
  // Words that are not understood.
  ['', 'nothing-asked'],
  ['   ', 'nothing-asked'],
  ['/', 'nothing-asked'],
  ['/nosuch', 'command-unknown'],
  ['/cutt hexagon 1in', 'command-unknown', /cut/],
  ['/constructor', 'command-unknown'],
  ['/count', 'form-missing', /rosette/],
  ['/count rosete rounds:3', 'form-unknown', /rosette/],
  ['/cut hexagon', 'size-missing'],
  ['/cut hexigon 1in', 'words-unread', /hexagon/],
  ['/cut hexagon 1in shoe', 'words-unread', /shoe/],
  ['/cut hexagon 1in colour:red', 'option-unknown', /colour/],
  ['/cut hexagon size:', 'option-empty'],
  ['/cut hexagon size:1in size:2in', 'option-twice'],
  ['/cut hexagon size:1in edge:2in', 'size-twice', /size, edge/],
  ['/cut shape:hexagn size:1in', 'option-unread', /hexagon/],
  ['/cut rectangle 2in', 'needs-two-measures'],
  ['/cut hexagon 2x3in', 'one-measure-only'],
  ['/cut triangle 2in measure:flats', 'measure-not-of-shape'],
  ['/yield hexagon 1in', 'option-missing', /cloth/],
  ['/yield hexagon 1in fat quater', 'words-unread', /fat-quarter/],
  ['/count field 1in', 'option-missing', /quilt/],
  ['/count star', 'option-missing', /side/],
  ['/count blocks', 'blocks-or-side'],
  ['/count blocks side:3 blocks:9', 'one-of-these', /side, blocks/],
  ['/yardage hexagon 1in', 'what-to-cut'],
  ['/yardage star:4 rosette:2 size:1in', 'one-of-these', /rosette, star/],
  ['/time', 'what-to-sew'],
  ['/time rosette:2 star:4', 'one-of-these', /rosette, star/],
  ['/time seams:1 start:soon', 'option-unread'],
  ['/help nosuch', 'command-unknown'],
  ['/help count nosuch', 'form-unknown'],
  ['good morning all', 'question-unread'],
];

const shortened = (words: string) => (words.length > 60 ? `${words.slice(0, 60)}…` : words);

describe('a mistake is met with what was wrong and something to type', () => {
  test.each(MISTAKES.map((one) => [JSON.stringify(shortened(one[0])), ...one] as const))(
    '%s',
    async (_, words, code, told) => {
      const reply = await ask(words);
      expect(reply.error?.code).toBe(code);
      const message = reply.error?.message ?? '';
      if (told) expect(message).toMatch(told);
      expect(message).toMatch(/^\S.*[.?:]( \/[a-z].*)?$|`/u);
      expect(reply.lines.join('\n')).toMatch(/`\/[a-z]+[^`]*`|For example|Up to|Type it again/);
      expect(wordsOf(reply)).not.toMatch(/\b(?:invalid|undefined|null|error|object|parameter|exception)\b/i);
      expect(reply.figures).toEqual({});
      expect(reply.audience).toBe('asker');
      expect(wordsOf(reply).length).toBeLessThan(600);
    },
  );

  test.each([
    ['/cut one and a half inch hexagno', '/cut shape:hexagon size:1 1/2in'],
    ['/cut hexagon 1in seam:2ft', '/cut shape:hexagon size:1in seam:1/4in'],
    ['/time seams:42 method:glue', '/time seams:42 method:running'],
    ['/yardage 240 hexagon 1in spare:-3%', '/yardage pieces:240 shape:hexagon size:1in spare:5%'],
    ['/count field 60x72 rows:sideways 1in', '/count field quilt:60x72in size:1in rows:across'],
    ['/finish backing 60x72in over:90in grain:any', '/finish backing quilt:60x72in over:4in grain:any'],
    ['/me set pace:0', '/me set pace:2.5'],
  ])('%s comes back with what was wrong put right, and the rest as it was', async (words, instead) => {
    const { error, lines } = await ask(words);
    expect(error).not.toBeNull();
    expect(lines.at(-1)).toBe(`\`${instead}\``);
    expect((await ask(instead)).error).toBeNull();
  });

  test.each([
    ['/cut one and a half inch hexagon', '/cut 1 1/2in hexagon'],
    ['/count rosette two rounds', '/count rosette rounds:2'],
  ])('%s, with its number in words, is %s', async (words, figures) => {
    const [said, plain] = [await ask(words), await ask(figures)];
    expect(said.error).toBeNull();
    expect(said.figures).toEqual(plain.figures);
  });

  test('what is shown to type is an ask that is answered', async () => {
    const shown = new Set<string>();
    for (const [words] of MISTAKES)
      for (const [, line = ''] of (await ask(words)).lines.join('\n').matchAll(/`(\/[^`]+)`/g))
        shown.add(line);
    expect(shown.size).toBeGreaterThan(5);
    for (const words of shown) expect((await ask(words)).error, words).toBeNull();
  });
});

describe('at the bounds it still answers', () => {
  const WITHIN = [
    '/cut hexagon 1/8in',
    '/cut shape:hexagon size:480in measure:edge',
    '/cut hexagon edge:40ft',
    '/cut hexagon 1in seam:0in',
    '/count rosette rounds:0',
    '/count rosette rounds:576',
    '/count blocks side:577',
    '/count diamonds from:4 rounds:499',
    '/count field quilt:1/8x1/8in size:1in',
    '/yardage pieces:1 hexagon 1in',
    '/yardage pieces:1000000 hexagon 1in',
    '/time seams:1 size:1/8in',
    '/time seams:3000000 size:1in',
  ];

  test.each(WITHIN)('%s', async (words) => {
    const reply = await answered(ask, words);
    for (const { value } of Object.values(reply.figures))
      for (const one of [value].flat()) if (typeof one === 'number') expect(one).toSatisfy(Number.isFinite);
  });
});
