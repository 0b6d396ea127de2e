import { BarrierBounds } from './barrier-bounds.ts';
import { ChainEquations, type Missed } from './chain-equations.ts';
import type { ChainAnswer, ChainCentre, ChainFailure, ChainGuess, ChainProblem } from './chain-problem.ts';
import type { ChainRecursion } from './chain-recursion.ts';
import type { Measure } from './step-filter.ts';

/** Least distance from a bound at the start, of a bound's size and of the span between two. */
const START_PUSH = 1e-2;
const WARM_PUSH = 1e-4;
/** Errors of slopes are scaled down where multipliers are greater than this on average. */
const USUAL_MULTIPLIER = 100;
/** A centre of barrier μ: greatest miss, and gain of a step for each bound, over μ. */
const CENTRAL_MISS = 10;
const CENTRAL_GAIN = 0.1;

/** The point a chain solver stands at, the step it has found from there, and the trial point along it. */
export class ChainIterate {
  readonly equations: ChainEquations;
  readonly states: BarrierBounds;
  readonly controls: BarrierBounds;
  /** Limit − slack = 0, slack ≥ 0: nodes × limits. */
  readonly slacks: BarrierBounds;
  readonly costate: Float64Array;
  readonly costateChange: Float64Array;
  readonly ends: Float64Array;
  readonly endsChange: Float64Array;
  readonly missed: Missed;
  readonly trialMissed: Missed;
  objective = 0;
  #trialObjective = 0;

  constructor(problem: ChainProblem) {
    this.equations = new ChainEquations(problem);
    const { n, N, limitCount: g, endCount } = this.equations;
    const slacks = (N + 1) * g;
    this.states = new BarrierBounds({ low: problem.stateLow, high: problem.stateHigh });
    this.controls = new BarrierBounds({ low: problem.controlLow, high: problem.controlHigh });
    this.slacks = new BarrierBounds({
      low: new Float64Array(slacks),
      high: new Float64Array(slacks).fill(Infinity),
    });
    this.costate = new Float64Array(N * n);
    this.costateChange = new Float64Array(N * n);
    this.ends = new Float64Array(endCount);
    this.endsChange = new Float64Array(endCount);
    this.missed = this.equations.missed();
    this.trialMissed = this.equations.missed();
  }

  /** Takes a problem of the same size, and the guess pushed inside its bounds with multipliers that fit μ. */
  begin(problem: ChainProblem, recursion: ChainRecursion, guess: ChainGuess, mu: number): void {
    const { states, controls, slacks, equations } = this;
    const warm = guess.multipliers;
    // An answer near its bounds stays there: no further from them than the barrier will let it come.
    const push = warm ? Math.min(WARM_PUSH, mu) : START_PUSH;
    equations.take(problem, recursion);
    states.low = problem.stateLow;
    states.high = problem.stateHigh;
    controls.low = problem.controlLow;
    controls.high = problem.controlHigh;
    states.begin(guess.x, push);
    controls.begin(guess.u, push);
    if (!warm) equations.limits(states.at, slacks.trial);
    slacks.begin(warm ? warm.slack : slacks.trial, push);
    states.fit(mu, warm?.stateLow, warm?.stateHigh);
    controls.fit(mu, warm?.controlLow, warm?.controlHigh);
    slacks.fit(mu, warm?.limits);
    if (warm) {
      this.costate.set(warm.costate);
      this.ends.set(warm.ends);
    } else {
      this.costate.fill(0);
      this.ends.fill(0);
    }
    this.measureAnew();
  }

  /** Violation and barrier objective here. */
  measure(mu: number): Measure {
    return {
      violation: this.equations.norm(this.missed),
      objective: this.objective - mu * this.logDistances('at'),
    };
  }

  /** Goes a share of the step and measures there. */
  tryStep(alpha: number, mu: number): Measure {
    const { equations, states, controls, slacks, trialMissed } = this;
    states.tryStep(alpha);
    controls.tryStep(alpha);
    slacks.tryStep(alpha);
    this.#trialObjective = equations.evaluate(states.trial, controls.trial, slacks.trial, trialMissed);
    return {
      violation: equations.norm(trialMissed),
      objective: this.#trialObjective - mu * this.logDistances('trial'),
    };
  }

  /** Σ ln of all distances from bounds, here or at the trial point. */
  logDistances(where: 'at' | 'trial'): number {
    const { states, controls, slacks } = this;
    return (
      states.logDistances(states[where]) +
      controls.logDistances(controls[where]) +
      slacks.logDistances(slacks[where])
    );
  }

  /** Change of the barrier objective along the step, to first order. */
  slope(mu: number): number {
    const { states, controls, slacks } = this;
    return (
      this.equations.objectiveChange(states.change, controls.change) +
      states.barrierSlope(mu) +
      controls.barrierSlope(mu) +
      slacks.barrierSlope(mu)
    );
  }

  /** The share of the step that the bounds allow. */
  reach(toBound: number): number {
    return this.slacks.reach(this.controls.reach(this.states.reach(1, toBound), toBound), toBound);
  }

  /** The share of the step that the signs of the bounds' multipliers allow. */
  multiplierReach(toBound: number): number {
    const { states, controls, slacks } = this;
    return slacks.multiplierReach(
      controls.multiplierReach(states.multiplierReach(1, toBound), toBound),
      toBound,
    );
  }

  /** Moves to the trial point; multipliers stay. */
  takeTrial(): void {
    const { missed, trialMissed } = this;
    this.states.takeTrial();
    this.controls.takeTrial();
    this.slacks.takeTrial();
    missed.defect.set(trialMissed.defect);
    missed.ends.set(trialMissed.ends);
    missed.limit.set(trialMissed.limit);
    this.objective = this.#trialObjective;
  }

  /** Moves to the trial point, the multipliers along. */
  take(alpha: number, alphaMultipliers: number, mu: number): void {
    this.takeTrial();
    const { costate, costateChange, ends, endsChange } = this;
    for (let i = 0; i < costate.length; i++) costate[i] += alpha * costateChange[i];
    for (let i = 0; i < ends.length; i++) ends[i] += alpha * endsChange[i];
    this.states.takeMultipliers(alphaMultipliers, mu);
    this.controls.takeMultipliers(alphaMultipliers, mu);
    this.slacks.takeMultipliers(alphaMultipliers, mu);
  }

  /** Multipliers anew: none for the equations, those of the bounds by the barrier. */
  forgetMultipliers(mu: number): void {
    this.states.fit(mu);
    this.controls.fit(mu);
    this.slacks.fit(mu);
    this.costate.fill(0);
    this.ends.fill(0);
  }

  /** Whether next to nothing is missed, and the step at barrier μ would gain next to nothing for each bound. */
  central(mu: number): boolean {
    const { states, controls, slacks } = this;
    const bounds = states.bounds + controls.bounds + slacks.bounds;
    if (!(Math.abs(this.slope(mu)) <= CENTRAL_GAIN * mu * bounds)) return false;
    return this.equations.worst(this.missed).by <= CENTRAL_MISS * mu;
  }

  centre(mu: number): ChainCentre {
    const { objective, states, controls } = this;
    return { barrier: mu, objective, x: states.at, u: controls.at, guess: () => this.#guess() };
  }

  /** After the problem has changed. */
  measureAnew(): void {
    const { states, controls, slacks } = this;
    this.objective = this.equations.evaluate(states.at, controls.at, slacks.at, this.missed);
  }

  /** Scaled error of the optimality conditions at barrier μ; the slopes must be those of this point. */
  error(mu: number): number {
    const { equations, states, controls, slacks, missed, costate } = this;
    const slope = Math.max(
      slopeError(states, equations.lagrangian),
      slopeError(controls, equations.lagrangianControl),
    );
    const complementary = Math.max(
      states.complementarity(mu),
      controls.complementarity(mu),
      slacks.complementarity(mu),
    );
    const bounds = sum(states) + sum(controls) + sum(slacks);
    const boundCount = 2 * (states.size + controls.size) + slacks.size;
    let all = bounds;
    for (let i = 0; i < costate.length; i++) all += Math.abs(costate[i]);
    let worst = 0;
    for (const part of [missed.defect, missed.ends, missed.limit]) {
      for (let i = 0; i < part.length; i++) worst = Math.max(worst, Math.abs(part[i]));
    }
    return Math.max(
      slope / scale(all, boundCount + costate.length),
      complementary / scale(bounds, boundCount),
      worst,
    );
  }

  answer(iterations: number, error: number): ChainAnswer {
    return {
      ok: true,
      objective: this.objective,
      iterations,
      violation: this.equations.worst(this.missed).by,
      error,
      ...this.#guess(),
    };
  }

  #guess() {
    const { states, controls, slacks } = this;
    return {
      x: states.at.slice(),
      u: controls.at.slice(),
      multipliers: {
        costate: this.costate.slice(),
        ends: this.ends.slice(),
        stateLow: states.lowMultiplier.slice(),
        stateHigh: states.highMultiplier.slice(),
        controlLow: controls.lowMultiplier.slice(),
        controlHigh: controls.highMultiplier.slice(),
        limits: slacks.lowMultiplier.slice(),
        slack: slacks.at.slice(),
      },
    };
  }

  failure(reason: ChainFailure['reason'], iterations: number): ChainFailure {
    return {
      ok: false,
      reason,
      iterations,
      worst: this.equations.worst(this.missed),
      x: this.states.at.slice(),
      u: this.controls.at.slice(),
    };
  }
}

function slopeError({ lowMultiplier, highMultiplier }: BarrierBounds, slope: Float64Array): number {
  let worst = 0;
  for (let i = 0; i < slope.length; i++) {
    worst = Math.max(worst, Math.abs(slope[i] - lowMultiplier[i] + highMultiplier[i]));
  }
  return worst;
}

function sum({ lowMultiplier, highMultiplier }: BarrierBounds): number {
  let total = 0;
  for (let i = 0; i < lowMultiplier.length; i++) total += lowMultiplier[i] + highMultiplier[i];
  return total;
}

function scale(multipliers: number, count: number): number {
  return Math.max(USUAL_MULTIPLIER, multipliers / Math.max(1, count)) / USUAL_MULTIPLIER;
}
