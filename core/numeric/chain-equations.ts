import type { ChainFailure, ChainProblem } from './chain-problem.ts';
import type { ChainRecursion } from './chain-recursion.ts';

/** What a point misses: the stages' equations, the conditions at the ends, limits against their slacks. */
export interface Missed {
  /** Stages × states. */
  readonly defect: Float64Array;
  readonly ends: Float64Array;
  /** Nodes × limits. */
  readonly limit: Float64Array;
}

/** A chain problem's objective, equations and limits at a point, and their slopes there. */
export class ChainEquations {
  readonly n: number;
  readonly m: number;
  readonly N: number;
  readonly limitCount: number;
  readonly endCount: number;
  /** Slopes of the limits, nodes × limits × states. */
  readonly limitSlopes: Float64Array;
  /** Hessian of the limits times their multipliers (negative), nodes × states × states. */
  readonly limitHessian: Float64Array;
  /** Slopes of the stages' costs at their middles, stages × (states + controls). */
  readonly costSlope: Float64Array;
  /** Gradient of the objective to the states, nodes × states. */
  readonly objectiveSlope: Float64Array;
  /** Gradient of the Lagrangian without the bounds' part. */
  readonly lagrangian: Float64Array;
  readonly lagrangianControl: Float64Array;
  readonly #inputs: Float64Array;
  readonly #values: Float64Array;
  readonly #weights: Float64Array;
  readonly #jacobian: Float64Array;
  readonly #hessian: Float64Array;
  readonly #limitValues: Float64Array;
  readonly #limitWeights: Float64Array;
  readonly #limitJacobian: Float64Array;
  readonly #limitHessian: Float64Array;

  constructor(public problem: ChainProblem) {
    const n = problem.states.length;
    const m = problem.controls.length;
    const N = problem.stages;
    const z = n + m;
    const g = problem.limits?.names.length ?? 0;
    const outputs = problem.stage.outputCount;
    this.n = n;
    this.m = m;
    this.N = N;
    this.limitCount = g;
    this.endCount = problem.ends?.value.length ?? 0;
    this.limitSlopes = new Float64Array((N + 1) * g * n);
    this.limitHessian = new Float64Array((N + 1) * n * n);
    this.costSlope = new Float64Array(N * z);
    this.objectiveSlope = new Float64Array((N + 1) * n);
    this.lagrangian = new Float64Array((N + 1) * n);
    this.lagrangianControl = new Float64Array(N * m);
    this.#inputs = new Float64Array(z);
    this.#values = new Float64Array(outputs);
    this.#weights = new Float64Array(outputs);
    this.#jacobian = new Float64Array(outputs * z);
    this.#hessian = new Float64Array(z * z);
    this.#limitValues = new Float64Array(g);
    this.#limitWeights = new Float64Array(g);
    this.#limitJacobian = new Float64Array(g * n);
    this.#limitHessian = new Float64Array(n * n);
  }

  /** Work space for what a point misses. */
  missed(): Missed {
    return {
      defect: new Float64Array(this.N * this.n),
      ends: new Float64Array(this.endCount),
      limit: new Float64Array((this.N + 1) * this.limitCount),
    };
  }

  /** Objective at a point; violations into `missed`. */
  evaluate(x: Float64Array, u: Float64Array, slack: Float64Array, missed: Missed): number {
    const { n, N, limitCount: g } = this;
    const { stage, stageData, step, forcing } = this.problem;
    const values = this.#values;
    const inputs = this.#inputs;
    let objective = 0;
    for (let k = 0; k < N; k++) {
      const c = k * n;
      this.#toMiddle(x, u, k);
      stage.values(inputs, stageData, k * stage.dataCount, values);
      for (let i = 0; i < n; i++) {
        missed.defect[c + i] = x[c + n + i] - x[c + i] - step[k] * values[i] - (forcing ? forcing[c + i] : 0);
      }
      objective += step[k] * values[n];
    }
    this.#missEnds(x, missed.ends);
    this.limits(x, missed.limit);
    for (let i = 0; i < (N + 1) * g; i++) missed.limit[i] -= slack[i];
    return objective;
  }

  /** The limits' values at x, nodes × limits. */
  limits(x: Float64Array, to: Float64Array): void {
    const { n, N, limitCount: g } = this;
    const { limits } = this.problem;
    if (!limits) return;
    const { formula, data } = limits;
    const inputs = this.#inputs;
    for (let k = 0; k <= N; k++) {
      for (let i = 0; i < n; i++) inputs[i] = x[k * n + i];
      formula.values(inputs, data, k * formula.dataCount, this.#limitValues);
      for (let i = 0; i < g; i++) to[k * g + i] = this.#limitValues[i];
    }
  }

  /**
   * Slopes and Hessians at a point: those of the stages into the recursion, `costates` (stages × states), `ends`
   * and `limitMultipliers` (nodes × limits) being the multipliers they are taken with.
   */
  linearise(
    x: Float64Array,
    u: Float64Array,
    costates: Float64Array,
    ends: Float64Array,
    limitMultipliers: Float64Array,
    recursion: ChainRecursion,
  ): void {
    const { n, m, N, lagrangian, lagrangianControl, objectiveSlope } = this;
    const z = n + m;
    const { stage, stageData, step } = this.problem;
    const weights = this.#weights;
    const jacobian = this.#jacobian;
    lagrangian.fill(0);
    objectiveSlope.fill(0);
    for (let k = 0; k < N; k++) {
      const c = k * n;
      const h = step[k];
      recursion.step[k] = h;
      this.#toMiddle(x, u, k);
      for (let i = 0; i < n; i++) weights[i] = h * costates[c + i];
      weights[n] = h;
      stage.derivatives(
        this.#inputs,
        stageData,
        k * stage.dataCount,
        weights,
        this.#values,
        jacobian,
        this.#hessian,
      );
      recursion.middleHessian.set(this.#hessian, k * z * z);
      const slopes = recursion.slopes;
      for (let i = 0; i < n * z; i++) slopes[k * n * z + i] = jacobian[i];
      for (let j = 0; j < z; j++) {
        const cost = h * jacobian[n * z + j];
        this.costSlope[k * z + j] = cost;
        let total = cost;
        for (let i = 0; i < n; i++) total += weights[i] * jacobian[i * z + j];
        if (j < n) {
          lagrangian[c + j] += 0.5 * total + costates[c + j];
          lagrangian[c + n + j] += 0.5 * total - costates[c + j];
          objectiveSlope[c + j] += 0.5 * cost;
          objectiveSlope[c + n + j] += 0.5 * cost;
        } else lagrangianControl[k * m + j - n] = total;
      }
    }
    this.#addEnds(ends);
    this.#lineariseLimits(x, limitMultipliers);
  }

  /** Hessian of the cost alone of stage k, written to its place among stages × (states + controls)². */
  costHessian(x: Float64Array, u: Float64Array, k: number, to: Float64Array): void {
    const { n, m } = this;
    const { stage, stageData, step } = this.problem;
    const weights = this.#weights.fill(0);
    this.#toMiddle(x, u, k);
    weights[n] = step[k];
    const at = k * stage.dataCount;
    stage.derivatives(this.#inputs, stageData, at, weights, this.#values, this.#jacobian, this.#hessian);
    to.set(this.#hessian, k * (n + m) ** 2);
  }

  /** Sum of all violations. */
  norm({ defect, ends, limit }: Missed): number {
    let sum = 0;
    for (let i = 0; i < defect.length; i++) sum += Math.abs(defect[i]);
    for (let i = 0; i < ends.length; i++) sum += Math.abs(ends[i]);
    for (let i = 0; i < limit.length; i++) sum += Math.abs(limit[i]);
    return sum;
  }

  /** The equation or limit that is missed most. */
  worst({ defect, ends, limit }: Missed): ChainFailure['worst'] {
    const { n, limitCount: g, problem } = this;
    let worst = { name: problem.states[0] ?? '', at: 0, by: 0 };
    const look = (part: Float64Array, width: number, name: (i: number) => string) => {
      for (let i = 0; i < part.length; i++) {
        const by = Math.abs(part[i]);
        if (by > worst.by || (Number.isNaN(by) && !Number.isNaN(worst.by)))
          worst = { name: name(i % width), at: Math.floor(i / width), by };
      }
    };
    look(defect, n, i => problem.states[i]);
    look(limit, g, i => problem.limits?.names[i] ?? '');
    look(ends, ends.length, i => `end condition ${i + 1}`);
    return worst;
  }

  /** Change of the objective by changes of states and controls, to first order. */
  objectiveChange(dx: Float64Array, du: Float64Array): number {
    const { n, m, N } = this;
    const z = n + m;
    let change = 0;
    for (let i = 0; i < dx.length; i++) change += this.objectiveSlope[i] * dx[i];
    for (let k = 0; k < N; k++) {
      for (let i = 0; i < m; i++) change += this.costSlope[k * z + n + i] * du[k * m + i];
    }
    return change;
  }

  #toMiddle(x: Float64Array, u: Float64Array, k: number): void {
    const { n, m } = this;
    const inputs = this.#inputs;
    const c = k * n;
    for (let i = 0; i < n; i++) inputs[i] = 0.5 * (x[c + i] + x[c + n + i]);
    for (let i = 0; i < m; i++) inputs[n + i] = u[k * m + i];
  }

  #missEnds(x: Float64Array, to: Float64Array): void {
    const { n, N } = this;
    const { ends } = this.problem;
    if (!ends) return;
    for (let r = 0; r < to.length; r++) {
      let v = ends.value[r];
      for (let i = 0; i < n; i++) v -= ends.start[r * n + i] * x[i] + ends.end[r * n + i] * x[N * n + i];
      to[r] = v;
    }
  }

  #addEnds(multipliers: Float64Array): void {
    const { n, N, lagrangian } = this;
    const { ends } = this.problem;
    if (!ends) return;
    for (let r = 0; r < multipliers.length; r++) {
      for (let i = 0; i < n; i++) {
        lagrangian[i] += multipliers[r] * ends.start[r * n + i];
        lagrangian[N * n + i] += multipliers[r] * ends.end[r * n + i];
      }
    }
  }

  #lineariseLimits(x: Float64Array, multipliers: Float64Array): void {
    const { n, N, limitCount: g, lagrangian } = this;
    const { limits } = this.problem;
    if (!limits) return;
    const { formula, data } = limits;
    const inputs = this.#inputs;
    const jacobian = this.#limitJacobian;
    for (let k = 0; k <= N; k++) {
      for (let i = 0; i < n; i++) inputs[i] = x[k * n + i];
      for (let i = 0; i < g; i++) this.#limitWeights[i] = -multipliers[k * g + i];
      formula.derivatives(
        inputs,
        data,
        k * formula.dataCount,
        this.#limitWeights,
        this.#limitValues,
        jacobian,
        this.#limitHessian,
      );
      this.limitSlopes.set(jacobian, k * g * n);
      this.limitHessian.set(this.#limitHessian, k * n * n);
      for (let r = 0; r < g; r++) {
        for (let i = 0; i < n; i++) lagrangian[k * n + i] -= multipliers[k * g + r] * jacobian[r * n + i];
      }
    }
  }
}
