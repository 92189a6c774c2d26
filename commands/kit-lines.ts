import type { Kit, KitRole } from '../src/calculator/plan/kit.ts';
import type { SheetName } from '../src/calculator/plan/papers.ts';
import { threadToCut } from '../src/calculator/stitching/needlefuls.ts';
import type { Here } from '../src/chat/command.ts';
import type { Reply } from '../src/chat/reply.ts';
import { grouped } from '../src/measure/ruler.ts';
import { many, range } from '../src/measure/speech.ts';
import { bought } from './bought.ts';
import { hoursWords } from './plan-lines.ts';
import { cutWords, layoutWords, partWords, shapesWords } from './plan-roles.ts';
import { allCloth } from './plan-shopping.ts';

export interface KitTold {
  readonly here: Here;
  readonly sheet: SheetName;
  readonly name: string | null;
  readonly notes: readonly string[];
  readonly choices: Reply['choices'];
}

/** What goes in each kit and what that is for all of them. */
export interface KitItem {
  readonly each: string;
  readonly all: string;
  readonly cloth: string;
}

export const kitTitle = (kit: Kit, { here, name }: KitTold): string => {
  const what = name ?? layoutWords({ wish: kit.wish, top: kit.top }, here.say);
  return `${many(kit.members, 'kit', 'kits')}: ${what}`;
};

export function kitLines(kit: Kit, { say }: Here): string[] {
  const { perKit, needed, pieces, sewing, roles, cloths } = kit;
  const spare = pieces - needed;
  const each = roles.map((role) => ({ ...role, pieces: role.each }));
  return [
    `Cut ${grouped(pieces)} patches: ${grouped(needed)} to pack${spare > 0 ? `, ${grouped(spare)} to spare` : ''}.`,
    cutWords(kit, say),
    `Each kit holds ${perKit === 1 ? 'one patch' : shapesWords(each)}.`,
    `Buy ${allCloth(cloths, say)} of cloth in all.`,
    ...(sewing
      ? [
          `Each sews ${many(sewing.seams, 'seam', 'seams')}, ${range(hoursWords(sewing.minutesLow), hoursWords(sewing.minutesHigh))}.`,
        ]
      : []),
    ...(spare > 0 ? ['The spare ones stay with you, for mishaps and late joiners.'] : []),
  ];
}

/** The packing list: patches by part, then papers, thread and what else belongs in a kit. */
export function kitItems(kit: Kit, here: Here): KitItem[] {
  const { members, papers, sewing } = kit;
  const { say } = here;
  const rows: KitItem[] = kit.roles.map((role) => ({
    each: partWords({ ...role, pieces: role.each }),
    all: forAll(role),
    cloth: clothWords(role, here),
  }));
  const sheets = papers.reduce((sum, one) => sum + one.sheets, 0);
  const paper = papers.reduce((sum, one) => sum + one.papers, 0);
  if (papers.length > 0)
    rows.push({
      each: many(paper / members, 'paper', 'papers'),
      all: `${grouped(paper)}${sheets > 0 ? `, ${many(sheets, 'sheet', 'sheets')}` : ''}`,
      cloth: '',
    });
  if (sewing)
    rows.push({
      each: `thread, ${say.run(threadToCut(sewing.threadLengths))}`,
      all: say.run(threadToCut(sewing.threadLengths) * members),
      cloth: '',
    });
  rows.push({ each: 'needles, counted', all: grouped(members), cloth: '' });
  rows.push({ each: 'label and this list', all: grouped(members), cloth: '' });
  return rows;
}

function forAll({ pieces, need }: KitRole): string {
  const spare = need.pieces - pieces;
  return spare > 0 ? `${grouped(pieces)} and ${grouped(spare)} spare` : grouped(pieces);
}

/** Parts that share a cloth are bought together: the amount stands with the first of them. */
const clothWords = (role: KitRole, { say }: Here): string =>
  `${bought(role.need.buy, say)}${role.cloth === role.role ? '' : ` ${role.cloth}`}`;
