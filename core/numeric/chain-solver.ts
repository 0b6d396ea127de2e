import type { Missed } from './chain-equations.ts';
import { ChainIterate } from './chain-iterate.ts';
import type { ChainAnswer, ChainFailure, ChainGuess, ChainOptions, ChainProblem } from './chain-problem.ts';
import { ChainRestoration } from './chain-restoration.ts';
import { NewtonStep } from './newton-step.ts';
import { StepDamping } from './step-damping.ts';
import { type Measure, StepFilter, type Verdict } from './step-filter.ts';

/** First barrier parameter of a bare guess, and from a neighbour's answer. */
const FIRST_BARRIER = 0.1;
const WARM_BARRIER = 1e-4;
/** Next barrier parameter: the smaller of μ/5 and μ^1.5, once the error is within 10 μ. */
const BARRIER_FACTOR = 0.2;
const BARRIER_POWER = 1.5;
const BARRIER_ERROR = 10;
/** The last barrier parameter is the tolerance over this: then complementarity can come within it. */
const LAST_BARRIER = 11;
/** Share of the way to a bound that a step may take. */
const TO_BOUND = 0.99;
/** Times that a step is bent, while it reaches no further than this; what a bend may add, over μ. */
const MOST_BENDS = 3;
const LONG_ENOUGH = 0.99;
const MOST_BEND = 10;
const MOST_CORRECTIONS = 4;
/** A correction must bring the violation under this share of the one before. */
const CORRECTION_GAIN = 0.99;
/** How dear movement is made where no step is acceptable, and how often at most. */
const RETREAT_DAMPING = [1e-2, 1, 100];
const MOST_RETREATS = 30;
/** A point that misses less in all is jammed at its bounds: how often it is brought away from them. */
const JAMMED = 1;
const MOST_RETURNS = 3;
const SHORTEST_STEP = 1e-10;
const MOST_RESTORATIONS = 60;
/** Where no step is acceptable any more, an error of this many tolerances is rounding and good enough. */
const ROUNDING = 10;

/**
 * Solves a chain problem once.
 * @returns an answer within `options.tolerance` (1e-7, scaled), or why there is none and what is missed most
 */
export function solveChain(
  problem: ChainProblem,
  guess: ChainGuess,
  options: ChainOptions = {},
): ChainAnswer | ChainFailure {
  return new ChainSolver(problem).solve(guess, options);
}

/**
 * Primal-dual interior point for a chain, with a filter line search and second-order corrections.
 * A. Wächter & L. T. Biegler, Math. Program. 106 (2006) 25–57 (from memory); where no step is acceptable the
 * violation alone is reduced by shortest steps instead of their restoration problem, and steps that prove too long
 * are damped. Work space for problems of one size and structure; `solve` may be called again and again.
 */
export class ChainSolver {
  readonly #iterate: ChainIterate;
  readonly #step: NewtonStep;
  readonly #filter = new StepFilter();
  readonly #damping = new StepDamping();
  readonly #corrected: Missed;
  /** Made when first needed; many problems never do. */
  #restoration: ChainRestoration | null = null;

  constructor(private readonly problem: ChainProblem) {
    this.#iterate = new ChainIterate(problem);
    this.#step = new NewtonStep(this.#iterate);
    this.#corrected = this.#iterate.equations.missed();
  }

  /**
   * Solves `problem`: the one the solver was made for, or another with the same formulas, stages and end rows.
   * Failures are values, never thrown; the answer's arrays are the caller's.
   */
  solve(
    guess: ChainGuess,
    options: ChainOptions = {},
    problem: ChainProblem = this.problem,
  ): ChainAnswer | ChainFailure {
    const iterate = this.#iterate;
    const filter = this.#filter;
    const tolerance = options.tolerance ?? 1e-7;
    const mostSteps = options.mostSteps ?? 500;
    let mu = options.barrier ?? (guess.multipliers ? WARM_BARRIER : FIRST_BARRIER);
    const { atCentre } = options;
    const leastMu = tolerance / LAST_BARRIER;
    iterate.begin(problem, this.#step.recursion, guess, mu);
    this.#step.begin(options.soften ?? false);
    this.#damping.begin();
    filter.begin(iterate.measure(mu).violation);
    let restorations = 0;
    let retreats = 0;
    let returns = 0;
    let alpha = 0;
    let regularised = 0;
    for (let iteration = 0; iteration < mostSteps; iteration++) {
      if (options.cancelled?.()) return iterate.failure('cancelled', iteration);
      const { violation } = iterate.measure(mu);
      if (!(violation < Infinity) || Number.isNaN(iterate.objective)) {
        return iterate.failure('not a number', iteration);
      }
      this.#step.linearise();
      const error = iterate.error(0);
      options.onStep?.({
        iteration,
        objective: iterate.objective,
        violation,
        error,
        barrier: mu,
        regularised,
        alpha,
      });
      if (!atCentre) {
        if (error <= tolerance) return iterate.answer(iteration, error);
        while (mu > leastMu && iterate.error(mu) <= BARRIER_ERROR * mu) {
          mu = Math.max(leastMu, Math.min(BARRIER_FACTOR * mu, mu ** BARRIER_POWER));
          filter.clear();
        }
      }
      regularised = this.#step.find(mu, this.#damping.now);
      while (atCentre && regularised >= 0 && iterate.central(mu)) {
        const next = atCentre(iterate.centre(mu));
        if (next === 'done') return iterate.answer(iteration, error);
        iterate.measureAnew();
        if (next === 'lower') mu *= BARRIER_FACTOR;
        filter.clear();
        this.#step.correct(mu, iterate.missed);
        if (next === 'again') break;
      }
      if (regularised >= 0 && guess.multipliers && !atCentre) this.#bend(mu);
      const from = iterate.measure(mu);
      alpha = regularised < 0 ? 0 : this.#search(from, mu);
      if (alpha > 0) continue;
      if (error <= ROUNDING * tolerance) return iterate.answer(iteration, error);
      if (retreats++ < MOST_RETREATS && this.#retreat(mu)) continue;
      if (!atCentre && from.violation < JAMMED && returns++ < MOST_RETURNS) {
        // Whatever has come so near a bound that every step ends there is brought back inside.
        mu = Math.max(mu, WARM_BARRIER);
        iterate.begin(problem, this.#step.recursion, iterate.centre(mu).guess(), mu);
        this.#damping.begin();
        filter.begin(iterate.measure(mu).violation);
        continue;
      }
      filter.leave(from);
      if (++restorations > MOST_RESTORATIONS || !this.#restore(mu)) {
        return iterate.failure('no feasible step', iteration);
      }
      iteration += this.#restoration?.steps ?? 0;
    }
    return iterate.failure('too many steps', mostSteps);
  }

  /**
   * Bends the step where bounds cut it short: distance · multiplier changes by the product of both changes too, which a
   * plain step leaves out (Mehrotra's corrector, in steps that are kept only where they reach further; S. Mehrotra,
   * SIAM J. Optim. 2 (1992) 575–601, from memory). From a neighbour's answer it halves the work; from a bare guess it
   * leads astray as often as not.
   */
  #bend(mu: number): void {
    const iterate = this.#iterate;
    const step = this.#step;
    const toBound = TO_BOUND;
    let reach = iterate.reach(toBound);
    let dual = iterate.multiplierReach(toBound);
    for (let count = 0; count < MOST_BENDS && Math.min(reach, dual) < LONG_ENOUGH; count++) {
      step.keep();
      step.bend(reach * dual, MOST_BEND * mu);
      step.correct(mu, iterate.missed);
      const nowReach = iterate.reach(toBound);
      const nowDual = iterate.multiplierReach(toBound);
      if (nowReach * nowDual <= reach * dual) {
        step.straighten();
        step.back();
        return;
      }
      reach = nowReach;
      dual = nowDual;
    }
  }

  /**
   * Where no step is acceptable: forgets the points left behind, and steps that are dearer and so shorter are tried.
   * Restoring the equations alone is the last way out; it may lose all that was won for the objective.
   */
  #retreat(mu: number): boolean {
    this.#filter.clear();
    for (const dear of RETREAT_DAMPING) {
      if (this.#step.find(mu, Math.max(dear, this.#damping.now)) < 0) continue;
      if (this.#search(this.#iterate.measure(mu), mu) > 0) return true;
    }
    return false;
  }

  #restore(mu: number): boolean {
    this.#restoration ??= new ChainRestoration(this.#iterate);
    const step = this.#step;
    const linearise = () => {
      step.linearise();
      return step.recursion;
    };
    return this.#restoration.restore(linearise, this.#filter, mu);
  }

  /** Moves along the step as far as the filter accepts; returns the share taken, 0 when none is acceptable. */
  #search(from: Measure, mu: number): number {
    const iterate = this.#iterate;
    const filter = this.#filter;
    const toBound = TO_BOUND;
    const most = iterate.reach(toBound);
    const multipliers = iterate.multiplierReach(toBound);
    const slope = iterate.slope(mu);
    let verdict: Verdict = null;
    let alpha = most;
    for (let trial = 0; alpha > SHORTEST_STEP; trial++) {
      const measure = iterate.tryStep(alpha, mu);
      verdict = filter.judge(from, slope, alpha, measure);
      if (verdict) break;
      if (trial === 0) {
        this.#damping.noteRefusal(filter.progress(from, slope, alpha, measure) !== null);
        if (measure.violation >= from.violation) {
          verdict = this.#correct(from, slope, alpha, measure.violation, mu, toBound);
          if (verdict) break;
        }
      }
      alpha *= 0.5;
    }
    if (!verdict) return 0;
    if (verdict === 'by filter') filter.leave(from);
    iterate.take(alpha, multipliers, mu);
    this.#damping.noteStep(alpha / most, from.violation, iterate.equations.norm(iterate.missed));
    return alpha;
  }

  /** Second-order corrections: the same matrices, the equations' curvature along the step taken into account. */
  #correct(
    from: Measure,
    slope: number,
    alpha: number,
    firstViolation: number,
    mu: number,
    toBound: number,
  ): Verdict {
    const iterate = this.#iterate;
    const step = this.#step;
    const corrected = this.#corrected;
    const { missed, trialMissed } = iterate;
    corrected.defect.set(missed.defect);
    corrected.ends.set(missed.ends);
    corrected.limit.set(missed.limit);
    step.keep();
    let before = firstViolation;
    let share = alpha;
    for (let count = 0; count < MOST_CORRECTIONS; count++) {
      addShare(corrected.defect, share, trialMissed.defect);
      addShare(corrected.ends, share, trialMissed.ends);
      addShare(corrected.limit, share, trialMissed.limit);
      step.correct(mu, corrected);
      share = iterate.reach(toBound);
      const measure = iterate.tryStep(share, mu);
      const verdict = this.#filter.judge(from, slope, alpha, measure);
      if (verdict) return verdict;
      if (!(measure.violation <= CORRECTION_GAIN * before)) break;
      before = measure.violation;
    }
    step.back();
    return null;
  }
}

/** to = share · to + by */
function addShare(to: Float64Array, share: number, by: Float64Array): void {
  for (let i = 0; i < to.length; i++) to[i] = share * to[i] + by[i];
}
