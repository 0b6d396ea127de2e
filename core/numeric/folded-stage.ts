import type { ChainRightSide } from './chain-recursion.ts';
import { middleOfStage } from './middle-of-stage.ts';
import { addProduct, addSymmetricProduct } from './small-products.ts';
import { SymmetricIndefinite } from './symmetric-indefinite.ts';

/** What the stages of a chain share while they are folded, one after the other. */
interface WorkSpace {
  /** states × (states + controls) each. */
  readonly product: Float64Array;
  readonly onward: Float64Array;
  /** (states + controls)². */
  readonly total: Float64Array;
  /** controls × (states + columns): what the controls answer to. */
  readonly answer: Float64Array;
  readonly elimination: Float64Array;
  readonly closed: Float64Array;
  readonly vector: Float64Array;
}

/**
 * One stage of a chain, folded into a cost ½ dxᵀ P dx + p·dx of its first state. With F = [A, B] from
 * dx⁺ = A dx + B du and D = [E⁻¹, h/2 E⁻¹ f_u], the change in its middle by dx and du (F = 2 D − [1, 0]):
 *
 *   H = Fᵀ P⁺ F + V + [Q, R],   V = [D; 0 1]ᵀ W [D; 0 1],   K = −H_uu⁻¹ H_ux,   P = H_xx + H_xu K.
 */
export class FoldedStage {
  /** P, row-major. */
  readonly cost: Float64Array;
  /** p. */
  readonly linear: Float64Array;
  /** Conditions at the end that reach back to this stage's first state, columns × states. */
  readonly borders: Float64Array;
  readonly #n: number;
  readonly #m: number;
  readonly #columns: number;
  /** D, row-major states × (states + controls). */
  readonly #middle: Float64Array;
  /** V, upper half. */
  readonly #own: Float64Array;
  /** K and then −H_uu⁻¹ Bᵀ borders⁺ᵀ, row-major controls × (states + columns). */
  readonly #gain: Float64Array;
  readonly #inner: SymmetricIndefinite;
  readonly #offset: Float64Array;
  readonly #feed: Float64Array;
  readonly #work: WorkSpace;

  /** @param room of `FoldedStage.size` numbers, its own */
  constructor(states: number, controls: number, columns: number, work: WorkSpace, room: Float64Array) {
    const z = states + controls;
    let next = 0;
    const take = (size: number) => {
      next += size;
      return room.subarray(next - size, next);
    };
    this.#n = states;
    this.#m = controls;
    this.#columns = columns;
    this.cost = take(states * states);
    this.linear = take(states);
    this.borders = take(columns * states);
    this.#middle = take(states * z);
    this.#own = take(z * z);
    this.#gain = take(controls * (states + columns));
    this.#inner = new SymmetricIndefinite(controls);
    this.#offset = take(states);
    this.#feed = take(controls);
    this.#work = work;
  }

  /** Where D and V begin in a stage's room. */
  static places(states: number, controls: number, columns: number) {
    const middle = states * (states + 1 + columns);
    const size = states * (states + controls);
    return { middle, own: middle + size };
  }

  /** Numbers that one stage keeps. */
  static size(states: number, controls: number, columns: number): number {
    const z = states + controls;
    return states * (states + 2 + columns + z) + z * z + controls * (states + columns + 1);
  }

  static workSpace(states: number, controls: number, columns: number): WorkSpace {
    const z = states + controls;
    return {
      product: new Float64Array(states * z),
      onward: new Float64Array(states * z),
      total: new Float64Array(z * z),
      answer: new Float64Array(controls * (states + columns)),
      elimination: new Float64Array(states * states),
      closed: new Float64Array(states * states),
      vector: new Float64Array(2 * z),
    };
  }

  /** D anew, by elimination with row exchanges; false when E is singular. */
  middleAnew(slopes: Float64Array, at: number, half: number): boolean {
    const n = this.#n;
    const z = n + this.#m;
    return middleOfStage(this.#middle, slopes, at, half, n, z, this.#work.elimination);
  }

  /**
   * Folds the cost P⁺ and the conditions' columns of what follows, with Q and R (from `node[q]`, `control[r]`),
   * into this stage, and the controls' share of the conditions onto `border` (columns × columns from `at` on).
   * Returns the negative eigenvalues of H_uu, −1 when it is singular.
   */
  fold(
    next: Float64Array,
    nextBorders: Float64Array,
    node: Float64Array,
    q: number,
    control: Float64Array,
    r: number,
    border: Float64Array,
    at: number,
  ): number {
    const n = this.#n;
    const m = this.#m;
    const z = n + m;
    const columns = this.#columns;
    const width = n + columns;
    const { product, total, answer, closed, onward } = this.#work;
    const middle = this.#middle;
    const own = this.#own;
    const gain = this.#gain;
    const cost = this.cost;
    for (let i = 0; i < n * z; i++) onward[i] = 2 * middle[i];
    for (let i = 0; i < n; i++) onward[i * z + i] -= 1;
    product.fill(0);
    addProduct(product, 0, next, 0, onward, 0, n, n, z);
    for (let i = 0; i < z; i++) {
      const row = i * z;
      for (let j = i; j < z; j++) total[row + j] = own[row + j];
    }
    for (let i = 0; i < n; i++) {
      for (let j = i; j < n; j++) total[i * z + j] += node[q + i * n + j];
    }
    for (let i = 0; i < m; i++) total[(n + i) * z + n + i] += control[r + i];
    addSymmetricProduct(total, onward, product, n, z);
    const inner = this.#inner;
    for (let i = 0; i < m; i++) {
      for (let j = i; j < m; j++) {
        const v = total[(n + i) * z + n + j];
        inner.matrix[i * m + j] = v;
        inner.matrix[j * m + i] = v;
      }
    }
    if (!inner.factor()) return -1;
    // What the controls answer to: the first state, and the multipliers of the conditions.
    for (let i = 0; i < m; i++) {
      const row = i * width;
      for (let j = 0; j < n; j++) answer[row + j] = total[j * z + n + i];
      for (let c = 0; c < columns; c++) {
        let v = 0;
        for (let l = 0; l < n; l++) v += onward[l * z + n + i] * nextBorders[c * n + l];
        answer[row + n + c] = v;
      }
      for (let j = 0; j < width; j++) gain[row + j] = -answer[row + j];
    }
    inner.solveColumns(gain, 0, width);
    for (let i = 0; i < n; i++) {
      for (let j = i; j < n; j++) {
        let v = total[i * z + j];
        for (let l = 0; l < m; l++) v += answer[l * width + i] * gain[l * width + j];
        cost[i * n + j] = v;
        cost[j * n + i] = v;
      }
    }
    if (columns === 0) return inner.negative;
    for (let i = 0; i < columns; i++) {
      const row = at + i * columns;
      for (let j = 0; j <= i; j++) {
        let v = 0;
        for (let l = 0; l < m; l++) v += answer[l * width + n + i] * gain[l * width + n + j];
        border[row + j] += v;
      }
    }
    // The columns follow the closed loop A + B K backward.
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) {
        let v = onward[i * z + j];
        for (let l = 0; l < m; l++) v += onward[i * z + n + l] * gain[l * width + j];
        closed[i * n + j] = v;
      }
    }
    const borders = this.borders.fill(0);
    addProduct(borders, 0, nextBorders, 0, closed, 0, columns, n, n);
    return inner.negative;
  }

  /** Folds a right side of stage k; takes what the stage adds to the conditions from `ends`, after its states. */
  foldRight(
    right: ChainRightSide,
    k: number,
    next: Float64Array,
    nextLinear: Float64Array,
    nextBorders: Float64Array,
    ends: Float64Array,
    hessian: Float64Array,
  ): void {
    const n = this.#n;
    const m = this.#m;
    const z = n + m;
    const columns = this.#columns;
    const width = n + columns;
    const middle = this.#middle;
    const gain = this.#gain;
    const offset = this.#offset;
    const feed = this.#feed;
    const linear = this.linear;
    const { vector } = this.#work;
    const W = k * z * z;
    // y = D (dx, du) + offset, dx⁺ = F (dx, du) + 2 offset
    for (let i = 0; i < n; i++) {
      let v = 0;
      for (let l = 0; l < n; l++) v += middle[i * z + l] * right.defect[k * n + l];
      offset[i] = -0.5 * v;
    }
    for (let c = 0; c < columns; c++) {
      let v = 0;
      for (let l = 0; l < n; l++) v += nextBorders[c * n + l] * offset[l];
      ends[n + c] -= 2 * v;
    }
    // Gradient in the middle, s, that at the next node, t, and s + 2 t, which D carries back.
    for (let i = 0; i < n; i++) {
      let s = right.middle[k * z + i];
      let t = nextLinear[i];
      for (let l = 0; l < n; l++) {
        s += hessian[W + i * z + l] * offset[l];
        t += 2 * next[i * n + l] * offset[l];
      }
      vector[i] = s + 2 * t;
      linear[i] = right.node[k * n + i] - t;
    }
    for (let i = 0; i < m; i++) {
      let v = right.middle[k * z + n + i] + right.control[k * m + i];
      for (let l = 0; l < n; l++) {
        v += middle[l * z + n + i] * vector[l] + hessian[W + l * z + n + i] * offset[l];
      }
      vector[n + i] = v;
      feed[i] = -v;
    }
    this.#inner.solve(feed);
    for (let l = 0; l < n; l++) {
      const factor = vector[l];
      for (let i = 0; i < n; i++) linear[i] += middle[l * z + i] * factor;
    }
    // H_xu feed = Kᵀ h_u
    for (let l = 0; l < m; l++) {
      const factor = vector[n + l];
      for (let i = 0; i < n; i++) linear[i] += gain[l * width + i] * factor;
      for (let c = 0; c < columns; c++) ends[n + c] -= gain[l * width + n + c] * factor;
    }
  }

  /** Changes of stage k's control and next state from that of its first, and the multiplier of its equations. */
  unfold(
    right: ChainRightSide,
    k: number,
    next: Float64Array,
    nextLinear: Float64Array,
    nextBorders: Float64Array,
    endMultiplier: Float64Array,
    dx: Float64Array,
    du: Float64Array,
    costate: Float64Array,
    hessian: Float64Array,
  ): void {
    const n = this.#n;
    const m = this.#m;
    const z = n + m;
    const columns = this.#columns;
    const width = n + columns;
    const middle = this.#middle;
    const gain = this.#gain;
    const { vector } = this.#work;
    const c = k * n;
    const u = k * m;
    const W = k * z * z;
    for (let i = 0; i < m; i++) {
      let v = this.#feed[i];
      for (let l = 0; l < n; l++) v += gain[i * width + l] * dx[c + l];
      for (let j = 0; j < columns; j++) v += gain[i * width + n + j] * endMultiplier[j];
      du[u + i] = v;
    }
    for (let i = 0; i < n; i++) {
      let y = this.#offset[i];
      for (let l = 0; l < n; l++) y += middle[i * z + l] * dx[c + l];
      for (let l = 0; l < m; l++) y += middle[i * z + n + l] * du[u + l];
      vector[i] = y;
      dx[c + n + i] = 2 * y - dx[c + i];
    }
    // Eᵀ costate = P⁺ dx⁺ + p⁺ + ½ (W (y, du) + g)_x
    for (let i = 0; i < n; i++) {
      let v = nextLinear[i] + 0.5 * right.middle[k * z + i];
      for (let l = 0; l < n; l++) {
        v += next[i * n + l] * dx[c + n + l] + 0.5 * hessian[W + i * z + l] * vector[l];
      }
      for (let l = 0; l < m; l++) v += 0.5 * hessian[W + i * z + n + l] * du[u + l];
      for (let j = 0; j < columns; j++) v += nextBorders[j * n + i] * endMultiplier[j];
      vector[z + i] = v;
    }
    for (let i = 0; i < n; i++) costate[c + i] = 0;
    for (let l = 0; l < n; l++) {
      const factor = vector[z + l];
      for (let i = 0; i < n; i++) costate[c + i] += middle[l * z + i] * factor;
    }
  }
}
