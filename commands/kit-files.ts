import { purchase } from '../src/calculator/fabric/purchase.ts';
import { totalBought } from '../src/calculator/plan/cloths.ts';
import type { Kit } from '../src/calculator/plan/kit.ts';
import { type Cell, csv } from '../src/chat/csv.ts';
import type { Picture } from '../src/chat/reply.ts';
import { grouped } from '../src/measure/ruler.ts';
import { dayWords } from '../src/measure/speech.ts';
import type { PlanSheetRecipe, SheetSection } from '../src/pictures/plan-sheet-recipe.ts';
import { type KitItem, type KitTold, kitLines, kitTitle } from './kit-lines.ts';
import { fileName } from './plan-files.ts';
import { allCloth } from './plan-shopping.ts';

/** The kits as a table for a spreadsheet, and as a packing list to print. */
export function kitPictures(kit: Kit, items: readonly KitItem[], told: KitTold): Picture[] {
  const file = `kits-${fileName(told.name ?? kit.wish.layout)}`;
  return [
    {
      name: `${file}.csv`,
      alt: `${kitTitle(kit, told)} as a table: ${grouped(kit.pieces)} patches by part, with the cloth`,
      of: { draw: 'text', text: kitCsv(kit, told) },
    },
    {
      name: `${file}.pdf`,
      alt: `${kitTitle(kit, told)}, a packing list to print: what goes in each kit, a box for each of ${grouped(kit.members)}`,
      of: { ...packingSheet(kit, items, told) },
    },
  ];
}

function kitCsv(kit: Kit, { here }: KitTold): string {
  const soldBy = here.say.reading === 'metric' ? 'metric' : 'yard';
  const unit = soldBy === 'metric' ? 'm' : 'yd';
  const rows: Cell[][] = kit.roles.map(({ role, shape, cloth, each, pieces, need }) => [
    role,
    shape,
    cloth,
    each,
    pieces,
    need.pieces - pieces,
    purchase(need.buy, soldBy).amount,
    unit,
  ]);
  return csv([
    ['part', 'shape', 'cloth', 'in each kit', 'in all kits', 'spare', 'amount', 'unit'],
    ...rows,
    [
      'in all',
      null,
      null,
      kit.perKit,
      kit.needed,
      kit.pieces - kit.needed,
      totalBought(kit.cloths, soldBy),
      unit,
    ],
  ]);
}

/** Rows that a page of names has room for; more kits than that are ticked by number. */
const MOST_NAMED = 120;

function packingSheet(kit: Kit, items: readonly KitItem[], told: KitTold): PlanSheetRecipe {
  const { here, sheet } = told;
  return {
    draw: 'plan-sheet',
    sheet,
    title: 'Packing list',
    under: kitTitle(kit, told),
    lines: kitLines(kit, here),
    sections: [
      {
        title: 'Cut and gather',
        columns: [
          { title: 'in each kit', share: 3 },
          { title: 'for all', share: 3 },
          { title: 'cloth to buy', share: 3 },
        ],
        boxes: true,
        rows: items.map(({ each, all, cloth }) => [each, all, cloth]),
        total: ['cloth in all', '', allCloth(kit.cloths, here.say)],
      },
      ...(kit.members <= MOST_NAMED ? [kitRows(kit)] : []),
    ],
    notes: [],
    foot: dayWords(here.today),
  };
}

/** A row for each kit: a line for whose it is, and boxes to tick. */
function kitRows({ members, papers, sewing }: Kit): SheetSection {
  const boxes = [
    'patches',
    ...(papers.length > 0 ? ['papers'] : []),
    ...(sewing ? ['thread'] : []),
    'label',
    'given',
  ];
  return {
    title: 'Packed',
    columns: [
      { title: 'kit', share: 0.7, right: true },
      { title: 'for', share: 4, line: true },
      ...boxes.map((title) => ({ title, share: 1.1, box: true })),
    ],
    boxes: false,
    rows: Array.from({ length: members }, (_, i) => [String(i + 1), '', ...boxes.map(() => '')]),
  };
}
