import fc from 'fast-check';
import { lusolve } from 'mathjs';
import { expect, test } from 'vitest';
import {
  addSymmetric,
  factorSymmetric,
  multiplySymmetric,
  prescribe,
  solveSymmetric,
  symmetricBand,
} from '../../../core/numeric/index.ts';

const entries = (count: number) =>
  fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: count, maxLength: count });

test('the symmetric factorisation gives the answer of a dense solver', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 14 }),
      fc.integer({ min: 0, max: 4 }),
      entries(90),
      (n, half, v) => {
        const dense = Array.from({ length: n }, () => new Array<number>(n).fill(0));
        const band = symmetricBand(n, half);
        let next = 0;
        for (let i = 0; i < n; i++) {
          for (let j = Math.max(0, i - half); j <= i; j++) {
            const value = i === j ? 2 * half + 1 : v[next++ % v.length];
            addSymmetric(band, i, j, value);
            dense[i][j] = value;
            dense[j][i] = value;
          }
        }
        const rhs = Float64Array.from({ length: n }, (_, i) => v[(7 * i) % v.length] + 0.5);
        const expected = (lusolve(dense, Array.from(rhs)) as number[][]).map(row => row[0]);
        const copy = Float64Array.from(rhs);
        expect(factorSymmetric(band)).toBe(0);
        solveSymmetric(band, copy);
        for (let i = 0; i < n; i++) expect(copy[i]).toBeCloseTo(expected[i], 9);
      },
    ),
    { numRuns: 60 },
  );
});

test('a singular matrix is reported, not solved', () => {
  const band = symmetricBand(2, 1);
  addSymmetric(band, 0, 0, 1);
  addSymmetric(band, 1, 0, 1);
  addSymmetric(band, 1, 1, 1);
  expect(factorSymmetric(band)).toBeNaN();
});

test('negative pivots count the negative eigenvalues', () => {
  const band = symmetricBand(4, 1);
  // Second differences have eigenvalues 2 − 2cos(kπ/5): 0.382, 1.382, 2.618, 3.618; shifted by −2, two are negative.
  for (let i = 0; i < 4; i++) {
    addSymmetric(band, i, i, 2 - 2.1);
    if (i > 0) addSymmetric(band, i, i - 1, -1);
  }
  expect(factorSymmetric(band)).toBe(2);
});

test('a prescribed value comes out as asked and the other rows still hold', () => {
  const build = () => {
    const band = symmetricBand(5, 2);
    for (let i = 0; i < 5; i++) {
      addSymmetric(band, i, i, 6);
      if (i > 0) addSymmetric(band, i, i - 1, -2);
      if (i > 1) addSymmetric(band, i, i - 2, 0.5);
    }
    return band;
  };
  const band = build();
  const x = Float64Array.of(1, 2, 3, 4, 5);
  prescribe(band, x, 2, 0.7);
  factorSymmetric(band);
  solveSymmetric(band, x);
  expect(x[2]).toBeCloseTo(0.7, 14);
  const back = multiplySymmetric(build(), x, new Float64Array(5));
  for (const i of [0, 1, 3, 4]) expect(back[i]).toBeCloseTo(i + 1, 12);
});
