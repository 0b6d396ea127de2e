import type { CarveConditions } from './groove.ts';
import type { GrooveBalance } from './groove-balance.ts';
import { DOFS } from './ski-stiffness.ts';

// Kept as constants of this file: some loaders turn an imported binding into a call on every use.
const STEP = DOFS;

/** How a Newton run ended; `iterations` counts factorised steps. */
export interface NewtonOutcome {
  readonly converged: boolean;
  readonly iterations: number;
}

const LEAST_STEP = 1 / 1024;

/**
 * Semi-smooth Newton iteration with a line search on the natural level function: a step is taken when the
 * correction the same Jacobian still asks for afterwards has become smaller (Deuflhard, Newton Methods for
 * Nonlinear Problems, from memory). Unlike the residual's norm, it does not mind that bending stiffness and
 * snow differ by many orders of magnitude.
 */
export class GrooveNewton {
  /** The current point; the answer after a converged run. */
  readonly unknowns: Float64Array;
  readonly #balance: GrooveBalance;
  readonly #size: Float64Array;
  readonly #step: Float64Array;
  readonly #trial: Float64Array;
  readonly #next: Float64Array;
  readonly #tolerance: number;
  readonly #bootCentre: number;
  readonly #length: number;
  readonly #halfWidth: number;

  /** `tolerance` is of the load, for the force on every node and for the ski as a whole. */
  constructor(
    balance: GrooveBalance,
    length: number,
    halfWidth: number,
    bootCentre: number,
    tolerance: number,
  ) {
    const n = balance.residual.length;
    this.#balance = balance;
    this.unknowns = new Float64Array(n);
    this.#step = new Float64Array(n);
    this.#trial = new Float64Array(n);
    this.#next = new Float64Array(n);
    this.#size = new Float64Array(n);
    // Slopes and twists are weighed by the edge displacement they cause.
    for (let i = 0; i < n; i += STEP) {
      this.#size[i] = 1;
      this.#size[i + 1] = 0.1 * length;
      this.#size[i + 2] = halfWidth;
    }
    this.#tolerance = tolerance;
    this.#bootCentre = bootCentre;
    this.#length = length;
    this.#halfWidth = halfWidth;
  }

  /** Runs from the present `unknowns` under conditions already posed on the balance. */
  run(conditions: CarveConditions, mostIterations: number): NewtonOutcome {
    const balance = this.#balance;
    const { unknowns } = this;
    balance.evaluate(unknowns);
    let damping = 1;
    for (let iteration = 0; iteration < mostIterations; iteration++) {
      if (this.#balanced(conditions)) return { converged: true, iterations: iteration };
      if (!balance.factor()) return { converged: false, iterations: iteration };
      const step = this.#step;
      step.set(balance.residual);
      balance.jacobian.solve(step);
      const norm = this.#norm(step);
      if (!Number.isFinite(norm)) return { converged: false, iterations: iteration };
      let taken = Math.min(1, 4 * damping);
      for (;;) {
        const trial = this.#trial;
        for (let i = 0; i < trial.length; i++) trial[i] = unknowns[i] - taken * step[i];
        balance.evaluate(trial);
        const next = this.#next;
        next.set(balance.residual);
        balance.jacobian.solve(next);
        if (this.#norm(next) <= (1 - 0.25 * taken) * norm) break;
        taken *= 0.5;
        if (taken < LEAST_STEP) return { converged: false, iterations: iteration + 1 };
      }
      unknowns.set(this.#trial);
      damping = taken;
    }
    return { converged: this.#balanced(conditions), iterations: mostIterations };
  }

  /** Every node within the tolerance, or what rounding leaves of its stiffness; the ski as a whole strictly. */
  #balanced(conditions: CarveConditions): boolean {
    const { residual, stiffest } = this.#balance;
    let highest = 0;
    for (let i = 0; i < residual.length; i += STEP) highest = Math.max(highest, Math.abs(this.unknowns[i]));
    const tolerance = this.#tolerance * conditions.load;
    const rounding = 16 * Number.EPSILON * highest;
    for (let i = 0; i < residual.length; i += STEP) {
      const force = tolerance + rounding * stiffest[i];
      if (!(Math.abs(residual[i]) <= force)) return false;
      if (!(Math.abs(residual[i + 1]) <= force * this.#length)) return false;
      if (!(Math.abs(residual[i + 2]) <= force * this.#halfWidth)) return false;
    }
    return this.#balance.imbalance(conditions, this.#bootCentre) <= this.#tolerance;
  }

  #norm(vector: Float64Array): number {
    let sum = 0;
    for (let i = 0; i < vector.length; i++) {
      const sized = this.#size[i] * vector[i];
      sum += sized * sized;
    }
    return Math.sqrt(sum);
  }
}
