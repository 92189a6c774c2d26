/** What a drawing is made from; the reply that asks for it carries no more than this. */
export interface Recipe {
  readonly draw: string;
  readonly [ingredient: string]: unknown;
}

type Drawing = (recipe: never) => Uint8Array | Promise<Uint8Array>;

/** Every drawing by its name, each loaded when it is first wanted. */
const DRAWINGS: Readonly<Record<string, () => Promise<Drawing>>> = {
  layout: async () => (await import('./layout.ts')).drawLayout,
  ball: async () => (await import('./ball.ts')).drawBall,
  patch: async () => (await import('./patch.ts')).drawPatch,
  cutting: async () => (await import('./cutting.ts')).drawCutting,
  chart: async () => (await import('./chart.ts')).drawChart,
  templates: async () => (await import('./templates.ts')).drawTemplates,
  'plan-sheet': async () => (await import('./plan-sheet.ts')).drawPlanSheet,
  text: async () => (await import('./text.ts')).drawText,
};

/** Makes the picture or file that a recipe describes: the bytes of a PNG, a PDF or a text. */
export async function draw(recipe: Recipe): Promise<Uint8Array> {
  const load = DRAWINGS[recipe.draw];
  if (!load) throw new Error(`no drawing is called ${recipe.draw}`);
  const drawing = await load();
  return drawing(recipe as never);
}
