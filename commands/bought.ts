import { type Purchase, purchase } from '../src/calculator/fabric/purchase.ts';
import { type Figure, inches, yards } from '../src/chat/reply.ts';
import { INCHES } from '../src/measure/length.ts';
import { decimal } from '../src/measure/ruler.ts';
import type { Speech } from '../src/measure/speech.ts';

/** What to ask for at the counter, in the asker's own way of buying: eighths of a yard or tenths of a metre. */
export const purchaseFor = (needed: number, say: Speech): Purchase =>
  purchase(needed, say.reading === 'metric' ? 'metric' : 'yard');

/** The purchase for so many inches of cloth, as it is said: `3/4 yd`. */
export const bought = (needed: number, say: Speech): string =>
  say.purchase(purchase(needed, 'yard').amount, purchase(needed, 'metric').amount);

/** So little to spare, for what where there are several, that the next step up is worth naming. */
export const tightWords = (needed: number, say: Speech, what = ''): string =>
  `Under ${say.plain(0.5)} to spare${what && ` for the ${what}`}: a crooked cut or the wash eats it. The next step up is ${say.purchase(purchase(needed, 'yard').amount + 1 / 8, purchase(needed, 'metric').amount + 0.1)}.`;

/** Shown lengths never promise more than there is: what is needed is rounded up, what is spare down. */
export const roundUp = (inches: number, say: Speech): number =>
  Math.ceil(inches / grain(say) - 1e-6) * grain(say);
export const roundDown = (inches: number, say: Speech): number =>
  Math.floor(inches / grain(say) + 1e-6) * grain(say);
const grain = ({ reading }: Speech): number => (reading === 'metric' ? INCHES.mm : 1 / 100);

/** Yards to buy, a figure. */
export const yardsFigure = (needed: number): Figure => yards(purchase(needed, 'yard').amount);

/** Metres to buy, a figure. */
export const metresFigure = (needed: number): Figure => ({
  value: Number(decimal(purchase(needed, 'metric').amount, 1).replaceAll(',', '')),
  unit: 'm',
});

/** The figures of a length to buy, under the name of its way. */
export const purchaseFigures = (name: string, needed: number): Record<string, Figure> => ({
  [`${name}Length`]: inches(needed),
  [`${name}Yards`]: yardsFigure(needed),
  [`${name}Spare`]: inches(purchase(needed, 'yard').spare),
  [`${name}Metres`]: metresFigure(needed),
});
