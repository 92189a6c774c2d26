import type { Here } from '../src/chat/command.ts';
import { count, type Figure } from '../src/chat/reply.ts';
import type { Challenge } from '../src/guild/challenge-facts.ts';
import type { KeptPlan } from '../src/guild/plan-facts.ts';
import { countedOf, goalOf, type PiecesLeft, piecesLeft } from '../src/guild/plan-left.ts';
import { ok, type Result } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';
import { many } from '../src/measure/speech.ts';
import type { OpenValues } from './challenge-terms.ts';
import { keptPlan } from './kept-plan.ts';
import { figureName, partWords } from './plan-roles.ts';

/** A challenge of a kept plan: the plan says what is counted, how large and how many, where nobody else does. */
export async function withPlan<V extends Partial<OpenValues>>(
  values: V,
  { given, ...here }: Here,
): Promise<Result<V>> {
  if (values.plan === undefined) return ok(values);
  const found = await keptPlan(values.plan, here);
  if (!found.ok) return found;
  const { name, wish } = found.value;
  const own = countedOf(wish);
  const counting = given.has('counting') && values.counting ? values.counting : own.counting;
  const rounds = given.has('rounds') || counting !== own.counting ? (values.rounds ?? 1) : own.rounds;
  const goal = values.goal ?? goalOf(wish, { counting, rounds: counting === 'patch' ? 0 : rounds });
  return ok({ ...values, plan: name, counting, rounds, goal, size: values.size ?? wish.edge });
}

/** What is said of the pieces left of a challenge's plan. */
export interface LeftOfPlan {
  readonly lines: readonly string[];
  readonly figures: Readonly<Record<string, Figure>>;
}

const NOTHING: LeftOfPlan = { lines: [], figures: {} };

/** The pieces left of a challenge's plan, by part where that can be told; nothing where it has no plan. */
export async function leftOfPlan(of: Challenge, { facts, guild }: Here): Promise<LeftOfPlan> {
  if (of.plan === null) return NOTHING;
  const kept = await facts.plans.find(guild, of.plan);
  const left = kept && piecesLeft(kept.wish, of);
  if (!left) return { ...NOTHING, lines: [`Its plan ‘${of.plan}’ is kept no longer.`] };
  return { lines: [leftWords(kept, left)], figures: leftFigures(left) };
}

function leftWords({ name }: Pick<KeptPlan, 'name'>, { left, planned, roles }: PiecesLeft): string {
  if (left === 0) return `All ${many(planned, 'piece', 'pieces')} of plan ‘${name}’ are sewn.`;
  const parts = roles.filter(({ pieces }) => pieces > 0).map(partWords);
  const which = parts.length > 0 ? `: ${parts.join(', ')}` : '';
  return `${grouped(left)} of ${many(planned, 'piece', 'pieces')} left in plan ‘${name}’${which}.`;
}

/** By part too: `centreLeft`, `round1Left`. */
const leftFigures = ({ left, planned, roles }: PiecesLeft): Record<string, Figure> => ({
  piecesLeft: count(left),
  piecesPlanned: count(planned),
  ...Object.fromEntries(roles.map((role) => [`${figureName(role, roles)}Left`, count(role.pieces)])),
});
