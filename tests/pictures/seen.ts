/** How colours look to readers who see red, green or blue otherwise, for tests of the palette. */

type Triple = readonly [number, number, number];

/**
 * What a reader without one kind of cone sees, in linear RGB: Machado, Oliveira and Fernandes, "A
 * Physiologically-based Model for Simulation of Color Vision Deficiency" (2009), doi 10.1109/TVCG.2009.113,
 * the published matrices of severity 1.0.
 */
export const SIGHTS: Readonly<Record<string, readonly [Triple, Triple, Triple]>> = {
  'usual sight': [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

/** sRGB to linear light: IEC 61966-2-1. */
const linear = (c: number): number => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);

export const lightOf = (hex: string): Triple => {
  const [r, g, b] = [1, 3, 5].map((i) => linear(Number.parseInt(hex.slice(i, i + 2), 16) / 255));
  return [r!, g!, b!];
};

export const seenAs = (colour: Triple, sight: readonly [Triple, Triple, Triple]): Triple => {
  const [r, g, b] = sight.map((row) =>
    Math.min(1, Math.max(0, row[0] * colour[0] + row[1] * colour[1] + row[2] * colour[2])),
  );
  return [r!, g!, b!];
};

/** CIE L*a*b*, under D65, from linear sRGB (CIE 15). */
export function labOf([r, g, b]: Triple): Triple {
  const x = (0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.95047;
  const y = 0.2126 * r + 0.7152 * g + 0.0722 * b;
  const z = (0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.08883;
  const f = (t: number): number => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116);
  return [116 * f(y) - 16, 500 * (f(x) - f(y)), 200 * (f(y) - f(z))];
}

/** The CIE 1976 difference of two colours: about 2.3 is just seen. */
export const difference = (a: Triple, b: Triple): number => {
  const [p, q] = [labOf(a), labOf(b)];
  return Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
};

/** The contrast ratio of WCAG 2: 1 to 21. */
export function contrast(one: string, other: string): number {
  const [a, b] = [one, other].map((hex) => {
    const [r, g, b] = lightOf(hex);
    return 0.2126 * r + 0.7152 * g + 0.0722 * b + 0.05;
  });
  return Math.max(a!, b!) / Math.min(a!, b!);
}
