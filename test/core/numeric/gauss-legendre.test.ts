import { expect, test } from 'vitest';
import { gaussLegendre, quadrature } from '../../../core/numeric/index.ts';

test('a rule of n points is exact up to degree 2n − 1 and not beyond', () => {
  for (let n = 1; n <= 12; n++) {
    const exact = (d: number) => (d % 2 ? 0 : 2 / (d + 1));
    const { nodes, weights } = gaussLegendre(n);
    const value = (d: number) => nodes.reduce((sum, x, i) => sum + weights[i] * x ** d, 0);
    for (let d = 0; d < 2 * n; d++) expect(value(d)).toBeCloseTo(exact(d), 13);
    expect(Math.abs(value(2 * n) - exact(2 * n))).toBeGreaterThan(1e-9);
  }
});

test('pieces add up', () => {
  expect(quadrature(Math.exp, 0, 2, 4, 5)).toBeCloseTo(Math.exp(2) - 1, 12);
});

test('an impossible point count is refused by name', () => {
  expect(() => gaussLegendre(0)).toThrow(/points: 0 .*1 to 64/);
});
