import { type Purchase, purchase } from '../src/calculator/fabric/purchase.ts';
import { type Figure, inches, yards } from '../src/chat/reply.ts';
import { INCHES } from '../src/measure/length.ts';
import { decimal } from '../src/measure/ruler.ts';
import type { Speech } from '../src/measure/speech.ts';

/** Shown lengths never promise more than there is: what is needed is rounded up, what is spare down. */
export const roundUp = (inches: number, say: Speech): number =>
  Math.ceil(inches / grain(say) - 1e-6) * grain(say);
export const roundDown = (inches: number, say: Speech): number =>
  Math.floor(inches / grain(say) + 1e-6) * grain(say);
const grain = ({ reading }: Speech): number => (reading === 'metric' ? INCHES.mm : 1 / 100);

export const purchaseFor = (needed: number, say: Speech): Purchase =>
  purchase(needed, say.reading === 'metric' ? 'metric' : 'yard');

/** What to ask for at the counter. */
export const bought = (needed: number, say: Speech): string =>
  say.purchase(purchase(needed, 'yard').amount, purchase(needed, 'metric').amount);

export const tightWords = (buy: Purchase, say: Speech): string =>
  `Under ${say.plain(0.5)} to spare: a crooked cut or the wash eats it. The next step up is ${say.purchase(buy.amount + 1 / 8, buy.amount + 0.1)}.`;

/** The figures of a length to buy, under the name of its way. */
export function purchaseFigures(name: string, needed: number): Record<string, Figure> {
  const buy = purchase(needed, 'yard');
  return {
    [`${name}Length`]: inches(needed),
    [`${name}Yards`]: yards(buy.amount),
    [`${name}Spare`]: inches(buy.spare),
    [`${name}Metres`]: {
      value: Number(decimal(purchase(needed, 'metric').amount, 1).replaceAll(',', '')),
      unit: 'm',
    },
  };
}
