/** Sufficient progress in violation, in the objective, and by Armijo's rule. */
const LESS_VIOLATION = 1e-5;
const LESS_OBJECTIVE = 1e-5;
const ARMIJO = 1e-4;
/** When a step counts as one toward the objective: (−slope)^2.3 α > violation^1.1. */
const SWITCH_VIOLATION = 1.1;
const SWITCH_SLOPE = 2.3;
/** Violation over the first (at least 1) that is never accepted, and under which the objective may lead alone. */
const MOST_VIOLATION = 1e4;
const LEAST_VIOLATION = 1e-4;

export type Verdict = 'by objective' | 'by filter' | null;

/** A point as a line search sees it. */
export interface Measure {
  readonly violation: number;
  /** Barrier objective. */
  readonly objective: number;
}

/**
 * Which points a line search may accept: those that are better in violation or in the barrier objective than every
 * point it has left behind. Wächter & Biegler 2006 (see chain-solver), their constants, from memory.
 */
export class StepFilter {
  readonly #violations: number[] = [];
  readonly #objectives: number[] = [];
  #most = 0;
  #least = 0;

  /** Begins anew, scaled by the first point's violation. */
  begin(violation: number): void {
    this.clear();
    this.#most = MOST_VIOLATION * Math.max(1, violation);
    this.#least = LEAST_VIOLATION * Math.max(1, violation);
  }

  clear(): void {
    this.#violations.length = 0;
    this.#objectives.length = 0;
  }

  /** Forbids what is no better than this point. */
  leave({ violation, objective }: Measure): void {
    this.#violations.push((1 - LESS_VIOLATION) * violation);
    this.#objectives.push(objective - LESS_OBJECTIVE * violation);
  }

  /** Whether the points left behind allow this one. */
  allows({ violation, objective }: Measure): boolean {
    if (!(violation <= this.#most) || !(objective < Infinity)) return false;
    for (let i = 0; i < this.#violations.length; i++) {
      if (violation >= this.#violations[i] && objective >= this.#objectives[i]) return false;
    }
    return true;
  }

  /** Whether a trial point, `alpha` of a step with this `slope` of the objective away, is acceptable. */
  judge(from: Measure, slope: number, alpha: number, trial: Measure): Verdict {
    return this.allows(trial) ? this.progress(from, slope, alpha, trial) : null;
  }

  /** The same, the points left behind aside. */
  progress(from: Measure, slope: number, alpha: number, trial: Measure): Verdict {
    if (!(trial.violation <= this.#most) || !(trial.objective < Infinity)) return null;
    const gain = trial.objective - from.objective - 10 * Number.EPSILON * Math.abs(from.objective);
    const toward = slope < 0 && alpha * (-slope) ** SWITCH_SLOPE > from.violation ** SWITCH_VIOLATION;
    if (from.violation <= this.#least && toward)
      return gain <= ARMIJO * alpha * slope ? 'by objective' : null;
    const better =
      trial.violation <= (1 - LESS_VIOLATION) * from.violation || gain <= -LESS_OBJECTIVE * from.violation;
    return better ? 'by filter' : null;
  }
}
