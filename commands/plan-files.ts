import { purchase } from '../src/calculator/fabric/purchase.ts';
import { totalBought } from '../src/calculator/plan/cloths.ts';
import type { SheetName } from '../src/calculator/plan/papers.ts';
import type { Plan } from '../src/calculator/plan/plan.ts';
import type { Here } from '../src/chat/command.ts';
import { type Cell, csv } from '../src/chat/csv.ts';
import type { Picture } from '../src/chat/reply.ts';
import { grouped } from '../src/measure/ruler.ts';
import { capital, dayWords } from '../src/measure/speech.ts';
import type { PlanSheetRecipe } from '../src/pictures/plan-sheet-recipe.ts';
import { planLines, workedWith } from './plan-lines.ts';
import { layoutWords, partWords, shapeWords } from './plan-roles.ts';
import { allCloth, type ToBuy } from './plan-shopping.ts';

export interface FileTold {
  readonly here: Here;
  readonly sheet: SheetName;
  readonly name?: string;
}

/** The plan as a table for a spreadsheet and as a sheet to print. */
export function planPictures(plan: Plan, list: readonly ToBuy[], told: FileTold): Picture[] {
  const file = fileName(told.name ?? 'plan');
  const titled = told.name ?? layoutWords(plan, told.here.say);
  return [
    {
      name: `${file}.csv`,
      alt: `${titled} as a table: ${grouped(plan.top.total)} patches by part, and the shopping list`,
      of: { draw: 'text', text: planCsv(plan, list, told) },
    },
    {
      name: `${file}.pdf`,
      alt: `${titled} to print: patches, shopping list with boxes to tick, ${allCloth(plan.cloths, told.here.say)} of cloth in all`,
      of: { ...planSheet(plan, list, told) },
    },
  ];
}

/** A name that every disk takes: letters and figures of plain ASCII, the rest hyphens. */
export function fileName(name: string): string {
  const plain = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 40)
    .replace(/-+$/, '');
  return plain === '' || /^(?:con|prn|aux|nul|com\d|lpt\d)$/.test(plain) ? 'plan' : plain;
}

/** A length up to the next step of its unit, so that what is needed is never told short. */
const needed = (inches: number, metric: boolean): number =>
  metric ? Math.ceil(inches * 25.4 - 1e-6) / 10 : Math.ceil(inches * 1000 - 1e-6) / 1000;

function planCsv(plan: Plan, list: readonly ToBuy[], { here, name }: FileTold): string {
  const metric = here.say.reading === 'metric';
  const soldBy = metric ? 'metric' : 'yard';
  const unit = metric ? 'm' : 'yd';
  const patches: Cell[][] = plan.roles.map((role) => [
    'patches',
    shapeWords(role.shape, 1).replace(/^1 /, ''),
    role.role,
    role.cloth,
    role.pieces,
    null,
    null,
    null,
  ]);
  const cloths: Cell[][] = list.map(({ what, much, purpose, length, pieces, scraps }) => [
    length === null ? 'other' : scraps ? 'scraps' : 'cloth',
    what,
    purpose,
    length === null ? much : null,
    pieces,
    length === null ? null : purchase(length, soldBy).amount,
    length === null ? null : unit,
    length === null ? null : needed(length, metric),
  ]);
  return csv([
    ['list', 'what', 'for', 'note', 'pieces', 'amount', 'unit', metric ? 'cm needed' : 'inches needed'],
    ['plan', name ?? 'plan', layoutWords(plan, here.say), null, plan.top.total, null, null, null],
    ...patches,
    ...cloths,
    [
      'total',
      'cloth in all',
      'each cloth rounded up',
      null,
      null,
      totalBought(plan.cloths, soldBy),
      unit,
      null,
    ],
  ]);
}

function planSheet(plan: Plan, list: readonly ToBuy[], { here, sheet, name }: FileTold): PlanSheetRecipe {
  const { say } = here;
  return {
    draw: 'plan-sheet',
    sheet,
    title: name ?? 'Plan',
    under: capital(layoutWords(plan, say)),
    lines: planLines(plan, here).slice(1),
    sections: [
      {
        title: 'Patches',
        columns: [
          { title: 'part', share: 3 },
          { title: 'cloth', share: 3 },
          { title: 'cut', share: 1.2, right: true },
        ],
        boxes: true,
        rows: plan.roles.map((role) => [
          partWords(role).replace(/^[\d,]+ (?:(?:for|of) )?/, ''),
          role.cloth === role.role ? '' : role.cloth,
          grouped(role.need.pieces),
        ]),
        total: ['in all', '', grouped(plan.roles.reduce((sum, { need }) => sum + need.pieces, 0))],
      },
      {
        title: 'To buy',
        columns: [
          { title: 'what', share: 2.2 },
          { title: 'how much', share: 2.8 },
          { title: 'for', share: 3.6 },
        ],
        boxes: true,
        rows: list.map(({ what, much, purpose }) => [what, much, purpose]),
        total: ['cloth in all', allCloth(plan.cloths, say), 'each cloth rounded up'],
      },
    ],
    notes: [workedWith(plan, here)],
    foot: dayWords(here.today),
  };
}
