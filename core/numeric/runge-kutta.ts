/**
 * Adaptive Runge-Kutta of order 5(4) with dense output of order 4 and location of events.
 * J. R. Dormand, P. J. Prince, J. Comput. Appl. Math. 6 (1980) 19-26; dense output and step control after
 * E. Hairer, S. P. Nørsett, G. Wanner, Solving Ordinary Differential Equations I, II.4-II.6 (both from memory;
 * the tests establish the orders).
 */

import { brent } from './root.ts';

/** Writes dy/dt at (t, y) into `out`. Must not keep or change `y`. */
export type Derivative = (t: number, y: Float64Array, out: Float64Array) => void;

export interface StepControl {
  /** Error allowed relative to each component. */
  readonly relative?: number;
  /** Error allowed in each component, one value or one a component. */
  readonly absolute?: number | Float64Array;
  readonly maxStep?: number;
  readonly firstStep?: number;
  /** Takes every step at `firstStep` without judging the error; for studies of order. */
  readonly fixed?: boolean;
}

const C = [0, 1 / 5, 3 / 10, 4 / 5, 8 / 9, 1, 1];
const A21 = 1 / 5;
const A31 = 3 / 40;
const A32 = 9 / 40;
const A41 = 44 / 45;
const A42 = -56 / 15;
const A43 = 32 / 9;
const A51 = 19372 / 6561;
const A52 = -25360 / 2187;
const A53 = 64448 / 6561;
const A54 = -212 / 729;
const A61 = 9017 / 3168;
const A62 = -355 / 33;
const A63 = 46732 / 5247;
const A64 = 49 / 176;
const A65 = -5103 / 18656;
const B1 = 35 / 384;
const B3 = 500 / 1113;
const B4 = 125 / 192;
const B5 = -2187 / 6784;
const B6 = 11 / 84;
const E1 = 71 / 57600;
const E3 = -71 / 16695;
const E4 = 71 / 1920;
const E5 = -17253 / 339200;
const E6 = 22 / 525;
const E7 = -1 / 40;
const D1 = -12715105075 / 11282082432;
const D3 = 87487479700 / 32700410799;
const D4 = -10690763975 / 1880347072;
const D5 = 701980252875 / 199316789632;
const D6 = -1453857185 / 822651844;
const D7 = 69997945 / 29380423;

/** One solution carried forward a step at a time. Between `tOld` and `t` it can be read anywhere. */
export class DormandPrince {
  t = 0;
  tOld = 0;
  readonly y: Float64Array;
  /** Evaluations of the derivative so far. */
  evaluations = 0;
  private h: number;
  private readonly k: Float64Array[];
  private readonly stage: Float64Array;
  private readonly next: Float64Array;
  private readonly dense: Float64Array[];
  private readonly relative: number;
  private readonly absolute: Float64Array;
  private readonly maxStep: number;
  private readonly fixed: boolean;

  constructor(
    private readonly f: Derivative,
    private readonly size: number,
    control: StepControl = {},
  ) {
    const make = () => new Float64Array(size);
    this.y = make();
    this.stage = make();
    this.next = make();
    this.k = Array.from({ length: 7 }, make);
    this.dense = Array.from({ length: 5 }, make);
    this.relative = control.relative ?? 1e-8;
    this.maxStep = control.maxStep ?? Infinity;
    this.h = control.firstStep ?? 0;
    this.fixed = control.fixed ?? false;
    if (this.fixed && !(this.h > 0)) {
      throw new RangeError(`firstStep: ${this.h}; a fixed step needs a positive firstStep`);
    }
    const absolute = control.absolute ?? 1e-9;
    this.absolute = typeof absolute === 'number' ? new Float64Array(size).fill(absolute) : absolute;
  }

  /** Begins (or begins again, after a jump in the right-hand side) at (t, y). */
  start(t: number, y: ArrayLike<number>): void {
    this.t = t;
    this.tOld = t;
    this.y.set(y);
    this.evaluate(t, this.y, this.k[0]);
    this.dense[0].set(this.y);
    for (let j = 1; j < 5; j++) this.dense[j].fill(0);
    if (this.h === 0) this.h = this.guessStep();
  }

  /**
   * Takes one step, not past `tEnd`.
   *
   * @throws RangeError when the step has to shrink below what the clock can resolve
   */
  step(tEnd: number): void {
    const { k, y, next, stage, size: n } = this;
    const [k1, k2, k3, k4, k5, k6, k7] = k;
    for (;;) {
      let h = Math.min(this.h, this.maxStep);
      let cut = false;
      if (this.t + 1.0001 * h >= tEnd) {
        h = tEnd - this.t;
        cut = true;
      }
      if (!(h > 4 * Number.EPSILON * Math.abs(this.t) || cut)) {
        throw new RangeError(`step: ${h} s at t = ${this.t} s; the equations cannot be followed further`);
      }
      for (let i = 0; i < n; i++) stage[i] = y[i] + h * A21 * k1[i];
      this.evaluate(this.t + C[1] * h, stage, k2);
      for (let i = 0; i < n; i++) stage[i] = y[i] + h * (A31 * k1[i] + A32 * k2[i]);
      this.evaluate(this.t + C[2] * h, stage, k3);
      for (let i = 0; i < n; i++) stage[i] = y[i] + h * (A41 * k1[i] + A42 * k2[i] + A43 * k3[i]);
      this.evaluate(this.t + C[3] * h, stage, k4);
      for (let i = 0; i < n; i++)
        stage[i] = y[i] + h * (A51 * k1[i] + A52 * k2[i] + A53 * k3[i] + A54 * k4[i]);
      this.evaluate(this.t + C[4] * h, stage, k5);
      for (let i = 0; i < n; i++) {
        stage[i] = y[i] + h * (A61 * k1[i] + A62 * k2[i] + A63 * k3[i] + A64 * k4[i] + A65 * k5[i]);
      }
      this.evaluate(this.t + h, stage, k6);
      for (let i = 0; i < n; i++) {
        next[i] = y[i] + h * (B1 * k1[i] + B3 * k3[i] + B4 * k4[i] + B5 * k5[i] + B6 * k6[i]);
      }
      this.evaluate(this.t + h, next, k7);
      let error = 0;
      for (let i = 0; i < n; i++) {
        const e = h * (E1 * k1[i] + E3 * k3[i] + E4 * k4[i] + E5 * k5[i] + E6 * k6[i] + E7 * k7[i]);
        const scale = this.absolute[i] + this.relative * Math.max(Math.abs(y[i]), Math.abs(next[i]));
        error += (e / scale) * (e / scale);
      }
      error = Math.sqrt(error / n);
      if (Number.isNaN(error)) error = 1e6;
      const growth = Math.min(5, Math.max(0.2, 0.9 * (error === 0 ? 1e6 : error ** -0.2)));
      if (!this.fixed && error > 1) {
        this.h = h * Math.min(growth, 0.9);
        continue;
      }
      this.keepDense(h);
      this.tOld = this.t;
      this.t = cut ? tEnd : this.t + h;
      y.set(next);
      k1.set(k7);
      // A step cut short by tEnd says nothing against the longer step that was planned.
      if (!this.fixed) this.h = cut ? Math.max(this.h, h * growth) : h * growth;
      return;
    }
  }

  /** The solution at `t` between `tOld` and `this.t`, written into `out`. */
  at(t: number, out: Float64Array): void {
    const span = this.t - this.tOld;
    const s = span === 0 ? 0 : (t - this.tOld) / span;
    const r = 1 - s;
    const [d0, d1, d2, d3, d4] = this.dense;
    for (let i = 0; i < this.size; i++) {
      out[i] = d0[i] + s * (d1[i] + r * (d2[i] + s * (d3[i] + r * d4[i])));
    }
  }

  /**
   * The instant in the last step at which `g` changes sign, given its values at the two ends.
   * `g` sees the dense solution; `scratch` holds it on return.
   */
  locate(
    g: (t: number, y: Float64Array) => number,
    gOld: number,
    gNew: number,
    scratch: Float64Array,
    tolerance = 1e-10,
  ): number {
    const value = (t: number) => {
      this.at(t, scratch);
      return g(t, scratch);
    };
    const t = brent(value, this.tOld, this.t, tolerance, gOld, gNew);
    this.at(t, scratch);
    return t;
  }

  private evaluate(t: number, y: Float64Array, out: Float64Array): void {
    this.evaluations++;
    this.f(t, y, out);
  }

  private keepDense(h: number): void {
    const [k1, , k3, k4, k5, k6, k7] = this.k;
    const [d0, d1, d2, d3, d4] = this.dense;
    for (let i = 0; i < this.size; i++) {
      const dy = this.next[i] - this.y[i];
      const b = h * k1[i] - dy;
      d0[i] = this.y[i];
      d1[i] = dy;
      d2[i] = b;
      d3[i] = dy - h * k7[i] - b;
      d4[i] = h * (D1 * k1[i] + D3 * k3[i] + D4 * k4[i] + D5 * k5[i] + D6 * k6[i] + D7 * k7[i]);
    }
  }

  private guessStep(): number {
    let y = 0;
    let f = 0;
    for (let i = 0; i < this.size; i++) {
      const scale = this.absolute[i] + this.relative * Math.abs(this.y[i]);
      y += (this.y[i] / scale) ** 2;
      f += (this.k[0][i] / scale) ** 2;
    }
    return Math.min(this.maxStep, y > 0 && f > 0 ? 0.01 * Math.sqrt(y / f) : 1e-4);
  }
}
