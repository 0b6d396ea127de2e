import type { Formula } from './tape.ts';

/**
 * An optimum over a chain of states joined by stages, as a trajectory cut into steps is: least Σ h l(y, u) with
 * x⁺ = x + h f(y, u) + forcing, y = (x + x⁺)/2 (the implicit midpoint rule), within bounds and limits.
 */
export interface ChainProblem {
  /** Names of the states, of the controls and of the limits: what a failure is told by. */
  readonly states: readonly string[];
  readonly controls: readonly string[];
  readonly stages: number;
  /** Step h of each stage. */
  readonly step: Float64Array;
  /** Inputs: states in the middle, controls. Outputs: f for every state, then the cost l; any further ones are only read. */
  readonly stage: Formula;
  /** Data of the stage formula, stages × `stage.dataCount`. */
  readonly stageData: Float64Array;
  /** Added to the stages' equations, stages × states. */
  readonly forcing?: Float64Array;
  /** Inputs: states of a node. Outputs: quantities that must not be negative. */
  readonly limits?: {
    readonly names: readonly string[];
    readonly formula: Formula;
    /** Nodes × `formula.dataCount`. */
    readonly data: Float64Array;
  };
  /** Bounds, nodes × states and stages × controls; ±Infinity where there is none, low < high everywhere. */
  readonly stateLow: Float64Array;
  readonly stateHigh: Float64Array;
  readonly controlLow: Float64Array;
  readonly controlHigh: Float64Array;
  /** Conditions start·x₀ + end·x_N = value; those that reach the last state first. Rows × states. */
  readonly ends?: {
    readonly start: Float64Array;
    readonly end: Float64Array;
    readonly value: Float64Array;
  };
}

/** Where a solver begins: a bare guess, or the answer to a neighbouring problem of the same size. */
export interface ChainGuess {
  /** Nodes × states. */
  readonly x: Float64Array;
  /** Stages × controls. */
  readonly u: Float64Array;
  readonly multipliers?: ChainMultipliers;
}

export interface ChainMultipliers {
  /** Of the stages' equations (the gain in the objective a unit of forcing brings), stages × states. */
  readonly costate: Float64Array;
  readonly ends: Float64Array;
  readonly stateLow: Float64Array;
  readonly stateHigh: Float64Array;
  readonly controlLow: Float64Array;
  readonly controlHigh: Float64Array;
  /** Nodes × limits. */
  readonly limits: Float64Array;
  readonly slack: Float64Array;
}

export interface ChainAnswer extends ChainGuess {
  readonly ok: true;
  readonly objective: number;
  readonly iterations: number;
  /** Greatest violation of an equation, scaled as the states are. */
  readonly violation: number;
  /** Greatest error of the optimality conditions, scaled. */
  readonly error: number;
  readonly multipliers: ChainMultipliers;
}

export interface ChainFailure {
  readonly ok: false;
  readonly reason: 'too many steps' | 'no feasible step' | 'not a number' | 'cancelled';
  readonly iterations: number;
  /** The equation, bound or limit that is missed most, by its name, where along the chain and by how much. */
  readonly worst: { readonly name: string; readonly at: number; readonly by: number };
  readonly x: Float64Array;
  readonly u: Float64Array;
}

/** Where a solver stands at a centre of the barrier; the arrays are its own. */
export interface ChainCentre {
  readonly barrier: number;
  readonly objective: number;
  readonly x: Float64Array;
  readonly u: Float64Array;
  /** A copy, to begin a neighbouring problem from. */
  guess(): ChainGuess;
}

export interface ChainOptions {
  readonly tolerance?: number;
  readonly mostSteps?: number;
  /** First barrier parameter; 0.1 for a bare guess, 1e-4 from a neighbour's answer. */
  readonly barrier?: number;
  /**
   * Where the equations' curvature would lead a step away from a minimum, it is believed only in part, down to the
   * cost's own, before movement itself is made dear. Good where the cost is convex and steep.
   */
  readonly soften?: boolean;
  /**
   * Called at every centre of the barrier, where a step gains next to nothing; what it returns is done next: the
   * barrier is lowered, it is centred again (after a change of the problem's forcing, in place), or the centre is
   * the answer, whatever `tolerance`. Quick where cheap variables would be moved about long after the objective
   * has settled; what the barrier itself costs remains in the answer.
   */
  readonly atCentre?: (centre: ChainCentre) => 'lower' | 'again' | 'done';
  readonly onStep?: (step: {
    iteration: number;
    objective: number;
    violation: number;
    error: number;
    barrier: number;
    regularised: number;
    alpha: number;
  }) => void;
  readonly cancelled?: () => boolean;
}
