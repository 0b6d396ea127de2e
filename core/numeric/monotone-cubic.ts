import { pieceAt } from './piece.ts';

/**
 * Monotone piecewise cubic through (xs, ys), held constant outside the first and last station.
 * Never overshoots: between two stations the value stays between theirs, so positive data stay positive.
 * Source: Fritsch & Carlson, Monotone piecewise cubic interpolation, SIAM J. Numer. Anal. 17 (1980) 238.
 *
 * `xs` strictly ascending and finite, one or more; `ys` of the same count. Throws RangeError otherwise.
 */
export function monotoneCubic(xs: ArrayLike<number>, ys: ArrayLike<number>): (x: number) => number {
  const n = xs.length;
  if (n < 1) throw new RangeError('stations: none found; one or more are accepted');
  if (ys.length !== n)
    throw new RangeError(`values: ${ys.length} found for ${n} stations; counts must agree`);
  for (let i = 0; i < n; i++) {
    if (!Number.isFinite(xs[i]) || !Number.isFinite(ys[i])) {
      throw new RangeError(`station ${i + 1}: (${xs[i]}, ${ys[i]}) found; finite numbers are accepted`);
    }
    if (i > 0 && !(xs[i] > xs[i - 1])) {
      throw new RangeError(`station ${i + 1}: ${xs[i]} found after ${xs[i - 1]}; stations must ascend`);
    }
  }
  const x = Float64Array.from(xs);
  const y = Float64Array.from(ys);
  const m = monotoneSlopes(x, y);
  const last = n - 1;
  let hint = 0;
  return at => {
    if (!(at > x[0])) return y[0];
    if (at >= x[last]) return y[last];
    let k = hint;
    if (at < x[k] || at >= x[k + 1]) {
      k = pieceAt(x, at);
      hint = k;
    }
    const h = x[k + 1] - x[k];
    const t = (at - x[k]) / h;
    const u = 1 - t;
    return u * u * ((1 + 2 * t) * y[k] + t * h * m[k]) + t * t * ((3 - 2 * t) * y[k + 1] - u * h * m[k + 1]);
  };
}

/** Node slopes limited to the circle of radius 3, Fritsch and Carlson's sufficient region. */
function monotoneSlopes(x: Float64Array, y: Float64Array): Float64Array {
  const n = x.length;
  const m = new Float64Array(n);
  if (n < 2) return m;
  const secant = new Float64Array(n - 1);
  for (let k = 0; k < n - 1; k++) secant[k] = (y[k + 1] - y[k]) / (x[k + 1] - x[k]);
  m[0] = secant[0];
  m[n - 1] = secant[n - 2];
  for (let k = 1; k < n - 1; k++) {
    m[k] = secant[k - 1] * secant[k] <= 0 ? 0 : (secant[k - 1] + secant[k]) / 2;
  }
  for (let k = 0; k < n - 1; k++) {
    if (secant[k] === 0) {
      m[k] = 0;
      m[k + 1] = 0;
      continue;
    }
    const a = m[k] / secant[k];
    const b = m[k + 1] / secant[k];
    const size = Math.hypot(a, b);
    if (size > 3) {
      m[k] = (3 * a * secant[k]) / size;
      m[k + 1] = (3 * b * secant[k]) / size;
    }
  }
  return m;
}
