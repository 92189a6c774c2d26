import { describe, expect, test } from 'vitest';
import { type ChartRecipe, chartPicture, stepFor } from '../../src/pictures/chart.ts';
import { draw } from '../../src/pictures/draw.ts';
import { elements, lettersIn, outlinesIn, sizeOfPng } from './drawn.ts';

const chart: ChartRecipe = {
  draw: 'chart',
  title: 'Spring: 57 of 200 rosettes',
  labels: ['W1', 'W2', 'W3', 'W4'],
  series: [
    { name: 'each week', values: [10, 20, 27, null], as: 'bars' },
    { name: 'in all: 57', values: [10, 30, 57, null] },
  ],
  goal: { value: 200, words: 'goal: 200' },
  range: { words: 'four times in five', low: [null, null, 57, 70], high: [null, null, 57, 110] },
};

/** Heights of a picture's level lines, by the figure beside them. */
function heights(svg: string): Map<number, number> {
  const levels = [...svg.matchAll(/<text x="[\d.]+" y="([\d.]+)"[^>]*text-anchor="end"[^>]*>([\d,]+)</g)];
  return new Map(levels.map(([, y, figure]) => [Number(figure!.replaceAll(',', '')), Number(y)]));
}

test('points, goal and range lie at the heights of their figures', () => {
  const svg = chartPicture(chart);
  const at = heights(svg);
  const [zero, fifty] = [at.get(0)!, at.get(50)!];
  const each = (zero - fifty) / 50;
  // Letters lie below their line by the same for all, so differences are what counts.
  const dots = elements(svg, 'circle')
    .filter(({ r }) => r === '12')
    .map(({ cy }) => Number(cy));
  expect((dots[0]! - dots[1]!) / each).toBeCloseTo(20, 1);
  expect((dots[1]! - dots[2]!) / each).toBeCloseTo(27, 1);
  const goal = Number(/d="M[\d.]+ ([\d.]+)H/.exec(svg)![1]);
  expect((dots[2]! - goal) / each).toBeCloseTo(200 - 57, 1);
  const band = /d="M([\d. L]+)Z" fill="url\(#range\)"/
    .exec(svg)![1]!
    .split('L')
    .map((p) => Number(p.split(' ')[1]));
  expect((band[0]! - band[1]!) / each).toBeCloseTo(110 - 57, 1);
  expect((band[3]! - band[2]!) / each).toBeCloseTo(70 - 57, 1);
});

test('a bar for each figure, none where there is none', () => {
  const bars = elements(chartPicture(chart), 'path').find(({ fill }) => fill === 'url(#series0)')!;
  expect(outlinesIn(bars.d!)).toBe(3);
});

test('the legend names everything that is drawn', () => {
  const letters = lettersIn(chartPicture(chart));
  for (const words of ['each week', 'in all: 57', 'goal: 200', 'four times in five', 'W4', chart.title])
    expect(letters).toContain(words);
});

test('a line is broken where a figure is missing', () => {
  const svg = chartPicture({ ...chart, series: [{ name: 'a', values: [1, null, 3, 4] }] });
  const line = elements(svg, 'path').find((path) => path['stroke-width'] === '7' && path.d!.includes('L'))!;
  expect(line.d!.match(/M/g)).toHaveLength(2);
});

test('many labels do not run into each other, and the last is there', () => {
  const labels = Array.from({ length: 90 }, (_, i) => `day ${i + 1}`);
  const letters = lettersIn(
    chartPicture({
      draw: 'chart',
      title: 't',
      labels,
      series: [{ name: 'a', values: labels.map((_, i) => i) }],
    }),
  ).filter((text) => text.startsWith('day'));
  expect(letters.length).toBeLessThan(9);
  expect(letters).toContain('day 90');
});

describe('a chart of nothing yet', () => {
  test.each<ChartRecipe>([
    { draw: 'chart', title: 'nothing', labels: [], series: [] },
    { draw: 'chart', title: 'zeros', labels: ['a'], series: [{ name: 'b', values: [0], as: 'bars' }] },
    { draw: 'chart', title: 'none', labels: ['a', 'b'], series: [{ name: 'c', values: [null, null] }] },
  ])('$title is drawn all the same', async (recipe) => {
    expect(chartPicture(recipe)).not.toMatch(/NaN|Infinity/);
    expect(sizeOfPng(await draw({ ...recipe })).width).toBe(1200);
  });
});

test('a member’s words cannot break the picture', () => {
  const svg = chartPicture({ ...chart, title: 'A & B <script> "x" \u0007 \ud800' });
  for (const bad of ['<script', '\u0007', '\ud800']) expect(svg).not.toContain(bad);
  expect(lettersIn(svg).join(' ')).toContain('A & B <script> "x"');
});

test.each([
  [7, 2],
  [57, 20],
  [200, 50],
  [3, 1],
  [1, 1],
  [12_345, 5000],
])('levels up to %i are %i apart', (highest, step) => {
  expect(stepFor(highest)).toBe(step);
});
