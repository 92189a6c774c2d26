import { rosetteTotal } from '../src/calculator/layouts/rosette.ts';
import { alsoNamed } from '../src/chat/option.ts';
import { whole } from '../src/chat/option-kinds.ts';
import { count, type Figure } from '../src/chat/reply.ts';
import { grouped } from '../src/measure/ruler.ts';
import { many } from '../src/measure/speech.ts';

export const rosetteRounds = alsoNamed(
  whole('How many rosettes of so many rounds they make, too', 1, 100, '1'),
  ...['round', 'rosette'],
);

interface InRosettes {
  readonly lines: readonly string[];
  readonly figures: Readonly<Record<string, Figure>>;
}

/** How many whole rosettes so many hexagons make; nothing where rosettes were not asked for. */
export function inRosettes(hexagons: number, rounds: number | undefined): InRosettes {
  if (rounds === undefined) return { lines: [], figures: {} };
  const each = rosetteTotal(rounds);
  const rosettes = Math.floor(hexagons / each);
  const of = many(rounds, 'round', 'rounds');
  return {
    lines: [
      rosettes === 0
        ? `Not one rosette of ${of}: it takes ${grouped(each)} hexagons.`
        : `At least ${many(rosettes, 'rosette', 'rosettes')} of ${of}, ${grouped(each)} hexagons each.`,
    ],
    figures: { rosettes: count(rosettes), perRosette: count(each) },
  };
}
