import { clothOf, patchOf } from '../src/calculator/plan/cloths.ts';
import type { Plan } from '../src/calculator/plan/plan.ts';
import { partOf } from '../src/calculator/plan/top.ts';
import type { PlanWish } from '../src/calculator/plan/wish.ts';
import { CATALOGUE } from '../src/calculator/shapes/catalogue.ts';
import type { Here } from '../src/chat/command.ts';
import type { Picture } from '../src/chat/reply.ts';
import { capital } from '../src/measure/speech.ts';
import type { LayoutAsk } from '../src/pictures/laid.ts';
import { layoutPicture, patchPicture } from './pictures.ts';
import { layoutWords } from './plan-roles.ts';
import { called } from './plan-shopping.ts';

/** The plan's layout coloured by part (of several apart, one); of loose patches, the patch. */
export function planPicture(plan: Plan, here: Here): Picture[] {
  const { wish, top, roles } = plan;
  const title = capital(layoutWords(plan, here.say));
  if (wish.layout === 'pieces') {
    const [role] = roles;
    return role ? [patchPicture(capital(CATALOGUE[role.shape].title), patchOf(role.shape, wish), here)] : [];
  }
  const ask = askOf(plan);
  if (!top.made || !ask) return [];
  const parts = Object.keys(top.made.counted.byRole);
  const names = parts.map((role) => [role, nameOf(role, plan)]);
  const cloths = parts.map((role) => [role, clothNamed(role, plan)]).filter(([, cloth]) => cloth !== null);
  return [
    layoutPicture(
      {
        ...{ title, made: top.made, ask, called: Object.fromEntries(names) },
        ...(cloths.length > 0 ? { cloths: Object.fromEntries(cloths) } : {}),
      },
      here,
    ),
  ];
}

/** The cloth that a part was given; null where none was named. */
function clothNamed(role: string, { wish }: Plan): string | null {
  const cloth = clothOf(partOf(role), wish);
  return cloth === partOf(role) ? null : cloth;
}

/** What a part is called, and its cloth where that was named. */
function nameOf(role: string, plan: Plan): string {
  const cloth = clothNamed(role, plan);
  return cloth === null ? called(role) : `${called(role)}, ${cloth}`;
}

/** What the picture places again: the layout that was counted. */
function askOf({ wish, top }: Plan): LayoutAsk | null {
  const { layout, rounds = 1, path = 'one', outer = false, set = 'diamonds', side = 1 } = wish;
  const { arrangement } = top;
  switch (layout) {
    case 'field':
      return fieldOf(wish);
    case 'rosette':
      return { layout: 'rosette', rounds };
    case 'garden':
      if (!arrangement) return null;
      return path === 'diamonds'
        ? { layout: 'garden with diamonds', arrangement, rounds, outer }
        : { layout: 'garden', arrangement, rounds, path, outer };
    case 'star':
      return { layout: 'star', side };
    case 'stars':
      return arrangement ? { layout: 'stars', arrangement, set, edge: outer ? 'notches' : 'open' } : null;
    case 'diamonds':
      return { layout: 'diamonds', from: side % 2 === 0 ? 4 : 1, rounds: Math.floor((side - 1) / 2) };
    case 'blocks':
      return wish.side === undefined
        ? { layout: 'blocks apart', count: wish.blocks ?? 1 }
        : { layout: 'blocks', side };
    default:
      return null;
  }
}

function fieldOf({ quilt, edge, rows = 'across', sides = 'cover' }: PlanWish): LayoutAsk | null {
  return quilt ? { layout: 'field', width: quilt.width, height: quilt.height, edge, rows, sides } : null;
}
