import { planFrom } from '../src/calculator/plan/plan.ts';
import type { PlanWish } from '../src/calculator/plan/wish.ts';
import { type Answer, type Command, form, type Here } from '../src/chat/command.ts';
import { bare, required } from '../src/chat/option.ts';
import { reply } from '../src/chat/reply.ts';
import type { KeptPlan } from '../src/guild/plan-facts.ts';
import { MOST_PLANS } from '../src/guild/plan-rules.ts';
import { wrong } from '../src/measure/result.ts';
import { dayWords, many } from '../src/measure/speech.ts';
import { assumedNote } from './assumed.ts';
import { freeName, keepAgain, kitChoice, nameFor, optionIn } from './plan-again.ts';
import { workedWith } from './plan-lines.ts';
import { keptNameOption, nameOption, planOptions } from './plan-options.ts';
import { planProblem } from './plan-problem.ts';
import { planReply } from './plan-reply.ts';
import { layoutWords } from './plan-roles.ts';
import { isFieldUnsaid, type PlanValues, wishFrom } from './plan-wish.ts';
import { sheetFor } from './sheet.ts';
import { whichOfHers, whichPlan } from './which-plan.ts';

const named = required(bare(keptNameOption));

const plan: Command = {
  name: 'plan',
  summary: 'A whole quilt: patches, cloth, papers, thread, hours, finishing and a shopping list',
  standing: 'make',
  forms: [
    form({
      name: 'make',
      summary: 'A quilt worked out in one reply, with its shopping list to print or for a spreadsheet',
      examples: [
        '/plan garden rosettes:7 rounds:2 outer:yes size:1in cloths:centre yellow, petal scraps, path white',
        '/plan field 60x72in 1in',
        '/plan stars quilt:50x60in set:hexagons size:1 1/2in',
        '/plan shape:kite number:240 size:2in',
      ],
      options: { ...planOptions, name: nameOption },
      async run({ name: said, ...values }, here) {
        const option = optionIn(said ?? '');
        if (option) return wrong('plan-name-option', { got: option });
        const asked = await wishFrom(values, here);
        if ('asks' in asked) return asked.asks;
        if (!asked.ok) return planProblem(asked, here);
        const { wish, assumed, otherwise } = asked.value;
        const sheet = sheetFor(here);
        const made = planFrom(wish, sheet);
        if (!made.ok) return planProblem(made, here);
        const name = said ?? nameFor(made.value, here.say);
        const keep = here.again({ name: null }).replace(/^\/plan(?: make)?/, `/plan keep name:${name}`);
        return planReply(made.value, {
          ...{ here, sheet },
          notes: [
            ...(said === undefined ? [] : [`Not kept yet: the choice below keeps it as ‘${said}’.`]),
            ...assumedNote(assumed),
          ],
          choices: [
            { label: `Keep it as ‘${name}’`, ask: keep },
            ...(isFieldUnsaid(values, wish) && hasRoom(wish) ? [inRosettes(here)] : []),
            ...otherwise,
          ],
        });
      },
    }),
    form({
      name: 'keep',
      summary: 'Work a quilt out and keep it for the guild under a name',
      examples: [
        '/plan keep name:Spring garden rosettes:7 rounds:2 size:1in',
        '/plan keep name:Queen quilt:queen size:1in',
      ],
      options: { name: required(nameOption), ...planOptions },
      keeps: true,
      async run({ name, ...values }, here) {
        const option = optionIn(name);
        if (option) return wrong('plan-name-option', { got: option });
        const asked = await wishFrom(values, here);
        if ('asks' in asked) return asked.asks;
        if (!asked.ok && asked.problem.code === 'plan-what') return wrong('plan-all-name', { got: name });
        if (!asked.ok) return planProblem(asked, here);
        const kept: KeptPlan = {
          ...{ name, owner: here.who.id, ownerName: here.who.name, wish: asked.value.wish },
          ...{ keptOn: here.today, changedOn: here.today },
        };
        const shown = shownPlan(kept, here, asked.value.assumed);
        if ('problem' in shown) return shown;
        const there = await here.facts.plans.find(here.guild, name);
        if (there)
          return wrong('plan-name-taken', {
            got: there.name,
            instead: here.again({ name: await freeName(there.name, here) }),
          });
        if ((await here.facts.plans.list(here.guild)).length >= MOST_PLANS)
          return wrong('plans-full', { most: String(MOST_PLANS) });
        await here.facts.plans.keep(here.guild, kept);
        return shown;
      },
    }),
    form({
      name: 'list',
      summary: 'The plans that the guild keeps',
      examples: ['/plan list'],
      options: {},
      async run(_, here) {
        const plans = await here.facts.plans.list(here.guild);
        if (plans.length === 0)
          return reply({
            title: 'No plan is kept yet',
            lines: [
              `There is room for ${MOST_PLANS}. Keep the first:`,
              '`/plan keep name:Spring garden rosettes:7 rounds:2`',
            ],
          });
        return reply({
          title: 'Plans kept',
          lines: [`${many(plans.length, 'plan', 'plans')}. \`/plan show\` and a name shows one.`],
          table: { columns: ['name', 'what', 'kept by'], rows: plans.map((one) => listed(one, here)) },
          figures: { plans: { value: plans.length, unit: '' } },
          choices: plans
            .slice(0, 5)
            .map(({ name }) => ({ label: `Show ${name}`, ask: `/plan show name:${name}` })),
        });
      },
    }),
    form({
      name: 'show',
      summary: 'A kept plan, worked out again with its sheet and table',
      examples: ['/plan show Spring garden'],
      options: { name: named },
      async run({ name }, here) {
        const found = await whichPlan(name, 'name', here);
        if ('asks' in found) return found.asks;
        return found.ok ? shownPlan(found.value, here) : found;
      },
    }),
    form({
      name: 'change',
      summary: 'Change something of a kept plan; what is not said stays',
      examples: ['/plan change name:Spring garden spare:10% hours:4', '/plan change name:Queen size:3/4in'],
      options: { name: required(keptNameOption), ...planOptions },
      keeps: true,
      async run({ name, ...values }, here) {
        const found = await whichOfHers(name, here);
        if ('asks' in found) return found.asks;
        if (!found.ok) return found;
        if (Object.keys(planOptions).every((key) => !here.given.has(key))) return wrong('plan-unchanged');
        const asked = await wishFrom(values as PlanValues, here, found.value.wish);
        if ('asks' in asked) return asked.asks;
        if (!asked.ok) return planProblem(asked, here);
        const changed = { ...found.value, wish: asked.value.wish, changedOn: here.today };
        const shown = shownPlan(changed, here);
        if ('problem' in shown) return shown;
        await here.facts.plans.change(here.guild, found.value.name, asked.value.wish, here.today);
        return shown;
      },
    }),
    form({
      name: 'remove',
      summary: 'Keep a plan no longer',
      examples: ['/plan remove Spring garden'],
      options: { name: named },
      keeps: true,
      async run({ name }, here) {
        const found = await whichOfHers(name, here);
        if ('asks' in found) return found.asks;
        if (!found.ok) return found;
        await here.facts.plans.remove(here.guild, found.value.name);
        return reply({
          title: `‘${found.value.name}’ is removed`,
          lines: [`It was ${layoutWords({ wish: found.value.wish }, here.say)}.`],
          choices: [{ label: 'Keep it again', ask: keepAgain(found.value) }],
        });
      },
    }),
  ],
};

export default plan;

/** A quilt is at least as wide and as high as one rosette of two rounds, 8 sides; else there is nothing to fill. */
const ROSETTE = 8;
const hasRoom = ({ quilt, edge }: PlanWish): boolean =>
  quilt !== undefined && Math.min(quilt.width, quilt.height) >= ROSETTE * edge;

/** The other usual way to fill a quilt with hexagons. */
const inRosettes = ({ again }: Here) => ({
  label: 'In rosettes of 2 rounds, a path between',
  ask: again({ layout: 'garden', rounds: 2 }),
});

/** A kept plan's reply: worked out anew, and by whom it is kept. */
function shownPlan(kept: KeptPlan, here: Here, assumed: readonly string[] = []): Answer {
  const sheet = sheetFor(here);
  const made = planFrom(kept.wish, sheet);
  if (!made.ok) return planProblem(made, here);
  const by = kept.ownerName === '' ? '' : ` by ${kept.ownerName}`;
  const changed = kept.changedOn === kept.keptOn ? '' : `, changed ${dayWords(kept.changedOn)}`;
  return planReply(made.value, {
    ...{ here, sheet, name: kept.name },
    notes: [
      ...(assumed.length > 0 ? assumedNote(assumed) : [workedWith(made.value, here)]),
      `Kept${by}, ${dayWords(kept.keptOn)}${changed}.`,
    ],
    choices: [kitChoice(kept.name)],
  });
}

function listed(kept: KeptPlan, here: Here): string[] {
  return [kept.name, layoutWords({ wish: kept.wish }, here.say), kept.ownerName || 'nobody now'];
}
