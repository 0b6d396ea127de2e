import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Formula, Tape, type Term, type TwoArgumentFunction } from '../../../core/numeric/index.ts';

/** Everything a formula tells at a point. */
function everything(f: Formula, at: readonly number[], data: readonly number[], weights: readonly number[]) {
  const n = f.inputCount;
  const out = new Float64Array(f.outputCount);
  const jacobian = new Float64Array(f.outputCount * n);
  const hessian = new Float64Array(n * n);
  const dataGradient = new Float64Array(f.dataCount);
  const row = (values: Float64Array) => ({ values, at: 0, width: values.length });
  f.derivativesOf(0, f.outputCount, true).run(
    1,
    row(Float64Array.from(at)),
    row(Float64Array.from(data)),
    row(Float64Array.from(weights)),
    { out: row(out), jacobian: row(jacobian), hessian: row(hessian), dataGradient: row(dataGradient) },
  );
  return { out, jacobian, hessian, dataGradient };
}

function values(f: Formula, at: readonly number[], data: readonly number[]): Float64Array {
  const out = new Float64Array(f.outputCount);
  f.values(Float64Array.from(at), Float64Array.from(data), 0, out);
  return out;
}

/** Moved in one place. */
const moved = (x: readonly number[], i: number, by: number) => x.map((v, k) => (k === i ? v + by : v));

/** Checks slopes against differences of values, the Hessian against differences of slopes. */
function checkByDifferences(
  f: Formula,
  at: readonly number[],
  data: readonly number[],
  weights: readonly number[],
) {
  const n = f.inputCount;
  const { out, jacobian, hessian, dataGradient } = everything(f, at, data, weights);
  const plain = values(f, at, data);
  for (let k = 0; k < out.length; k++) expect(out[k]).toBeCloseTo(plain[k], 12);
  const h = 1e-5;
  const near = (found: number, wanted: number) =>
    expect(Math.abs(found - wanted)).toBeLessThan(2e-6 * Math.max(1, Math.abs(wanted), Math.abs(found)));
  const gradient = (point: readonly number[]) => {
    const { jacobian: j } = everything(f, point, data, weights);
    return Array.from({ length: n }, (_, c) => weights.reduce((sum, w, k) => sum + w * j[k * n + c], 0));
  };
  for (let i = 0; i < n; i++) {
    const up = values(f, moved(at, i, h), data);
    const down = values(f, moved(at, i, -h), data);
    for (let k = 0; k < out.length; k++) near(jacobian[k * n + i], (up[k] - down[k]) / (2 * h));
    const above = gradient(moved(at, i, h));
    const below = gradient(moved(at, i, -h));
    for (let j = 0; j < n; j++) {
      near(hessian[i * n + j], (above[j] - below[j]) / (2 * h));
      expect(hessian[i * n + j]).toBe(hessian[j * n + i]);
    }
  }
  for (let i = 0; i < f.dataCount; i++) {
    const total = (d: readonly number[]) => values(f, at, d).reduce((sum, v, k) => sum + v * weights[k], 0);
    near(dataGradient[i], (total(moved(data, i, h)) - total(moved(data, i, -h))) / (2 * h));
  }
}

/** sin(a) e^b with its slopes: a function the tape does not know. */
const wave: TwoArgumentFunction = (a, b, out) => {
  const e = Math.exp(b);
  out[0] = Math.sin(a) * e;
  out[1] = Math.cos(a) * e;
  out[2] = out[0];
  out[3] = -out[0];
  out[4] = out[1];
  out[5] = out[0];
};

type Unary = 'scale' | 'shift' | 'sine' | 'cosine' | 'tanh' | 'squareRoot' | 'square' | 'reciprocal';
type Binary = 'add' | 'subtract' | 'multiply' | 'divide' | 'external';
const UNARY: readonly Unary[] = [
  'scale',
  'shift',
  'sine',
  'cosine',
  'tanh',
  'squareRoot',
  'square',
  'reciprocal',
];
const BINARY: readonly Binary[] = ['add', 'subtract', 'multiply', 'divide', 'external'];

function apply(t: Tape, name: Unary | Binary, a: Term, b: Term): Term {
  switch (name) {
    case 'scale':
      return t.scale(a, -1.7);
    case 'shift':
      return t.shift(a, 0.6);
    case 'external':
      // Kept small, or e^b grows beyond what differences can tell.
      return t.external(wave, t.tanh(a), t.tanh(b));
    case 'divide':
      return t.divide(a, t.shift(t.square(b), 0.5));
    case 'reciprocal':
      return t.reciprocal(t.shift(t.square(a), 0.5));
    case 'squareRoot':
      return t.squareRoot(t.shift(t.square(a), 0.5));
    case 'square':
      return t.square(t.tanh(a));
    case 'multiply':
      return t.multiply(t.tanh(a), b);
    case 'add':
    case 'subtract':
      return t[name](a, b);
    default:
      return t[name](a);
  }
}

describe('derivatives of every operation are those of differences', () => {
  const at = [0.7, 1.3];
  test.each(
    UNARY.filter(name => name !== 'scale' && name !== 'shift') as Exclude<Unary, 'scale' | 'shift'>[],
  )('%s of an input, of a product, of a datum', name => {
    const t = new Tape();
    const [x, y] = [t.input(), t.input()];
    const d = t.datum();
    checkByDifferences(
      t.compile([t[name](x), t[name](t.multiply(x, y)), t.multiply(t[name](d), y)]),
      at,
      [0.4],
      [1, -0.3, 2],
    );
  });
  test('factor and summand', () => {
    const t = new Tape();
    const [x, y] = [t.input(), t.input()];
    checkByDifferences(t.compile([t.square(t.scale(x, -3)), t.square(t.shift(y, 2))]), at, [], [1, 1]);
  });
  test.each(['add', 'subtract', 'multiply', 'divide'] as const)(
    '%s of two inputs, of one and itself, with a datum on either side',
    name => {
      const t = new Tape();
      const [x, y] = [t.input(), t.input()];
      const d = t.datum();
      const terms = [t[name](x, y), t[name](x, t.square(x)), t[name](x, x), t[name](d, y), t[name](y, d)];
      checkByDifferences(t.compile(terms.map(term => t.square(term))), at, [0.8], [1, 0.5, 2, -1, 0.3]);
    },
  );
  test('an outside function, of both, of one and a datum, of the same twice', () => {
    const t = new Tape();
    const [x, y] = [t.input(), t.input()];
    const d = t.datum();
    checkByDifferences(
      t.compile([
        t.external(wave, x, y),
        t.external(wave, d, y),
        t.external(wave, x, d),
        t.external(wave, y, y),
      ]),
      at,
      [0.3],
      [1, -2, 0.7, 0.4],
    );
  });
});

test('sums and products of several terms', () => {
  const t = new Tape();
  const inputs = [t.input(), t.input(), t.input(), t.input()] as const;
  const f = t.compile([t.add(...inputs), t.multiply(...inputs)]);
  const { out, jacobian, hessian } = everything(f, [2, 3, 5, 7], [], [0, 1]);
  expect(Array.from(out)).toEqual([17, 210]);
  expect(Array.from(jacobian)).toEqual([1, 1, 1, 1, 105, 70, 42, 30]);
  expect(hessian[1]).toBe(35);
  expect(hessian[2 * 4 + 3]).toBe(6);
  expect(hessian[0]).toBe(0);
});

test('random formulas: slopes, Hessians and gradients to the data are those of differences', () => {
  const step = fc.tuple(fc.constantFrom(...UNARY, ...BINARY), fc.nat(40), fc.nat(40));
  const number = fc.double({ min: -1.5, max: 1.5, noNaN: true });
  fc.assert(
    fc.property(
      fc.array(step, { minLength: 1, maxLength: 14 }),
      fc.tuple(number, number, number),
      fc.tuple(number, number),
      fc.tuple(number, number, number),
      (steps, at, data, weights) => {
        const t = new Tape();
        const terms = [t.input(), t.datum(), t.input(), t.constant(0.9), t.datum(), t.input()];
        for (const [name, a, b] of steps) {
          terms.push(apply(t, name, terms[a % terms.length], terms[b % terms.length]));
        }
        checkByDifferences(t.compile(terms.slice(-3)), at, data, weights);
      },
    ),
    { numRuns: 150 },
  );
});

test('an output may be an input, a datum or a constant, or stand twice', () => {
  const t = new Tape();
  const x = t.input();
  const d = t.datum();
  const product = t.multiply(x, d);
  const f = t.compile([x, d, t.constant(4), product, product]);
  const { out, jacobian, dataGradient } = everything(f, [3], [5], [1, 1, 1, 1, 1]);
  expect(Array.from(out)).toEqual([3, 5, 4, 15, 15]);
  expect(Array.from(jacobian)).toEqual([1, 0, 0, 5, 5]);
  expect(dataGradient[0]).toBe(1 + 2 * 3);
});

test('data are read from where they begin, and one evaluation leaves nothing behind for the next', () => {
  const t = new Tape();
  const x = t.input();
  const f = t.compile([t.multiply(t.square(x), t.datum())]);
  const out = new Float64Array(1);
  const jacobian = new Float64Array(1);
  const hessian = new Float64Array(1);
  const data = Float64Array.of(2, 3, 5);
  for (const [at, wanted] of [
    [2, 5],
    [0, 2],
    [1, 3],
  ]) {
    const one = (values: Float64Array, first = 0) => ({ values, at: first, width: 1 });
    const sinks = { out: one(out), jacobian: one(jacobian), hessian: one(hessian) };
    f.derivativesOf(0, 1).run(1, one(Float64Array.of(1.5)), one(data, at), one(Float64Array.of(1)), sinks);
    expect([out[0], jacobian[0], hessian[0]]).toEqual([2.25 * wanted, 3 * wanted, 2 * wanted]);
  }
});

test('what a tape records after it is closed does not change the formula', () => {
  const t = new Tape();
  const x = t.input();
  const f = t.compile([t.square(x)]);
  t.compile([t.multiply(x, t.input())]);
  expect(f.inputCount).toBe(1);
  expect(values(f, [3], [])[0]).toBe(9);
});

test('many points at once are those points one by one, a row each', () => {
  const t = new Tape();
  const [x, y] = [t.input(), t.input()];
  const d = t.datum();
  const f = t.compile([
    t.divide(t.sine(x), t.shift(t.square(y), 1)),
    t.multiply(d, t.external(wave, x, t.tanh(y))),
    t.subtract(t.multiply(x, y), d),
  ]);
  // More than fit at once, and not a multiple of it.
  const count = 71;
  const inputs = Float64Array.from({ length: 2 * count }, (_, i) => Math.sin(3 * i));
  const data = Float64Array.from({ length: count }, (_, i) => Math.cos(i));
  const weights = Float64Array.from({ length: 3 * count }, (_, i) => Math.cos(5 * i));
  const rows = (values: Float64Array) => ({ values, at: 0, width: values.length / count });
  const [out, jacobian, hessian, plain] = [3, 6, 4, 3].map(width => new Float64Array(width * count));
  f.valuesOver(count, rows(inputs), rows(data), rows(plain));
  f.derivativesOf(0, 3).run(count, rows(inputs), rows(data), rows(weights), {
    out: rows(out),
    jacobian: rows(jacobian),
    hessian: rows(hessian),
  });
  for (let k = 0; k < count; k++) {
    const at = Array.from(inputs.subarray(2 * k, 2 * k + 2));
    const own = everything(f, at, [data[k]], Array.from(weights.subarray(3 * k, 3 * k + 3)));
    expect(out.slice(3 * k, 3 * k + 3)).toEqual(own.out);
    expect(jacobian.slice(6 * k, 6 * k + 6)).toEqual(own.jacobian);
    expect(hessian.slice(4 * k, 4 * k + 4)).toEqual(own.hessian);
    expect(plain.slice(3 * k, 3 * k + 3)).toEqual(values(f, at, [data[k]]));
  }
});
