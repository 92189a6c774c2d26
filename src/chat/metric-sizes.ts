import { isMetric } from './metric-words.ts';
import { IN_ROWS, SIZE, UNIT } from './question-patterns.ts';

/** A metric measure of patches, a drop or a seam; cloth is sold so wide to those who sew in inches too. */
const METRIC_PATCHES =
  /\d ?(?:cm|mm)\b(?! ?-?(?:wide|width|fabric|cloth|material|backing|seams?|allowance|strips?|binding))/i;
const SIZES = new RegExp(SIZE, 'gi');
const HAS_UNIT = new RegExp(`\\d${UNIT}`, 'i');
const ROWS = new RegExp(`^(?:${IN_ROWS})`, 'i');
/** A fat quarter or eighth by its measures, which are inches everywhere. */
const IN_INCHES = /^(?:18|9) ?(?:x|by) ?2[0-2]$/i;
/** No quilt has a side of so many centimetres. */
const MOST_CM = 480;
/** No quilt has a side of so many inches; a smaller one may be told in either. */
const MOST_IN = 120;

/** Sizes of two sides without a unit, in a question whose other measures are metric, each with its longer side. */
function bareSizesIn(question: string) {
  if (!METRIC_PATCHES.test(question) || !isMetric(question)) return [];
  return [...question.matchAll(SIZES)]
    .filter(
      ({ 0: size, index }) =>
        !(HAS_UNIT.test(size) || IN_INCHES.test(size) || ROWS.test(question.slice(index))),
    )
    .map(({ 0: size, index }) => ({
      size,
      index,
      longer: Math.max(...(size.match(/\d+/g) ?? []).map(Number)),
    }));
}

/**
 * A question with its sizes of two sides in centimetres, or in millimetres where they are too many of those, if its
 * other measures are metric and they have no unit of their own and are too large for inches.
 *
 * @example
 * metricSizes('quilt 120 x 160 with 4cm hexagons') // "quilt 120 x 160cm with 4cm hexagons"
 * metricSizes('1400x2000, 30mm hexagons') // "1400x2000mm, 30mm hexagons"
 * metricSizes('60x72 with 1in hexagons') // "60x72 with 1in hexagons"
 * metricSizes('60x72 with 25mm hexagons') // "60x72 with 25mm hexagons"
 */
export const metricSizes = (question: string): string =>
  bareSizesIn(question)
    .filter(({ longer }) => longer > MOST_IN)
    .toReversed()
    .reduce(
      (said, { size, index, longer }) =>
        `${said.slice(0, index)}${size}${longer > MOST_CM ? 'mm' : 'cm'}${said.slice(index + size.length)}`,
      question,
    );

/**
 * The size of a quilt that may be in inches or in centimetres, beside patches in millimetres; null where there is
 * none.
 *
 * @example
 * eitherUnit('60x72 with 25mm hexagons').size // "60x72"
 * eitherUnit('60x72 with 1in hexagons') // null
 */
export const eitherUnit = (question: string) => bareSizesIn(question)[0] ?? null;
