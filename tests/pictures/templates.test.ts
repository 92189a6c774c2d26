import { describe, expect, test } from 'vitest';
import { templateSheet } from '../../src/calculator/fabric/template-sheet.ts';
import { CATALOGUE, shapeNames } from '../../src/calculator/shapes/catalogue.ts';
import { cutPatch } from '../../src/calculator/shapes/cut.ts';
import { flatten } from '../../src/calculator/shapes/flatten.ts';
import type { Outline } from '../../src/calculator/shapes/outline.ts';
import { placeOutline } from '../../src/calculator/shapes/place.ts';
import type { ShapeName } from '../../src/calculator/shapes/shape.ts';
import { bytesOf, newPaper } from '../../src/pictures/paper.ts';
import { trace } from '../../src/pictures/template.ts';
import { drawTemplates, type TemplatesRecipe } from '../../src/pictures/templates.ts';
import { appleCore, clamshell } from '../calculator/shapes/outlines.ts';
import { contentsOf, distance, type Line, lengthOf, linesIn, type Spot } from './content-stream.ts';
import { asked, kept, pictureOf } from './drawn.ts';

/** A point is 1/72 in (PDF 1.7, 8.3.2.3); an inch is 25.4 mm exactly. */
const mm = (points: number): number => (points * 25.4) / 72;
/** The narrowest error that is let pass, in mm. */
const CLOSE = 0.05;

const LETTER = { width: 8.5, length: 11 };

const recipeFor = (shape: ShapeName, more: Partial<TemplatesRecipe> = {}): TemplatesRecipe => ({
  draw: 'templates',
  title: shape,
  names: [shape],
  shape,
  dimensions: shape === 'rectangle' ? { edge: 2, side: 3 } : { edge: 1.25, side: 1.75 },
  seam: 0.25,
  cornerStyle: 'pointed',
  sheet: LETTER,
  margin: 0.25,
  pages: 1,
  words: ['Print at 100 %.', 'Page {page} of 1.'],
  compress: false,
  ...more,
});

const closedLines = (lines: readonly Line[], dashed: boolean): Line[] =>
  lines.filter((line) => line.closed && line.painted === 'stroke' && line.dashed === dashed);

/** How far, in mm, the worst of the spots lies from the outline, which is given in inches. */
function strays(spots: readonly Spot[], outline: Outline): number {
  const points = flatten(outline, 0.0004);
  const fromSide = ({ x, y }: Spot, i: number): number => {
    const [a, b] = [points[i]!, points[i + 1] ?? points[0]!];
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const t = Math.min(1, Math.max(0, ((x - a.x) * dx + (y - a.y) * dy) / (dx * dx + dy * dy)));
    return Math.hypot(x - a.x - t * dx, y - a.y - t * dy);
  };
  return Math.max(
    ...spots.map((spot) => {
      const inches = { x: spot.x / 72, y: spot.y / 72 };
      return Math.min(...points.map((_, i) => fromSide(inches, i))) * 25.4;
    }),
  );
}

describe.each(shapeNames)('the templates of a %s', (shape) => {
  test.each([
    ['pointed', 0.25],
    ['blunt', 0.375],
  ] as const)(
    'have both lines where the calculator has them, to 0.05 mm (%s, seam %d in)',
    async (cornerStyle, seam) => {
      const recipe = recipeFor(shape, { cornerStyle, seam });
      const lines = linesIn(await drawTemplates(recipe));
      const laid = templateSheet(cutPatch(shape, recipe.dimensions, seam, cornerStyle), LETTER, 0.25)!;
      const { cut, finished } = laid.plan.patch;
      const places = laid.plan.placements().map((place) => ({ ...place, y: place.y + laid.up }));
      expect(places.length).toBe(laid.plan.count);
      const faces = [
        { face: cut, drawn: closedLines(lines, false) },
        { face: finished, drawn: closedLines(lines, true) },
      ];
      for (const { face, drawn } of faces) {
        expect(drawn.length).toBe(places.length);
        const worst = places.map((place, i) => {
          const outline = placeOutline(face.outline, place);
          const { corners, along } = drawn[i]!;
          const missed = outline.map(({ x, y }) =>
            mm(Math.min(...corners.map((one) => distance(one, { x: x * 72, y: y * 72 })))),
          );
          return Math.max(strays([...corners, ...along], outline), ...missed);
        });
        expect(Math.max(...worst)).toBeLessThan(CLOSE);
      }
      expectInsideMargin(lines);
    },
  );
});

/** The patches lie inside the printer’s margin and not on the band. */
function expectInsideMargin(lines: readonly Line[]): void {
  const spots = closedLines(lines, false).flatMap(({ corners, along }) => [...corners, ...along]);
  const across = spots.map(({ x }) => x);
  const up = spots.map(({ y }) => y);
  expect(Math.min(...across, ...up)).toBeGreaterThan(18 - 1e-6);
  expect(Math.max(...across)).toBeLessThan(8.25 * 72 + 1e-6);
  expect(Math.max(...up)).toBeLessThan(10.75 * 72 + 1e-6);
  const bars = barsOf(lines);
  const [left, low] = [
    Math.min(...bars.map(({ corners }) => Math.min(...corners.map(({ x }) => x)))),
    0.85 * 72,
  ];
  const foot = bars.every(({ corners }) => Math.abs(corners[0]!.y - corners[1]!.y) < 1e-6);
  if (foot) expect(Math.min(...up)).toBeGreaterThanOrEqual(low - 1e-6);
  else expect(Math.max(...across)).toBeLessThan(left);
}

/** Figures of the trade's own table, for one patch: independent of the calculator's code. */
test('a 1¼-inch hexagon with a ¼-inch seam: 1.5387 a side cut, 2.6651 flat to flat, the lines ¼ in apart', async () => {
  const lines = linesIn(await drawTemplates(recipeFor('hexagon')));
  const [solid] = closedLines(lines, false);
  const [dashed] = closedLines(lines, true);
  const sides = solid!.corners.map((corner, i, all) => distance(corner, all[(i + 1) % all.length]!));
  for (const side of sides) expect(mm(side)).toBeCloseTo(1.5387 * 25.4, 1);
  const middle = (line: Line, i: number): Spot => {
    const [a, b] = [line.corners[i]!, line.corners[(i + 1) % 6]!];
    return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  };
  expect(Math.abs(mm(distance(middle(solid!, 0), middle(solid!, 3))) - 2.6651 * 25.4)).toBeLessThan(CLOSE);
  for (let i = 0; i < 6; i++)
    expect(Math.abs(mm(distance(middle(solid!, i), middle(dashed!, i))) - 6.35)).toBeLessThan(CLOSE);
});

/** The straight strokes as long as the bars say. */
const barsOf = (lines: readonly Line[]): Line[] =>
  lines.filter(
    (line) =>
      line.painted === 'stroke' &&
      !line.closed &&
      [50.8, 50].some((length) => Math.abs(mm(lengthOf(line)) - length) < CLOSE),
  );

test('papers without a seam have one line, the finished one', async () => {
  const lines = linesIn(await drawTemplates(recipeFor('kite', { seam: 0 })));
  const laid = templateSheet(cutPatch('kite', { edge: 1.25 }, 0, 'pointed'), LETTER, 0.25)!;
  expect(closedLines(lines, false).length).toBe(laid.plan.count);
  expect(closedLines(lines, true)).toEqual([]);
  const [place] = laid.plan.placements();
  const outline = placeOutline(laid.plan.patch.finished.outline, { ...place!, y: place!.y + laid.up });
  expect(strays(closedLines(lines, false)[0]!.corners, outline)).toBeLessThan(CLOSE);
});

test.each(['foot', 'side'] as const)(
  'the check bars are 2 inches and 5 cm to 0.05 mm (%s of the sheet)',
  async (band) => {
    const recipe = recipeFor('hexagon', { dimensions: { edge: band === 'foot' ? 4 : 0.75 } });
    const laid = templateSheet(cutPatch('hexagon', recipe.dimensions, 0.25, 'pointed'), LETTER, 0.25)!;
    expect(laid.band).toBe(band);
    const lengths = barsOf(linesIn(await drawTemplates(recipe))).map((line) => mm(lengthOf(line)));
    expect(lengths).toHaveLength(2);
    expect(Math.abs(lengths[0]! - 50.8)).toBeLessThan(CLOSE);
    expect(Math.abs(lengths[1]! - 50)).toBeLessThan(CLOSE);
  },
);

test('a dot at each finished corner, and none where no seam is', async () => {
  const dots = (lines: Line[]) => lines.filter((line) => !line.closed && lengthOf(line) < 0.02);
  const laid = templateSheet(cutPatch('hexagon', { edge: 1.25 }, 0.25, 'pointed'), LETTER, 0.25)!;
  const spots = dots(linesIn(await drawTemplates(recipeFor('hexagon'))));
  expect(spots.length).toBe(laid.plan.count * 6);
  const corners = laid.plan
    .placements()
    .flatMap((place) => placeOutline(laid.plan.patch.finished.outline, { ...place, y: place.y + laid.up }));
  spots.forEach((dot, i) => {
    const corner = { x: corners[i]!.x * 72, y: corners[i]!.y * 72 };
    expect(mm(distance(dot.corners[0]!, corner))).toBeLessThan(CLOSE);
  });
  expect(dots(linesIn(await drawTemplates(recipeFor('hexagon', { seam: 0 }))))).toEqual([]);
});

test('the grain arrow of each patch runs along the side it lies on, inside the sewing line', async () => {
  const lines = linesIn(await drawTemplates(recipeFor('triangle')));
  const laid = templateSheet(cutPatch('triangle', { edge: 1.25 }, 0.25, 'pointed'), LETTER, 0.25)!;
  const arrows = lines.filter(
    (line) =>
      !line.closed &&
      line.painted === 'stroke' &&
      line.corners.length === 2 &&
      lengthOf(line) > 12 &&
      !barsOf([line]).length,
  );
  expect(arrows.length).toBe(laid.plan.count);
  laid.plan.placements().forEach(({ turnDegrees }, i) => {
    const [a, b] = arrows[i]!.corners;
    const turned = (Math.atan2(b!.y - a!.y, b!.x - a!.x) * 180) / Math.PI;
    expect(Math.abs(Math.sin(((turned - turnDegrees) * Math.PI) / 180))).toBeLessThan(1e-4);
  });
});

// Arcs by themselves, whatever shapes the catalogue has.
test.each([
  ['clamshell', clamshell(2.5)],
  ['apple core', appleCore(2, 90)],
] as const)('the curves of a %s stay on their circles to 0.05 mm', async (_, outline) => {
  const paper = newPaper({ title: 'arcs', size: LETTER, compress: false });
  paper.addPage();
  trace(paper, outline, { perInch: 72, x: 300, y: 400, down: -1 }).stroke();
  const [line] = linesIn(await bytesOf(paper));
  expect(line!.along.length).toBeGreaterThan(20);
  const moved = outline.map((corner) => ({
    ...corner,
    x: corner.x + 300 / 72,
    y: corner.y + (11 * 72 - 400) / 72,
  }));
  expect(strays(line!.along, moved)).toBeLessThan(CLOSE);
});

test('the same templates are the same bytes, with no date and no place in them', async () => {
  const [one, two] = [await drawTemplates(recipeFor('kite')), await drawTemplates(recipeFor('kite'))];
  expect(Buffer.from(one).equals(Buffer.from(two))).toBe(true);
  const text = Buffer.from(one).toString('latin1');
  expect(text).not.toMatch(/D:\d{4}|CreationDate|ModDate|CreateDate|xmp/);
  expect(text).not.toContain(process.cwd());
  expect(text).not.toContain('node_modules');
  expect(text).toContain('/PrintScaling /None');
});

describe('/template', () => {
  test.each([
    ['letter', [612, 792]],
    ['a4', [595.276, 841.89]],
  ] as const)('prints on %s', async (sheet, [width, height]) => {
    const words = `/template shape:hexagon size:1in seam:1/4in sheet:${sheet}`;
    const recipe = kept<TemplatesRecipe>(await pictureOf(words));
    const pdf = await drawTemplates({ ...recipe, compress: false });
    const box = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(Buffer.from(pdf).toString('latin1'))!;
    expect(Number(box[1])).toBeCloseTo(width, 2);
    expect(Number(box[2])).toBeCloseTo(height, 2);
    const { figures } = await asked(words);
    expect(closedLines(linesIn(pdf), false).length).toBe(figures.perSheet!.value);
  });

  test('so many papers are so many pages, each with its number', async () => {
    const words = '/template hexagon 1in seam:0in papers:120';
    const { figures, pictures } = await asked(words);
    const [perSheet, sheets] = [figures.perSheet!.value as number, figures.sheets!.value as number];
    expect(sheets).toBe(Math.ceil(120 / perSheet));
    const recipe = kept<TemplatesRecipe>(pictures[0]!);
    expect(recipe.words.join(' ')).toContain(`Page {page} of ${sheets}`);
    const pdf = await drawTemplates({ ...recipe, compress: false });
    expect(contentsOf(pdf).length).toBe(sheets);
    expect(closedLines(linesIn(pdf), false).length).toBe(sheets * perSheet);
  });

  test('very many are one page that says how often to print it', async () => {
    const { pictures, figures } = await asked('/template hexagon 2in papers:5000');
    const recipe = kept<TemplatesRecipe>(pictures[0]!);
    expect(recipe.pages).toBe(1);
    expect(recipe.words.join(' ')).toContain(
      `Print this sheet ${(figures.sheets!.value as number).toLocaleString('en')} times`,
    );
  });

  test('never more on the sheet than the calculator’s yield of the whole sheet', async () => {
    for (const shape of shapeNames.filter((name) => CATALOGUE[name].second === undefined)) {
      const template = await asked(`/template shape:${shape} size:1in seam:1/4in sheet:letter`);
      const whole = await asked(`/yield shape:${shape} size:1in seam:1/4in cloth:letter`);
      const [perSheet, best] = [
        template.figures.perSheet!.value as number,
        whole.figures.best!.value as number,
      ];
      expect(perSheet, shape).toBeLessThanOrEqual(best);
      expect(perSheet, shape).toBeGreaterThanOrEqual(best * 0.75);
    }
  });

  test('a patch larger than the sheet is said to be', async () => {
    await expect(asked('/template shape:hexagon edge:6in')).rejects.toThrow(/does not fit/);
  });
});
