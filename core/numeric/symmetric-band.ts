/**
 * Symmetric banded matrix, lower half stored row by row: entry (i, j), i − half ≤ j ≤ i, is at
 * `data[i·(half + 1) + j − i + half]`, so the diagonal is each row's last place.
 */
export interface SymmetricBand {
  readonly size: number;
  /** Half bandwidth: entries farther than this from the diagonal are zero. */
  readonly half: number;
  readonly data: Float64Array;
}

/** A zero matrix of `size` rows with the given half bandwidth. */
export function symmetricBand(size: number, half: number): SymmetricBand {
  return { size, half, data: new Float64Array(size * (half + 1)) };
}

/** Adds `value` to entry (i, j) of the lower half, i ≥ j ≥ i − half. */
export function addSymmetric(band: SymmetricBand, i: number, j: number, value: number): void {
  band.data[i * (band.half + 1) + j - i + band.half] += value;
}

/** out = A x for an unfactored band. */
export function multiplySymmetric(band: SymmetricBand, x: Float64Array, out: Float64Array): Float64Array {
  const { size, half, data } = band;
  const width = half + 1;
  out.fill(0);
  for (let i = 0; i < size; i++) {
    const row = i * width + half - i;
    let sum = data[row + i] * x[i];
    for (let j = i > half ? i - half : 0; j < i; j++) {
      const a = data[row + j];
      sum += a * x[j];
      out[j] += a * x[i];
    }
    out[i] += sum;
  }
  return out;
}

/**
 * LDLᵀ in place without pivoting: L's unit diagonal is implied and D takes the diagonal's place.
 * Stable for positive definite matrices. Returns the count of negative pivots (0 when positive definite;
 * by Sylvester's law the number of negative eigenvalues), or NaN when a pivot vanishes.
 */
export function factorSymmetric(band: SymmetricBand): number {
  const { size, half, data } = band;
  const width = half + 1;
  let negative = 0;
  for (let i = 0; i < size; i++) {
    const first = i > half ? i - half : 0;
    const row = i * width + half - i;
    for (let j = first; j < i; j++) {
      const other = j * width + half - j;
      let sum = data[row + j];
      for (let k = Math.max(first, j - half); k < j; k++) sum -= data[row + k] * data[other + k];
      data[row + j] = sum;
    }
    let pivot = data[row + i];
    for (let j = first; j < i; j++) {
      const scaled = data[row + j];
      const lower = scaled / data[j * width + half];
      data[row + j] = lower;
      pivot -= scaled * lower;
    }
    data[row + i] = pivot;
    if (pivot < 0) negative++;
    else if (!(pivot > 0)) return Number.NaN;
  }
  return negative;
}

/** Solves A x = rhs in place with a band already put through `factorSymmetric`. */
export function solveSymmetric(band: SymmetricBand, rhs: Float64Array): Float64Array {
  const { size, half, data } = band;
  const width = half + 1;
  for (let i = 0; i < size; i++) {
    const row = i * width + half - i;
    let sum = rhs[i];
    for (let j = i > half ? i - half : 0; j < i; j++) sum -= data[row + j] * rhs[j];
    rhs[i] = sum;
  }
  for (let i = 0; i < size; i++) rhs[i] /= data[i * width + half];
  for (let i = size - 1; i > 0; i--) {
    const row = i * width + half - i;
    const value = rhs[i];
    for (let j = i > half ? i - half : 0; j < i; j++) rhs[j] -= data[row + j] * value;
  }
  return rhs;
}

/**
 * Prescribes x[index] = value in A x = rhs: its row and column become the identity's and the known part
 * moves to the right-hand side, which keeps the matrix symmetric and banded.
 */
export function prescribe(band: SymmetricBand, rhs: Float64Array | null, index: number, value: number): void {
  const { size, half, data } = band;
  const width = half + 1;
  for (let j = index > half ? index - half : 0; j < index; j++) {
    const place = index * width + half + j - index;
    if (rhs) rhs[j] -= data[place] * value;
    data[place] = 0;
  }
  for (let i = index + 1; i < size && i <= index + half; i++) {
    const place = i * width + half + index - i;
    if (rhs) rhs[i] -= data[place] * value;
    data[place] = 0;
  }
  data[index * width + half] = 1;
  if (rhs) rhs[index] = value;
}
