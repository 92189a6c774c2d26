/** Reads the lines back out of a PDF whose streams are not compressed, as a printer would (PDF 1.7, section 8). */

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** One line on the paper: points (72 an inch), from the sheet's lower left corner, y upward. */
export interface Line {
  readonly page: number;
  /** Where its straight runs and curves begin and end. */
  readonly corners: readonly Spot[];
  /** Points along its curves, a few to each. */
  readonly along: readonly Spot[];
  readonly closed: boolean;
  readonly dashed: boolean;
  readonly painted: 'stroke' | 'fill';
}

type Matrix = readonly [number, number, number, number, number, number];

const times = (m: Matrix, n: Matrix): Matrix => [
  m[0] * n[0] + m[1] * n[2],
  m[0] * n[1] + m[1] * n[3],
  m[2] * n[0] + m[3] * n[2],
  m[2] * n[1] + m[3] * n[3],
  m[4] * n[0] + m[5] * n[2] + n[4],
  m[4] * n[1] + m[5] * n[3] + n[5],
];

const NONE: Matrix = [1, 0, 0, 1, 0, 0];

/** The content of each page, in order. */
export const contentsOf = (pdf: Uint8Array): string[] =>
  [
    ...Buffer.from(pdf)
      .toString('latin1')
      .matchAll(/stream\n([\s\S]*?)\nendstream/g),
  ]
    .map(([, content = '']) => content)
    .filter((content) => /^1 0 0 -1 0 [\d.]+ cm\n/.test(content));

interface Started {
  corners: Spot[];
  along: Spot[];
  closed: boolean;
}

/** Every line that the pages' contents draw. */
export const linesIn = (pdf: Uint8Array): Line[] =>
  contentsOf(pdf).flatMap((content, page) => new Reader(page).read(content));

class Reader {
  private readonly page: number;
  private readonly lines: Line[] = [];
  private readonly kept: { matrix: Matrix; dashed: boolean }[] = [];
  private matrix: Matrix = NONE;
  private dashed = false;
  private path: Started[] = [];
  private here: Spot = { x: 0, y: 0 };

  constructor(page: number) {
    this.page = page;
  }

  read(content: string): Line[] {
    let operands: string[] = [];
    // Letters are passed over: a text object is between BT and ET.
    for (const token of content.replace(/BT[\s\S]*?ET/g, '').match(/\[[^\]]*\]|\S+/g) ?? []) {
      if (/^[-\d./[]/.test(token)) operands.push(token);
      else {
        this.apply(token, operands);
        operands = [];
      }
    }
    return this.lines;
  }

  private apply(operator: string, operands: readonly string[]): void {
    const n = operands.map(Number);
    switch (operator) {
      case 'q':
        this.kept.push({ matrix: this.matrix, dashed: this.dashed });
        return;
      case 'Q': {
        const { matrix, dashed } = this.kept.pop()!;
        this.matrix = matrix;
        this.dashed = dashed;
        return;
      }
      case 'cm':
        this.matrix = times([n[0]!, n[1]!, n[2]!, n[3]!, n[4]!, n[5]!], this.matrix);
        return;
      case 'd':
        this.dashed = /\d/.test(operands[0]!);
        return;
      case 'm':
        this.here = { x: n[0]!, y: n[1]! };
        this.path.push({ corners: [this.placed(this.here)], along: [], closed: false });
        return;
      case 'l':
        this.here = { x: n[0]!, y: n[1]! };
        this.path.at(-1)!.corners.push(this.placed(this.here));
        return;
      case 'c':
        this.curve({ x: n[0]!, y: n[1]! }, { x: n[2]!, y: n[3]! }, { x: n[4]!, y: n[5]! });
        return;
      case 'h':
        this.path.at(-1)!.closed = true;
        return;
      case 'S':
      case 'f':
        this.paint(operator === 'S' ? 'stroke' : 'fill');
    }
  }

  private curve(first: Spot, second: Spot, end: Spot): void {
    const { corners, along } = this.path.at(-1)!;
    const start = this.here;
    for (const t of [0, 0.25, 0.5, 0.75, 1]) {
      const [a, b, c, d] = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3];
      const spot = {
        x: a * start.x + b * first.x + c * second.x + d * end.x,
        y: a * start.y + b * first.y + c * second.y + d * end.y,
      };
      along.push(this.placed(spot));
    }
    corners.push(this.placed(end));
    this.here = end;
  }

  private paint(painted: Line['painted']): void {
    const { page, dashed } = this;
    for (const { corners, along, closed } of this.path)
      this.lines.push({ page, corners, along, closed, dashed, painted });
    this.path = [];
  }

  private placed({ x, y }: Spot): Spot {
    const [a, b, c, d, e, f] = this.matrix;
    return { x: a * x + c * y + e, y: b * x + d * y + f };
  }
}

export const distance = (a: Spot, b: Spot): number => Math.hypot(b.x - a.x, b.y - a.y);

/** How long a straight line of two corners is, in points. */
export const lengthOf = ({ corners }: Line): number => distance(corners[0]!, corners.at(-1)!);
