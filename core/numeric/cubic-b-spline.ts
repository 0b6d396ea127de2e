import { pieceAt } from './piece.ts';

/**
 * Cubic B-splines on any ascending breakpoints, clamped at both ends: twice continuously differentiable, so a
 * path x(y) built from them has continuous curvature. Cox–de Boor recursion (de Boor, A Practical Guide to
 * Splines, from memory).
 */
export interface SplineBasis {
  /** Number of coefficients. */
  readonly size: number;
  /** Full knot vector, ends fourfold. */
  readonly knots: Float64Array;
}

/** One row of the map from coefficients to values: four neighbours starting at `first`. */
export interface SplineRow {
  readonly first: number;
  readonly value: readonly [number, number, number, number];
  readonly slope: readonly [number, number, number, number];
  readonly second: readonly [number, number, number, number];
}

/** The basis on n ascending breakpoints, two or more: n + 2 coefficients. */
export function splineBasis(breakpoints: ArrayLike<number>): SplineBasis {
  const n = breakpoints.length;
  const knots = new Float64Array(n + 6);
  for (let i = 0; i < n + 6; i++) knots[i] = breakpoints[Math.min(n - 1, Math.max(0, i - 3))];
  return { size: n + 2, knots };
}

/** Where each coefficient has its influence: the mean of its three inner knots. */
export function greville(basis: SplineBasis): Float64Array {
  const { knots } = basis;
  return Float64Array.from(
    { length: basis.size },
    (_, i) => (knots[i + 1] + knots[i + 2] + knots[i + 3]) / 3,
  );
}

/** Values and derivatives at `y` of the four splines that are not nought there. */
export function splineRow(basis: SplineBasis, y: number): SplineRow {
  const { knots, size } = basis;
  // The fourfold end knots belong to the first and the last piece.
  const span = Math.min(Math.max(pieceAt(knots, y), 3), size - 1);
  const linear = degreeUp(knots, span, y, 1, [1]);
  const quadratic = degreeUp(knots, span, y, 2, linear);
  const cubic = degreeUp(knots, span, y, 3, quadratic);
  const slope = derivative(knots, span, 3, quadratic);
  const second = derivative(knots, span, 3, derivative(knots, span, 2, linear));
  return { first: span - 3, value: four(cubic), slope: four(slope), second: four(second) };
}

function degreeUp(knots: Float64Array, span: number, y: number, degree: number, lower: number[]): number[] {
  const higher = new Array<number>(degree + 1).fill(0);
  for (let k = 0; k < degree; k++) {
    const from = knots[span - degree + 1 + k];
    const to = knots[span + 1 + k];
    const share = (y - from) / (to - from);
    higher[k] += (1 - share) * lower[k];
    higher[k + 1] += share * lower[k];
  }
  return higher;
}

/** Derivatives of the splines of `degree` from (derivatives of) those one degree lower. */
function derivative(knots: Float64Array, span: number, degree: number, lower: number[]): number[] {
  const higher = new Array<number>(degree + 1).fill(0);
  for (let k = 0; k < degree; k++) {
    const width = knots[span + 1 + k] - knots[span - degree + 1 + k];
    higher[k] -= (degree * lower[k]) / width;
    higher[k + 1] += (degree * lower[k]) / width;
  }
  return higher;
}

const four = (list: number[]): [number, number, number, number] => [list[0], list[1], list[2], list[3]];
