/**
 * General banded matrix stored row by row with room for the fill of partial pivoting: entry (i, j),
 * i − lower ≤ j ≤ i + upper, is at `data[i·(2·lower + upper + 1) + j − i + lower]`.
 */
export interface Banded {
  readonly size: number;
  readonly lower: number;
  readonly upper: number;
  readonly data: Float64Array;
  /** Row taken as pivot at each step, filled by `factorBanded`. */
  readonly pivots: Int32Array;
}

/** A zero matrix of `size` rows with `lower` diagonals under and `upper` over the main one. */
export function banded(size: number, lower: number, upper: number): Banded {
  const data = new Float64Array(size * (2 * lower + upper + 1));
  return { size, lower, upper, data, pivots: new Int32Array(size) };
}

/** Adds `value` to entry (i, j), −lower ≤ j − i ≤ upper. */
export function addBanded(band: Banded, i: number, j: number, value: number): void {
  band.data[i * (2 * band.lower + band.upper + 1) + j - i + band.lower] += value;
}

/** out = A x for an unfactored band. */
export function multiplyBanded(band: Banded, x: Float64Array, out: Float64Array): Float64Array {
  const { size, lower, upper, data } = band;
  const width = 2 * lower + upper + 1;
  for (let i = 0; i < size; i++) {
    const row = i * width + lower - i;
    const end = Math.min(i + upper, size - 1);
    let sum = 0;
    for (let j = i > lower ? i - lower : 0; j <= end; j++) sum += data[row + j] * x[j];
    out[i] = sum;
  }
  return out;
}

/**
 * LU with partial pivoting in place. Returns false when the matrix is singular to working precision
 * (a pivot of exactly zero or not a number); true otherwise.
 * Source: the row-interchange scheme of Golub & Van Loan, Matrix Computations, banded systems.
 */
export function factorBanded(band: Banded): boolean {
  const { size, lower, upper, data, pivots } = band;
  const width = 2 * lower + upper + 1;
  const reach = lower + upper;
  for (let k = 0; k < size; k++) {
    const lastRow = Math.min(k + lower, size - 1);
    const lastColumn = Math.min(k + reach, size - 1);
    const row = k * width + lower - k;
    let pivotRow = k;
    let largest = Math.abs(data[row + k]);
    for (let i = k + 1; i <= lastRow; i++) {
      const size = Math.abs(data[i * width + lower - i + k]);
      if (size > largest) {
        largest = size;
        pivotRow = i;
      }
    }
    pivots[k] = pivotRow;
    if (!(largest > 0)) return false;
    if (pivotRow !== k) {
      const other = pivotRow * width + lower - pivotRow;
      for (let j = k; j <= lastColumn; j++) {
        const held = data[row + j];
        data[row + j] = data[other + j];
        data[other + j] = held;
      }
    }
    const inverse = 1 / data[row + k];
    for (let i = k + 1; i <= lastRow; i++) {
      const target = i * width + lower - i;
      const head = data[target + k];
      if (head === 0) continue;
      const multiplier = head * inverse;
      data[target + k] = multiplier;
      for (let j = k + 1; j <= lastColumn; j++) data[target + j] -= multiplier * data[row + j];
    }
  }
  return true;
}

/** Solves A x = rhs in place with a band already put through `factorBanded`. */
export function solveBanded(band: Banded, rhs: Float64Array): Float64Array {
  const { size, lower, upper, data, pivots } = band;
  const width = 2 * lower + upper + 1;
  const reach = lower + upper;
  for (let k = 0; k < size; k++) {
    const pivotRow = pivots[k];
    const value = rhs[pivotRow];
    if (pivotRow !== k) {
      rhs[pivotRow] = rhs[k];
      rhs[k] = value;
    }
    const lastRow = Math.min(k + lower, size - 1);
    for (let i = k + 1; i <= lastRow; i++) rhs[i] -= data[i * width + lower - i + k] * value;
  }
  for (let k = size - 1; k >= 0; k--) {
    const row = k * width + lower - k;
    const lastColumn = Math.min(k + reach, size - 1);
    let sum = rhs[k];
    for (let j = k + 1; j <= lastColumn; j++) sum -= data[row + j] * rhs[j];
    rhs[k] = sum / data[row + k];
  }
  return rhs;
}
