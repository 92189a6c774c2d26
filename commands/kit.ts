import { type Kit, kitFrom } from '../src/calculator/plan/kit.ts';
import type { PlanWish } from '../src/calculator/plan/wish.ts';
import { type Command, form, type Here } from '../src/chat/command.ts';
import { alsoNamed, required, usually } from '../src/chat/option.ts';
import { percent, whole } from '../src/chat/option-kinds.ts';
import { ok, type Result } from '../src/measure/result.ts';
import { assumedNote } from './assumed.ts';
import { withCribCaution } from './cautions.ts';
import { kitReply } from './kit-reply.ts';
import { keptNameOption, planOptions } from './plan-options.ts';
import { planProblem } from './plan-problem.ts';
import { type PlanValues, wishFrom } from './plan-wish.ts';
import { sheetFor } from './sheet.ts';
import { whichPlan } from './which-plan.ts';

/** What is cut to be safe where nobody has said: 5 to 10 in a hundred is common practice, no source. */
const USUAL_SPARE = 0.05;

const { hours: _hours, border: _border, sides: _sides, rows: _rows, spare: _spare, ...plain } = planOptions;

const kit: Command = {
  name: 'kit',
  summary: 'Kits for so many members: patches and cloth by part, and a packing list',
  forms: [
    form({
      name: '',
      summary: 'The same patches for so many members: what to cut and buy in all, what goes in each kit',
      examples: [
        '/kit rosette rounds:2 size:1in members:12 spare:10%',
        '/kit plan:Queen members:4',
        '/kit star side:2 size:1 1/2in members:8 cloths:round 1 gold, round 2 scraps',
      ],
      options: {
        members: required(alsoNamed(whole('How many kits', 1, 1000, '12'), 'member', 'kits', 'people')),
        plan: alsoNamed(keptNameOption, 'name'),
        spare: usually(percent('More patches than needed, for mishaps and late joiners', 100, '10%'), '5%'),
        ...plain,
      },
      async run({ members, plan, spare, ...values }, here) {
        const asked = await wished(plan, values as PlanValues, here);
        if ('asks' in asked) return asked.asks;
        if (!asked.ok) return planProblem(asked, here);
        const share = spare ?? (asked.value.wish.spare > 0 ? asked.value.wish.spare : USUAL_SPARE);
        const wish: PlanWish = { ...asked.value.wish, spare: share };
        const sheet = sheetFor(here);
        const made: Result<Kit> = kitFrom(wish, members, sheet);
        if (!made.ok) return planProblem(made, here);
        const assumed = asked.value.assumed.filter(
          (one) => one !== 'nothing to spare' && !one.endsWith('a week'),
        );
        const reply = kitReply(made.value, {
          ...{ here, sheet, name: asked.value.name },
          notes: assumedNote([
            ...assumed,
            ...(spare === undefined ? [`${Math.round(share * 1000) / 10}% to spare`] : []),
          ]),
          choices: asked.value.otherwise,
        });
        return withCribCaution(reply, wish.quilt?.bed);
      },
    }),
  ],
};

export default kit;

/** The plan that is kept under the name, with what was said beside it laid over; or a new one, without a name. */
async function wished(name: string | undefined, values: PlanValues, here: Here) {
  const kept = name === undefined ? null : await whichPlan(name, 'plan', here);
  if (kept && ('asks' in kept || !kept.ok)) return kept;
  const asked = await wishFrom(values, here, kept?.value.wish, 'anyone');
  if ('asks' in asked || !asked.ok) return asked;
  return ok({ ...asked.value, name: kept?.value.name ?? null });
}
