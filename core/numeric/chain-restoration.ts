import type { BarrierBounds } from './barrier-bounds.ts';
import type { ChainIterate } from './chain-iterate.ts';
import { ChainRecursion, type ChainRightSide } from './chain-recursion.ts';
import type { StagePattern } from './stage-programs.ts';
import type { StepFilter } from './step-filter.ts';

/** Steps at most, and the shortest share of one. */
const MOST_STEPS = 100;
const SHORTEST_SHARE = 1e-6;
const TO_BOUND = 0.9;
/** Share of the promised gain that a step must bring. */
const GAIN = 1e-4;
/** Where the violation has fallen to this share, the objective may lead again. */
const ENOUGH = 0.9;
/** A violation under this is none: restored whatever the filter says. */
const NONE = 1e-9;
/** Barrier of the bounds, as a share of the greatest miss squared: enough to stay away from them. */
const BARRIER = 1e-2;
/** Weight of movement against misses: first, least and greatest, and how it follows the shares of steps taken. */
const FIRST_WEIGHT = 1e-4;
const LEAST_WEIGHT = 1e-8;
const GREATEST_WEIGHT = 1e8;
const UP = 10;
const DOWN = 4;
const SHORT_SHARE = 0.3;

/**
 * Reduces the violation alone, from a point where no step is acceptable: ½ Σ miss² with a barrier for the bounds,
 * by Gauss–Newton steps in which movement has a weight (Levenberg–Marquardt). The equations are soft in it, each
 * with a control of its own that takes what is still missed, so a step exists where they contradict each other.
 */
export class ChainRestoration {
  readonly #recursion: ChainRecursion;
  readonly #right: ChainRightSide;

  /** Steps that the last restoration took. */
  steps = 0;

  constructor(private readonly iterate: ChainIterate) {
    const { equations } = iterate;
    const { n, m, N, problem } = equations;
    const none = new Float64Array(0);
    const { start = none, end = none } = problem.ends ?? {};
    this.#recursion = new ChainRecursion(n, m + n, N, start, end, softened(equations.pattern, n, n + m));
    this.#recursion.endSoftness = 1;
    this.#right = {
      ...equations.missed(),
      middle: new Float64Array(N * (n + m + n)),
      node: new Float64Array((N + 1) * n),
      control: new Float64Array(N * (m + n)),
    };
  }

  /**
   * Goes on until the filter allows the point, at barrier μ, and the violation is less; false when the least
   * violation is found before. `linearise` takes the slopes of a point into the recursion of Newton's steps.
   */
  restore(linearise: () => ChainRecursion, filter: StepFilter, mu: number): boolean {
    const { iterate } = this;
    const first = iterate.measure(mu).violation;
    let weight = FIRST_WEIGHT;
    for (this.steps = 0; this.steps < MOST_STEPS; this.steps++) {
      this.#take(linearise());
      const barrier = BARRIER * iterate.equations.worst(iterate.missed).by ** 2;
      let alpha = 0;
      for (; weight <= GREATEST_WEIGHT; weight *= UP) {
        if (!this.#find(barrier, weight)) continue;
        alpha = this.#search(barrier);
        if (alpha > 0) break;
      }
      if (alpha === 0) return false;
      weight = alpha < SHORT_SHARE ? weight * UP : Math.max(LEAST_WEIGHT, weight / DOWN);
      iterate.takeTrial();
      const measure = iterate.measure(mu);
      if (measure.violation < NONE || (measure.violation <= ENOUGH * first && filter.allows(measure))) {
        iterate.forgetMultipliers(mu);
        return true;
      }
    }
    return false;
  }

  /** Slopes of the stages, with a control for each equation. */
  #take(from: ChainRecursion): void {
    const soft = this.#recursion;
    const { states: n, controls, stages: N } = soft;
    const z = from.states + from.controls;
    soft.step.set(from.step);
    soft.slopes.fill(0);
    for (let k = 0; k < N; k++) {
      for (let i = 0; i < n; i++) {
        const to = (k * n + i) * (n + controls);
        for (let j = 0; j < z; j++) soft.slopes[to + j] = from.slopes[(k * n + i) * z + j];
        soft.slopes[to + z + i] = 1 / from.step[k];
      }
    }
  }

  /** The step that brings ½ Σ miss² + barrier + ½ weight Σ change² to its least, as far as slopes tell. */
  #find(barrier: number, weight: number): boolean {
    const soft = this.#recursion;
    const { equations, states, controls, slacks, missed } = this.iterate;
    const { n, m, N, limitCount: g, limitSlopes } = equations;
    const { nodeHessian, controlHessian } = soft;
    const right = this.#right;
    nodeHessian.fill(0);
    for (let k = 0; k <= N; k++) {
      const block = k * n * n;
      for (let i = 0; i < n; i++) {
        nodeHessian[block + i * n + i] = weight + curvature(states, barrier, k * n + i);
        right.node[k * n + i] = states.pull(barrier, k * n + i);
      }
      // The slack's own step is folded in: it takes its share of what the limit misses.
      for (let at = k * g; at < k * g + g; at++) {
        const stiffness = weight + curvature(slacks, barrier, at);
        const pull = (stiffness * missed.limit[at] + slacks.pull(barrier, at)) / (1 + stiffness);
        const share = stiffness / (1 + stiffness);
        for (let i = 0; i < n; i++) {
          const slope = limitSlopes[at * n + i];
          if (slope === 0) continue;
          right.node[k * n + i] += pull * slope;
          for (let j = 0; j < n; j++)
            nodeHessian[block + i * n + j] += share * slope * limitSlopes[at * n + j];
        }
      }
    }
    for (let k = 0; k < N; k++) {
      for (let i = 0; i < m; i++) {
        controlHessian[k * (m + n) + i] = weight + curvature(controls, barrier, k * m + i);
        right.control[k * (m + n) + i] = controls.pull(barrier, k * m + i);
      }
      for (let i = 0; i < n; i++) controlHessian[k * (m + n) + m + i] = 1;
    }
    if (!soft.linearise() || soft.factor(undefined, false) !== 0) return false;
    right.defect.set(missed.defect);
    right.ends.set(missed.ends);
    soft.solve(right);
    states.change.set(soft.dx);
    for (let k = 0; k < N; k++) {
      for (let i = 0; i < m; i++) controls.change[k * m + i] = soft.du[k * (m + n) + i];
    }
    for (let k = 0; k <= N; k++) {
      for (let at = k * g; at < k * g + g; at++) {
        let rest = missed.limit[at];
        for (let i = 0; i < n; i++) rest += limitSlopes[at * n + i] * soft.dx[k * n + i];
        const stiffness = weight + curvature(slacks, barrier, at);
        slacks.change[at] = (rest - slacks.pull(barrier, at)) / (1 + stiffness);
      }
    }
    return true;
  }

  /** The first share of the step, halved each time, that brings a part of what it promises; 0 when none does. */
  #search(barrier: number): number {
    const { iterate } = this;
    const { missed, trialMissed } = iterate;
    const before = squares(missed) - barrier * iterate.logDistances('at');
    const promised = this.#promise(barrier);
    if (!(promised > 0)) return 0;
    for (let alpha = iterate.reach(TO_BOUND); alpha > SHORTEST_SHARE; alpha *= 0.5) {
      iterate.tryStep(alpha, 0);
      const after = squares(trialMissed) - barrier * iterate.logDistances('trial');
      if (after <= before - GAIN * alpha * promised) return alpha;
    }
    return 0;
  }

  /** What the whole step gains to first order: the equations' misses fall by what their controls do not take. */
  #promise(barrier: number): number {
    const soft = this.#recursion;
    const { equations, states, controls, slacks, missed } = this.iterate;
    const { n, m, N, limitCount: g, limitSlopes } = equations;
    let gain = -states.barrierSlope(barrier) - controls.barrierSlope(barrier) - slacks.barrierSlope(barrier);
    for (let k = 0; k < N; k++) {
      for (let i = 0; i < n; i++) {
        const miss = missed.defect[k * n + i];
        gain += miss * (miss - soft.du[k * (m + n) + m + i]);
      }
    }
    for (let r = 0; r < missed.ends.length; r++) {
      gain += missed.ends[r] * (missed.ends[r] + soft.endSoftness * soft.endMultiplier[r]);
    }
    for (let k = 0; k <= N; k++) {
      for (let at = k * g; at < k * g + g; at++) {
        let change = -slacks.change[at];
        for (let i = 0; i < n; i++) change += limitSlopes[at * n + i] * states.change[k * n + i];
        gain -= missed.limit[at] * change;
      }
    }
    return gain;
  }
}

/** The pattern of stages that have a control of their own for each equation, and no Hessian. */
function softened({ slopes }: StagePattern, n: number, z: number): StagePattern {
  const own = Array.from({ length: n }, (_, i) => i * (z + n) + z + i);
  const moved = Array.from(slopes, place => Math.floor(place / z) * (z + n) + (place % z));
  return { slopes: Int32Array.from([...moved, ...own]), hessian: new Int32Array(0) };
}

/** Curvature of the barrier itself. */
function curvature({ at, low, high }: BarrierBounds, barrier: number, i: number): number {
  return barrier / (at[i] - low[i]) ** 2 + barrier / (high[i] - at[i]) ** 2;
}

function squares({ defect, ends, limit }: ChainIterate['missed']): number {
  let sum = 0;
  for (const part of [defect, ends, limit]) for (let i = 0; i < part.length; i++) sum += part[i] * part[i];
  return 0.5 * sum;
}
