/**
 * Solves the linear system of one Newton step on a chain: states joined by stages, controls inside the stages,
 * and conditions that tie the first state to the last. The chain is folded from its end to its beginning (a
 * Riccati recursion; Rao, Wright & Rawlings, J. Optim. Theory Appl. 99 (1998), from memory), so work grows
 * linearly with its length; the conditions at the ends border it.
 *
 *   minimise   Σ ½ (y,du)ᵀ W (y,du) + g·(y,du) + Σ ½ dxᵀ Q dx + q·dx + Σ ½ duᵀ R du + r·du
 *   subject to E dx⁺ = (2 − E) dx + h f_u du − c,  E = 1 − h/2 f_x,   B₀ dx₀ + B_N dx_N = b
 *
 * where y = (dx + dx⁺)/2 is the change in the middle of a stage.
 */

import { SymmetricIndefinite } from './symmetric-indefinite.ts';

/** The right sides of a step; rows of stages or nodes one after the other. */
export interface ChainRightSide {
  /** What the stages' equations miss, stages × states. */
  readonly defect: Float64Array;
  /** Gradient of the stages' costs at their middles, stages × (states + controls). */
  readonly middle: Float64Array;
  /** Gradient at the nodes, nodes × states. */
  readonly node: Float64Array;
  /** Gradient to the controls, stages × controls. */
  readonly control: Float64Array;
  /** What the conditions at the ends miss, with the sign of b above. */
  readonly ends: Float64Array;
}

export class ChainRecursion {
  /** f_x and f_u of each stage, row-major states × (states + controls). */
  readonly slopes: Float64Array;
  /** W of each stage, row-major. */
  readonly middleHessian: Float64Array;
  /** Q of each node, row-major. */
  readonly nodeHessian: Float64Array;
  /** Diagonal of R. */
  readonly controlHessian: Float64Array;
  readonly step: Float64Array;

  /** The solution: changes of states and controls, new multipliers of stages and ends. */
  readonly dx: Float64Array;
  readonly du: Float64Array;
  readonly costate: Float64Array;
  readonly endMultiplier: Float64Array;

  /** Conditions that reach the last state come first: only they need a column of their own. */
  readonly #columns: number;
  readonly #rows: number;
  readonly #middleOf: Float64Array;
  readonly #cost: Float64Array;
  readonly #gain: Float64Array;
  readonly #innerPivots: SymmetricIndefinite[];
  readonly #borders: Float64Array;
  readonly #borderGains: Float64Array;
  readonly #border: SymmetricIndefinite;
  readonly #linear: Float64Array;
  readonly #offsets: Float64Array;
  readonly #feed: Float64Array;
  readonly #scratch: Float64Array;
  readonly #lu: Float64Array;
  readonly #ends: Float64Array;

  constructor(
    readonly states: number,
    readonly controls: number,
    readonly stages: number,
    private readonly startRows: Float64Array,
    private readonly endRows: Float64Array,
  ) {
    const n = states;
    const m = controls;
    const z = n + m;
    this.#rows = startRows.length / n;
    let columns = 0;
    for (let r = 0; r < this.#rows; r++) {
      for (let i = 0; i < n; i++) if (endRows[r * n + i] !== 0) columns = r + 1;
    }
    this.#columns = columns;
    this.slopes = new Float64Array(stages * n * z);
    this.middleHessian = new Float64Array(stages * z * z);
    this.nodeHessian = new Float64Array((stages + 1) * n * n);
    this.controlHessian = new Float64Array(stages * m);
    this.step = new Float64Array(stages).fill(1);
    this.dx = new Float64Array((stages + 1) * n);
    this.du = new Float64Array(stages * m);
    this.costate = new Float64Array(stages * n);
    this.endMultiplier = new Float64Array(this.#rows);
    this.#middleOf = new Float64Array(stages * n * z);
    this.#cost = new Float64Array((stages + 1) * n * n);
    this.#gain = new Float64Array(stages * m * n);
    this.#innerPivots = Array.from({ length: stages }, () => new SymmetricIndefinite(m));
    this.#borders = new Float64Array((stages + 1) * columns * n);
    this.#borderGains = new Float64Array(stages * columns * m);
    this.#border = new SymmetricIndefinite(n + this.#rows);
    this.#linear = new Float64Array((stages + 1) * n);
    this.#offsets = new Float64Array(stages * n);
    this.#feed = new Float64Array(stages * m);
    this.#scratch = new Float64Array(2 * z * z + 2 * z + Math.max(z, columns * m));
    this.#lu = new Float64Array(n * n);
    this.#ends = new Float64Array(n + this.#rows);
  }

  /**
   * Folds the matrices. Returns how many negative eigenvalues the system has beyond those that its equations
   * bring (0: the step leads to a minimum), or −1 when it is singular.
   */
  factor(): number {
    const { states: n, controls: m, stages, middleHessian, nodeHessian, controlHessian } = this;
    const z = n + m;
    const cost = this.#cost;
    const middleOf = this.#middleOf;
    const scratch = this.#scratch;
    const columns = this.#columns;
    const borders = this.#borders;
    let negative = 0;
    const border = this.#border;
    const size = n + this.#rows;
    border.matrix.fill(0);
    for (let i = 0; i < n * n; i++) cost[stages * n * n + i] = nodeHessian[stages * n * n + i];
    for (let j = 0; j < columns; j++) {
      for (let i = 0; i < n; i++) borders[(stages * columns + j) * n + i] = this.endRows[j * n + i];
    }
    const G = 0;
    const H = z * z;
    const T = 2 * z * z;
    for (let k = stages - 1; k >= 0; k--) {
      const D = k * n * z;
      if (!this.#middle(k)) return -1;
      const P = (k + 1) * n * n;
      const W = k * z * z;
      // G = (W_xx + 4P) D + W_xu [0 1], n × z.
      for (let i = 0; i < n; i++) {
        const row = G + i * z;
        for (let j = 0; j < n; j++) scratch[row + j] = 0;
        for (let j = 0; j < m; j++) scratch[row + n + j] = middleHessian[W + i * z + n + j];
        for (let l = 0; l < n; l++) {
          const s = middleHessian[W + i * z + l] + 4 * cost[P + i * n + l];
          if (s === 0) continue;
          const d = D + l * z;
          for (let j = 0; j < z; j++) scratch[row + j] += s * middleOf[d + j];
        }
        // −2 P dx against y.
        for (let j = 0; j < n; j++) scratch[row + j] -= 2 * cost[P + i * n + j];
      }
      // H = Dᵀ G + …, upper half filled then mirrored.
      for (let i = 0; i < z; i++) {
        const row = H + i * z;
        for (let j = i; j < z; j++) scratch[row + j] = 0;
      }
      for (let l = 0; l < n; l++) {
        const d = D + l * z;
        const g = G + l * z;
        for (let i = 0; i < z; i++) {
          const s = middleOf[d + i];
          if (s === 0) continue;
          const row = H + i * z;
          for (let j = i; j < z; j++) scratch[row + j] += s * scratch[g + j];
        }
      }
      // The transposes of the parts that were taken one-sided: −2 P D in the rows of dx, W_uxᵀ D in those of du.
      for (let i = 0; i < n; i++) {
        const row = H + i * z;
        for (let l = 0; l < n; l++) {
          const s = -2 * cost[P + i * n + l];
          if (s === 0) continue;
          const d = D + l * z;
          for (let j = i; j < z; j++) scratch[row + j] += s * middleOf[d + j];
        }
        for (let j = i; j < n; j++) {
          scratch[row + j] += cost[P + i * n + j] + nodeHessian[k * n * n + i * n + j];
        }
      }
      for (let i = 0; i < m; i++) {
        const row = H + (n + i) * z;
        for (let l = 0; l < n; l++) {
          const s = middleHessian[W + l * z + n + i];
          if (s === 0) continue;
          const d = D + l * z;
          for (let j = n + i; j < z; j++) scratch[row + j] += s * middleOf[d + j];
        }
        for (let j = i; j < m; j++) scratch[row + n + j] += middleHessian[W + (n + i) * z + n + j];
        scratch[row + n + i] += controlHessian[k * m + i];
      }
      // Fold the controls.
      const inner = this.#innerPivots[k];
      for (let i = 0; i < m; i++) {
        for (let j = i; j < m; j++) {
          const v = scratch[H + (n + i) * z + n + j];
          inner.matrix[i * m + j] = v;
          inner.matrix[j * m + i] = v;
        }
      }
      if (!inner.factor()) return -1;
      negative += inner.negative;
      const gain = this.#gain;
      const K = k * m * n;
      for (let j = 0; j < n; j++) {
        for (let i = 0; i < m; i++) scratch[T + i] = -scratch[H + j * z + n + i];
        inner.solve(scratch, T);
        for (let i = 0; i < m; i++) gain[K + i * n + j] = scratch[T + i];
      }
      const P0 = k * n * n;
      for (let i = 0; i < n; i++) {
        for (let j = i; j < n; j++) {
          let v = scratch[H + i * z + j];
          for (let l = 0; l < m; l++) v += scratch[H + i * z + n + l] * gain[K + l * n + j];
          cost[P0 + i * n + j] = v;
          cost[P0 + j * n + i] = v;
        }
      }
      for (let j = 0; j < columns; j++) this.#foldBorder(k, j, D, H, T);
      for (let i = 0; i < columns; i++) {
        for (let j = 0; j <= i; j++) {
          let v = 0;
          for (let l = 0; l < m; l++) {
            v += scratch[T + z + i * m + l] * this.#borderGains[(k * columns + j) * m + l];
          }
          border.matrix[(n + i) * size + n + j] += v;
        }
      }
    }
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) border.matrix[i * size + j] = cost[i * n + j];
    }
    for (let r = 0; r < this.#rows; r++) {
      for (let i = 0; i < n; i++) {
        const v = this.startRows[r * n + i] + (r < columns ? borders[r * n + i] : 0);
        border.matrix[(n + r) * size + i] = v;
        border.matrix[i * size + n + r] = v;
      }
      for (let c = 0; c < r; c++) {
        border.matrix[(n + c) * size + n + r] = border.matrix[(n + r) * size + n + c];
      }
    }
    if (!border.factor()) return -1;
    return negative + border.negative - this.#rows;
  }

  /** [E⁻¹, h/2 E⁻¹ f_u]: the change in the middle of stage k by that of its first state and its control. */
  #middle(k: number): boolean {
    const { states: n, controls: m, slopes } = this;
    const z = n + m;
    const half = 0.5 * this.step[k];
    const lu = this.#lu;
    const D = k * n * z;
    const to = this.#middleOf;
    // Gauss–Jordan with row exchanges on [E | 1, h/2 f_u].
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) {
        lu[i * n + j] = (i === j ? 1 : 0) - half * slopes[D + i * z + j];
        to[D + i * z + j] = i === j ? 1 : 0;
      }
      for (let j = n; j < z; j++) to[D + i * z + j] = half * slopes[D + i * z + j];
    }
    for (let c = 0; c < n; c++) {
      let best = c;
      for (let i = c + 1; i < n; i++) if (Math.abs(lu[i * n + c]) > Math.abs(lu[best * n + c])) best = i;
      const pivot = lu[best * n + c];
      if (!(Math.abs(pivot) > 1e-12)) return false;
      if (best !== c) {
        for (let j = c; j < n; j++) {
          const held = lu[c * n + j];
          lu[c * n + j] = lu[best * n + j];
          lu[best * n + j] = held;
        }
        for (let j = 0; j < z; j++) {
          const held = to[D + c * z + j];
          to[D + c * z + j] = to[D + best * z + j];
          to[D + best * z + j] = held;
        }
      }
      const inverse = 1 / pivot;
      for (let j = c; j < n; j++) lu[c * n + j] *= inverse;
      for (let j = 0; j < z; j++) to[D + c * z + j] *= inverse;
      for (let i = 0; i < n; i++) {
        if (i === c) continue;
        const s = lu[i * n + c];
        if (s === 0) continue;
        for (let j = c; j < n; j++) lu[i * n + j] -= s * lu[c * n + j];
        for (let j = 0; j < z; j++) to[D + i * z + j] -= s * to[D + c * z + j];
      }
    }
    return true;
  }

  /** Folds the column of end condition j through stage k; leaves its control gradient in the scratch. */
  #foldBorder(k: number, j: number, D: number, H: number, T: number): void {
    const { states: n, controls: m } = this;
    const z = n + m;
    const columns = this.#columns;
    const scratch = this.#scratch;
    const borders = this.#borders;
    const next = ((k + 1) * columns + j) * n;
    const own = (k * columns + j) * n;
    const gains = (k * columns + j) * m;
    const U = T + z + j * m;
    for (let i = 0; i < m; i++) {
      let v = 0;
      for (let l = 0; l < n; l++) v += 2 * this.#middleOf[D + l * z + n + i] * borders[next + l];
      scratch[U + i] = v;
      this.#borderGains[gains + i] = -v;
    }
    this.#innerPivots[k].solve(this.#borderGains, gains);
    for (let i = 0; i < n; i++) {
      let v = -borders[next + i];
      for (let l = 0; l < n; l++) v += 2 * this.#middleOf[D + l * z + i] * borders[next + l];
      for (let l = 0; l < m; l++) v += scratch[H + i * z + n + l] * this.#borderGains[gains + l];
      borders[own + i] = v;
    }
  }

  /** Solves for one right side with the matrices last folded; the answer is in dx, du and the multipliers. */
  solve(right: ChainRightSide): void {
    const { states: n, controls: m, stages, middleHessian } = this;
    const z = n + m;
    const cost = this.#cost;
    const D0 = this.#middleOf;
    const linear = this.#linear;
    const offsets = this.#offsets;
    const columns = this.#columns;
    const scratch = this.#scratch;
    const ends = this.#ends;
    for (let r = 0; r < this.#rows; r++) ends[n + r] = right.ends[r];
    for (let i = 0; i < n; i++) linear[stages * n + i] = right.node[stages * n + i];
    for (let k = stages - 1; k >= 0; k--) {
      const D = k * n * z;
      const P = (k + 1) * n * n;
      const W = k * z * z;
      const c = k * n;
      // y = D (dx, du) + offset
      for (let i = 0; i < n; i++) {
        let v = 0;
        for (let l = 0; l < n; l++) v += D0[D + i * z + l] * right.defect[c + l];
        offsets[c + i] = -0.5 * v;
      }
      for (let j = 0; j < columns; j++) {
        let v = 0;
        for (let l = 0; l < n; l++) v += this.#borders[((k + 1) * columns + j) * n + l] * offsets[c + l];
        ends[n + j] -= 2 * v;
      }
      // s = (W_xx + 4P) offset + g_x + 2p
      for (let i = 0; i < n; i++) {
        let v = right.middle[k * z + i] + 2 * linear[(k + 1) * n + i];
        for (let l = 0; l < n; l++) {
          v += (middleHessian[W + i * z + l] + 4 * cost[P + i * n + l]) * offsets[c + l];
        }
        scratch[i] = v;
      }
      for (let i = 0; i < n; i++) {
        let v = right.node[c + i] - linear[(k + 1) * n + i];
        for (let l = 0; l < n; l++) v += D0[D + l * z + i] * scratch[l];
        for (let l = 0; l < n; l++) v -= 2 * cost[P + i * n + l] * offsets[c + l];
        linear[c + i] = v;
      }
      const feed = this.#feed;
      for (let i = 0; i < m; i++) {
        let v = right.middle[k * z + n + i] + right.control[k * m + i];
        for (let l = 0; l < n; l++) {
          v += D0[D + l * z + n + i] * scratch[l] + middleHessian[W + l * z + n + i] * offsets[c + l];
        }
        scratch[n + i] = v;
        feed[k * m + i] = -v;
      }
      this.#innerPivots[k].solve(feed, k * m);
      // H_xu feed = −Kᵀ H_uu feed = Kᵀ h_u.
      for (let i = 0; i < n; i++) {
        let v = 0;
        for (let l = 0; l < m; l++) v += this.#gain[k * m * n + l * n + i] * scratch[n + l];
        linear[c + i] += v;
      }
      for (let j = 0; j < columns; j++) {
        let v = 0;
        for (let l = 0; l < m; l++) v += this.#borderGains[(k * columns + j) * m + l] * scratch[n + l];
        ends[n + j] -= v;
      }
    }
    for (let i = 0; i < n; i++) ends[i] = -linear[i];
    this.#border.solve(ends);
    for (let r = 0; r < this.#rows; r++) this.endMultiplier[r] = ends[n + r];
    for (let i = 0; i < n; i++) this.dx[i] = ends[i];
    this.#unfold(right);
  }

  #unfold(right: ChainRightSide): void {
    const { states: n, controls: m, stages, dx, du, middleHessian, costate, endMultiplier } = this;
    const z = n + m;
    const D0 = this.#middleOf;
    const columns = this.#columns;
    const scratch = this.#scratch;
    for (let k = 0; k < stages; k++) {
      const c = k * n;
      for (let i = 0; i < m; i++) {
        let v = this.#feed[k * m + i];
        for (let l = 0; l < n; l++) v += this.#gain[(k * m + i) * n + l] * dx[c + l];
        for (let j = 0; j < columns; j++)
          v += this.#borderGains[(k * columns + j) * m + i] * endMultiplier[j];
        du[k * m + i] = v;
      }
      const D = k * n * z;
      for (let i = 0; i < n; i++) {
        let y = this.#offsets[c + i];
        for (let l = 0; l < n; l++) y += D0[D + i * z + l] * dx[c + l];
        for (let l = 0; l < m; l++) y += D0[D + i * z + n + l] * du[k * m + l];
        scratch[i] = y;
        dx[c + n + i] = 2 * y - dx[c + i];
      }
      // Eᵀ costate = V'(dx⁺) + ½ (W (y, du) + g)_x
      const P = (k + 1) * n * n;
      const W = k * z * z;
      for (let i = 0; i < n; i++) {
        let v = this.#linear[(k + 1) * n + i] + 0.5 * right.middle[k * z + i];
        for (let l = 0; l < n; l++) {
          v += this.#cost[P + i * n + l] * dx[c + n + l] + 0.5 * middleHessian[W + i * z + l] * scratch[l];
        }
        for (let l = 0; l < m; l++) v += 0.5 * middleHessian[W + i * z + n + l] * du[k * m + l];
        for (let j = 0; j < columns; j++) {
          v += this.#borders[((k + 1) * columns + j) * n + i] * endMultiplier[j];
        }
        scratch[z + i] = v;
      }
      for (let i = 0; i < n; i++) {
        let v = 0;
        for (let l = 0; l < n; l++) v += D0[D + l * z + i] * scratch[z + l];
        costate[c + i] = v;
      }
    }
  }
}
