import { describe, expect, test } from 'vitest';
import { answered, openAsking, valuesOf } from './asking.ts';

/** Each canonical ask, and the same in the freer forms that members type. */
const SAME: Readonly<Record<string, readonly string[]>> = {
  '/cut shape:hexagon size:1 1/2in': [
    '/cut hexagon 1 1/2in',
    '/cut hexagon 1 1/2',
    '/cut hexagon 1-1/2in',
    '/cut hexagon 1½"',
    '/cut hexagon 1½″',
    '/cut hexagon 1.5',
    '/cut hexagon 1.5 inches',
    '/cut 1 1/2in hexagon',
    '/cut 1 1/2 inch hexagons',
    '/cut 1½-inch hexagons',
    '/cut 38.1mm hexagon',
    '/cut hexagon 3.81 cm',
    '/cut hexie edge:1 1/2in',
    '/cut hex side 1 1/2in',
    '/cut hexagon size=1.5',
    '!cut hexagon 1 1/2in',
    '/CUT Hexagon 1 1/2 IN',
    '/cut size:1 1/2in shape:hexagon',
    '/cut 1 1/2in',
    '  /cut   hexagon   1 1/2in  ',
  ],
  '/cut shape:hexagon size:1 1/2in seam:3/8in': [
    '/cut hexagon 1 1/2 seam 3/8',
    '/cut 1 1/2in hexagon seam 3/8',
    '/cut hexagon 1 1/2in 3/8in seam',
    '/cut hexagon 1 1/2in with a 3/8in seam',
    '/cut hexagon 1 1/2in seam 3/8in',
    '/cut seam:3/8 1 1/2 hexagon',
    '/cut hexagon 1.5in seam=.375',
    '/cut hexagon 1 1/2in, 3/8 seam allowance',
    '/cut hexagon 1 1/2in 3/8" seam',
  ],
  '/cut shape:diamond size:2in seam:3/8in': [
    '/cut diamond 2in seam 3/8in',
    '/cut 2in diamond seam 3/8in',
    '/cut 60° diamond 2in seam:3/8in',
    '/cut 60 degree diamonds 2in seam:3/8',
  ],
  '/cut shape:hexagon size:3in measure:flats': [
    '/cut hexagon 3in flat to flat',
    '/cut hexagon flats:3in',
    '/cut 3 inch hexagon across the flats',
    '/cut hexagon measure:flats 3in',
  ],
  '/cut shape:hexagon size:3in measure:corners': [
    '/cut hexagon 3in point to point',
    '/cut hexagon corners:3in',
  ],
  '/cut shape:hexagon size:4in measure:edge': [
    '/cut hexagon edge:4in',
    '/cut hexagon 4in side',
    '/cut hexagon 4in per side',
  ],
  '/cut shape:hexagon size:3 1/8in measure:flats given:cut': [
    '/cut hexagon 3 1/8in flats cut size',
    '/cut hexagon flats:3 1/8in given:cut',
  ],
  '/cut shape:hexagon size:1in corners:blunt': [
    '/cut hexagon 1in corners:blunt',
    '/cut hexagon 1in corners blunt',
  ],
  '/check row:20 measured:68cm shape:hexagon size:2cm': ['/check 20 hexagons size:2cm measured 68cm'],
  '/check row:20 measured:33 3/4in shape:hexagon': ['/check 20 hexagons came out 33 3/4'],
  '/check row:20 measured:51in shape:hexagon size:1 1/2in': [
    '/check 20 1 1/2in hexagons came out 51',
    '/check 1 1/2in hexagons row:20 came out 51',
  ],
  '/finish border quilt:50x60in border:3in join:mitred': ['/finish border 50x60 3in mitred'],
  '/cut shape:half-hexagon size:1in': [
    '/cut half-hexagon 1in',
    '/cut half hexagon 1in',
    '/cut half hexagons 1in',
  ],
  '/cut shape:half-hexagon-flats size:1in': [
    '/cut half-hexagon-flats 1in',
    '/cut half hexagon flat to flat 1in',
  ],
  '/cut shape:rectangle size:2x3in': [
    '/cut rectangle 2x3',
    '/cut rectangle 2 x 3 in',
    '/cut 2×3" rectangle',
    '/cut rectangle 2 by 3 inches',
  ],
  '/count field quilt:60x72in size:1in rows:across': [
    '/count field 60x72 1in',
    '/count field 60 x 72 in 1in',
    '/count field 60 by 72 1in',
    '/count field 5ft x 6ft size:1in',
    '/count field 1in 60x72',
    '/count field 60x72in 1 inch hexagons',
  ],
  '/count field quilt:90x108in size:1in sides:straight': [
    '/count field queen 1in sides:straight',
    '/count field queen size 1in straight',
  ],
  '/count field quilt:60x72in size:1in rows:down': [
    '/count field 60x72 1in down',
    '/count field 60x72 1in rows:down',
  ],
  '/count field quilt:60x72in size:1in sides:whole': [
    '/count field 60x72 1in whole',
    '/count field 60x72 1in inside',
  ],
  '/count rosette rounds:3 size:1in': [
    '/count rosette rounds:3',
    '/count rosette 3 rounds',
    '/count rosette rounds 3',
    '/count rosette round:3 1in',
  ],
  '/count garden rosettes:7 rounds:2 path:one size:1in': [
    '/count garden 7 rosettes 2 rounds',
    '/count garden 7 rounds:2',
    '/count garden 1+6 rounds:2',
    '/count garden 1 + 6 rosettes 2 rounds',
    '/count 7 rosettes 2 rounds',
  ],
  '/count garden rosettes:6x5 rounds:2 path:one size:3/4in': [
    '/count garden 6x5 rosettes 2 rounds 3/4in',
    '/count garden 6 x 5 2 rounds 3/4in',
  ],
  '/count rosette rounds:2 flats:3in': [
    '/count rosette 2 rounds 3in flat to flat',
    '/count rosette rounds:2 3 inches across the flats',
  ],
  '/count rosette rounds:2 corners:4in': ['/count rosette 2 rounds 4in point to point'],
  '/count star side:4 size:2in': ['/count star side:4 2in diamonds'],
  '/count star side:4 size:1in': ['/count star side:4', '/count star 4 side', '/count star side 4'],
  '/count stars stars:7 set:hexagons': ['/count stars 7 hexagons', '/count stars 7 set:hexagons'],
  '/count diamonds from:4 rounds:3': [
    '/count diamonds from 4 3 rounds',
    '/count diamonds from:four rounds 3',
  ],
  '/count blocks blocks:100 size:1in': ['/count blocks 100', '/count blocks 100 blocks'],
  '/yield shape:hexagon size:1in seam:1/4in cloth:fat-quarter': [
    '/yield hexagon 1in fat-quarter',
    '/yield hexagon 1in fat quarter',
    '/yield hexagon 1in FQ',
    '/yield hexagon 1in 18x21in',
    '/yield 1in hexagons from a fat quarter',
    'how many 1 inch hexagons from a fat quarter?',
    'How many 1" hexagons can I get out of a fat quarter',
    'hexagons from a fat quarter, 1 inch',
  ],
  '/yield shape:hexagon size:1in cloth:1 1/2yd width:40in': [
    '/yield hexagon 1in 1 1/2yd width:40in',
    '/yield hexagon 1in 1½ yards width 40',
    '/yield hexagon 1in 40x54in',
  ],
  '/yield shape:hexagon size:1in cloth:10in-square': [
    '/yield hexagon 1in 10 inch square',
    '/yield hexagon 1in 10" square',
    '/yield hexagon 1in 10x10',
  ],
  '/yardage pieces:240 shape:hexagon size:1in': [
    '/yardage 240 hexagon 1in',
    '/yardage 240 hexagons 1in',
    '/yardage 240 1in hexagons',
    '/yardage hexagon 1in pieces 240',
    '/yardage 240 pieces 1in hexagons',
    'how much fabric for 240 1 inch hexagons?',
    'how many yards for 240 hexagons of 1 inch',
  ],
  '/yardage pieces:240 shape:hexagon size:1in spare:5% shrink:3%': [
    '/yardage 240 hexagon 1in spare 5% shrink 3%',
    '/yardage 240 hexagon 1in 5% spare 3% shrink',
  ],
  '/yardage field:60x72in size:1in': ['/yardage field 60x72 size:1in', '/yardage size:1in field:60x72in'],
  '/time seams:42 size:1in method:whip': [
    '/time 42 seams',
    '/time 42 1in seams',
    '/time 42 over paper',
    '/time 42',
  ],
  '/time rosette:2': ['/time rosette 2', '/time rosette:2 size:1in method:whip'],
  '/time seams:42 method:running hours:6': ['/time 42 running 6 hours', '/time 42 running stitch hours 6'],
};

describe('the same ask in freer words has the same figures', () => {
  const ask = openAsking();
  for (const [canonical, freer] of Object.entries(SAME))
    test.each(freer)(`${canonical} as %s`, async (words) => {
      const [expected, found] = [await answered(ask, canonical), await answered(ask, words)];
      expect(found.command).toBe(expected.command);
      const [of, as] = [valuesOf(found), valuesOf(expected)];
      expect(Object.keys(of)).toEqual(Object.keys(as));
      for (const [name, value] of Object.entries(as))
        if (typeof value === 'number') expect(of[name], name).toBeCloseTo(value, 6);
        else expect(of[name], name).toEqual(value);
    });
});

describe('notes tell what was taken for granted, and nothing that was said', () => {
  const ask = openAsking();
  const CASES = [
    // ask, assumed, not assumed
    ['/cut hexagon 1in', ['side', '1/4 in seam'], ['hexagons', 'usable width']],
    ['/cut 1in', ['hexagons', 'side', '1/4 in seam'], []],
    ['/cut hexagon edge:1in seam:1/4in', [], ['side', 'seam', 'hexagon']],
    ['/cut hexagon 1in flat to flat', ['1/4 in seam'], ['side']],
    ['/yield hexagon 1in 1yd', ['42 in usable width', '1/4 in seam'], []],
    ['/yield hexagon 1in fat-quarter', ['1/4 in seam'], ['usable width']],
    ['/yield hexagon edge:1in seam:1/4in cloth:1yd width:42in', [], ['seam', 'width', 'side']],
    ['/yardage 240 hexagon 1in', ['1/4 in seam', '42 in usable width', 'no shrinkage'], []],
    [
      '/yardage 240 hexagon edge:1in seam:1/4in width:42in shrink:0%',
      [],
      ['seam', 'width', 'shrink', 'side'],
    ],
    ['/count field 60x72', ['1 in side', 'covered, then trimmed'], []],
    ['/count field 60x72 edge:1in sides:cover', [], ['side', 'trim']],
    ['/count rosette', ['1 round', '1 in side'], []],
    ['/count garden', ['7 rosettes', '1 round each', 'one path', 'outside', '1 in side'], []],
    [
      '/count garden rosettes:7 rounds:1 path:one outer:no edge:1in',
      [],
      ['rosettes', 'round', 'path', 'side'],
    ],
    ['/count garden 7 path:diamonds', ['outer valleys open'], ['path round']],
    ['/count stars', ['7 stars', 'set with diamonds', 'notches open'], []],
    ['/count diamonds', ['one in the centre', '1 round'], []],
    ['/time 42', ['1 in side', 'whipstitch', '14 stitches an inch', '5 hours a week'], []],
    ['/time 42 edge:1in method:running stitches:9 hours:5', [], ['side', 'stitch', 'hours']],
  ] as const;

  test.each(CASES)('%s', async (words, assumed, said) => {
    const notes = (await answered(ask, words)).notes.filter((note) => note.startsWith('Assumed')).join(' ');
    for (const one of assumed) expect(notes).toContain(one);
    for (const one of said) expect(notes).not.toContain(one);
    if (assumed.length === 0) expect(notes).toBe('');
  });

  test('only what can be kept is offered to be kept', async () => {
    const note = async (words: string) => (await answered(ask, words)).notes.at(-1);
    expect(await note('/cut hexagon 1in')).toContain('/me set');
    expect(await note('/count field 60x72')).not.toContain('/me set');
  });
});
