import { totalBought } from '../src/calculator/plan/cloths.ts';
import type { Kit } from '../src/calculator/plan/kit.ts';
import { count, type Figure, inches, minutes, type Reply, reply, yards } from '../src/chat/reply.ts';
import { decimal } from '../src/measure/ruler.ts';
import { yardsFigure } from './bought.ts';
import { bladeCaution } from './cautions.ts';
import { kitPictures } from './kit-files.ts';
import { type KitTold, kitItems, kitLines, kitTitle } from './kit-lines.ts';
import { figureName } from './plan-roles.ts';

/** Kits in one reply: pieces for all, cloth to buy, and the packing list. */
export function kitReply(kit: Kit, told: KitTold): Reply {
  const { here } = told;
  const items = kitItems(kit, here);
  return reply({
    title: kitTitle(kit, told),
    lines: kitLines(kit, here),
    table: {
      columns: ['in each kit', 'for all', 'cloth to buy'],
      rows: items.map(({ each, all, cloth }) => [each, all, cloth]),
    },
    figures: kitFigures(kit),
    notes: told.notes,
    cautions: bladeCaution(here),
    choices: told.choices,
    pictures: kitPictures(kit, items, told),
  });
}

function kitFigures(kit: Kit): Record<string, Figure> {
  const figures: Record<string, Figure> = {
    members: count(kit.members),
    perKit: count(kit.perKit),
    total: count(kit.needed),
    pieces: count(kit.pieces),
    spare: count(kit.pieces - kit.needed),
    totalYards: yards(totalBought(kit.cloths, 'yard')),
    totalMetres: {
      value: Number(decimal(totalBought(kit.cloths, 'metric'), 1).replaceAll(',', '')),
      unit: 'm',
    },
  };
  for (const role of kit.roles) {
    const name = figureName(role, kit.roles);
    figures[`${name}PerKit`] = count(role.each);
    figures[`${name}Pieces`] = count(role.need.pieces);
    figures[`${name}Length`] = inches(role.need.buy);
    figures[`${name}Yards`] = yardsFigure(role.need.buy);
    figures[`${name}Cloth`] = { value: role.cloth, unit: '' };
  }
  if (kit.papers.length > 0) {
    figures.papers = count(kit.papers.reduce((sum, one) => sum + one.papers, 0));
    figures.sheets = count(kit.papers.reduce((sum, one) => sum + one.sheets, 0));
  }
  if (kit.sewing) {
    figures.seams = count(kit.sewing.seams);
    figures.threadLength = inches(kit.sewing.threadLength);
    figures.threadLengths = count(kit.sewing.threadLengths);
    figures.minutesLow = minutes(kit.sewing.minutesLow);
    figures.minutes = minutes(kit.sewing.minutes);
    figures.minutesHigh = minutes(kit.sewing.minutesHigh);
  }
  return figures;
}
