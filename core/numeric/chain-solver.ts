/**
 * Primal-dual interior point for a chain, with a filter line search and second-order corrections.
 * A. Wächter & L. T. Biegler, Math. Program. 106 (2006) 25–57 (from memory); where no step is acceptable the
 * violation alone is reduced by shortest steps instead of their restoration problem.
 */

import type { ChainAnswer, ChainFailure, ChainGuess, ChainOptions, ChainProblem } from './chain-problem.ts';
import { ChainRecursion } from './chain-recursion.ts';

/** Least distance from a bound at the start, of a bound's size and of the span between two. */
const START_PUSH = 1e-2;
const WARM_PUSH = 1e-4;
/** Barrier parameter: next is the smaller of μ/5 and μ^1.5, once the error is within 10 μ. */
const BARRIER_FACTOR = 0.2;
const BARRIER_POWER = 1.5;
const BARRIER_ERROR = 10;
/** Share of the way to a bound that a step may take at least. */
const TO_BOUND = 0.99;
/** Sufficient progress in violation, in the objective, and by Armijo's rule. */
const LESS_VIOLATION = 1e-5;
const LESS_OBJECTIVE = 1e-5;
const ARMIJO = 1e-4;
/** When a step counts as one toward the objective: (−slope)^2.3 α > violation^1.1. */
const SWITCH_VIOLATION = 1.1;
const SWITCH_SLOPE = 2.3;
const MOST_CORRECTIONS = 4;
/** Full steps in a row that only old points forbid before steps are damped. */
const MOST_BLOCKED = 4;
const NO_FILTER: readonly number[] = [];
/** Where steps prove too long for the equations' curvature, moving itself is made dear, and cheap again after. */
const STRAIN = 0.1;
const LEAST_DAMPING = 1e-4;
const MOST_DAMPING = 1e4;
const BLOCKED_DAMPING = 1e-3;
const FLOOR_DECAY = 0.9;
const DAMPING_UP = 6;
const DAMPING_DOWN = 4;
/** How the belief in the equations' curvature falls and rises again, and where it is given up. */
const SOFTER = 0.3;
const HARDER = 3;
const LEAST_SHARE = 0.02;
const SHORTEST_STEP = 1e-10;
const MOST_RESTORATIONS = 60;
/** Multipliers of bounds stay within this factor of μ over the distance. */
const MULTIPLIER_BAND = 1e10;
/** Weight of a unit of movement in shortest steps. */
const RESTORING = 1e-3;
const FIRST_REGULARISATION = 1e-4;
const GREATEST_REGULARISATION = 1e20;

export function solveChain(
  problem: ChainProblem,
  guess: ChainGuess,
  options: ChainOptions = {},
): ChainAnswer | ChainFailure {
  return new ChainSolver(problem).solve(guess, options);
}

/** Work space for problems of one size and structure; `solve` may be called again and again. */
export class ChainSolver {
  private readonly n: number;
  private readonly m: number;
  private readonly z: number;
  private readonly N: number;
  private readonly limitCount: number;
  private readonly recursion: ChainRecursion;
  private readonly x: Float64Array;
  private readonly u: Float64Array;
  private readonly y: Float64Array;
  private readonly nu: Float64Array;
  private readonly s: Float64Array;
  private readonly v: Float64Array;
  private readonly zLowX: Float64Array;
  private readonly zHighX: Float64Array;
  private readonly zLowU: Float64Array;
  private readonly zHighU: Float64Array;
  private readonly dLowX: Float64Array;
  private readonly dHighX: Float64Array;
  private readonly dLowU: Float64Array;
  private readonly dHighU: Float64Array;
  private readonly ds: Float64Array;
  private readonly dv: Float64Array;
  private readonly xTrial: Float64Array;
  private readonly uTrial: Float64Array;
  private readonly sTrial: Float64Array;
  private readonly dx: Float64Array;
  private readonly du: Float64Array;
  private readonly dy: Float64Array;
  private readonly dnu: Float64Array;
  private readonly right: {
    defect: Float64Array;
    middle: Float64Array;
    node: Float64Array;
    control: Float64Array;
    ends: Float64Array;
  };
  /** Violations at the current point and at a trial point: stages, ends, limits. */
  private readonly missed: { defect: Float64Array; ends: Float64Array; limit: Float64Array };
  private readonly trialMissed: { defect: Float64Array; ends: Float64Array; limit: Float64Array };
  private readonly limitSlopes: Float64Array;
  private readonly costSlope: Float64Array;
  private readonly objectiveSlope: Float64Array;
  private readonly middle: Float64Array;
  private readonly values: Float64Array;
  private readonly weights: Float64Array;
  private readonly jacobian: Float64Array;
  private readonly hessian: Float64Array;
  private readonly lagrangian: Float64Array;
  private readonly lagrangianU: Float64Array;
  private readonly limitValues: Float64Array;
  private readonly limitWeights: Float64Array;
  private readonly limitJacobian: Float64Array;
  private readonly limitHessian: Float64Array;
  private readonly baseNode: Float64Array;
  private readonly baseControl: Float64Array;
  /** Work space of the second-order corrections. */
  private readonly corrected: { defect: Float64Array; ends: Float64Array; limit: Float64Array };
  private readonly nodeKept: Float64Array;
  private readonly directionParts: readonly Float64Array[];
  private readonly directionKept: readonly Float64Array[];
  /** Hessians of the stages' costs alone and with the equations', for steps that are softened. */
  private costHessian: Float64Array | null = null;
  private wholeHessian: Float64Array | null = null;
  private share = 1;
  private separated = false;
  private soften = false;
  private objective = 0;
  private trialObjective = 0;

  constructor(private problem: ChainProblem) {
    const n = problem.states.length;
    const m = problem.controls.length;
    const N = problem.stages;
    const z = n + m;
    this.n = n;
    this.m = m;
    this.z = z;
    this.N = N;
    const none = new Float64Array(0);
    const { start, end } = problem.ends ?? { start: none, end: none };
    const rows = start.length / n;
    const g = problem.limits?.names.length ?? 0;
    this.limitCount = g;
    this.recursion = new ChainRecursion(n, m, N, start, end);
    const states = () => new Float64Array((N + 1) * n);
    const controls = () => new Float64Array(N * m);
    const limits = () => new Float64Array((N + 1) * g);
    this.x = states();
    this.u = controls();
    this.y = new Float64Array(N * n);
    this.nu = new Float64Array(rows);
    this.s = limits();
    this.v = limits();
    this.zLowX = states();
    this.zHighX = states();
    this.zLowU = controls();
    this.zHighU = controls();
    this.dLowX = states();
    this.dHighX = states();
    this.dLowU = controls();
    this.dHighU = controls();
    this.ds = limits();
    this.dv = limits();
    this.xTrial = states();
    this.uTrial = controls();
    this.sTrial = limits();
    this.dx = states();
    this.du = controls();
    this.dy = new Float64Array(N * n);
    this.dnu = new Float64Array(rows);
    this.right = {
      defect: new Float64Array(N * n),
      middle: new Float64Array(N * z),
      node: states(),
      control: controls(),
      ends: new Float64Array(rows),
    };
    const missed = () => ({
      defect: new Float64Array(N * n),
      ends: new Float64Array(rows),
      limit: limits(),
    });
    this.missed = missed();
    this.trialMissed = missed();
    this.limitSlopes = new Float64Array((N + 1) * g * n);
    this.costSlope = new Float64Array(N * z);
    this.objectiveSlope = states();
    this.middle = new Float64Array(z);
    this.values = new Float64Array(problem.stage.outputCount);
    this.weights = new Float64Array(problem.stage.outputCount);
    this.jacobian = new Float64Array(problem.stage.outputCount * z);
    this.hessian = new Float64Array(z * z);
    this.lagrangian = states();
    this.lagrangianU = controls();
    this.limitValues = new Float64Array(g);
    this.limitWeights = new Float64Array(g);
    this.limitJacobian = new Float64Array(g * n);
    this.limitHessian = new Float64Array(n * n);
    this.baseNode = new Float64Array((N + 1) * n * n);
    this.baseControl = controls();
    this.corrected = missed();
    this.nodeKept = states();
    this.directionParts = [this.dx, this.du, this.ds, this.dy, this.dnu, this.dv].concat([
      this.dLowX,
      this.dHighX,
      this.dLowU,
      this.dHighU,
    ]);
    this.directionKept = this.directionParts.map(part => part.slice());
  }

  solve(
    guess: ChainGuess,
    options: ChainOptions = {},
    problem: ChainProblem = this.problem,
  ): ChainAnswer | ChainFailure {
    this.problem = problem;
    const tolerance = options.tolerance ?? 1e-7;
    const mostSteps = options.mostSteps ?? 500;
    let mu = options.barrier ?? (guess.multipliers ? 1e-4 : 0.1);
    const leastMu = tolerance / 11;
    this.soften = options.soften ?? false;
    this.share = 1;
    this.begin(guess, mu);
    this.objective = this.evaluate(this.x, this.u, this.s, this.missed);
    const filter: number[] = [];
    let violation = this.norm(this.missed);
    const most = 1e4 * Math.max(1, violation);
    const least = 1e-4 * Math.max(1, violation);
    let lastRegularisation = 0;
    let restorations = 0;
    let alpha = 0;
    let regularised = 0;
    let iteration = 0;
    let blocked = 0;
    let damping = 0;
    let floor = 0;
    for (; iteration < mostSteps; iteration++) {
      if (options.cancelled?.()) return this.failure('cancelled', iteration);
      if (!(violation < Infinity) || Number.isNaN(this.objective))
        return this.failure('not a number', iteration);
      this.linearise();
      const error = this.error(0);
      options.onStep?.({
        iteration,
        objective: this.objective,
        violation,
        error,
        barrier: mu,
        regularised,
        alpha,
      });
      if (error <= tolerance) return this.answer(iteration, error);
      while (mu > leastMu && this.error(mu) <= BARRIER_ERROR * mu) {
        mu = Math.max(leastMu, Math.min(BARRIER_FACTOR * mu, mu ** BARRIER_POWER));
        filter.length = 0;
      }
      regularised = this.direction(mu, lastRegularisation, damping);
      if (regularised < 0) return this.failure('not a number', iteration);
      if (regularised > damping) lastRegularisation = regularised;
      const toBound = Math.max(TO_BOUND, 1 - mu);
      const alphaMost = this.primalReach(toBound);
      const alphaDual = this.dualReach(toBound);
      const phi = this.barrierObjective(mu, this.x, this.u, this.s, this.objective);
      const slope = this.barrierSlope(mu);
      alpha = alphaMost;
      let accepted = false;
      let augment = true;
      for (let trial = 0; alpha > SHORTEST_STEP; trial++) {
        this.tryStep(alpha);
        const trialViolation = this.norm(this.trialMissed);
        const trialPhi = this.barrierObjective(
          mu,
          this.xTrial,
          this.uTrial,
          this.sTrial,
          this.trialObjective,
        );
        const verdict = this.judge(
          filter,
          violation,
          phi,
          slope,
          alpha,
          trialViolation,
          trialPhi,
          least,
          most,
        );
        if (verdict) {
          augment = verdict === 'by filter';
          accepted = true;
          break;
        }
        if (trial === 0) {
          blocked = this.judge(NO_FILTER, violation, phi, slope, alpha, trialViolation, trialPhi, least, most)
            ? blocked + 1
            : 0;
          if (blocked > MOST_BLOCKED) {
            blocked = 0;
            floor = Math.max(BLOCKED_DAMPING, 10 * floor);
            damping = Math.max(damping, floor);
          }
        }
        if (trial === 0 && trialViolation >= violation) {
          const corrected = this.correct(
            mu,
            toBound,
            filter,
            violation,
            phi,
            slope,
            least,
            most,
            alpha,
            trialViolation,
          );
          if (corrected) {
            augment = corrected === 'by filter';
            accepted = true;
            break;
          }
        }
        alpha *= 0.5;
      }
      if (!accepted) {
        if (error <= 10 * tolerance) return this.answer(iteration, error);
        filter.push((1 - LESS_VIOLATION) * violation, phi - LESS_OBJECTIVE * violation);
        if (++restorations > MOST_RESTORATIONS || !this.restore(mu, filter, violation, most)) {
          return this.failure('no feasible step', iteration);
        }
        this.objective = this.evaluate(this.x, this.u, this.s, this.missed);
        violation = this.norm(this.missed);
        continue;
      }
      if (augment) filter.push((1 - LESS_VIOLATION) * violation, phi - LESS_OBJECTIVE * violation);
      this.accept(alpha, alphaDual, mu);
      const now = this.norm(this.missed);
      const strained = alpha < 0.3 * alphaMost || now > Math.max(10 * violation, STRAIN);
      if (strained) damping = Math.min(MOST_DAMPING, Math.max(LEAST_DAMPING, DAMPING_UP * damping));
      else damping = damping < LEAST_DAMPING ? 0 : damping / DAMPING_DOWN;
      floor = floor < LEAST_DAMPING ? 0 : FLOOR_DECAY * floor;
      damping = Math.max(damping, floor);
      violation = now;
    }
    return this.failure('too many steps', iteration);
  }

  /** Takes the guess, pushed inside its bounds, and multipliers that fit the barrier. */
  private begin(guess: ChainGuess, mu: number): void {
    const { problem } = this;
    const warm = guess.multipliers;
    // An answer near its bounds stays there: no further from them than the barrier will let it come.
    const push = warm ? Math.min(WARM_PUSH, mu) : START_PUSH;
    inside(this.x, guess.x, problem.stateLow, problem.stateHigh, push);
    inside(this.u, guess.u, problem.controlLow, problem.controlHigh, push);
    if (warm) {
      this.y.set(warm.costate);
      this.nu.set(warm.ends);
    } else {
      this.y.fill(0);
      this.nu.fill(0);
    }
    const multipliers = (
      to: Float64Array,
      at: Float64Array,
      bound: Float64Array,
      sign: number,
      from?: Float64Array,
    ) => {
      for (let i = 0; i < at.length; i++) {
        const distance = sign * (at[i] - bound[i]);
        if (!(distance < Infinity)) to[i] = 0;
        else if (from) to[i] = Math.min(Math.max(from[i], (0.1 * mu) / distance), (10 * mu) / distance);
        else to[i] = mu / distance;
      }
    };
    multipliers(this.zLowX, this.x, problem.stateLow, 1, warm?.stateLow);
    multipliers(this.zHighX, this.x, problem.stateHigh, -1, warm?.stateHigh);
    multipliers(this.zLowU, this.u, problem.controlLow, 1, warm?.controlLow);
    multipliers(this.zHighU, this.u, problem.controlHigh, -1, warm?.controlHigh);
    this.readLimits(this.x);
    for (let i = 0; i < this.s.length; i++) {
      this.s[i] = Math.max(warm ? warm.slack[i] : this.s[i], push);
      const fit = mu / this.s[i];
      this.v[i] = warm ? Math.min(Math.max(warm.limits[i], 0.1 * fit), 10 * fit) : fit;
    }
  }

  /** Fills the slacks with the limits' values at x. */
  private readLimits(x: Float64Array): void {
    const { limits } = this.problem;
    if (!limits) return;
    const { n, limitCount: g } = this;
    for (let k = 0; k <= this.N; k++) {
      limits.formula.values(
        x.subarray(k * n, k * n + n),
        limits.data,
        k * limits.formula.dataCount,
        this.limitValues,
      );
      for (let i = 0; i < g; i++) this.s[k * g + i] = this.limitValues[i];
    }
  }

  /** Objective at a point; violations into `missed`. */
  private evaluate(x: Float64Array, u: Float64Array, s: Float64Array, missed: ChainSolver['missed']): number {
    const { n, m, N, problem, middle, values, limitCount: g } = this;
    const { stage, stageData, step, forcing, ends, limits } = problem;
    let objective = 0;
    for (let k = 0; k < N; k++) {
      const c = k * n;
      for (let i = 0; i < n; i++) middle[i] = 0.5 * (x[c + i] + x[c + n + i]);
      for (let i = 0; i < m; i++) middle[n + i] = u[k * m + i];
      stage.values(middle, stageData, k * stage.dataCount, values);
      for (let i = 0; i < n; i++) {
        missed.defect[c + i] = x[c + n + i] - x[c + i] - step[k] * values[i] - (forcing ? forcing[c + i] : 0);
      }
      objective += step[k] * values[n];
    }
    this.missEnds(x, ends, missed.ends);
    if (limits) {
      const { formula, data } = limits;
      for (let k = 0; k <= N; k++) {
        for (let i = 0; i < n; i++) middle[i] = x[k * n + i];
        formula.values(middle, data, k * formula.dataCount, this.limitValues);
        for (let i = 0; i < g; i++) missed.limit[k * g + i] = this.limitValues[i] - s[k * g + i];
      }
    }
    return objective;
  }

  private missEnds(x: Float64Array, ends: ChainProblem['ends'], to: Float64Array): void {
    if (!ends) return;
    const { n, N } = this;
    for (let r = 0; r < to.length; r++) {
      let v = ends.value[r];
      for (let i = 0; i < n; i++) v -= ends.start[r * n + i] * x[i] + ends.end[r * n + i] * x[N * n + i];
      to[r] = v;
    }
  }

  private norm({ defect, ends, limit }: ChainSolver['missed']): number {
    let sum = 0;
    for (let i = 0; i < defect.length; i++) sum += Math.abs(defect[i]);
    for (let i = 0; i < ends.length; i++) sum += Math.abs(ends[i]);
    for (let i = 0; i < limit.length; i++) sum += Math.abs(limit[i]);
    return sum;
  }

  /** Slopes and Hessians at the current point, and the gradient of the Lagrangian without bounds' parts. */
  private linearise(): void {
    const { n, m, z, N, problem, middle, weights, jacobian, hessian, recursion, x, u, y } = this;
    const { stage, stageData, step, ends, limits } = problem;
    const { lagrangian, lagrangianU } = this;
    this.separated = false;
    lagrangian.fill(0);
    this.objectiveSlope.fill(0);
    this.baseNode.fill(0);
    for (let k = 0; k < N; k++) {
      const c = k * n;
      const h = step[k];
      recursion.step[k] = h;
      for (let i = 0; i < n; i++) {
        middle[i] = 0.5 * (x[c + i] + x[c + n + i]);
        weights[i] = h * y[c + i];
      }
      weights[n] = h;
      for (let i = 0; i < m; i++) middle[n + i] = u[k * m + i];
      stage.derivatives(middle, stageData, k * stage.dataCount, weights, this.values, jacobian, hessian);
      recursion.middleHessian.set(hessian, k * z * z);
      const slopes = recursion.slopes;
      for (let i = 0; i < n * z; i++) slopes[k * n * z + i] = jacobian[i];
      for (let j = 0; j < z; j++) {
        const cost = h * jacobian[n * z + j];
        this.costSlope[k * z + j] = cost;
        let total = cost;
        for (let i = 0; i < n; i++) total += weights[i] * jacobian[i * z + j];
        if (j < n) {
          lagrangian[c + j] += 0.5 * total + y[c + j];
          lagrangian[c + n + j] += 0.5 * total - y[c + j];
          this.objectiveSlope[c + j] += 0.5 * cost;
          this.objectiveSlope[c + n + j] += 0.5 * cost;
        } else lagrangianU[k * m + j - n] = total;
      }
    }
    if (ends) {
      for (let r = 0; r < this.nu.length; r++) {
        for (let i = 0; i < n; i++) {
          lagrangian[i] += this.nu[r] * ends.start[r * n + i];
          lagrangian[N * n + i] += this.nu[r] * ends.end[r * n + i];
        }
      }
    }
    if (limits) this.lineariseLimits(limits);
  }

  private lineariseLimits({ formula, data }: NonNullable<ChainProblem['limits']>): void {
    const { n, N, limitCount: g, middle, x, v, lagrangian, baseNode } = this;
    for (let k = 0; k <= N; k++) {
      for (let i = 0; i < n; i++) middle[i] = x[k * n + i];
      for (let i = 0; i < g; i++) this.limitWeights[i] = -v[k * g + i];
      formula.derivatives(
        middle,
        data,
        k * formula.dataCount,
        this.limitWeights,
        this.limitValues,
        this.limitJacobian,
        this.limitHessian,
      );
      this.limitSlopes.set(this.limitJacobian, k * g * n);
      for (let i = 0; i < n * n; i++) baseNode[k * n * n + i] += this.limitHessian[i];
      for (let r = 0; r < g; r++) {
        for (let i = 0; i < n; i++) lagrangian[k * n + i] -= v[k * g + r] * this.limitJacobian[r * n + i];
      }
    }
  }

  /** Scaled error of the optimality conditions at barrier μ. */
  private error(mu: number): number {
    const { problem, x, u, s, v } = this;
    let dual = 0;
    let complementary = 0;
    let multipliers = 0;
    let count = 0;
    const bounds = (
      at: Float64Array,
      slope: Float64Array,
      low: Float64Array,
      high: Float64Array,
      zLow: Float64Array,
      zHigh: Float64Array,
    ) => {
      for (let i = 0; i < at.length; i++) {
        dual = Math.max(dual, Math.abs(slope[i] - zLow[i] + zHigh[i]));
        if (low[i] > -Infinity)
          complementary = Math.max(complementary, Math.abs(zLow[i] * (at[i] - low[i]) - mu));
        if (high[i] < Infinity)
          complementary = Math.max(complementary, Math.abs(zHigh[i] * (high[i] - at[i]) - mu));
        multipliers += zLow[i] + zHigh[i];
        count += 2;
      }
    };
    bounds(x, this.lagrangian, problem.stateLow, problem.stateHigh, this.zLowX, this.zHighX);
    bounds(u, this.lagrangianU, problem.controlLow, problem.controlHigh, this.zLowU, this.zHighU);
    for (let i = 0; i < s.length; i++) {
      complementary = Math.max(complementary, Math.abs(v[i] * s[i] - mu));
      multipliers += v[i];
      count++;
    }
    const boundScale = Math.max(100, multipliers / Math.max(1, count)) / 100;
    for (let i = 0; i < this.y.length; i++) multipliers += Math.abs(this.y[i]);
    count += this.y.length;
    const dualScale = Math.max(100, multipliers / Math.max(1, count)) / 100;
    let worst = 0;
    for (const part of [this.missed.defect, this.missed.ends, this.missed.limit]) {
      for (let i = 0; i < part.length; i++) worst = Math.max(worst, Math.abs(part[i]));
    }
    return Math.max(dual / dualScale, complementary / boundScale, worst);
  }

  /** Newton direction at barrier μ; returns the regularisation it needed, −1 when there is none. */
  private direction(mu: number, last: number, damping: number): number {
    const { recursion, right, missed } = this;
    this.condense(mu);
    let delta = damping;
    // Last time's share is tried with a little more of the equations' curvature.
    let share = Math.min(1, HARDER * this.share);
    if (share < 1) this.believe(share);
    for (let trial = 0; ; trial++) {
      this.addRegularisation(delta);
      if (recursion.factor() === 0) break;
      if (this.soften && share > 0) {
        share = share > LEAST_SHARE ? SOFTER * share : 0;
        this.believe(share);
        trial = -1;
        continue;
      }
      if (delta <= damping)
        delta = Math.max(10 * damping, last === 0 ? FIRST_REGULARISATION : Math.max(1e-20, last / 3));
      else delta *= last === 0 && trial < 3 ? 100 : 8;
      if (delta > GREATEST_REGULARISATION) return -1;
    }
    this.share = Math.max(LEAST_SHARE, share);
    right.middle.set(this.costSlope);
    right.defect.set(missed.defect);
    right.ends.set(missed.ends);
    recursion.solve(right);
    this.readDirection(mu, missed.limit);
    return delta;
  }

  /** Sets the stages' Hessians to the costs' own with a share of what the equations add. */
  private believe(share: number): void {
    const { n, m, z, N, problem, middle, weights, recursion, x, u } = this;
    const { stage, stageData, step } = problem;
    const size = N * z * z;
    this.costHessian ??= new Float64Array(size);
    this.wholeHessian ??= new Float64Array(size);
    const cost = this.costHessian;
    const whole = this.wholeHessian;
    if (!this.separated) {
      whole.set(recursion.middleHessian);
      weights.fill(0);
      for (let k = 0; k < N; k++) {
        const c = k * n;
        for (let i = 0; i < n; i++) middle[i] = 0.5 * (x[c + i] + x[c + n + i]);
        for (let i = 0; i < m; i++) middle[n + i] = u[k * m + i];
        weights[n] = step[k];
        const at = k * stage.dataCount;
        stage.derivatives(middle, stageData, at, weights, this.values, this.jacobian, this.hessian);
        cost.set(this.hessian, k * z * z);
      }
      this.separated = true;
    }
    const to = recursion.middleHessian;
    for (let i = 0; i < size; i++) to[i] = cost[i] + share * (whole[i] - cost[i]);
  }

  /** Bounds and limits condensed into the nodes' and controls' Hessians and gradients. */
  private condense(mu: number): void {
    const {
      n,
      m,
      N,
      problem,
      x,
      u,
      s,
      v,
      right,
      missed,
      limitCount: g,
      baseNode,
      baseControl,
      limitSlopes,
    } = this;
    for (let k = 0; k <= N; k++) {
      for (let i = 0; i < n; i++) {
        const at = k * n + i;
        const low = x[at] - problem.stateLow[at];
        const high = problem.stateHigh[at] - x[at];
        baseNode[k * n * n + i * n + i] += this.zLowX[at] / low + this.zHighX[at] / high;
        right.node[at] = (high < Infinity ? mu / high : 0) - (low < Infinity ? mu / low : 0);
      }
      for (let r = 0; r < g; r++) {
        const at = k * g + r;
        const sigma = v[at] / s[at];
        const pull = mu / s[at] - sigma * missed.limit[at];
        const row = at * n;
        for (let i = 0; i < n; i++) {
          const slope = limitSlopes[row + i];
          if (slope === 0) continue;
          right.node[k * n + i] -= slope * pull;
          for (let j = 0; j < n; j++) baseNode[k * n * n + i * n + j] += sigma * slope * limitSlopes[row + j];
        }
      }
    }
    for (let at = 0; at < N * m; at++) {
      const low = u[at] - problem.controlLow[at];
      const high = problem.controlHigh[at] - u[at];
      baseControl[at] = this.zLowU[at] / low + this.zHighU[at] / high;
      right.control[at] = (high < Infinity ? mu / high : 0) - (low < Infinity ? mu / low : 0);
    }
  }

  private addRegularisation(delta: number): void {
    const { n, N, recursion, baseNode, baseControl } = this;
    recursion.nodeHessian.set(baseNode);
    recursion.controlHessian.set(baseControl);
    if (delta === 0) return;
    for (let k = 0; k <= N; k++)
      for (let i = 0; i < n; i++) recursion.nodeHessian[k * n * n + i * n + i] += delta;
    for (let i = 0; i < baseControl.length; i++) recursion.controlHessian[i] += delta;
  }

  /** Copies the recursion's answer and derives the changes of slacks and multipliers. */
  private readDirection(mu: number, limitMissed: Float64Array): void {
    const { recursion, dx, du, dy, dnu, problem, n, N, limitCount: g, s, v, ds, dv, limitSlopes } = this;
    dx.set(recursion.dx);
    du.set(recursion.du);
    for (let i = 0; i < dy.length; i++) dy[i] = recursion.costate[i] - this.y[i];
    for (let i = 0; i < dnu.length; i++) dnu[i] = recursion.endMultiplier[i] - this.nu[i];
    const bounds = (
      to: Float64Array,
      at: Float64Array,
      change: Float64Array,
      bound: Float64Array,
      z: Float64Array,
      sign: number,
    ) => {
      for (let i = 0; i < to.length; i++) {
        const distance = sign * (at[i] - bound[i]);
        to[i] = distance < Infinity ? mu / distance - z[i] - (z[i] / distance) * sign * change[i] : 0;
      }
    };
    bounds(this.dLowX, this.x, dx, problem.stateLow, this.zLowX, 1);
    bounds(this.dHighX, this.x, dx, problem.stateHigh, this.zHighX, -1);
    bounds(this.dLowU, this.u, du, problem.controlLow, this.zLowU, 1);
    bounds(this.dHighU, this.u, du, problem.controlHigh, this.zHighU, -1);
    for (let k = 0; k <= N; k++) {
      for (let r = 0; r < g; r++) {
        const at = k * g + r;
        let change = limitMissed[at];
        for (let i = 0; i < n; i++) change += limitSlopes[at * n + i] * dx[k * n + i];
        ds[at] = change;
        dv[at] = mu / s[at] - v[at] - (v[at] / s[at]) * change;
      }
    }
  }

  private primalReach(toBound: number): number {
    const { problem } = this;
    let alpha = 1;
    alpha = reachOver(alpha, toBound, this.x, this.dx, problem.stateLow, problem.stateHigh);
    alpha = reachOver(alpha, toBound, this.u, this.du, problem.controlLow, problem.controlHigh);
    return reach(alpha, toBound, this.s, this.ds);
  }

  private dualReach(toBound: number): number {
    let alpha = reach(1, toBound, this.zLowX, this.dLowX);
    alpha = reach(alpha, toBound, this.zHighX, this.dHighX);
    alpha = reach(alpha, toBound, this.zLowU, this.dLowU);
    alpha = reach(alpha, toBound, this.zHighU, this.dHighU);
    return reach(alpha, toBound, this.v, this.dv);
  }

  private barrierObjective(
    mu: number,
    x: Float64Array,
    u: Float64Array,
    s: Float64Array,
    objective: number,
  ): number {
    const { problem } = this;
    const logs =
      logDistances(x, problem.stateLow, problem.stateHigh) +
      logDistances(u, problem.controlLow, problem.controlHigh);
    let slack = 0;
    for (let i = 0; i < s.length; i++) slack += Math.log(s[i]);
    return objective - mu * (logs + slack);
  }

  /** Change of the barrier objective along the direction, to first order. */
  private barrierSlope(mu: number): number {
    const { problem, dx, du, x, u, s, ds, n, m, z, N } = this;
    let slope = 0;
    for (let i = 0; i < dx.length; i++) {
      slope += this.objectiveSlope[i] * dx[i];
      slope -= mu * dx[i] * (1 / (x[i] - problem.stateLow[i]) - 1 / (problem.stateHigh[i] - x[i]));
    }
    for (let k = 0; k < N; k++)
      for (let i = 0; i < m; i++) slope += this.costSlope[k * z + n + i] * du[k * m + i];
    for (let i = 0; i < du.length; i++) {
      slope -= mu * du[i] * (1 / (u[i] - problem.controlLow[i]) - 1 / (problem.controlHigh[i] - u[i]));
    }
    for (let i = 0; i < s.length; i++) slope -= (mu * ds[i]) / s[i];
    return slope;
  }

  private tryStep(alpha: number): void {
    const { x, u, s, dx, du, ds, xTrial, uTrial, sTrial } = this;
    for (let i = 0; i < x.length; i++) xTrial[i] = x[i] + alpha * dx[i];
    for (let i = 0; i < u.length; i++) uTrial[i] = u[i] + alpha * du[i];
    for (let i = 0; i < s.length; i++) sTrial[i] = s[i] + alpha * ds[i];
    this.trialObjective = this.evaluate(xTrial, uTrial, sTrial, this.trialMissed);
  }

  /** Whether a trial point is acceptable, and by which rule. */
  private judge(
    filter: readonly number[],
    violation: number,
    phi: number,
    slope: number,
    alpha: number,
    trialViolation: number,
    trialPhi: number,
    least: number,
    most: number,
  ): 'by objective' | 'by filter' | null {
    if (!(trialViolation <= most) || !(trialPhi < Infinity)) return null;
    for (let i = 0; i < filter.length; i += 2) {
      if (trialViolation >= filter[i] && trialPhi >= filter[i + 1]) return null;
    }
    const rounding = 10 * Number.EPSILON * Math.abs(phi);
    const toward = slope < 0 && alpha * (-slope) ** SWITCH_SLOPE > violation ** SWITCH_VIOLATION;
    if (violation <= least && toward) {
      return trialPhi - phi - rounding <= ARMIJO * alpha * slope ? 'by objective' : null;
    }
    const better =
      trialViolation <= (1 - LESS_VIOLATION) * violation ||
      trialPhi - phi - rounding <= -LESS_OBJECTIVE * violation;
    return better ? 'by filter' : null;
  }

  /** Second-order corrections: the same matrices, the equations' curvature along the step taken into account. */
  private correct(
    mu: number,
    toBound: number,
    filter: readonly number[],
    violation: number,
    phi: number,
    slope: number,
    least: number,
    most: number,
    alpha: number,
    firstViolation: number,
  ): 'by objective' | 'by filter' | null {
    const { recursion, right, trialMissed, missed } = this;
    const { defect, ends, limit } = this.corrected;
    defect.set(missed.defect);
    ends.set(missed.ends);
    limit.set(missed.limit);
    const node = this.nodeKept;
    node.set(right.node);
    const direction = this.directionParts;
    for (let i = 0; i < direction.length; i++) this.directionKept[i].set(direction[i]);
    let before = firstViolation;
    let step = alpha;
    for (let count = 0; count < MOST_CORRECTIONS; count++) {
      for (let i = 0; i < defect.length; i++) defect[i] = step * defect[i] + trialMissed.defect[i];
      for (let i = 0; i < ends.length; i++) ends[i] = step * ends[i] + trialMissed.ends[i];
      for (let i = 0; i < limit.length; i++) limit[i] = step * limit[i] + trialMissed.limit[i];
      right.defect.set(defect);
      right.ends.set(ends);
      this.shiftLimitPull(node, limit);
      recursion.solve(right);
      this.readDirection(mu, limit);
      step = this.primalReach(toBound);
      this.tryStep(step);
      const trialViolation = this.norm(trialMissed);
      const trialPhi = this.barrierObjective(mu, this.xTrial, this.uTrial, this.sTrial, this.trialObjective);
      const verdict = this.judge(filter, violation, phi, slope, alpha, trialViolation, trialPhi, least, most);
      if (verdict) return verdict;
      if (!(trialViolation <= 0.99 * before)) break;
      before = trialViolation;
    }
    for (let i = 0; i < direction.length; i++) direction[i].set(this.directionKept[i]);
    right.node.set(node);
    return null;
  }

  /** Replaces the limits' violations in the nodes' gradients by others. */
  private shiftLimitPull(node: Float64Array, limit: Float64Array): void {
    const { n, N, limitCount: g, v, s, missed, right, limitSlopes } = this;
    right.node.set(node);
    for (let k = 0; k <= N; k++) {
      for (let r = 0; r < g; r++) {
        const at = k * g + r;
        const pull = (v[at] / s[at]) * (limit[at] - missed.limit[at]);
        for (let i = 0; i < n; i++) right.node[k * n + i] += limitSlopes[at * n + i] * pull;
      }
    }
  }

  private accept(alpha: number, alphaDual: number, mu: number): void {
    const { x, u, s, y, nu, dy, dnu, problem, missed, trialMissed } = this;
    x.set(this.xTrial);
    u.set(this.uTrial);
    s.set(this.sTrial);
    missed.defect.set(trialMissed.defect);
    missed.ends.set(trialMissed.ends);
    missed.limit.set(trialMissed.limit);
    this.objective = this.trialObjective;
    for (let i = 0; i < y.length; i++) y[i] += alpha * dy[i];
    for (let i = 0; i < nu.length; i++) nu[i] += alpha * dnu[i];
    const bounds = (
      z: Float64Array,
      dz: Float64Array,
      at: Float64Array,
      bound: Float64Array,
      sign: number,
    ) => {
      for (let i = 0; i < z.length; i++) {
        const distance = sign * (at[i] - bound[i]);
        if (!(distance < Infinity)) continue;
        const fit = mu / distance;
        z[i] = Math.min(Math.max(z[i] + alphaDual * dz[i], fit / MULTIPLIER_BAND), fit * MULTIPLIER_BAND);
      }
    };
    bounds(this.zLowX, this.dLowX, x, problem.stateLow, 1);
    bounds(this.zHighX, this.dHighX, x, problem.stateHigh, -1);
    bounds(this.zLowU, this.dLowU, u, problem.controlLow, 1);
    bounds(this.zHighU, this.dHighU, u, problem.controlHigh, -1);
    for (let i = 0; i < s.length; i++) {
      const fit = mu / s[i];
      this.v[i] = Math.min(
        Math.max(this.v[i] + alphaDual * this.dv[i], fit / MULTIPLIER_BAND),
        fit * MULTIPLIER_BAND,
      );
    }
  }

  /** Shortest steps toward the equations until a point is acceptable to the filter; false when none is found. */
  private restore(mu: number, filter: readonly number[], violation: number, most: number): boolean {
    const { recursion, right, missed, trialMissed, x, u, s, problem } = this;
    let now = violation;
    for (let count = 0; count < MOST_RESTORATIONS; count++) {
      this.linearise();
      this.holdBack();
      this.addRegularisation(RESTORING);
      recursion.middleHessian.fill(0);
      if (recursion.factor() < 0) return false;
      right.middle.fill(0);
      right.defect.set(missed.defect);
      right.ends.set(missed.ends);
      recursion.solve(right);
      this.readDirection(mu, missed.limit);
      let alpha = this.primalReach(TO_BOUND);
      let moved = false;
      for (; alpha > 1e-8; alpha *= 0.5) {
        this.tryStep(alpha);
        const trial = this.norm(trialMissed);
        if (trial <= (1 - 1e-4 * alpha) * now) {
          now = trial;
          moved = true;
          break;
        }
      }
      if (!moved) return false;
      x.set(this.xTrial);
      u.set(this.uTrial);
      s.set(this.sTrial);
      missed.defect.set(trialMissed.defect);
      missed.ends.set(trialMissed.ends);
      missed.limit.set(trialMissed.limit);
      this.objective = this.trialObjective;
      const phi = this.barrierObjective(mu, x, u, s, this.objective);
      let acceptable = now <= 0.9 * violation && now <= most;
      for (let i = 0; i < filter.length && acceptable; i += 2) {
        if (now >= filter[i] && phi >= filter[i + 1]) acceptable = false;
      }
      if (acceptable || now < 1e-9) {
        const refit = (z: Float64Array, at: Float64Array, bound: Float64Array, sign: number) => {
          for (let i = 0; i < z.length; i++) {
            const distance = sign * (at[i] - bound[i]);
            z[i] = distance < Infinity ? mu / distance : 0;
          }
        };
        refit(this.zLowX, x, problem.stateLow, 1);
        refit(this.zHighX, x, problem.stateHigh, -1);
        refit(this.zLowU, u, problem.controlLow, 1);
        refit(this.zHighU, u, problem.controlHigh, -1);
        for (let i = 0; i < s.length; i++) this.v[i] = mu / s[i];
        this.y.fill(0);
        this.nu.fill(0);
        return true;
      }
    }
    return false;
  }

  /** For shortest steps: what is near its bound moves less, limits follow their slopes. */
  private holdBack(): void {
    const {
      n,
      m,
      N,
      problem,
      x,
      u,
      s,
      right,
      missed,
      limitCount: g,
      baseNode,
      baseControl,
      limitSlopes,
    } = this;
    const near = (low: number, high: number) => RESTORING / Math.min(1, low, high);
    baseNode.fill(0);
    right.node.fill(0);
    right.control.fill(0);
    for (let k = 0; k <= N; k++) {
      for (let i = 0; i < n; i++) {
        const at = k * n + i;
        baseNode[(k * n + i) * n + i] = near(x[at] - problem.stateLow[at], problem.stateHigh[at] - x[at]);
      }
      for (let r = 0; r < g; r++) {
        const at = k * g + r;
        const weight = near(s[at], Infinity);
        for (let i = 0; i < n; i++) {
          const slope = weight * limitSlopes[at * n + i];
          if (slope === 0) continue;
          right.node[k * n + i] += slope * missed.limit[at];
          for (let j = 0; j < n; j++) baseNode[(k * n + i) * n + j] += slope * limitSlopes[at * n + j];
        }
      }
    }
    for (let at = 0; at < N * m; at++) {
      baseControl[at] = near(u[at] - problem.controlLow[at], problem.controlHigh[at] - u[at]);
    }
  }

  private answer(iterations: number, error: number): ChainAnswer {
    return {
      ok: true,
      objective: this.objective,
      iterations,
      violation: this.worst().by,
      error,
      x: this.x.slice(),
      u: this.u.slice(),
      multipliers: {
        costate: this.y.slice(),
        ends: this.nu.slice(),
        stateLow: this.zLowX.slice(),
        stateHigh: this.zHighX.slice(),
        controlLow: this.zLowU.slice(),
        controlHigh: this.zHighU.slice(),
        limits: this.v.slice(),
        slack: this.s.slice(),
      },
    };
  }

  private failure(reason: ChainFailure['reason'], iterations: number): ChainFailure {
    return { ok: false, reason, iterations, worst: this.worst(), x: this.x.slice(), u: this.u.slice() };
  }

  private worst(): ChainFailure['worst'] {
    const { n, limitCount: g, missed, problem } = this;
    let worst = { name: problem.states[0] ?? '', at: 0, by: 0 };
    const look = (part: Float64Array, width: number, name: (i: number) => string) => {
      for (let i = 0; i < part.length; i++) {
        const by = Math.abs(part[i]);
        if (by > worst.by || Number.isNaN(by))
          worst = { name: name(i % width), at: Math.floor(i / width), by };
      }
    };
    look(missed.defect, n, i => problem.states[i]);
    look(missed.limit, g, i => problem.limits?.names[i] ?? '');
    look(missed.ends, missed.ends.length, i => `end condition ${i + 1}`);
    return worst;
  }
}

function inside(
  to: Float64Array,
  from: Float64Array,
  low: Float64Array,
  high: Float64Array,
  push: number,
): void {
  for (let i = 0; i < to.length; i++) {
    const span = high[i] - low[i];
    const below = Math.min(push * Math.max(1, Math.abs(low[i])), push * span);
    const above = Math.min(push * Math.max(1, Math.abs(high[i])), push * span);
    let v = from[i];
    if (low[i] > -Infinity) v = Math.max(v, low[i] + below);
    if (high[i] < Infinity) v = Math.min(v, high[i] - above);
    to[i] = v;
  }
}

function reachOver(
  alpha: number,
  toBound: number,
  at: Float64Array,
  change: Float64Array,
  low: Float64Array,
  high: Float64Array,
): number {
  let most = alpha;
  for (let i = 0; i < at.length; i++) {
    const d = change[i];
    if (d < 0) {
      const room = toBound * (at[i] - low[i]);
      if (-d * most > room) most = room / -d;
    } else if (d > 0) {
      const room = toBound * (high[i] - at[i]);
      if (d * most > room) most = room / d;
    }
  }
  return most;
}

function reach(alpha: number, toBound: number, at: Float64Array, change: Float64Array): number {
  let most = alpha;
  for (let i = 0; i < at.length; i++) {
    if (change[i] < 0 && -change[i] * most > toBound * at[i]) most = (toBound * at[i]) / -change[i];
  }
  return most;
}

function logDistances(at: Float64Array, low: Float64Array, high: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < at.length; i++) {
    if (low[i] > -Infinity) sum += Math.log(at[i] - low[i]);
    if (high[i] < Infinity) sum += Math.log(high[i] - at[i]);
  }
  return sum;
}
