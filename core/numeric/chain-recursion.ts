import { FoldedStage } from './folded-stage.ts';
import type { Rows } from './lane-program.ts';
import { densePattern, type StagePattern, type StagePrograms, stagePrograms } from './stage-programs.ts';
import { SymmetricIndefinite } from './symmetric-indefinite.ts';

/** A pivot of E under this is exchanged for another: without exchanges it would cost digits. */
const LEAST_PIVOT = 1e-3;

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
  /** What the conditions at the ends miss, with the sign of b. */
  readonly ends: Float64Array;
}

/**
 * Solves the linear system of one Newton step on a chain: states joined by stages, controls inside the stages,
 * and conditions that tie the first state to the last. The chain is folded from its end to its beginning (a
 * Riccati recursion; Rao, Wright & Rawlings, J. Optim. Theory Appl. 99 (1998), from memory), so work grows
 * linearly with its length; the conditions at the ends border it.
 *
 *   minimise   Σ ½ (y,du)ᵀ W (y,du) + g·(y,du) + Σ ½ dxᵀ Q dx + q·dx + Σ ½ duᵀ R du + r·du
 *   subject to E dx⁺ = (2 − E) dx + h f_u du − c,  E = 1 − h/2 f_x,   B₀ dx₀ + B_N dx_N = b
 *
 * where y = (dx + dx⁺)/2 is the change in the middle of a stage. Fill the matrices, then `linearise`, `factor`
 * and `solve`; `factor` may be called again for other Q and R, `solve` for other right sides.
 */
export class ChainRecursion {
  /** f_x and f_u of each stage, row-major states × (states + controls). */
  readonly slopes: Float64Array;
  /** W of each stage, row-major, both halves. */
  readonly middleHessian: Float64Array;
  /** Q of each node, row-major, both halves. */
  readonly nodeHessian: Float64Array;
  /** Diagonal of R. */
  readonly controlHessian: Float64Array;
  readonly step: Float64Array;
  /** What the conditions at the ends give way by for a unit of their multipliers: 0 for hard ones. */
  endSoftness = 0;

  /** The solution: changes of states and controls, new multipliers of stages and ends. */
  readonly dx: Float64Array;
  readonly du: Float64Array;
  readonly costate: Float64Array;
  readonly endMultiplier: Float64Array;

  /** Conditions that reach the last state come first: only they need a column of their own. */
  readonly #columns: number;
  readonly #rows: number;
  readonly #stages: readonly FoldedStage[];
  /** What the stages keep, one after the other. */
  readonly #room: Float64Array;
  readonly #size: number;
  readonly #places: ReturnType<typeof FoldedStage.places>;
  readonly #sinks: ReturnType<typeof sinksOf>;
  readonly #pivots: Float64Array;
  #programs: StagePrograms;
  readonly #border: SymmetricIndefinite;
  /** Of the last node: its cost, the linear part of it, and the columns of the conditions. */
  readonly #lastCost: Float64Array;
  readonly #lastLinear: Float64Array;
  readonly #lastBorders: Float64Array;
  readonly #ends: Float64Array;
  /** What the controls of each stage and of those after it add to the conditions' block, (stages + 1) × columns². */
  readonly #collected: Float64Array;
  /** Negative eigenvalues met from each stage on. */
  readonly #negative: Int32Array;

  /**
   * `startRows`, `endRows`: B₀ and B_N, row-major conditions × states; conditions that reach the last state come
   * first, or the others cost time too. `pattern` as `expect` takes it.
   */
  constructor(
    readonly states: number,
    readonly controls: number,
    readonly stages: number,
    private readonly startRows: Float64Array,
    endRows: Float64Array,
    pattern?: StagePattern,
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
    const shared = FoldedStage.workSpace(n, m, columns);
    const size = FoldedStage.size(n, m, columns);
    const room = new Float64Array(stages * size);
    this.#room = room;
    this.#size = size;
    this.#places = FoldedStage.places(n, m, columns);
    this.#sinks = sinksOf(n, z);
    this.#pivots = new Float64Array(stages * n);
    this.#programs = stagePrograms(n, m, pattern ?? densePattern(n, m));
    this.#stages = Array.from(
      { length: stages },
      (_, k) => new FoldedStage(n, m, columns, shared, room.subarray(k * size, (k + 1) * size)),
    );
    this.#border = new SymmetricIndefinite(n + this.#rows);
    this.#lastCost = new Float64Array(n * n);
    this.#lastLinear = new Float64Array(n);
    this.#lastBorders = endRows.slice(0, columns * n);
    this.#ends = new Float64Array(n + this.#rows);
    this.#collected = new Float64Array((stages + 1) * columns * columns);
    this.#negative = new Int32Array(stages + 1);
  }

  /** What can differ from zero in `slopes` and `middleHessian` from now on; everything, unless told. */
  expect(pattern: StagePattern): void {
    this.#programs = stagePrograms(this.states, this.controls, pattern);
  }

  /** Takes the slopes, steps and W of the stages in; false when a stage's equations cannot be solved for x⁺. */
  linearise(): boolean {
    const { states: n, controls: m, stages, slopes, step } = this;
    const z = n + m;
    const pivots = this.#pivots;
    this.#programs.middle.run(
      stages,
      { values: slopes, at: 0, width: n * z },
      [{ values: step, at: 0, width: 1, columns: 1 }],
      [
        { rows: this.#rowsAt(this.#places.middle), ...this.#sinks.middle },
        { rows: { values: pivots, at: 0, width: n }, ...this.#sinks.pivots },
      ],
    );
    for (let k = 0; k < stages; k++) {
      let least = Infinity;
      for (let i = k * n; i < (k + 1) * n; i++) least = Math.min(least, Math.abs(pivots[i]));
      if (least >= LEAST_PIVOT && least < Infinity) continue;
      if (!this.#stages[k].middleAnew(slopes, k * n * z, 0.5 * step[k])) return false;
    }
    this.#bend(0, stages);
    return true;
  }

  /** Takes W of stages `from` to before `to` in. */
  #bend(from: number, to: number): void {
    const z = this.states + this.controls;
    this.#programs.own.run(
      to - from,
      this.#rowsAt(this.#places.middle, from),
      [{ values: this.middleHessian, at: from * z * z, width: z * z, columns: z * z }],
      [{ rows: this.#rowsAt(this.#places.own, from), ...this.#sinks.own }],
    );
  }

  /** A place in the room of each stage, from stage `first` on. */
  #rowsAt(place: number, first = 0): Rows {
    return { values: this.#room, at: first * this.#size + place, width: this.#size };
  }

  /**
   * Folds the matrices. Returns how many negative eigenvalues the system has beyond those that its equations
   * bring (0: the step leads to a minimum), or −1 when it is singular or the fold of an indefinite one meets a
   * singular stage on the way.
   *
   * @param relax called with a stage where the fold proves indefinite: changes W from that stage on and returns the
   *   last stage changed, from which it is folded again; −1 to go on as it is
   * @param whole false where it is enough to know that there are any: then the fold ends where that is sure
   */
  factor(relax?: (stage: number) => number, whole = true): number {
    let first = this.stages - 1;
    for (;;) {
      const negative = this.#fold(first, relax, whole);
      if (negative <= 0 || !relax) return negative;
      // The beginning is what shows it: only there the conditions at the start come in.
      first = relax(0);
      if (first < 0) return negative;
      this.#bend(0, first + 1);
    }
  }

  /** Folds from stage `first` down to the beginning, what follows being folded already. */
  #fold(first: number, relax: ((stage: number) => number) | undefined, whole: boolean): number {
    const { states: n, controls: m, stages, nodeHessian, controlHessian } = this;
    const columns = this.#columns;
    const rows = this.#rows;
    const border = this.#border.matrix.fill(0);
    const size = n + rows;
    const share = columns * columns;
    const collected = this.#collected;
    let patient = relax;
    if (first === stages - 1) {
      for (let i = 0; i < n * n; i++) this.#lastCost[i] = nodeHessian[stages * n * n + i];
      this.#negative.fill(0);
    }
    for (let k = first; k >= 0; ) {
      const next = k + 1 < stages ? this.#stages[k + 1] : null;
      const to = k * share;
      const from = to + share;
      for (let i = 0; i < share; i++) collected[to + i] = collected[from + i];
      const count = this.#stages[k].fold(
        next ? next.cost : this.#lastCost,
        next ? next.borders : this.#lastBorders,
        nodeHessian,
        k * n * n,
        controlHessian,
        k * m,
        collected,
        to,
      );
      if (count !== 0 && patient) {
        const again = patient(k);
        if (again >= k) {
          this.#bend(k, again + 1);
          k = again;
          continue;
        }
        patient = undefined;
      }
      if (count < 0) return -1;
      this.#negative[k] = this.#negative[k + 1] + count;
      // Each condition at the end makes up for one at most: more of them, and the rest of the fold cannot help.
      if (!whole && !relax && this.#negative[k] > columns) return this.#negative[k] - columns;
      k--;
    }
    const { cost, borders } = this.#stages[0];
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) border[i * size + j] = cost[i * n + j];
    }
    for (let r = 0; r < columns; r++) {
      for (let c = 0; c <= r; c++) border[(n + r) * size + n + c] = collected[r * columns + c];
    }
    for (let r = 0; r < rows; r++) {
      for (let i = 0; i < n; i++) {
        const v = this.startRows[r * n + i] + (r < columns ? borders[r * n + i] : 0);
        border[(n + r) * size + i] = v;
        border[i * size + n + r] = v;
      }
      border[(n + r) * size + n + r] -= this.endSoftness;
      for (let c = 0; c < r; c++) border[(n + c) * size + n + r] = border[(n + r) * size + n + c];
    }
    if (!this.#border.factor()) return -1;
    return this.#negative[0] + this.#border.negative - rows;
  }

  /** Solves for one right side with the matrices last folded; the answer is in dx, du and the multipliers. */
  solve(right: ChainRightSide): void {
    const { states: n, stages } = this;
    const rows = this.#rows;
    const ends = this.#ends;
    for (let r = 0; r < rows; r++) ends[n + r] = right.ends[r];
    for (let i = 0; i < n; i++) this.#lastLinear[i] = right.node[stages * n + i];
    let cost = this.#lastCost;
    let linear = this.#lastLinear;
    let borders = this.#lastBorders;
    for (let k = stages - 1; k >= 0; k--) {
      const stage = this.#stages[k];
      stage.foldRight(right, k, cost, linear, borders, ends, this.middleHessian);
      cost = stage.cost;
      linear = stage.linear;
      borders = stage.borders;
    }
    for (let i = 0; i < n; i++) ends[i] = -linear[i];
    this.#border.solve(ends);
    for (let r = 0; r < rows; r++) this.endMultiplier[r] = ends[n + r];
    for (let i = 0; i < n; i++) this.dx[i] = ends[i];
    for (let k = 0; k < stages; k++) {
      const next = k + 1 < stages ? this.#stages[k + 1] : null;
      this.#stages[k].unfold(
        right,
        k,
        next ? next.cost : this.#lastCost,
        next ? next.linear : this.#lastLinear,
        next ? next.borders : this.#lastBorders,
        this.endMultiplier,
        this.dx,
        this.du,
        this.costate,
        this.middleHessian,
      );
    }
  }
}

/** Which output of the stages' programs goes where. */
function sinksOf(n: number, z: number) {
  const range = (length: number, from: number) => Int32Array.from({ length }, (_, i) => from + i);
  const whole = range(n * z, 0);
  const upper = [];
  for (let i = 0; i < z; i++) for (let j = i; j < z; j++) upper.push(i * z + j);
  return {
    middle: { output: whole, column: whole },
    pivots: { output: range(n, n * z), column: range(n, 0) },
    own: { output: range(upper.length, 0), column: Int32Array.from(upper) },
  };
}
