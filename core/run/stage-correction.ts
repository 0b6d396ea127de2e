import type { ChainProblem } from '../numeric/index.ts';
import { ROW, STAGE_DATA } from './run-formula.ts';
import type { StageFlow } from './stage-flow.ts';

/** Where corrections swing between two answers, half of each is taken. */
const SWINGS = 0.9;

/**
 * What the midpoint rule of the problem leaves out of each stage, read by following the equations of motion closely
 * through it: the problem's forcing, so that its answer is theirs (deferred correction).
 */
export class StageCorrection {
  readonly forcing: Float64Array;
  readonly #middle: Float64Array;
  readonly #values: Float64Array;
  readonly #found: Float64Array;
  #before = Infinity;

  constructor(
    private readonly problem: ChainProblem,
    private readonly nodes: Float64Array,
    /** Follows the states alone; `whole` knows the time a stage takes. */
    private readonly flow: StageFlow,
    private readonly whole: StageFlow,
  ) {
    const { states, controls, stages, stage } = problem;
    this.forcing = problem.forcing ?? new Float64Array(stages * states.length);
    this.#middle = new Float64Array(states.length + controls.length);
    this.#values = new Float64Array(stage.outputCount);
    this.#found = new Float64Array(this.forcing.length);
  }

  /** For another search. */
  begin(): void {
    this.#before = Infinity;
  }

  /** Writes the forcing that fits a point; returns the greatest miss of a node by its stage followed closely. */
  read(x: Float64Array, u: Float64Array): number {
    const { flow, whole, forcing, problem, nodes } = this;
    const { stage, stageData } = problem;
    const n = problem.states.length;
    const m = problem.controls.length;
    const middle = this.#middle;
    const values = this.#values;
    const found = this.#found;
    let worst = 0;
    for (let k = 0; k + 1 < nodes.length; k++) {
      const c = k * n;
      for (let i = 0; i < n; i++) flow.at[i] = x[c + i];
      const free = stageData[k * STAGE_DATA + 1];
      flow.hold(u, k * m, free);
      whole.hold(u, k * m, free);
      const length = nodes[k + 1] - nodes[k];
      const seconds = length * whole.read(nodes[k], flow.at)[n + ROW.seconds];
      const parts = flow.stepsFor(nodes[k], nodes[k + 1], seconds, x, c);
      for (let p = 0; p < parts; p++) flow.step(nodes[k] + (p * length) / parts, length / parts);
      for (let i = 0; i < n; i++) middle[i] = 0.5 * (x[c + i] + x[c + n + i]);
      for (let i = 0; i < m; i++) middle[n + i] = u[k * m + i];
      stage.values(middle, stageData, k * STAGE_DATA, values);
      for (let i = 0; i < n; i++) {
        worst = Math.max(worst, Math.abs(flow.at[i] - x[c + n + i]));
        found[c + i] = flow.at[i] - x[c + i] - length * values[i];
      }
    }
    const share = worst > SWINGS * this.#before ? 0.5 : 1;
    for (let i = 0; i < found.length; i++) forcing[i] += share * (found[i] - forcing[i]);
    this.#before = worst;
    return worst;
  }
}
