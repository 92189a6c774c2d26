import { INCHES, MM_PER_INCH } from './length.ts';
import { decimal, fraction, grouped, inchWords, metricWords, rulerReading } from './ruler.ts';

/** How lengths are read back to a member: on an inch ruler, in millimetres, or both. */
export type Reading = 'ruler' | 'metric' | 'both';

/** Says measures in a member's own units. */
export interface Speech {
  readonly reading: Reading;
  /** A length on the ruler: `3 1/8 in (3.098)`, `78.5 mm`, or both. */
  length(inches: number, toward?: 'nearest' | 'up'): string;
  /** Only the mark: `3 1/8 in`, where the exact length has been said already. */
  mark(inches: number, toward?: 'nearest' | 'up'): string;
  /** A length as the member wrote it, without a remark on rounding: `1 1/2 in`. */
  plain(inches: number): string;
  /** One side of a size, alone: `90 in`. */
  side(inches: number): string;
  /** Width × height: `90 x 108 in`. */
  size(width: number, height: number): string;
  /** An area. */
  area(squareInches: number): string;
  /** A long run of thread or seam. */
  run(inches: number): string;
  /** Cloth to buy. */
  purchase(yards: number, metres: number): string;
}

/** A measure said on an inch ruler, and in millimetres. */
type Words<Said extends readonly unknown[]> = (...said: Said) => string;

function speechOf(reading: Reading): Speech {
  const said = <Said extends readonly unknown[]>(inch: Words<Said>, metric: Words<Said>): Words<Said> => {
    if (reading === 'ruler') return inch;
    if (reading === 'metric') return metric;
    return (...said) => `${inch(...said)} / ${metric(...said)}`;
  };
  return {
    reading,
    length: said(inchWords, metricWords),
    mark: said(
      (inches: number, toward?: 'nearest' | 'up') => `${fraction(rulerReading(inches, toward).mark)} in`,
      (inches, toward) => metricWords(inches, toward).replace(/ \(.*/, ''),
    ),
    plain: said((inches: number) => `${shortInches(inches)} in`, exactMetric),
    side: said(
      (inches: number) => `${shortInches(inches)} in`,
      (inches) => `${centimetres(inches)} cm`,
    ),
    size: said(
      (width: number, height: number) => `${shortInches(width)} x ${shortInches(height)} in`,
      (width, height) => `${centimetres(width)} x ${centimetres(height)} cm`,
    ),
    area: said(
      (square: number) => `${decimal(square, 3)} sq in`,
      (square) => `${decimal(square * INCHES.in * 6.4516, 1)} sq cm`,
    ),
    run: said(yardsWords, metresWords),
    purchase: said(
      (yards: number, _metres: number) => `${fraction(yards, 8)} yd`,
      (_yards, metres) => `${decimal(metres, 1)} m`,
    ),
  };
}

/** Inches while they say something, yards from two on. */
function yardsWords(inches: number): string {
  const yards = `${decimal(inches / 36, inches < 3600 ? 1 : 0)} yd`;
  if (inches < 72) return `${decimal(inches, 0)} in`;
  return inches < 360 ? `${decimal(inches, 0)} in (${yards})` : yards;
}

const metresWords = (inches: number): string =>
  inches < 39 ? `${decimal(inches * 2.54, 0)} cm` : `${decimal(inches * 0.0254, inches < 3937 ? 1 : 0)} m`;

/** A fraction where the length lies on a mark, two decimals where it does not. */
function shortInches(inches: number): string {
  const steps = inches * 16;
  if (Math.abs(steps - Math.round(steps)) < 1e-6) return fraction(Math.round(steps) / 16);
  return decimal(inches, 2);
}

/** What is said of an eighth must be 3.175 mm: to a thousandth while it is small, to a tenth above. */
function exactMetric(inches: number): string {
  const mm = inches * MM_PER_INCH;
  if (mm < 100) return `${decimal(mm, mm < 10 ? 3 : 2)} mm`;
  return mm < 1000 ? `${decimal(mm, 1)} mm` : `${decimal(mm / 10, 1)} cm`;
}

const centimetres = (inches: number): string => decimal(inches * 2.54, 1);

const SPEECHES: Readonly<Record<Reading, Speech>> = {
  ruler: speechOf('ruler'),
  metric: speechOf('metric'),
  both: speechOf('both'),
};

/** How measures are said to one who reads them so. */
export const speech = (reading: Reading): Speech => SPEECHES[reading];

/** Low to high, or one value where they read the same. `range('13', '31')` is "13 to 31". */
export const range = (low: string, high: string): string => (low === high ? low : `${low} to ${high}`);

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** A day as it is said. `dayWords('2026-12-01')` is "1 Dec 2026". */
export function dayWords(iso: string): string {
  const [year, month, day] = iso.split('-').map(Number);
  return `${day} ${MONTHS[(month ?? 1) - 1]} ${year}`;
}

/**
 * From a day to a day, what they share said once.
 *
 * @example
 * daysWords('2026-12-03', '2026-12-04') // "3 to 4 Dec 2026"
 * daysWords('2027-03-10', '2027-08-04') // "10 Mar to 4 Aug 2027"
 * daysWords('2026-12-03', '2026-12-03') // "3 Dec 2026"
 */
export function daysWords(from: string, to: string): string {
  const [first, last] = [dayWords(from).split(' '), dayWords(to).split(' ')];
  const shared = from.slice(0, 7) === to.slice(0, 7) ? 1 : from.slice(0, 4) === to.slice(0, 4) ? 2 : 3;
  return range(first.slice(0, from === to ? 3 : shared).join(' '), last.join(' '));
}

/** A count with its noun, in the right number. `many(3832, 'hexagon', 'hexagons')` is "3,832 hexagons". */
export const many = (count: number, one: string, more: string): string =>
  `${grouped(count)} ${count === 1 ? one : more}`;

/** With a capital in front. `capital('half hexagon')` is "Half hexagon". */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
