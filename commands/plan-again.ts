import type { Plan } from '../src/calculator/plan/plan.ts';
import type { PlanWish } from '../src/calculator/plan/wish.ts';
import type { Here } from '../src/chat/command.ts';
import type { AnyOption } from '../src/chat/option.ts';
import type { ReplyChoice } from '../src/chat/reply.ts';
import type { KeptPlan } from '../src/guild/plan-facts.ts';
import { planKey } from '../src/guild/plan-rules.ts';
import { capital, type Speech } from '../src/measure/speech.ts';
import { writeCloths } from './plan-cloths.ts';
import { planOptions } from './plan-options.ts';

/** The ask that keeps a plan once more as it was. */
export const keepAgain = ({ name, wish }: KeptPlan): string =>
  [`/plan keep name:${name}`, ...written(wish)].join(' ');

function written(wish: PlanWish): string[] {
  const { cloths, edge, ...rest } = wish;
  const values: Record<string, unknown> = {
    ...rest,
    size: edge,
    measure: 'edge',
    ...(cloths.length > 0 ? { cloths: writeCloths(cloths) } : {}),
  };
  return Object.entries(planOptions as Record<string, AnyOption>)
    .filter(([key]) => values[key] !== undefined)
    .map(([key, option]) => `${key}:${option.write(values[key])}`);
}

export const kitChoice = (name: string): ReplyChoice => ({
  label: 'Kits of it for 12',
  ask: `/kit plan:${name} members:12`,
});

/** A name for a plan that nobody has named yet: "Garden of 7", "Field 60 x 72 in". */
export function nameFor({ wish, top }: Plan, say: Speech): string {
  const { quilt, layout } = wish;
  const size = quilt ? ` ${quilt.bed ?? say.size(quilt.width, quilt.height)}` : '';
  const number = !quilt && top.many > 1 ? ` of ${top.many}` : '';
  return `${capital(layout)}${size}${number}`;
}

/** The name, with a number behind it where the guild keeps a plan of that name: "Field queen 2". */
export async function freeName(
  name: string,
  { facts, guild }: Pick<Here, 'facts' | 'guild'>,
): Promise<string> {
  const taken = new Set((await facts.plans.list(guild)).map((kept) => planKey(kept.name)));
  let free = name;
  for (let n = 2; taken.has(planKey(free)); n++) free = `${name} ${n}`;
  return free;
}

/** An option's name before a colon: in a plan's name it would be read as that option. */
export function optionIn(name: string): string | null {
  const keys = new Set(
    Object.entries({ ...planOptions, name: {}, plan: {}, members: {} } as Record<
      string,
      Partial<AnyOption>
    >).flatMap(([key, { names = [] }]) => [key, ...names]),
  );
  for (const [, word = ''] of name.matchAll(/(?:^|\s)([a-z][a-z-]*)\s*[:=]/gi))
    if ([word, word.replace(/s$/i, ''), `${word}s`].some((one) => keys.has(one.toLowerCase()))) return word;
  return null;
}
