import { totalBought } from '../src/calculator/plan/cloths.ts';
import type { Plan } from '../src/calculator/plan/plan.ts';
import { count, day, type Figure, inches, minutes, yards } from '../src/chat/reply.ts';
import { yardsFigure } from './bought.ts';
import { packageName } from './finish-batting.ts';
import { figureName, stripOf } from './plan-roles.ts';

type Figures = Record<string, Figure>;

const word = (value: string): Figure => ({ value, unit: '' });

/** Every number of a plan: those of the single commands by their names, cloth by role, finishing by its part. */
export const planFigures = (plan: Plan): Figures => ({
  ...topFigures(plan),
  ...roleFigures(plan),
  ...sewingFigures(plan),
  ...paperFigures(plan),
  ...finishingFigures(plan),
  topYards: yards(totalBought(plan.topCloths, 'yard')),
  totalYards: yards(totalBought(plan.cloths, 'yard')),
  totalMetres: { value: totalBought(plan.cloths, 'metric'), unit: 'm' },
});

function topFigures({ top, wish }: Plan): Figures {
  const { total, seams, setIns, size } = top;
  return {
    total: count(total),
    ...(seams > 0 ? { seams: count(seams), seamLength: inches(seams * wish.edge) } : {}),
    ...(seams > 0 ? { setIns: count(setIns) } : {}),
    ...(size ? { width: inches(size.width), height: inches(size.height) } : {}),
    ...OWN[wish.layout]?.(plan1(top)),
  };
}

interface Counted {
  readonly many: number;
  readonly of: (role: string) => number;
}

const plan1 = ({ many, roles }: Plan['top']): Counted => ({
  many,
  of: (role) => roles.reduce((sum, one) => (one.role === role ? sum + one.pieces : sum), 0),
});

/** What /count calls the same counts. */
const OWN: Readonly<Partial<Record<Plan['wish']['layout'], (counted: Counted) => Figures>>> = {
  garden: ({ many, of }) => ({
    rosettes: count(many),
    centres: count(of('centre')),
    petals: count(of('petal')),
    ...(of('diamond') + of('triangle') > 0
      ? { diamonds: count(of('diamond')), triangles: count(of('triangle')) }
      : { path: count(of('path')) }),
  }),
  stars: ({ many, of }) => ({
    stars: count(many),
    diamonds: count(of('star')),
    between: count(of('between')),
  }),
  blocks: ({ many, of }) => ({ blocks: count(many), perShade: count(of('light')) }),
};

function roleFigures({ roles, wish }: Plan): Figures {
  const figures: Figures = {};
  for (const { shape } of roles) figures[`${shape}Strip`] = inches(stripOf(shape, wish).height);
  for (const role of roles) {
    const name = figureName(role, roles);
    figures[`${name}Pieces`] = count(role.pieces);
    figures[`${name}Length`] = inches(role.need.buy);
    figures[`${name}Yards`] = yardsFigure(role.need.buy);
    figures[`${name}Cloth`] = word(role.cloth);
  }
  return figures;
}

function sewingFigures({ sewing, done, before }: Plan): Figures {
  return {
    beforeMinutesLow: minutes(before.low),
    beforeMinutesHigh: minutes(before.high),
    ...(sewing
      ? {
          stitches: count(sewing.stitches),
          threadLength: inches(sewing.threadLength),
          threadLengthLow: inches(sewing.threadLengthLow),
          threadLengths: count(sewing.threadLengths),
          minutesLow: minutes(sewing.minutesLow),
          minutes: minutes(sewing.minutes),
          minutesHigh: minutes(sewing.minutesHigh),
          weeksLow: { value: sewing.weeksLow, unit: 'weeks' },
          weeks: { value: sewing.weeks, unit: 'weeks' },
          weeksHigh: { value: sewing.weeksHigh, unit: 'weeks' },
        }
      : {}),
    ...(done
      ? {
          finishEarliest: day(done.earliest),
          finishDate: day(done.middle),
          finishLatest: day(done.latest),
        }
      : {}),
  };
}

function paperFigures({ papers }: Plan): Figures {
  if (papers.length === 0) return {};
  const [only] = papers;
  return {
    papers: count(papers.reduce((sum, one) => sum + one.papers, 0)),
    sheets: count(papers.reduce((sum, one) => sum + one.sheets, 0)),
    ...(papers.length === 1 && only ? { perSheet: count(only.perSheet) } : {}),
  };
}

function finishingFigures({ finishing }: Plan): Figures {
  if (!finishing) return {};
  const { size, border, backing, batting, binding, bindingLength } = finishing;
  return {
    quiltWidth: inches(size.width),
    quiltHeight: inches(size.height),
    ...(border
      ? {
          borderStrips: count(border.strips),
          borderLength: inches(border.length),
          borderYards: yardsFigure(border.length),
        }
      : {}),
    backingPanels: count(backing.best.panels),
    backingLength: inches(backing.best.length),
    backingYards: yardsFigure(backing.best.length),
    backingDirection: word(backing.best.direction),
    bindingNeedLength: inches(bindingLength),
    bindingStrips: count(binding.strips),
    bindingLength: inches(binding.length),
    bindingYards: yardsFigure(binding.length),
    battingPackage: word(packageName(batting)),
  };
}
