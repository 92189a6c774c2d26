import { describe, expect, test } from 'vitest';
import { cutPatch } from '../../../src/calculator/shapes/cut.ts';

// Worked independently on coordinates and with a polygon library's mitred buffer, to four decimals.

type Row = readonly number[];

// edge, seam, cut edge, flats finished and cut, corners finished and cut, area finished and cut
const HEXAGON: readonly Row[] = [
  [1 / 2, 1 / 4, 0.7887, 0.866, 1.366, 1.0, 1.5774, 0.6495, 1.616],
  [1 / 2, 3 / 8, 0.933, 0.866, 1.616, 1.0, 1.866, 0.6495, 2.2617],
  [3 / 4, 1 / 4, 1.0387, 1.299, 1.799, 1.5, 2.0774, 1.4614, 2.8029],
  [3 / 4, 3 / 8, 1.183, 1.299, 2.049, 1.5, 2.366, 1.4614, 3.6361],
  [1, 1 / 4, 1.2887, 1.7321, 2.2321, 2.0, 2.5774, 2.5981, 4.3146],
  [1, 3 / 8, 1.433, 1.7321, 2.4821, 2.0, 2.866, 2.5981, 5.3352],
  [5 / 4, 1 / 4, 1.5387, 2.1651, 2.6651, 2.5, 3.0774, 4.0595, 6.151],
  [5 / 4, 3 / 8, 1.683, 2.1651, 2.9151, 2.5, 3.366, 4.0595, 7.3591],
  [3 / 2, 1 / 4, 1.7887, 2.5981, 3.0981, 3.0, 3.5774, 5.8457, 8.3122],
  [3 / 2, 3 / 8, 1.933, 2.5981, 3.3481, 3.0, 3.866, 5.8457, 9.7078],
  [2, 1 / 4, 2.2887, 3.4641, 3.9641, 4.0, 4.5774, 10.3923, 13.6088],
  [2, 3 / 8, 2.433, 3.4641, 4.2141, 4.0, 4.866, 10.3923, 15.3794],
];

// edge, seam, cut edge, height finished and cut, short and long diagonal cut, area finished and cut
const DIAMOND: readonly Row[] = [
  [1 / 2, 1 / 4, 1.0774, 0.433, 0.933, 1.0774, 1.866, 0.2165, 1.0052],
  [1 / 2, 3 / 8, 1.366, 0.433, 1.183, 1.366, 2.366, 0.2165, 1.616],
  [3 / 4, 1 / 4, 1.3274, 0.6495, 1.1495, 1.3274, 2.299, 0.4871, 1.5258],
  [3 / 4, 3 / 8, 1.616, 0.6495, 1.3995, 1.616, 2.799, 0.4871, 2.2617],
  [1, 1 / 4, 1.5774, 0.866, 1.366, 1.5774, 2.7321, 0.866, 2.1547],
  [1, 3 / 8, 1.866, 0.866, 1.616, 1.866, 3.2321, 0.866, 3.0155],
  [5 / 4, 1 / 4, 1.8274, 1.0825, 1.5825, 1.8274, 3.1651, 1.3532, 2.8918],
  [5 / 4, 3 / 8, 2.116, 1.0825, 1.8325, 2.116, 3.6651, 1.3532, 3.8777],
  [3 / 2, 1 / 4, 2.0774, 1.299, 1.799, 2.0774, 3.5981, 1.9486, 3.7372],
  [3 / 2, 3 / 8, 2.366, 1.299, 2.049, 2.366, 4.0981, 1.9486, 4.8481],
  [2, 1 / 4, 2.5774, 1.7321, 2.2321, 2.5774, 4.4641, 3.4641, 5.7528],
  [2, 3 / 8, 2.866, 1.7321, 2.4821, 2.866, 4.9641, 3.4641, 7.1136],
];

const close = (got: readonly (number | undefined)[], wanted: Row): void => {
  expect(got).toHaveLength(wanted.length);
  for (const [i, value] of wanted.entries()) expect(got[i], `column ${i + 3}`).toBeCloseTo(value, 4);
};

describe('worked figures', () => {
  test.each(HEXAGON)('hexagon %d with %d', (edge, seam, ...wanted) => {
    const { finished, cut } = cutPatch('hexagon', { edge: edge! }, seam!, 'pointed');
    close(
      [
        cut.measures.edge,
        finished.measures.flats,
        cut.measures.flats,
        finished.measures.corners,
        cut.measures.corners,
        finished.area,
        cut.area,
      ],
      wanted,
    );
  });

  test.each(DIAMOND)('60° diamond %d with %d', (edge, seam, ...wanted) => {
    const { finished, cut } = cutPatch('diamond', { edge: edge! }, seam!, 'pointed');
    close(
      [
        cut.measures.edge,
        finished.measures.height,
        cut.measures.height,
        cut.measures.shortDiagonal,
        cut.measures.longDiagonal,
        finished.area,
        cut.area,
      ],
      wanted,
    );
  });
});
