import type { ChainFailure, ChainProblem } from './chain-problem.ts';
import type { ChainRecursion } from './chain-recursion.ts';
import type { Derivatives } from './derivatives.ts';
import type { Rows } from './lane-program.ts';
import type { StagePattern } from './stage-programs.ts';

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
  /** Inputs of the stages, and what their outputs are weighted by. */
  readonly #middles: Float64Array;
  readonly #weights: Float64Array;
  readonly #values: Float64Array;
  readonly #gradient: Float64Array;
  readonly #limitWeights: Float64Array;
  #stage: Derivatives;
  #cost: Derivatives;
  #limits: Derivatives | null;

  constructor(public problem: ChainProblem) {
    const n = problem.states.length;
    const m = problem.controls.length;
    const N = problem.stages;
    const z = n + m;
    const g = problem.limits?.names.length ?? 0;
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
    this.#middles = new Float64Array(N * z);
    this.#weights = new Float64Array(N * (n + 1));
    this.#values = new Float64Array(N * problem.stage.outputCount);
    this.#gradient = new Float64Array(N * z);
    this.#limitWeights = new Float64Array((N + 1) * g);
    this.#stage = problem.stage.derivativesOf(0, n + 1);
    this.#cost = problem.stage.derivativesOf(n, n + 1);
    this.#limits = problem.limits ? problem.limits.formula.derivativesOf(0, g) : null;
  }

  /** What the stages' slopes and Hessians can have beside zeros. */
  get pattern(): StagePattern {
    return { slopes: this.#stage.slopePlaces, hessian: this.#stage.hessianPlaces };
  }

  /** Another problem of the same size: what its formulas leave at zero is zero in `recursion` too. */
  take(problem: ChainProblem, recursion: ChainRecursion): void {
    const before = this.problem;
    this.problem = problem;
    const { stage, limits } = problem;
    if (stage !== before.stage) {
      this.#stage = stage.derivativesOf(0, this.n + 1);
      this.#cost = stage.derivativesOf(this.n, this.n + 1);
      recursion.expect(this.pattern);
      for (const part of [this.costSlope, this.#gradient, recursion.slopes, recursion.middleHessian])
        part.fill(0);
    }
    if (limits && limits.formula !== before.limits?.formula) {
      this.#limits = limits.formula.derivativesOf(0, this.limitCount);
      for (const part of [this.limitSlopes, this.limitHessian]) part.fill(0);
    }
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
    const outputs = stage.outputCount;
    this.#toMiddles(x, u);
    stage.valuesOver(
      N,
      rows(this.#middles, n + this.m),
      rows(stageData, stage.dataCount),
      rows(values, outputs),
    );
    let objective = 0;
    for (let k = 0; k < N; k++) {
      const c = k * n;
      const v = k * outputs;
      const h = step[k];
      for (let i = 0; i < n; i++) {
        missed.defect[c + i] = x[c + n + i] - x[c + i] - h * values[v + i] - (forcing ? forcing[c + i] : 0);
      }
      objective += h * values[v + n];
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
    formula.valuesOver(N + 1, rows(x, n), rows(data, formula.dataCount), rows(to, g));
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
    const { n, m, N, lagrangian, lagrangianControl, objectiveSlope, costSlope } = this;
    const z = n + m;
    const { stage, stageData, step } = this.problem;
    const weights = this.#weights;
    const gradient = this.#gradient;
    this.#toMiddles(x, u);
    for (let k = 0; k < N; k++) {
      const w = k * (n + 1);
      recursion.step[k] = step[k];
      for (let i = 0; i < n; i++) weights[w + i] = step[k] * costates[k * n + i];
      weights[w + n] = step[k];
    }
    this.#stage.run(N, rows(this.#middles, z), rows(stageData, stage.dataCount), rows(weights, n + 1), {
      jacobian: rows(recursion.slopes, n * z),
      lastSlopes: rows(costSlope, z),
      hessian: rows(recursion.middleHessian, z * z),
      gradient: rows(gradient, z),
    });
    lagrangian.fill(0);
    objectiveSlope.fill(0);
    for (let k = 0; k < N; k++) {
      const c = k * n;
      const from = k * z;
      for (let j = 0; j < z; j++) costSlope[from + j] *= step[k];
      for (let j = 0; j < n; j++) {
        const half = 0.5 * gradient[from + j];
        lagrangian[c + j] += half + costates[c + j];
        lagrangian[c + n + j] += half - costates[c + j];
        objectiveSlope[c + j] += 0.5 * costSlope[from + j];
        objectiveSlope[c + n + j] += 0.5 * costSlope[from + j];
      }
      for (let j = 0; j < m; j++) lagrangianControl[k * m + j] = gradient[from + n + j];
    }
    this.#addEnds(ends);
    this.#lineariseLimits(x, limitMultipliers);
  }

  /** Hessians of the cost alone of stages `from` to before `to`, into their place among stages × (states + controls)². */
  costHessian(from: number, to: number, hessians: Float64Array): void {
    const { n, m } = this;
    const z = n + m;
    const { stage, stageData, step } = this.problem;
    this.#cost.run(
      to - from,
      rows(this.#middles, z, from),
      rows(stageData, stage.dataCount, from),
      rows(step, 1, from),
      { hessian: rows(hessians, z * z, from) },
    );
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

  #toMiddles(x: Float64Array, u: Float64Array): void {
    const { n, m, N } = this;
    const middles = this.#middles;
    let at = 0;
    for (let k = 0; k < N; k++) {
      const c = k * n;
      for (let i = 0; i < n; i++) middles[at++] = 0.5 * (x[c + i] + x[c + n + i]);
      for (let i = 0; i < m; i++) middles[at++] = u[k * m + i];
    }
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
    const { n, N, limitCount: g, lagrangian, limitSlopes } = this;
    const { limits } = this.problem;
    if (!limits || !this.#limits) return;
    const weights = this.#limitWeights;
    for (let i = 0; i < weights.length; i++) weights[i] = -multipliers[i];
    this.#limits.run(N + 1, rows(x, n), rows(limits.data, limits.formula.dataCount), rows(weights, g), {
      jacobian: rows(limitSlopes, g * n),
      hessian: rows(this.limitHessian, n * n),
    });
    for (let k = 0; k <= N; k++) {
      for (let r = k * g; r < (k + 1) * g; r++) {
        for (let i = 0; i < n; i++) lagrangian[k * n + i] += weights[r] * limitSlopes[r * n + i];
      }
    }
  }
}

/** Rows of `width` numbers one after the other, from number `first` on. */
function rows(values: Float64Array, width: number, first = 0): Rows {
  return { values, at: first * width, width };
}
