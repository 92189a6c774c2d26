import { type Command, form } from '../src/chat/command.ts';
import { bare, required } from '../src/chat/option.ts';
import { LONGEST_CLOTH, length } from '../src/chat/option-kinds.ts';
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
const ON_THE_MARK = 1 / 256;

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
        const off =
          Math.abs(error) < ON_THE_MARK
            ? ''
            : `; that mark is ${decimal(Math.abs(error), 3)} in too ${error > 0 ? 'long' : 'short'}`;
        const onInches = `${INCH.length(long)} on an inch ruler${off}.`;
        const onMetric = `${metricWords(long)} on a metric ruler.`;
        const both = say.reading === 'metric' ? [onInches, onMetric] : [onMetric, onInches];
        return reply({
          title: say.reading === 'metric' ? metricWords(long) : INCH.plain(long),
          lines: [
            ...both,
            ...(long < CLOTH_FROM
              ? []
              : [
                  `${decimal(long / 36, 2)} yd, ${decimal((long * MM_PER_INCH) / 1000, 2)} m. To buy as much: ${bought(long, INCH)} or ${bought(long, METRIC)}.`,
                ]),
          ],
          figures: figuresOf(long, mark),
        });
      },
    }),
  ],
};

export default ruler;

/** `9.525 mm`, `2.3 cm (23 mm)`. */
function metricWords(long: number): string {
  const mm = long * MM_PER_INCH;
  return mm < 10 ? `${decimal(mm, 3)} mm` : `${decimal(mm / 10, 2)} cm (${decimal(mm, 1)} mm)`;
}

const figuresOf = (long: number, mark: number): Record<string, Figure> => ({
  length: inches(long),
  mark: inches(mark),
  millimetres: { value: long * MM_PER_INCH, unit: 'mm' },
  yards: yards(long / 36),
  metres: { value: (long * MM_PER_INCH) / 1000, unit: 'm' },
});
