import { pieceAt } from './piece.ts';
import { brent } from './root.ts';
import { factorSymmetric, type SymmetricBand, solveSymmetric, symmetricBand } from './symmetric-band.ts';

/** A natural cubic spline: value and derivatives anywhere, straight on beyond the first and last knot. */
export interface CubicSpline {
  value(x: number): number;
  slope(x: number): number;
  curvature(x: number): number;
  /** Root mean square distance to the data. */
  readonly residual: number;
}

/** Penalties tried, as powers of ten of one over the span: all but through every value, and all but straight. */
const LOOSEST = -16;
const STIFFEST = 10;

/**
 * The smoothest natural cubic spline whose root mean square distance to the data is `tolerance` (the
 * discrepancy principle); the straight line of least squares when that already lies within it.
 * `x` must ascend strictly and hold three values or more; `tolerance` 0 interpolates.
 * Source: Reinsch, Smoothing by spline functions, Numer. Math. 10 (1967) 177–183 (from memory).
 */
export function smoothingSpline(x: readonly number[], y: readonly number[], tolerance: number): CubicSpline {
  if (x.length < 3 || x.length !== y.length) {
    throw new RangeError(
      `smoothingSpline: ${x.length} and ${y.length} values; accepted is 3 or more, of one length`,
    );
  }
  // On a unit range the penalty needs no other scale than the data's own.
  const span = x[x.length - 1] - x[0];
  const t = x.map(each => (each - x[0]) / span);
  const at = (logPenalty: number) => smooth(t, y, 10 ** logPenalty);
  let fit = tolerance > 0 ? at(STIFFEST) : smooth(t, y, 0);
  if (fit.residual > tolerance && tolerance > 0) {
    const loosest = at(LOOSEST);
    fit =
      loosest.residual >= tolerance
        ? loosest
        : at(
            brent(
              logPenalty => at(logPenalty).residual - tolerance,
              LOOSEST,
              STIFFEST,
              1e-12,
              loosest.residual - tolerance,
              fit.residual - tolerance,
            ),
          );
  }
  return spline(
    x,
    fit.values,
    fit.moments.map(each => each / span ** 2),
    fit.residual,
  );
}

interface Fit {
  readonly values: number[];
  /** Second derivatives at the knots. */
  readonly moments: number[];
  readonly residual: number;
}

/** Minimise Σ (y − g)² + penalty ∫ g''²: (R + penalty QᵀQ) γ = Qᵀ y, g = y − penalty Q γ. */
function smooth(t: readonly number[], y: readonly number[], penalty: number): Fit {
  const n = t.length;
  const inner = n - 2;
  const h = Array.from({ length: n - 1 }, (_, i) => t[i + 1] - t[i]);
  // Column j of Q holds three entries, at rows j, j + 1 and j + 2.
  const q = Array.from({ length: inner }, (_, j) => [1 / h[j], -1 / h[j] - 1 / h[j + 1], 1 / h[j + 1]]);
  const band: SymmetricBand = symmetricBand(inner, 2);
  const gamma = new Float64Array(inner);
  for (let j = 0; j < inner; j += 1) {
    const place = j * 3 + 2;
    band.data[place] = (h[j] + h[j + 1]) / 3 + penalty * (q[j][0] ** 2 + q[j][1] ** 2 + q[j][2] ** 2);
    if (j > 0) band.data[place - 1] = h[j] / 6 + penalty * (q[j - 1][1] * q[j][0] + q[j - 1][2] * q[j][1]);
    if (j > 1) band.data[place - 2] = penalty * q[j - 2][2] * q[j][0];
    gamma[j] = q[j][0] * y[j] + q[j][1] * y[j + 1] + q[j][2] * y[j + 2];
  }
  factorSymmetric(band);
  solveSymmetric(band, gamma);
  const values = [...y];
  for (let j = 0; j < inner; j += 1)
    for (let k = 0; k < 3; k += 1) values[j + k] -= penalty * q[j][k] * gamma[j];
  const sum = values.reduce((total, value, i) => total + (value - y[i]) ** 2, 0);
  return { values, moments: [0, ...gamma, 0], residual: Math.sqrt(sum / n) };
}

function spline(
  x: readonly number[],
  g: readonly number[],
  m: readonly number[],
  residual: number,
): CubicSpline {
  const last = x.length - 1;
  const slope = (at: number): number => {
    const bounded = Math.min(Math.max(at, x[0]), x[last]);
    const i = pieceAt(x, bounded);
    const h = x[i + 1] - x[i];
    const a = x[i + 1] - bounded;
    const b = bounded - x[i];
    return (
      (g[i + 1] - g[i]) / h + (m[i] * (h / 6 - (a * a) / (2 * h)) + m[i + 1] * ((b * b) / (2 * h) - h / 6))
    );
  };
  return {
    residual,
    slope,
    value(at) {
      if (at < x[0]) return g[0] + slope(at) * (at - x[0]);
      if (at > x[last]) return g[last] + slope(at) * (at - x[last]);
      const i = pieceAt(x, at);
      const h = x[i + 1] - x[i];
      const a = x[i + 1] - at;
      const b = at - x[i];
      return (
        (a * g[i] + b * g[i + 1]) / h + (m[i] * (a ** 3 / h - a * h) + m[i + 1] * (b ** 3 / h - b * h)) / 6
      );
    },
    curvature(at) {
      if (at < x[0] || at > x[last]) return 0;
      const i = pieceAt(x, at);
      return (m[i] * (x[i + 1] - at) + m[i + 1] * (at - x[i])) / (x[i + 1] - x[i]);
    },
  };
}
