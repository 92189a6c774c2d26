import { draw } from '../../src/pictures/draw.ts';
import type { LayoutRecipe } from '../../src/pictures/layout.ts';
import type { PatchRecipe } from '../../src/pictures/patch.ts';
import type { TemplatesRecipe } from '../../src/pictures/templates.ts';
import { line, median, middle, shown } from './measure.ts';

/** About 4,000 hexagons: a queen-size covering of 1 in. */
const field: LayoutRecipe = {
  draw: 'layout',
  title: 'Hexagons, 1 in side, for 90 x 113 in',
  ask: { layout: 'field', width: 90, height: 113, edge: 1, rows: 'across', sides: 'cover' },
  edge: 1,
  reading: 'ruler',
};

/** As many in five roles, so that every texture is in use. */
const garden: LayoutRecipe = {
  draw: 'layout',
  title: '91 rosettes, 3 rounds, a shared path',
  ask: { layout: 'garden', arrangement: { kind: 'rings', rings: 5 }, rounds: 3, path: 'one', outer: true },
  edge: 1,
  reading: 'ruler',
};

const patch: PatchRecipe = {
  draw: 'patch',
  title: 'Hexagon, 1 in side',
  ...{ shape: 'hexagon', dimensions: { edge: 1 }, seam: 0.25, cornerStyle: 'pointed', reading: 'ruler' },
  measures: [{ name: 'flats', words: 'flat to flat' }],
};

const templates: TemplatesRecipe = {
  draw: 'templates',
  title: 'Papers: hexagons, 1 in side',
  ...{ names: ['1 in'], shape: 'hexagon', dimensions: { edge: 1 }, seam: 0, cornerStyle: 'pointed' },
  ...{ sheet: { width: 8.5, length: 11 }, margin: 0.25, pages: 5, words: ['Page {page} of 5'] },
};

/** The most bytes that a picture for chat may have. */
const LARGEST = 1_000_000;

/** Pictures from their recipes to their bytes. */
export async function benchPictures(): Promise<void> {
  console.log('\nPictures, recipe to bytes, median');
  const cases = [
    { named: 'a field of 4,000 patches, PNG', recipe: field, within: 400, runs: 15 },
    { named: 'a garden of 4,500 in three roles, PNG', recipe: garden, within: 400, runs: 15 },
    { named: 'one patch with its measures, PNG', recipe: patch, within: 200, runs: 15 },
    { named: 'five sheets of papers, PDF', recipe: templates, within: 400, runs: 9 },
  ];
  for (const { named, recipe, within, runs } of cases) {
    let bytes = 0;
    const used: number[] = [];
    const work = async () => {
      const from = process.cpuUsage();
      bytes = (await draw({ ...recipe })).length;
      const { user, system } = process.cpuUsage(from);
      used.push((user + system) / 1000);
    };
    line(named, await median(work, { runs, warm: 3 }), within);
    if (bytes > LARGEST) throw new Error(`${named}: ${bytes} bytes`);
    // On a busy machine the clock tells little; the processor's own time does.
    const own = middle(used.slice(3));
    console.log(`  of it at work ${shown(own)}; ${Math.round(bytes / 1000)} kB, within 1,000`);
  }
}

if (import.meta.main) await benchPictures();
