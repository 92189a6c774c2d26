/** What an element carries; an attribute that is undefined is left out. */
export type Attributes = Readonly<Record<string, string | number | undefined>>;

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/**
 * A text as XML has it. Signs that XML cannot carry are left out.
 *
 * @example
 * escaped('Ada & Bea') // "Ada &amp; Bea"
 */
export const escaped = (text: string): string =>
  text
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what XML cannot carry
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '')
    .toWellFormed()
    .replace(/[&<>"]/g, (sign) => ESCAPES[sign]!);

/**
 * A number in a drawing: a hundredth of a pixel is finer than anyone sees, and keeps the drawing short.
 *
 * @example
 * px(12.3456) // "12.35"
 * px(-0.001) // "0"
 */
export const px = (value: number): string => String(Math.round(value * 100) / 100 + 0);

/**
 * One element with what is inside it.
 *
 * @example
 * element('circle', { r: 4, fill: undefined }) // "<circle r=\"4\"/>"
 * element('g', { id: 'a' }, '<path/>') // "<g id=\"a\"><path/></g>"
 */
export function element(name: string, attributes: Attributes, ...inside: readonly string[]): string {
  const head = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${typeof value === 'number' ? px(value) : escaped(value!)}"`)
    .join('');
  return inside.length === 0 ? `<${name}${head}/>` : `<${name}${head}>${inside.join('')}</${name}>`;
}

/** Several elements as one, moved. */
export const moved = (x: number, y: number, ...inside: readonly string[]): string =>
  element('g', { transform: `translate(${px(x)} ${px(y)})` }, ...inside);

/** A whole picture, so many pixels wide and high. */
export const svg = (width: number, height: number, ...inside: readonly string[]): string =>
  element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${px(width)} ${px(height)}`,
      width: px(width),
      height: px(height),
    },
    ...inside,
  );
