/** Evenly spaced nodes: `first`, `first + step`, …, `count` of them, four or more. */
export interface EvenAxis {
  readonly first: number;
  readonly step: number;
  readonly count: number;
}

/**
 * Tensor-product cubic B-spline on two even axes, twice continuously differentiable everywhere. `coefficients` is
 * row-major [u][w], one a node; the surface is theirs from the second node of each axis to the last but one. Outside it
 * stands at its border: without a break where the last three coefficients towards that border are equal.
 */
export class BicubicSpline {
  readonly #u: EvenAxis;
  readonly #w: EvenAxis;
  readonly #coefficients: Float64Array;
  readonly #alongU = new Float64Array(12);
  readonly #alongW = new Float64Array(12);
  #row = 0;
  #column = 0;

  /** @throws RangeError for an axis of fewer than four nodes or a wrong number of coefficients */
  constructor(u: EvenAxis, w: EvenAxis, coefficients: Float64Array) {
    if (u.count < 4 || w.count < 4 || !(u.step > 0) || !(w.step > 0)) {
      throw new RangeError(
        `axes: ${u.count} and ${w.count} nodes ${u.step} and ${w.step} apart found; four or more nodes, ascending, are accepted`,
      );
    }
    if (coefficients.length !== u.count * w.count) {
      throw new RangeError(
        `coefficients: ${coefficients.length} found; ${u.count} × ${w.count} are accepted, one a node`,
      );
    }
    this.#u = u;
    this.#w = w;
    this.#coefficients = coefficients;
  }

  /** Writes [s, s_u, s_w, s_uu, s_uw, s_ww] at a point. */
  evaluate(u: number, w: number, out: Float64Array): void {
    this.#row = basis(this.#u, u, this.#alongU);
    this.#column = basis(this.#w, w, this.#alongW);
    const b = this.#alongW;
    const a = this.#alongU;
    const c = this.#coefficients;
    const width = this.#w.count;
    let s = 0;
    let su = 0;
    let sw = 0;
    let suu = 0;
    let suw = 0;
    let sww = 0;
    let at = this.#row * width + this.#column;
    for (let i = 0; i < 4; i++) {
      const c0 = c[at];
      const c1 = c[at + 1];
      const c2 = c[at + 2];
      const c3 = c[at + 3];
      at += width;
      const value = b[0] * c0 + b[1] * c1 + b[2] * c2 + b[3] * c3;
      const slope = b[4] * c0 + b[5] * c1 + b[6] * c2 + b[7] * c3;
      s += a[i] * value;
      su += a[i + 4] * value;
      suu += a[i + 8] * value;
      sw += a[i] * slope;
      suw += a[i + 4] * slope;
      sww += a[i] * (b[8] * c0 + b[9] * c1 + b[10] * c2 + b[11] * c3);
    }
    out[0] = s;
    out[1] = su;
    out[2] = sw;
    out[3] = suu;
    out[4] = suw;
    out[5] = sww;
  }
}

/** The four basis functions at x, their slopes and second derivatives; returns the first one's node. */
function basis({ first, step, count }: EvenAxis, x: number, out: Float64Array): number {
  const most = count - 3;
  const place = Math.min(Math.max((x - first) / step - 1, 0), most);
  const cell = Math.min(Math.floor(place), most - 1);
  const t = place - cell;
  const r = 1 - t;
  out[0] = (r * r * r) / 6;
  out[1] = 2 / 3 - t * t * (1 - t / 2);
  out[2] = 2 / 3 - r * r * (1 - r / 2);
  out[3] = (t * t * t) / 6;
  out[4] = (-r * r) / (2 * step);
  out[5] = (t * (1.5 * t - 2)) / step;
  out[6] = (r * (2 - 1.5 * r)) / step;
  out[7] = (t * t) / (2 * step);
  const curve = 1 / (step * step);
  out[8] = r * curve;
  out[9] = (3 * t - 2) * curve;
  out[10] = (3 * r - 2) * curve;
  out[11] = t * curve;
  return cell;
}

/**
 * Coefficients of the cubic B-spline that follows values at the nodes of an even grid: along each axis
 * (−1, 8, −1)/6, which reproduces cubics and errs by the fourth power of the step (de Boor & Fix, Spline
 * approximation by quasiinterpolants, J. Approx. Theory 8 (1973) 19–45, from memory). It reaches one node only, so
 * that a break stays where it is. `limit` bounds what it takes a coefficient away from its value along each axis,
 * as a share of the value: the spline of the values themselves is a mean of them and cannot overshoot, so with a
 * limit it overshoots by no more than about twice that share. `share`, one a node from 0 to 1, is taken of the correction
 * (absent: all of it). Border nodes are left as they are.
 */
export function followingCoefficients(
  values: Float64Array,
  columns: number,
  limit: number,
  share?: Float64Array,
): Float64Array {
  const rows = values.length / columns;
  const alongU = Float64Array.from(values);
  const follow = (from: Float64Array, to: Float64Array, at: number, stride: number) => {
    const bend = (from[at - stride] - 2 * from[at] + from[at + stride]) / 6;
    const most = limit * Math.abs(from[at]);
    to[at] = from[at] - (share ? share[at] : 1) * Math.min(Math.max(bend, -most), most);
  };
  for (let at = columns; at < (rows - 1) * columns; at++) follow(values, alongU, at, columns);
  const both = Float64Array.from(alongU);
  for (let i = 0; i < rows; i++) {
    for (let j = 1; j + 1 < columns; j++) follow(alongU, both, i * columns + j, 1);
  }
  return both;
}

/**
 * Calms the values of a grid where `share` (one a node, 0 to 1) says: `passes` times each value moves by that share
 * towards the mean (1, 2, 1)/4 of its neighbours along each axis; the border's neighbour beyond is itself. Every new
 * value is a mean of old ones, so nothing overshoots; a break spreads over about √(passes/2) nodes to either side.
 */
export function calmValues(
  values: Float64Array,
  columns: number,
  share: Float64Array,
  passes: number,
): Float64Array {
  const rows = values.length / columns;
  let now = Float64Array.from(values);
  for (let pass = 0; pass < passes; pass++) {
    for (const byRow of [true, false]) {
      const next = Float64Array.from(now);
      for (let at = 0; at < now.length; at++) {
        if (!(share[at] > 0)) continue;
        const line = byRow ? Math.floor(at / columns) : at % columns;
        const stride = byRow ? columns : 1;
        const before = line > 0 ? now[at - stride] : now[at];
        const after = line + 1 < (byRow ? rows : columns) ? now[at + stride] : now[at];
        next[at] = now[at] + (share[at] * (before - 2 * now[at] + after)) / 4;
      }
      now = next;
    }
  }
  return now;
}
