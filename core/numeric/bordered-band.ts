/** Entries either side of the diagonal: two neighbouring nodes of three unknowns each. Loops are written out for it. */
const REACH = 5;
/** Entries in a stored row; the diagonal sits at `REACH`. */
const WIDTH = 2 * REACH + 1;

/**
 * Solves (B + Σ c_k d_kᵀ) x = r where B is banded and few columns leave the band: as where a few
 * points act on all that follow. Banded elimination once, then one back-substitution a column and a small
 * dense system (Sherman–Morrison–Woodbury; Golub & Van Loan, Matrix Computations, from memory).
 * Rows of B are not exchanged, so its diagonal has to dominate.
 */
export class BorderedBand {
  /** Half bandwidth of B: entry (row, column) is `band[row · (2 · halfBand + 1) + column − row + halfBand]`. */
  static readonly halfBand = REACH;
  /** Fill with B before `factor`, which overwrites it with its factors. */
  readonly band: Float64Array;
  readonly #size: number;
  /** Reciprocals of the pivots. */
  readonly #inverse: Float64Array;
  readonly #capacity: number;
  readonly #columns: Float64Array[];
  /** d_k as up to two (unknown, value) entries. */
  readonly #rowUnknown: Int32Array;
  readonly #rowValue: Float64Array;
  readonly #small: Float64Array;
  readonly #pivots: Int32Array;
  readonly #right: Float64Array;
  #count = 0;

  constructor(size: number, capacity: number) {
    this.#size = size;
    this.#inverse = new Float64Array(size);
    this.#capacity = capacity;
    this.band = new Float64Array(size * WIDTH);
    this.#columns = Array.from({ length: capacity }, () => new Float64Array(size));
    this.#rowUnknown = new Int32Array(2 * capacity);
    this.#rowValue = new Float64Array(2 * capacity);
    this.#small = new Float64Array(capacity * capacity);
    this.#pivots = new Int32Array(capacity);
    this.#right = new Float64Array(capacity);
  }

  clearColumns(): void {
    this.#count = 0;
  }

  /** Opens the next c_k (zeroed) with its d_k; null when all columns are taken. */
  openColumn(first: number, firstValue: number, second: number, secondValue: number): Float64Array | null {
    if (this.#count === this.#capacity) return null;
    const k = this.#count++;
    this.#rowUnknown[2 * k] = first;
    this.#rowUnknown[2 * k + 1] = second;
    this.#rowValue[2 * k] = firstValue;
    this.#rowValue[2 * k + 1] = secondValue;
    return this.#columns[k].fill(0);
  }

  /** Eliminates; false when a pivot vanishes or is not a number. */
  factor(): boolean {
    const { band } = this;
    const n = this.#size;
    for (let k = 0; k < n; k++) {
      const base = k * WIDTH + REACH;
      const pivot = band[base];
      if (!(Math.abs(pivot) > 1e-200 && Math.abs(pivot) < 1e200)) return false;
      const inverse = 1 / pivot;
      this.#inverse[k] = inverse;
      const reach = k + REACH < n ? REACH : n - 1 - k;
      for (let i = 1; i <= reach; i++) {
        const at = base + i * (WIDTH - 1);
        const entry = band[at];
        if (entry === 0) continue;
        const multiplier = entry * inverse;
        band[at] = multiplier;
        if (reach === REACH) {
          band[at + 1] -= multiplier * band[base + 1];
          band[at + 2] -= multiplier * band[base + 2];
          band[at + 3] -= multiplier * band[base + 3];
          band[at + 4] -= multiplier * band[base + 4];
          band[at + 5] -= multiplier * band[base + 5];
        } else {
          for (let j = 1; j <= reach; j++) band[at + j] -= multiplier * band[base + j];
        }
      }
    }
    for (let k = 0; k < this.#count; k++) this.#substitute(this.#columns[k]);
    return this.#factorSmall();
  }

  /** Replaces r by x. */
  solve(vector: Float64Array): void {
    this.#substitute(vector);
    const count = this.#count;
    if (count === 0) return;
    const right = this.#right;
    for (let k = 0; k < count; k++) right[k] = this.#row(k, vector);
    this.#solveSmall();
    for (let k = 0; k < count; k++) {
      const weight = right[k];
      const column = this.#columns[k];
      if (weight !== 0) for (let i = 0; i < vector.length; i++) vector[i] -= weight * column[i];
    }
  }

  #row(k: number, vector: Float64Array): number {
    const unknown = this.#rowUnknown;
    const value = this.#rowValue;
    return value[2 * k] * vector[unknown[2 * k]] + value[2 * k + 1] * vector[unknown[2 * k + 1]];
  }

  #substitute(vector: Float64Array): void {
    const { band } = this;
    const pivots = this.#inverse;
    const n = this.#size;
    // The five entries either side are written out: a loop of five costs more than its body.
    for (let row = 1; row < n; row++) {
      const at = row * WIDTH;
      if (row >= REACH) {
        vector[row] -=
          band[at] * vector[row - 5] +
          band[at + 1] * vector[row - 4] +
          band[at + 2] * vector[row - 3] +
          band[at + 3] * vector[row - 2] +
          band[at + 4] * vector[row - 1];
      } else {
        for (let column = 0; column < row; column++) {
          vector[row] -= band[at + column - row + REACH] * vector[column];
        }
      }
    }
    for (let row = n - 1; row >= 0; row--) {
      const at = row * WIDTH + REACH;
      let sum = vector[row];
      if (row + REACH < n) {
        sum -=
          band[at + 1] * vector[row + 1] +
          band[at + 2] * vector[row + 2] +
          band[at + 3] * vector[row + 3] +
          band[at + 4] * vector[row + 4] +
          band[at + 5] * vector[row + 5];
      } else {
        for (let column = row + 1; column < n; column++) sum -= band[at + column - row] * vector[column];
      }
      vector[row] = sum * pivots[row];
    }
  }

  /** Dense elimination with row exchanges of I + dᵀB⁻¹c. */
  #factorSmall(): boolean {
    const count = this.#count;
    const small = this.#small;
    for (let i = 0; i < count; i++) {
      for (let j = 0; j < count; j++) {
        small[i * count + j] = this.#row(i, this.#columns[j]) + (i === j ? 1 : 0);
      }
    }
    for (let k = 0; k < count; k++) {
      let best = k;
      for (let i = k + 1; i < count; i++) {
        if (Math.abs(small[i * count + k]) > Math.abs(small[best * count + k])) best = i;
      }
      this.#pivots[k] = best;
      if (best !== k) {
        for (let j = 0; j < count; j++) {
          const kept = small[k * count + j];
          small[k * count + j] = small[best * count + j];
          small[best * count + j] = kept;
        }
      }
      const pivot = small[k * count + k];
      if (!(Math.abs(pivot) > 1e-200)) return false;
      for (let i = k + 1; i < count; i++) {
        const multiplier = small[i * count + k] / pivot;
        small[i * count + k] = multiplier;
        for (let j = k + 1; j < count; j++) small[i * count + j] -= multiplier * small[k * count + j];
      }
    }
    return true;
  }

  #solveSmall(): void {
    const count = this.#count;
    const small = this.#small;
    const right = this.#right;
    for (let k = 0; k < count; k++) {
      const from = this.#pivots[k];
      const kept = right[k];
      right[k] = right[from];
      right[from] = kept;
    }
    for (let i = 1; i < count; i++) {
      for (let j = 0; j < i; j++) right[i] -= small[i * count + j] * right[j];
    }
    for (let i = count - 1; i >= 0; i--) {
      for (let j = i + 1; j < count; j++) right[i] -= small[i * count + j] * right[j];
      right[i] /= small[i * count + i];
    }
  }
}
