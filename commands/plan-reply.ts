import { buyOf } from '../src/calculator/plan/cloths.ts';
import type { SheetName } from '../src/calculator/plan/papers.ts';
import { fillsQuilt, type Plan } from '../src/calculator/plan/plan.ts';
import type { Here } from '../src/chat/command.ts';
import { type Reply, reply } from '../src/chat/reply.ts';
import { isInfantBed } from '../src/measure/size.ts';
import { bladeCaution, cribCaution, handsCaution } from './cautions.ts';
import { planFigures } from './plan-figures.ts';
import { planPictures } from './plan-files.ts';
import { planLines, planTitle } from './plan-lines.ts';
import { planPicture } from './plan-picture.ts';
import { allCloth, called, toBuy } from './plan-shopping.ts';

/** What is told of a plan beside its numbers. */
export interface PlanTold {
  readonly here: Here;
  readonly sheet: SheetName;
  /** Where it is kept. */
  readonly name?: string;
  readonly notes: readonly string[];
  readonly choices: Reply['choices'];
}

/** Cloths that leave under half an inch: a crooked cut or the wash eats it. */
function tightNote({ cloths }: Plan, { say }: Here): string[] {
  const soldBy = say.reading === 'metric' ? 'metric' : 'yard';
  const tight = cloths.filter((cloth) => buyOf(cloth, soldBy)?.tight).map(({ name }) => called(name));
  return tight.length === 0
    ? []
    : [`Under ${say.plain(0.5)} to spare: ${tight.join(', ')}. A little more is safer.`];
}

/** Where rosettes, a star or a diamond are sewn on a ground, it is nothing that the patches take. */
function groundNote({ wish }: Plan, { say }: Here): string[] {
  const { quilt } = wish;
  return quilt && !fillsQuilt(wish)
    ? [`Not in the list: the ground that it is sewn on, ${say.size(quilt.width, quilt.height)}.`]
    : [];
}

/** A top whose edge goes in and out is bound as if it were straight. */
function edgeNote({ wish, finishing }: Plan): string[] {
  const { layout, sides = 'cover', quilt } = wish;
  const isStraight = layout === 'field' ? sides !== 'whole' : quilt !== undefined;
  return finishing && !finishing.border && !isStraight
    ? ['Bound as if its edge were straight: trim or face it, or see `/finish binding`.']
    : [];
}

/** A plan in one reply: patches, size, hours, and the shopping list with its total. */
export function planReply(plan: Plan, told: PlanTold): Reply {
  const { here, name, sheet } = told;
  const list = toBuy(plan, here.say, sheet);
  return reply({
    title: planTitle(plan, told),
    lines: planLines(plan, here),
    table: {
      columns: ['to buy', 'how much', 'for'],
      rows: [
        ...list.map(({ what, much, purpose }) => [what, much, purpose]),
        ['cloth in all', allCloth(plan.cloths, here.say), 'each cloth rounded up'],
      ],
    },
    figures: planFigures(plan),
    notes: [...groundNote(plan, here), ...edgeNote(plan), ...tightNote(plan, here), ...told.notes],
    cautions: planCautions(plan, here),
    choices: told.choices,
    pictures: [
      ...planPicture(plan, here),
      ...planPictures(plan, list, { here, sheet, ...(name === undefined ? {} : { name }) }),
    ],
  });
}

/** So much sewing, minutes, and the hands want rest: two hours. */
const LONG_SEWING = 120;

export function planCautions({ wish, sewing }: Plan, here: Here): string[] {
  return [
    ...bladeCaution(here),
    ...(sewing && sewing.minutesHigh > LONG_SEWING ? handsCaution() : []),
    ...(isInfantBed(wish.quilt?.bed) ? cribCaution() : []),
  ];
}
