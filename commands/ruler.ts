import { type Command, form } from '../src/chat/command.ts';
import { bare, required } from '../src/chat/option.ts';
import { LONGEST_CLOTH, length, writeLength } from '../src/chat/option-kinds.ts';
import { type Figure, inches, reply, yards } from '../src/chat/reply.ts';
import { MM_PER_INCH } from '../src/measure/length.ts';
import { decimal, rulerReading } from '../src/measure/ruler.ts';
import { speech } from '../src/measure/speech.ts';
import { bought } from './bought.ts';

/** The least that is asked of a ruler, inches. */
const LEAST = 1 / 64;
/** From here on a length may be cloth to buy, inches: an eighth of a yard. */
const CLOTH_FROM = 4.5;
/** Nearer to the mark than this, inches, nobody sees it. */
const SEEN = 1 / 64;
const YARD = 36;

const INCH = speech('ruler');
const METRIC = speech('metric');

const ruler: Command = {
  name: 'ruler',
  summary: 'A length in inches and in millimetres, and the mark it lies at',
  forms: [
    form({
      name: '',
      summary: 'A length on an inch ruler and on a metric one; as cloth, in yards and in metres',
      examples: ['/ruler 2.3cm', '/ruler 3/8in', '/ruler 3yd'],
      options: {
        length: required(bare(length('The length to be read', LEAST, LONGEST_CLOTH, '2.3cm'))),
      },
      run({ length: long }, { say }) {
        const { mark, error } = rulerReading(long);
        const onInches = mark === 0 ? [] : [`${INCH.length(long)} on an inch ruler.`, ...offWords(error)];
        const onMetric = `${metricWords(long)} on a metric ruler.`;
        const other = say.reading === 'metric' ? [...onInches, onMetric] : [onMetric, ...onInches];
        return reply({
          title: say.reading === 'metric' ? metricWords(long) : writeLength(long).replace(/([a-z]+)$/, ' $1'),
          lines: long < YARD ? [...other, ...clothWords(long)] : [...clothWords(long), ...other],
          figures: figuresOf(long, mark),
        });
      },
    }),
  ],
};

export default ruler;

/** `9.525 mm`, `2.3 cm (23 mm)`, `1.1 m (110 cm)`. */
function metricWords(long: number): string {
  const mm = long * MM_PER_INCH;
  if (mm < 10) return `${decimal(mm, 3)} mm`;
  return mm < 1000
    ? `${decimal(mm / 10, 3)} cm (${decimal(mm, 2)} mm)`
    : `${decimal(mm / 1000, 3)} m (${decimal(mm / 10, 2)} cm)`;
}

/** How far the mark is off, where that can be seen. */
const offWords = (error: number): string[] =>
  Math.abs(error) < SEEN
    ? []
    : [`That mark is ${decimal(Math.abs(error), 3)} in too ${error > 0 ? 'long' : 'short'}.`];

/** As cloth, and as a shop sells it. */
const clothWords = (long: number): string[] =>
  long < CLOTH_FROM
    ? []
    : [
        `${decimal(long / YARD, 2)} yd, ${decimal((long * MM_PER_INCH) / 1000, 2)} m.`,
        `To buy as much: ${bought(long, INCH)} or ${bought(long, METRIC)}.`,
      ];

const figuresOf = (long: number, mark: number): Record<string, Figure> => ({
  length: inches(long),
  mark: inches(mark),
  millimetres: { value: long * MM_PER_INCH, unit: 'mm' },
  yards: yards(long / 36),
  metres: { value: (long * MM_PER_INCH) / 1000, unit: 'm' },
});
