import { INCHES } from '../measure/length.ts';
import { fraction } from '../measure/ruler.ts';

/**
 * A length as it can be typed again, to the full: a fraction where it is one, millimetres where it is a whole
 * tenth of one, else a decimal.
 *
 * @example
 * writeLength(1.5) // "1 1/2in"
 * writeLength(10 / 2.54) // "100mm"
 */
export function writeLength(inches: number): string {
  if (onSixtyFourth(inches)) return `${fraction(Math.round(inches * 64) / 64, 64).replaceAll(',', '')}in`;
  if (onTenth(inches)) return `${millimetres(inches)}mm`;
  const rounded = Number(inches.toFixed(6));
  return onSixtyFourth(rounded) ? writeLength(rounded) : `${rounded}in`;
}

/**
 * Width × height as it can be typed again, in millimetres where both sides are whole tenths of one.
 *
 * @example
 * writeSize(60, 72.5) // "60x72.5in"
 * writeSize(140 / 2.54, 200 / 2.54) // "1400x2000mm"
 */
export function writeSize(width: number, height: number): string {
  const sides = [width, height];
  if (sides.some((side) => !onSixtyFourth(side)) && sides.every(onTenth))
    return `${sides.map(millimetres).join('x')}mm`;
  return `${sides.map((side) => Number(side.toFixed(6))).join('x')}in`;
}

const onSixtyFourth = (inches: number): boolean => Math.abs(inches * 64 - Math.round(inches * 64)) < 1e-9;
const onTenth = (inches: number): boolean => {
  const tenths = (inches / INCHES.mm) * 10;
  return Math.abs(tenths - Math.round(tenths)) < 1e-7;
};
const millimetres = (inches: number): number => Math.round((inches / INCHES.mm) * 10) / 10;
