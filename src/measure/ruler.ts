import { MM_PER_INCH } from './length.ts';

/** What a ruler marked in 1/16 in shows for a length, in inches. */
export interface RulerReading {
  /** The mark, in inches. */
  readonly mark: number;
  /** Mark less length: above zero where the mark is larger. */
  readonly error: number;
}

const SIXTEENTHS = 16;
const SAME = 1e-7;

/**
 * The mark of a ruler in 1/16 in that a length is read at: the nearest, or the next one up where the patch
 * must not come out small.
 *
 * @example
 * rulerReading(3.0981).mark // 3.125
 * rulerReading(3.01, 'up').mark // 3.0625
 */
export function rulerReading(inches: number, toward: 'nearest' | 'up' = 'nearest'): RulerReading {
  const steps = inches * SIXTEENTHS;
  const mark = (toward === 'up' ? Math.ceil(steps - SAME) : Math.round(steps)) / SIXTEENTHS;
  return { mark, error: mark - inches };
}

/**
 * A length that lies on a mark, as a ruler has it.
 *
 * @example
 * fraction(3.125) // "3 1/8"
 * fraction(0.75) // "3/4"
 * fraction(1200) // "1,200"
 */
export function fraction(mark: number, parts = SIXTEENTHS): string {
  const whole = Math.floor(mark + SAME);
  let top = Math.round((mark - whole) * parts);
  let bottom = parts;
  while (top > 0 && top % 2 === 0 && bottom % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  if (top === 0) return grouped(whole);
  return whole === 0 ? `${top}/${bottom}` : `${grouped(whole)} ${top}/${bottom}`;
}

/**
 * A count with its thousands set apart.
 *
 * @example
 * grouped(3832) // "3,832"
 */
export function grouped(count: number): string {
  const digits = String(Math.round(count));
  return digits.length < 4 ? digits : digits.replace(/\B(?=(\d{3})+(?!\d))/g, ',');
}

/**
 * A decimal without idle zeros, its thousands set apart.
 *
 * @example
 * decimal(3.0981, 3) // "3.098"
 * decimal(11247.5, 2) // "11,247.5"
 */
export function decimal(value: number, places: number): string {
  const parts = 10 ** places;
  const rounded = Math.round(value * parts) / parts;
  if (Math.abs(rounded) < 1000) return String(rounded === 0 ? 0 : rounded);
  const [whole = '0', part] = String(Math.abs(rounded)).split('.');
  return `${rounded < 0 ? '-' : ''}${grouped(Number(whole))}${part ? `.${part}` : ''}`;
}

/**
 * Inches as a ruler has them, with the exact decimal beside it where the mark is not the length.
 *
 * @example
 * inchWords(3.0980762) // "3 1/8 in (3.098)"
 * inchWords(2.5) // "2 1/2 in"
 */
export function inchWords(inches: number, toward: 'nearest' | 'up' = 'nearest'): string {
  const { mark, error } = rulerReading(inches, toward);
  const exact = Math.abs(error) < 5e-4 ? '' : ` (${decimal(inches, 3)})`;
  return `${fraction(mark)} in${exact}`;
}

/**
 * Millimetres, whole or to a half, with the exact ones beside them where the mark is not the length; from a metre
 * up in centimetres, to a tenth. The nearest mark, or the next one up.
 *
 * @example
 * metricWords(3.0980762) // "78.5 mm (78.69)"
 * metricWords(2.4895, 'up') // "63.5 mm (63.23)"
 * metricWords(60) // "152.4 cm"
 */
export function metricWords(inches: number, toward: 'nearest' | 'up' = 'nearest'): string {
  const mm = inches * MM_PER_INCH;
  const step = mm < 1000 ? 0.5 : 1;
  const mark = step * (toward === 'up' ? Math.ceil(mm / step - SAME) : Math.round(mm / step));
  if (mm >= 1000) return `${decimal(mark / 10, 1)} cm`;
  const exact = Math.abs(mark - mm) < 0.05 ? '' : ` (${decimal(mm, 2)})`;
  return `${decimal(mark, 1)} mm${exact}`;
}
