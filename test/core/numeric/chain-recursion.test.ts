import fc from 'fast-check';
import { eigs, lusolve } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { ChainRecursion, type ChainRightSide } from '../../../core/numeric/chain-recursion.ts';

interface Sizes {
  readonly states: number;
  readonly controls: number;
  readonly stages: number;
  /** Conditions that reach the last state, and those of the first alone. */
  readonly across: number;
  readonly atStart: number;
}

/** The whole Newton system of a chain as one dense matrix; unknowns dx, du, costates, end multipliers. */
function dense(r: ChainRecursion, start: Float64Array, end: Float64Array, right: ChainRightSide) {
  const { states: n, controls: m, stages: N } = r;
  const z = n + m;
  const rows = start.length / n;
  const U = (N + 1) * n;
  const L = U + N * m;
  const E = L + N * n;
  const size = E + rows;
  const a = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const b = new Array<number>(size).fill(0);
  const add = (i: number, j: number, v: number) => {
    a[i][j] += v;
  };
  for (let k = 0; k <= N; k++) {
    for (let i = 0; i < n; i++) {
      b[k * n + i] -= right.node[k * n + i];
      for (let j = 0; j < n; j++) add(k * n + i, k * n + j, r.nodeHessian[(k * n + i) * n + j]);
    }
  }
  for (let k = 0; k < N; k++) {
    // The unknowns behind the middle of the stage: each state is half of two.
    const places = Array.from({ length: z }, (_, j) =>
      j < n
        ? [
            { at: k * n + j, share: 0.5 },
            { at: (k + 1) * n + j, share: 0.5 },
          ]
        : [{ at: U + k * m + j - n, share: 1 }],
    );
    for (let i = 0; i < z; i++) {
      for (const p of places[i]) {
        b[p.at] -= p.share * right.middle[k * z + i];
        for (let j = 0; j < z; j++) {
          for (const q of places[j])
            add(p.at, q.at, p.share * q.share * r.middleHessian[(k * z + i) * z + j]);
        }
      }
    }
    for (let i = 0; i < m; i++) {
      add(U + k * m + i, U + k * m + i, r.controlHessian[k * m + i]);
      b[U + k * m + i] -= right.control[k * m + i];
    }
    // dx⁺ − dx − h (f_x y + f_u du) = −c, with the multiplier's sign of the gain: −λ of it.
    for (let i = 0; i < n; i++) {
      const row = L + k * n + i;
      const slopes = new Map<number, number>();
      const put = (at: number, v: number) => slopes.set(at, (slopes.get(at) ?? 0) + v);
      put((k + 1) * n + i, -1);
      put(k * n + i, 1);
      for (let j = 0; j < z; j++) {
        for (const p of places[j]) put(p.at, r.step[k] * p.share * r.slopes[(k * n + i) * z + j]);
      }
      for (const [at, v] of slopes) {
        add(row, at, v);
        add(at, row, v);
      }
      b[row] = right.defect[k * n + i];
    }
  }
  for (let c = 0; c < rows; c++) {
    for (let i = 0; i < n; i++) {
      for (const [at, v] of [
        [i, start[c * n + i]],
        [N * n + i, end[c * n + i]],
      ]) {
        add(E + c, at, v);
        add(at, E + c, v);
      }
    }
    b[E + c] = right.ends[c];
  }
  return { a, b, U, L, E, equations: N * n + rows };
}

/** A chain filled with numbers in turn; `convexity` on the diagonals. */
function chain(
  { states: n, controls: m, stages: N, across, atStart }: Sizes,
  v: readonly number[],
  convexity: number,
) {
  let next = 0;
  const number = () => v[next++ % v.length];
  const rows = across + atStart;
  const start = new Float64Array(rows * n).map(number);
  const end = new Float64Array(rows * n).map((_, i) => (i < across * n ? number() : 0));
  const r = new ChainRecursion(n, m, N, start, end);
  const z = n + m;
  const symmetric = (to: Float64Array, at: number, size: number, diagonal: number) => {
    for (let i = 0; i < size; i++) {
      for (let j = 0; j <= i; j++) {
        const value = 0.3 * number() + (i === j ? diagonal : 0);
        to[at + i * size + j] = value;
        to[at + j * size + i] = value;
      }
    }
  };
  for (let i = 0; i < r.slopes.length; i++) r.slopes[i] = number();
  for (let k = 0; k < N; k++) {
    r.step[k] = 0.3 + 0.2 * Math.abs(number());
    symmetric(r.middleHessian, k * z * z, z, convexity);
  }
  for (let k = 0; k <= N; k++) symmetric(r.nodeHessian, k * n * n, n, convexity);
  for (let i = 0; i < r.controlHessian.length; i++) r.controlHessian[i] = Math.abs(number());
  const right: ChainRightSide = {
    defect: new Float64Array(N * n).map(number),
    middle: new Float64Array(N * z).map(number),
    node: new Float64Array((N + 1) * n).map(number),
    control: new Float64Array(N * m).map(number),
    ends: new Float64Array(rows).map(number),
  };
  return { r, start, end, right };
}

function expectDense(r: ChainRecursion, start: Float64Array, end: Float64Array, right: ChainRightSide): void {
  const { a, b, U, L, E } = dense(r, start, end, right);
  const x = (lusolve(a, b) as number[][]).map(row => row[0]);
  const greatest = Math.max(1, ...x.map(Math.abs));
  const compare = (found: Float64Array, at: number, sign: number) => {
    for (let i = 0; i < found.length; i++)
      expect(Math.abs(found[i] - sign * x[at + i])).toBeLessThan(1e-6 * greatest);
  };
  compare(r.dx, 0, 1);
  compare(r.du, U, 1);
  compare(r.costate, L, 1);
  compare(r.endMultiplier, E, 1);
}

const sizes = fc.record({
  states: fc.integer({ min: 1, max: 5 }),
  controls: fc.integer({ min: 1, max: 3 }),
  stages: fc.integer({ min: 1, max: 4 }),
  across: fc.integer({ min: 0, max: 2 }),
  atStart: fc.integer({ min: 0, max: 2 }),
});
/** Numbers from −1 to 1 that never line up: Weyl's sequence of a seed. */
const numbers = fc
  .integer({ min: 1, max: 1_000_000 })
  .map(seed =>
    Array.from(
      { length: 211 },
      (_, i) => 2 * (((i + 1) * (Math.SQRT2 + seed * Math.E * 1e-3) * (i + 3)) % 1) - 1,
    ),
  );

describe('against the whole system solved densely', () => {
  test.each([
    ['convex', 1.5],
    ['indefinite', 0],
    ['concave', -1],
  ])('%s chains: steps, multipliers and the count of negative eigenvalues', (_, convexity) => {
    // Always the same cases: where a fold on the way is nearly singular, digits are lost that the whole keeps.
    fc.assert(
      fc.property(sizes, numbers, (size, v) => {
        // More conditions than the states can meet leave no step at all.
        fc.pre(size.atStart + size.across <= size.states);
        const { r, start, end, right } = chain(size, v, convexity);
        const { a, equations } = dense(r, start, end, right);
        const values = (eigs(a, { eigenvectors: false }).values as number[]).map(Number);
        fc.pre(Math.min(...values.map(Math.abs)) > 1e-2);
        expect(r.linearise()).toBe(true);
        expect(r.factor()).toBe(values.filter(value => value < 0).length - equations);
        r.solve(right);
        expectDense(r, start, end, right);
      }),
      { numRuns: 60, seed: 7 },
    );
  });
});

test('other Q, R and right sides need no new slopes', () => {
  const v = Array.from({ length: 211 }, (_, i) => Math.sin(3 * i + 1));
  const { r, start, end, right } = chain({ states: 4, controls: 2, stages: 5, across: 2, atStart: 1 }, v, 2);
  r.linearise();
  expect(r.factor()).toBe(0);
  r.solve(right);
  for (let i = 0; i < 4; i++) r.nodeHessian[i * 4 + i] += 3;
  r.controlHessian.fill(5);
  expect(r.factor()).toBe(0);
  const other = { ...right, defect: right.defect.map(x => 1 - x), ends: right.ends.map(x => 2 * x) };
  r.solve(other);
  expectDense(r, start, end, other);
});

test('a concave cost along what the conditions at the ends leave no room for is no obstacle', () => {
  // One state, one control, one stage: dx⁺ = dx + du; dx = 0 and dx⁺ = 0 leave du = 0.
  const fixed = new ChainRecursion(1, 1, 1, Float64Array.of(0, 1), Float64Array.of(1, 0));
  const open = new ChainRecursion(1, 1, 1, Float64Array.of(1), Float64Array.of(0));
  for (const r of [fixed, open]) {
    r.slopes.set([0, 1]);
    r.controlHessian[0] = -1;
    expect(r.linearise()).toBe(true);
  }
  expect(fixed.factor()).toBe(0);
  expect(open.factor()).toBe(1);
});

test('a stage too long to be solved for its end is refused', () => {
  const r = new ChainRecursion(1, 1, 1, Float64Array.of(1), Float64Array.of(0));
  r.step[0] = 2;
  r.slopes.set([1, 1]);
  expect(r.linearise()).toBe(false);
});

test('controls that nothing holds make the system singular', () => {
  const r = new ChainRecursion(1, 1, 2, Float64Array.of(1), Float64Array.of(0));
  r.slopes.set([0, 0, 0, 0]);
  r.linearise();
  expect(r.factor()).toBe(-1);
});

test('where a fold proves indefinite, stages may be changed on the way and folded again', () => {
  const v = Array.from({ length: 211 }, (_, i) => Math.sin(3 * i + 1));
  const { r, start, end, right } = chain({ states: 3, controls: 2, stages: 8, across: 1, atStart: 2 }, v, 2);
  for (const k of [2, 5]) for (let i = 0; i < 5; i++) r.middleHessian[(k * 5 + i) * 5 + i] -= 60;
  r.linearise();
  expect(r.factor()).not.toBe(0);
  const changed = new Set<number>();
  const negative = r.factor(stage => {
    const last = Math.min(7, stage + 2);
    for (let k = stage; k <= last; k++) {
      if (k !== 2 && k !== 5) continue;
      if (changed.has(k)) continue;
      changed.add(k);
      for (let i = 0; i < 5; i++) r.middleHessian[(k * 5 + i) * 5 + i] += 60;
    }
    return last;
  });
  expect(negative).toBe(0);
  expect([...changed].sort()).toEqual([2, 5]);
  r.solve(right);
  expectDense(r, start, end, right);
});
