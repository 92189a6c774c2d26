import { isMetric } from './metric-words.ts';
import { IN_ROWS, SIZE, UNIT } from './question-patterns.ts';

/** A metric measure of patches, a drop or a seam; cloth is sold so wide to those who sew in inches too. */
const METRIC_PATCHES = /\d ?(?:cm|mm)\b(?! ?-?(?:wide|width|fabric|cloth|material|backing))/i;
const SIZES = new RegExp(SIZE, 'gi');
const HAS_UNIT = new RegExp(`\\d${UNIT}`, 'i');
const ROWS = new RegExp(`^(?:${IN_ROWS})`, 'i');
/** A fat quarter or eighth by its measures, which are inches everywhere. */
const IN_INCHES = /^(?:18|9) ?(?:x|by) ?2[0-2]$/i;
/** No quilt has a side of so many centimetres. */
const MOST_CM = 480;

/**
 * A question with its sizes of two sides in centimetres, or in millimetres where they are too many of those, if its
 * other measures are metric and they have no unit of their own.
 *
 * @example
 * metricSizes('quilt 120 x 160 with 4cm hexagons') // "quilt 120 x 160cm with 4cm hexagons"
 * metricSizes('1400x2000, 30mm hexagons') // "1400x2000mm, 30mm hexagons"
 * metricSizes('60x72 with 1in hexagons') // "60x72 with 1in hexagons"
 */
export function metricSizes(question: string): string {
  if (!METRIC_PATCHES.test(question) || !isMetric(question)) return question;
  return question.replace(SIZES, (size, at: number) => {
    if (HAS_UNIT.test(size) || IN_INCHES.test(size) || ROWS.test(question.slice(at))) return size;
    const sides = size.match(/\d+/g)?.map(Number) ?? [];
    return `${size}${Math.max(...sides) > MOST_CM ? 'mm' : 'cm'}`;
  });
}
