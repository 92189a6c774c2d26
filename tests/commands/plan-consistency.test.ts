import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { purchase } from '../../src/calculator/fabric/purchase.ts';
import { openAsking, valuesOf } from './asking.ts';

const ask = openAsking();

const figuresOf = async (words: string): Promise<Record<string, unknown>> => {
  const reply = await ask(words);
  if (reply.error) throw new Error(`${words}: ${reply.error.message}`);
  return valuesOf(reply);
};

const each = (list: readonly string[]) => fc.constantFrom(...list);
const whole = (min: number, max: number) => fc.integer({ min, max });

/** A layout as /plan and as /count are asked for it, and the shape of each part. */
interface Laid {
  readonly plan: string;
  readonly count: string | null;
  readonly shapes: Readonly<Record<string, string>>;
  /** How often what /count counts is made. */
  readonly times: number;
}

const rounds = (r: number, shape: string, from = 0) =>
  Object.fromEntries(
    Array.from({ length: r + 1 - from }, (_, i) => [i + from === 0 ? 'centre' : `round${i + from}`, shape]),
  );

const laid = (size: string): fc.Arbitrary<Laid> =>
  fc.oneof(
    fc
      .record({
        w: whole(12, 60),
        h: whole(12, 60),
        rows: each(['across', 'down']),
        sides: each(['whole', 'cover', 'straight']),
      })
      .map(({ w, h, rows, sides }) => ({
        plan: `field quilt:${w}x${h}in rows:${rows} sides:${sides}`,
        count: `/count field quilt:${w}x${h}in rows:${rows} sides:${sides} ${size}`,
        shapes: { field: 'hexagon', half: 'half-hexagon' },
        times: 1,
      })),
    fc.record({ r: whole(1, 5), n: whole(1, 6) }).map(({ r, n }) => ({
      plan: `rosette rounds:${r} number:${n}`,
      count: `/count rosette rounds:${r} ${size}`,
      shapes: rounds(r, 'hexagon'),
      times: n,
    })),
    fc
      .record({
        n: each(['1', '7', '19', '3x4', '5x2']),
        r: whole(1, 3),
        path: each(['none', 'one', 'own', 'diamonds']),
        outer: each(['yes', 'no']),
      })
      .map(({ n, r, path, outer }) => ({
        plan: `garden rosettes:${n} rounds:${r} path:${path} outer:${outer}`,
        count: `/count garden rosettes:${n} rounds:${r} path:${path} outer:${outer} ${size}`,
        shapes: {
          centre: 'hexagon',
          petal: 'hexagon',
          path: 'hexagon',
          diamond: 'diamond',
          triangle: 'triangle',
        },
        times: 1,
      })),
    fc.record({ side: whole(1, 6), n: whole(1, 4) }).map(({ side, n }) => ({
      plan: `star side:${side} number:${n}`,
      count: `/count star side:${side} ${size}`,
      shapes: rounds(side, 'diamond', 1),
      times: n,
    })),
    fc
      .record({
        n: each(['1', '7', '19', '4x3']),
        set: each(['diamonds', 'hexagons']),
        outer: each(['yes', 'no']),
      })
      .map(({ n, set, outer }) => ({
        plan: `stars:${n} set:${set} outer:${outer}`,
        count: `/count stars stars:${n} set:${set} outer:${outer} ${size}`,
        shapes: { star: 'diamond', between: set === 'diamonds' ? 'diamond' : 'hexagon' },
        times: 1,
      })),
    whole(1, 9).map((side) => ({
      plan: `diamonds side:${side}`,
      count: `/count diamonds from:${side % 2 === 0 ? 4 : 1} rounds:${Math.floor((side - 1) / 2)} ${size}`,
      shapes: rounds(5, 'diamond'),
      times: 1,
    })),
    whole(1, 6).map((side) => ({
      plan: `blocks side:${side}`,
      count: `/count blocks side:${side} ${size}`,
      shapes: { light: 'diamond', medium: 'diamond', dark: 'diamond' },
      times: 1,
    })),
    fc
      .record({
        n: whole(1, 400),
        shape: each(['kite', 'triangle', 'square', 'hexagon', 'diamond', 'third']),
      })
      .map(({ n, shape }) => ({
        plan: `shape:${shape} number:${n}`,
        count: null,
        shapes: { pieces: shape },
        times: 1,
      })),
  );

const asked = each(['3/4in', '1in', '1 1/2in', '25mm', '2in']).chain((edge) =>
  fc.record({
    edge: fc.constant(edge),
    layout: laid(`size:${edge}`),
    seam: each(['1/4in', '3/8in']),
    width: each(['40in', '42in', '106in']),
    spare: each(['0%', '5%', '10%']),
    shrink: each(['0%', '3%']),
    method: each(['whip', 'running']),
    hours: whole(1, 20),
    border: each(['0in', '2in', '3 1/2in']),
  }),
);

/** Each figure as a number of the plan, of the single command and how near they must be. */
function same(
  plan: Record<string, unknown>,
  single: Record<string, unknown>,
  pairs: Readonly<Record<string, string>>,
  about: string,
) {
  for (const [mine, theirs] of Object.entries(pairs)) {
    const [a, b] = [plan[mine], single[theirs]];
    expect(b, `${about}: no ${theirs}`).toBeDefined();
    if (typeof a === 'number' && typeof b === 'number')
      expect(Math.abs(a - b), `${about}: ${mine} ${a} is not ${theirs} ${b}`).toBeLessThan(1e-4);
    else expect(a, `${about}: ${mine}`).toEqual(b);
  }
}

test('every number of a plan is what the single command says', { timeout: 60_000 }, async () => {
  await fc.assert(
    fc.asyncProperty(asked, async ({ edge, layout, seam, width, spare, shrink, method, hours, border }) => {
      const words = `/plan ${layout.plan} size:${edge} seam:${seam} width:${width} spare:${spare} shrink:${shrink} method:${method} hours:${hours} border:${border}`;
      const reply = await ask(words);
      // No whole hexagon may fit a small quilt: then there is nothing to plan, and that is said.
      if (reply.error?.code === 'no-patch-fits') return;
      expect(reply.error, words).toBeNull();
      const plan = valuesOf(reply);
      if (layout.count) {
        const counted = await figuresOf(layout.count);
        expect(plan.total).toBe((counted.total as number) * layout.times);
        if ('seams' in plan) expect(plan.seams).toBe((counted.seams as number) * layout.times);
        same(plan, counted, { width: 'width', height: 'height' }, layout.count);
      }
      for (const shape of new Set(Object.values(layout.shapes)))
        if (`${shape}Strip` in plan) {
          const single = `/cut shape:${shape} size:${edge} seam:${seam}`;
          same(plan, await figuresOf(single), { [`${shape}Strip`]: 'stripHeight' }, single);
        }
      let total = 0;
      for (const [part, shape] of Object.entries(layout.shapes)) {
        const pieces = plan[`${part}Pieces`];
        if (pieces === undefined) continue;
        total += pieces as number;
        const single = `/yardage pieces:${pieces} shape:${shape} size:${edge} seam:${seam} width:${width} spare:${spare} shrink:${shrink}`;
        same(
          plan,
          await figuresOf(single),
          { [`${part}Length`]: 'bestLength', [`${part}Yards`]: 'bestYards' },
          single,
        );
      }
      expect(total).toBe(plan.total);
      if (plan.seams) {
        const single = `/time seams:${plan.seams} size:${edge} method:${method} hours:${hours}`;
        const names = [
          'seamLength',
          'stitches',
          'threadLength',
          'threadLengthLow',
          'threadLengths',
          'minutesLow',
          'minutes',
          'minutesHigh',
          'weeksLow',
          'weeks',
          'weeksHigh',
          'finishEarliest',
          'finishDate',
          'finishLatest',
        ];
        same(plan, await figuresOf(single), Object.fromEntries(names.map((name) => [name, name])), single);
      }
      if (method === 'running') expect(plan).not.toHaveProperty('papers');
      else expect(plan.papers).toBe(plan.total);
      if (plan.quiltWidth !== undefined) await finishes(plan, { width, seam, border });
      expect(plan.totalYards as number).toBeGreaterThanOrEqual(plan.topYards as number);
    }),
    { numRuns: 20 },
  );
});

async function finishes(
  plan: Record<string, unknown>,
  { width, seam, border }: { width: string; seam: string; border: string },
) {
  const inner = `${plan.width}x${plan.height}in`;
  if (border !== '0in') {
    const single = `/finish border quilt:${inner} border:${border} width:${width} seam:${seam}`;
    same(
      plan,
      await figuresOf(single),
      {
        borderStrips: 'strips',
        borderLength: 'length',
        borderYards: 'yards',
        quiltWidth: 'newWidth',
        quiltHeight: 'newLength',
      },
      single,
    );
  } else same(plan, plan, { quiltWidth: 'width', quiltHeight: 'height' }, 'no border');
  const quilt = `quilt:${plan.quiltWidth}x${plan.quiltHeight}in`;
  same(
    plan,
    await figuresOf(`/finish backing ${quilt} width:${width}`),
    {
      backingPanels: 'panels',
      backingLength: 'length',
      backingYards: 'yards',
      backingDirection: 'direction',
    },
    'backing',
  );
  same(
    plan,
    await figuresOf(`/finish binding ${quilt} width:${width}`),
    {
      bindingNeedLength: 'needLength',
      bindingStrips: 'strips',
      bindingLength: 'length',
      bindingYards: 'yards',
    },
    'binding',
  );
  same(plan, await figuresOf(`/finish batting ${quilt}`), { battingPackage: 'package' }, 'batting');
}

describe('papers', () => {
  test.each(['hexagon', 'diamond', 'triangle', 'kite'])(
    'as many sheets of %s papers as /template prints',
    async (shape) => {
      const plan = await figuresOf(`/plan shape:${shape} number:500 size:1in`);
      const printed = await figuresOf(`/template shape:${shape} size:1in seam:0in papers:500`);
      same(plan, printed, { perSheet: 'perSheet', sheets: 'sheets' }, shape);
    },
  );
});

describe('cloths that serve several parts', () => {
  test('are cut together, and every purchase adds up to the totals', async () => {
    const words =
      '/plan garden rosettes:7 rounds:2 outer:yes size:1in cloths:centre white, path white, petal scraps, binding white';
    const plan = await figuresOf(words);
    const together = await figuresOf('/yardage pieces:91 shape:hexagon size:1in');
    const white = purchase((together.bestLength as number) + (plan.bindingLength as number), 'yard').amount;
    expect(plan.topYards).toBe(together.bestYards);
    expect(plan.totalYards).toBe(white + (plan.backingYards as number));
    const { table } = await ask(words);
    expect(table?.rows.map(([what]) => what)).toEqual([
      'white',
      'scraps',
      'backing',
      'batting',
      'thread',
      'papers',
      'cloth in all',
    ]);
  });
});

describe('as many as fill a quilt', () => {
  test.each([
    'garden rounds:2',
    'garden rounds:1 path:own',
    'garden rounds:2 path:none',
    'garden rounds:1 path:diamonds',
    'stars set:diamonds',
    'stars set:hexagons',
    'blocks',
  ])('%s as /count finds them, trimmed to its size', async (layout) => {
    const plan = await figuresOf(`/plan ${layout} quilt:60x72in size:1in`);
    const counted = await figuresOf(`/count ${layout} quilt:60x72in size:1in`);
    same(plan, counted, { total: 'total', seams: 'seams', setIns: 'setIns' }, layout);
    expect(plan).toMatchObject({ width: 60, height: 72, quiltWidth: 60, quiltHeight: 72 });
    expect(counted.width).toBeGreaterThanOrEqual(60);
    expect(counted.height).toBeGreaterThanOrEqual(72);
  });

  test('blocks fill it as hexagons of the same side do', async () => {
    const blocks = await figuresOf('/plan blocks quilt:60x72in size:1in');
    const field = await figuresOf('/count field quilt:60x72in size:1in');
    expect(blocks.blocks).toBe(field.cover);
    expect(blocks.total).toBe(3 * (field.cover as number));
    expect(blocks.seams).toBe((field.seams as number) + 3 * (field.cover as number));
  });
});

describe('/kit', () => {
  test('is the plan times the members, the spare ones on the whole batch', async () => {
    const kit = await figuresOf('/kit rosette rounds:2 size:1in members:12 spare:10% width:40in');
    expect(kit).toMatchObject({
      members: 12,
      perKit: 19,
      total: 228,
      centrePerKit: 1,
      round1PerKit: 6,
      round2PerKit: 12,
    });
    for (const [part, pieces] of [
      ['centre', 12],
      ['round1', 72],
      ['round2', 144],
    ] as const) {
      const single = await figuresOf(`/yardage pieces:${pieces} size:1in spare:10% width:40in`);
      same(
        kit,
        single,
        { [`${part}Pieces`]: 'pieces', [`${part}Length`]: 'bestLength', [`${part}Yards`]: 'bestYards' },
        part,
      );
    }
    const time = await figuresOf('/time rosette:2 size:1in');
    same(
      kit,
      time,
      { seams: 'seams', threadLength: 'threadLength', minutesLow: 'minutesLow', minutesHigh: 'minutesHigh' },
      'time',
    );
  });
});
