import fc from 'fast-check';
import { eigs, lusolve } from 'mathjs';
import { expect, test } from 'vitest';
import { SymmetricIndefinite } from '../../../core/numeric/symmetric-indefinite.ts';

const entries = fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 90, maxLength: 90 });

/** A symmetric matrix of numbers given, with zeros on the diagonal where `holes` says so. */
function symmetric(n: number, v: readonly number[], holes: boolean): number[][] {
  const a = Array.from({ length: n }, () => new Array<number>(n).fill(0));
  let next = 0;
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      const value = holes && i === j ? 0 : v[next % v.length];
      next++;
      a[i][j] = value;
      a[j][i] = value;
    }
  }
  return a;
}

function filled(a: readonly number[][]): SymmetricIndefinite {
  const m = new SymmetricIndefinite(a.length);
  a.forEach((row, i) => {
    m.matrix.set(row, i * a.length);
  });
  return m;
}

/** Eigenvalues by another program; only matrices well away from singular ones are compared. */
function eigenvalues(a: number[][]): number[] {
  return (eigs(a, { eigenvectors: false }).values as number[]).map(Number);
}

test.each([false, true])(
  'random matrices (empty diagonal: %s): solutions of a dense solver, inertia of the eigenvalues',
  holes => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 11 }), entries, (n, v) => {
        const a = symmetric(n, v, holes);
        const values = eigenvalues(a);
        fc.pre(Math.min(...values.map(Math.abs)) > 1e-3);
        const m = filled(a);
        expect(m.factor()).toBe(true);
        expect(m.negative).toBe(values.filter(value => value < 0).length);
        const right = Array.from({ length: n }, (_, i) => v[(5 * i + 3) % v.length] + 0.5);
        const expected = (lusolve(a, right) as number[][]).map(row => row[0]);
        const x = Float64Array.from(right);
        m.solve(x);
        for (let i = 0; i < n; i++)
          expect(Math.abs(x[i] - expected[i])).toBeLessThan(1e-9 * (1 + Math.abs(expected[i])));
      }),
      { numRuns: 80 },
    );
  },
);

test('several right sides at once give what each gives alone', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 8 }),
      fc.integer({ min: 1, max: 5 }),
      entries,
      fc.boolean(),
      (n, count, v, holes) => {
        const a = symmetric(n, v, holes && n > 1);
        fc.pre(Math.min(...(n === 1 ? [Math.abs(a[0][0])] : eigenvalues(a).map(Math.abs))) > 1e-3);
        const m = filled(a);
        expect(m.factor()).toBe(true);
        const from = 2;
        const together = new Float64Array(from + n * count).map((_, i) => v[(3 * i) % v.length]);
        const alone = together.slice();
        m.solveColumns(together, from, count);
        for (let c = 0; c < count; c++) m.solve(alone, from + c, count);
        for (let i = 0; i < together.length; i++) {
          expect(Math.abs(together[i] - alone[i])).toBeLessThan(1e-9 * (1 + Math.abs(alone[i])));
        }
      },
    ),
    { numRuns: 80 },
  );
});

test('a saddle point counts one negative eigenvalue a constraint', () => {
  const m = filled([
    [2, 0, 1],
    [0, 2, 1],
    [1, 1, 0],
  ]);
  expect(m.factor()).toBe(true);
  expect(m.negative).toBe(1);
  const x = Float64Array.of(0, 0, 1);
  m.solve(x);
  expect(Array.from(x)).toEqual([expect.closeTo(0.5, 12), expect.closeTo(0.5, 12), expect.closeTo(-1, 12)]);
});

test('singular and not finite matrices are refused', () => {
  expect(filled([[0]]).factor()).toBe(false);
  expect(
    filled([
      [0, 0],
      [0, 0],
    ]).factor(),
  ).toBe(false);
  expect(filled([[Number.NaN]]).factor()).toBe(false);
  expect(
    filled([
      [1, Infinity],
      [Infinity, 1],
    ]).factor(),
  ).toBe(false);
});

test('a matrix of no rows is solved', () => {
  const m = new SymmetricIndefinite(0);
  expect(m.factor()).toBe(true);
  expect(m.negative).toBe(0);
});
