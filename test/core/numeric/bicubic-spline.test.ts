import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  BicubicSpline,
  calmValues,
  type EvenAxis,
  followingCoefficients,
} from '../../../core/numeric/index.ts';

const u: EvenAxis = { first: -0.4, step: 0.2, count: 12 };
const w: EvenAxis = { first: 3, step: 0.5, count: 9 };
const node = ({ first, step }: EvenAxis, i: number) => first + i * step;
const onGrid = (f: (x: number, y: number) => number) =>
  Float64Array.from({ length: u.count * w.count }, (_, k) =>
    f(node(u, Math.floor(k / w.count)), node(w, k % w.count)),
  );
const following = (values: Float64Array, limit = Number.POSITIVE_INFINITY) =>
  new BicubicSpline(u, w, followingCoefficients(values, w.count, limit));

describe('bicubic spline', () => {
  it('reproduces a product of cubics with its derivatives, to rounding', () => {
    const p = (x: number) => 1 + x - 2 * x ** 2 + 0.7 * x ** 3;
    const q = (y: number) => 2 - y + 0.3 * y ** 2 - 0.05 * y ** 3;
    const p1 = (x: number) => 1 - 4 * x + 2.1 * x ** 2;
    const q1 = (y: number) => -1 + 0.6 * y - 0.15 * y ** 2;
    const spline = following(onGrid((x, y) => p(x) * q(y)));
    const out = new Float64Array(6);
    // Two nodes from the border on, where every coefficient in reach is a followed one.
    for (const x of [0, 0.13, 0.6, 1, 1.399]) {
      for (const y of [4, 4.3, 5.5, 5.99]) {
        spline.evaluate(x, y, out);
        const exact = [
          p(x) * q(y),
          p1(x) * q(y),
          p(x) * q1(y),
          (4.2 * x - 4) * q(y),
          p1(x) * q1(y),
          p(x) * (0.6 - 0.3 * y),
        ];
        exact.forEach((value, k) => {
          expect(out[k]).toBeCloseTo(value, 10);
        });
      }
    }
  });

  it('errs by the fourth power of the step', () => {
    const miss = (parts: number) => {
      const axis: EvenAxis = { first: 0, step: 1 / parts, count: parts + 1 };
      const values = Float64Array.from(
        { length: axis.count ** 2 },
        (_, k) => Math.sin(3 * node(axis, Math.floor(k / axis.count))) * Math.exp(node(axis, k % axis.count)),
      );
      const spline = new BicubicSpline(axis, axis, followingCoefficients(values, axis.count, 1e9));
      const out = new Float64Array(6);
      let most = 0;
      for (let x = 0.3; x < 0.7; x += 0.017) {
        spline.evaluate(x, 1 - x, out);
        most = Math.max(most, Math.abs(out[0] - Math.sin(3 * x) * Math.exp(1 - x)));
      }
      return most;
    };
    const order = Math.log2(miss(12) / miss(24));
    expect(order).toBeGreaterThan(3.7);
    expect(order).toBeLessThan(4.3);
  });

  it('value, slopes and second derivatives pass every node without a break, whatever the coefficients', () => {
    const random = fc.sample(fc.array(fc.double({ min: -1, max: 1, noNaN: true }), numbers()), {
      seed: 5,
      numRuns: 1,
    })[0];
    const spline = new BicubicSpline(u, w, Float64Array.from(random));
    const before = new Float64Array(6);
    const after = new Float64Array(6);
    const tiny = 1e-9;
    const same = () => {
      before.forEach((value, k) => {
        // The third derivative times twice the distance is all that may lie between.
        expect(Math.abs(after[k] - value)).toBeLessThan(2 * tiny * (10 / 0.2 ** 3));
      });
    };
    for (let i = 2; i < u.count - 2; i++) {
      for (let j = 2; j < w.count - 2; j++) {
        spline.evaluate(node(u, i) - tiny, node(w, j) - 0.2, before);
        spline.evaluate(node(u, i) + tiny, node(w, j) - 0.2, after);
        same();
        spline.evaluate(node(u, i) - 0.1, node(w, j) - tiny, before);
        spline.evaluate(node(u, i) - 0.1, node(w, j) + tiny, after);
        same();
      }
    }
  });

  it('overshoots a step by no more than twice its limit, and of a step that is calmed not at all', () => {
    const step = onGrid((x, y) => (x + 0.3 * (y - 5) > 0.7 ? 1.6 : 1));
    const limited = following(step, 0.01);
    const calmed = new BicubicSpline(
      u,
      w,
      calmValues(step, w.count, new Float64Array(step.length).fill(1), 4),
    );
    const free = following(step);
    const reach = (spline: BicubicSpline) => {
      const out = new Float64Array(6);
      let least = Number.POSITIVE_INFINITY;
      let most = 0;
      for (let x = -0.2; x <= 1.6; x += 0.03) {
        for (let y = 3.5; y <= 6.5; y += 0.07) {
          spline.evaluate(x, y, out);
          least = Math.min(least, out[0]);
          most = Math.max(most, out[0]);
        }
      }
      return [least, most];
    };
    expect(reach(free)[1]).toBeGreaterThan(1.6 * 1.02);
    expect(reach(limited)[0]).toBeGreaterThan(0.98);
    expect(reach(limited)[1]).toBeLessThan(1.6 * 1.02);
    expect(reach(calmed)[0]).toBeGreaterThanOrEqual(1 - 1e-12);
    expect(reach(calmed)[1]).toBeLessThanOrEqual(1.6 + 1e-12);
  });

  it('calms only where it is told to', () => {
    const step = onGrid(x => (x > 0.7 ? 2 : 1));
    const share = new Float64Array(step.length);
    expect(calmValues(step, w.count, share, 3)).toEqual(step);
    share[5 * w.count + 4] = 1;
    const calmed = calmValues(step, w.count, share, 1);
    const changed = [...calmed.keys()].filter(k => calmed[k] !== step[k]);
    expect(changed).toEqual([5 * w.count + 4]);
    // A quarter of the way to 2 along u, then half of that back along w, whose neighbours stayed at 1.
    expect(calmed[5 * w.count + 4]).toBeCloseTo(1.125, 12);
  });

  it('stands at its border outside, without a break where the last three coefficients are equal', () => {
    const spline = new BicubicSpline(
      u,
      w,
      onGrid(x => Math.min(x, node(u, u.count - 3))),
    );
    const out = new Float64Array(6);
    spline.evaluate(99, 4.2, out);
    expect(out[0]).toBeCloseTo(node(u, u.count - 3), 12);
    for (const derivative of out.subarray(1)) expect(derivative).toBeCloseTo(0, 12);
  });

  it('says what is wrong with its input', () => {
    expect(() => new BicubicSpline({ ...u, count: 3 }, w, new Float64Array(27))).toThrow(/3 and 9 nodes/);
    expect(() => new BicubicSpline(u, w, new Float64Array(7))).toThrow(/coefficients: 7 found; 12 × 9/);
  });
});

function numbers() {
  return { minLength: u.count * w.count, maxLength: u.count * w.count };
}
