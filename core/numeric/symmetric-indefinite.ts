/**
 * Factors small dense symmetric matrices that need not be positive definite, and counts their negative
 * eigenvalues on the way: L D Lᵀ with 1×1 and 2×2 pivots.
 * J. R. Bunch & L. Kaufman, Math. Comp. 31 (1977) 163–179 (from memory).
 */

/** The growth of elements is bounded best at (1 + √17)/8. */
const PIVOT_RATIO = (1 + Math.sqrt(17)) / 8;

/** Work space for matrices of one size; nothing is allocated after it is made. */
export class SymmetricIndefinite {
  /** Row-major, size × size: filled with the matrix (both halves) before `factor`, holds L and D after it. */
  readonly matrix: Float64Array;
  /** Row exchanged with row k; negative (−1 − row) where a 2×2 pivot begins at k. */
  readonly #pivot: Int32Array;
  readonly #work: Float64Array;
  #negative = 0;

  constructor(readonly size: number) {
    this.matrix = new Float64Array(size * size);
    this.#pivot = new Int32Array(size);
    this.#work = new Float64Array(size);
  }

  /** Negative eigenvalues of the matrix last factored (Sylvester's law of inertia). */
  get negative(): number {
    return this.#negative;
  }

  /** False when a pivot vanishes or a number is not finite. */
  factor(): boolean {
    const { matrix: a, size: n } = this;
    const pivot = this.#pivot;
    this.#negative = 0;
    let greatest = 0;
    for (let i = 0; i < n * n; i++) greatest = Math.max(greatest, Math.abs(a[i]));
    const tiny = greatest * 1e-40;
    if (!(greatest < Infinity)) return false;
    for (let k = 0; k < n; ) {
      const own = Math.abs(a[k * n + k]);
      let below = 0;
      let row = k;
      for (let i = k + 1; i < n; i++) {
        if (Math.abs(a[i * n + k]) > below) {
          below = Math.abs(a[i * n + k]);
          row = i;
        }
      }
      if (Math.max(own, below) <= tiny) return false;
      let twoByTwo = false;
      let swap = k;
      if (own < PIVOT_RATIO * below) {
        let across = 0;
        for (let j = k; j < n; j++) if (j !== row) across = Math.max(across, Math.abs(a[row * n + j]));
        if (own * across >= PIVOT_RATIO * below * below) swap = k;
        else if (Math.abs(a[row * n + row]) >= PIVOT_RATIO * across) swap = row;
        else {
          twoByTwo = true;
          swap = row;
        }
      }
      const at = twoByTwo ? k + 1 : k;
      if (swap !== at) this.#exchange(at, swap);
      if (twoByTwo) {
        pivot[k] = -1 - swap;
        pivot[k + 1] = k + 1;
        const d11 = a[k * n + k];
        const d21 = a[(k + 1) * n + k];
        const d22 = a[(k + 1) * n + k + 1];
        const det = d11 * d22 - d21 * d21;
        if (Math.abs(det) <= tiny * tiny) return false;
        this.#negative += det < 0 ? 1 : d11 < 0 ? 2 : 0;
        for (let i = k + 2; i < n; i++) {
          const b1 = a[i * n + k];
          const b2 = a[i * n + k + 1];
          const l1 = (b1 * d22 - b2 * d21) / det;
          const l2 = (b2 * d11 - b1 * d21) / det;
          for (let j = k + 2; j <= i; j++) {
            a[i * n + j] -= l1 * a[j * n + k] + l2 * a[j * n + k + 1];
          }
          // Rows below still need this column's old values, which column j = i has just used.
          a[k * n + i] = l1;
          a[(k + 1) * n + i] = l2;
        }
        for (let i = k + 2; i < n; i++) {
          a[i * n + k] = a[k * n + i];
          a[i * n + k + 1] = a[(k + 1) * n + i];
          for (let j = k + 2; j < i; j++) a[j * n + i] = a[i * n + j];
        }
        k += 2;
      } else {
        pivot[k] = swap;
        const d = a[k * n + k];
        if (d < 0) this.#negative++;
        for (let i = k + 1; i < n; i++) {
          const l = a[i * n + k] / d;
          for (let j = k + 1; j <= i; j++) a[i * n + j] -= l * a[j * n + k];
          a[k * n + i] = l;
        }
        for (let i = k + 1; i < n; i++) {
          a[i * n + k] = a[k * n + i];
          for (let j = k + 1; j < i; j++) a[j * n + i] = a[i * n + j];
        }
        k++;
      }
    }
    return true;
  }

  /** Solves in place for the right side at `b[from…]` with entries `stride` apart. */
  solve(b: Float64Array, from = 0, stride = 1): void {
    const { matrix: a, size: n } = this;
    const pivot = this.#pivot;
    const x = this.#work;
    for (let i = 0; i < n; i++) x[i] = b[from + i * stride];
    for (let k = 0; k < n; k += pivot[k] < 0 ? 2 : 1) {
      if (pivot[k] < 0) exchange(x, k + 1, -1 - pivot[k]);
      else exchange(x, k, pivot[k]);
    }
    for (let k = 0; k < n; k += pivot[k] < 0 ? 2 : 1) {
      if (pivot[k] < 0) {
        for (let i = k + 2; i < n; i++) x[i] -= a[i * n + k] * x[k] + a[i * n + k + 1] * x[k + 1];
      } else {
        for (let i = k + 1; i < n; i++) x[i] -= a[i * n + k] * x[k];
      }
    }
    for (let k = 0; k < n; k += pivot[k] < 0 ? 2 : 1) {
      if (pivot[k] < 0) {
        const d11 = a[k * n + k];
        const d21 = a[(k + 1) * n + k];
        const d22 = a[(k + 1) * n + k + 1];
        const det = d11 * d22 - d21 * d21;
        const x1 = x[k];
        const x2 = x[k + 1];
        x[k] = (x1 * d22 - x2 * d21) / det;
        x[k + 1] = (x2 * d11 - x1 * d21) / det;
      } else x[k] /= a[k * n + k];
    }
    for (let k = n - 1; k >= 0; ) {
      const first = k > 0 && pivot[k - 1] < 0 ? k - 1 : k;
      for (let c = first; c <= k; c++) {
        for (let i = k + 1; i < n; i++) x[c] -= a[i * n + c] * x[i];
      }
      k = first - 1;
    }
    for (let k = n - 1; k >= 0; ) {
      const first = k > 0 && pivot[k - 1] < 0 ? k - 1 : k;
      if (first < k) exchange(x, k, -1 - pivot[first]);
      else exchange(x, k, pivot[k]);
      k = first - 1;
    }
    for (let i = 0; i < n; i++) b[from + i * stride] = x[i];
  }

  /**
   * Solves in place for `count` right sides at once: row-major size × count at `b[from…]`, one right side a column.
   */
  solveColumns(b: Float64Array, from: number, count: number): void {
    const { matrix: a, size: n } = this;
    const pivot = this.#pivot;
    for (let k = 0; k < n; k += pivot[k] < 0 ? 2 : 1) {
      if (pivot[k] < 0) exchangeRows(b, from, count, k + 1, -1 - pivot[k]);
      else exchangeRows(b, from, count, k, pivot[k]);
    }
    for (let k = 0; k < n; k++) {
      // Below the second column of a 2×2 pivot; below the first its own second row is skipped.
      const below = pivot[k] < 0 ? k + 2 : k + 1;
      for (let i = below; i < n; i++) subtractRow(b, from + i * count, from + k * count, count, a[i * n + k]);
    }
    for (let k = 0; k < n; k += pivot[k] < 0 ? 2 : 1) {
      const row = from + k * count;
      const d11 = a[k * n + k];
      if (pivot[k] < 0) {
        const next = row + count;
        const d21 = a[(k + 1) * n + k];
        const d22 = a[(k + 1) * n + k + 1];
        const det = d11 * d22 - d21 * d21;
        for (let c = 0; c < count; c++) {
          const x1 = b[row + c];
          const x2 = b[next + c];
          b[row + c] = (x1 * d22 - x2 * d21) / det;
          b[next + c] = (x2 * d11 - x1 * d21) / det;
        }
      } else {
        const inverse = 1 / d11;
        for (let c = 0; c < count; c++) b[row + c] *= inverse;
      }
    }
    for (let k = n - 1; k >= 0; k--) {
      const below = pivot[k] < 0 ? k + 2 : k + 1;
      for (let i = below; i < n; i++) subtractRow(b, from + k * count, from + i * count, count, a[i * n + k]);
    }
    for (let k = n - 1; k >= 0; ) {
      const first = k > 0 && pivot[k - 1] < 0 ? k - 1 : k;
      if (first < k) exchangeRows(b, from, count, k, -1 - pivot[first]);
      else exchangeRows(b, from, count, k, pivot[k]);
      k = first - 1;
    }
  }

  /** Exchanges rows and columns i and j, the rows of L made so far included. */
  #exchange(i: number, j: number): void {
    const { matrix: a, size: n } = this;
    for (let c = 0; c < n; c++) exchange(a, i * n + c, j * n + c);
    for (let r = 0; r < n; r++) exchange(a, r * n + i, r * n + j);
  }
}

function exchange(x: Float64Array, i: number, j: number): void {
  const held = x[i];
  x[i] = x[j];
  x[j] = held;
}

function exchangeRows(x: Float64Array, from: number, count: number, i: number, j: number): void {
  if (i === j) return;
  for (let c = 0; c < count; c++) exchange(x, from + i * count + c, from + j * count + c);
}

/** Row at `to` −= factor · row at `by`. */
function subtractRow(x: Float64Array, to: number, by: number, count: number, factor: number): void {
  if (factor === 0) return;
  for (let c = 0; c < count; c++) x[to + c] -= factor * x[by + c];
}
