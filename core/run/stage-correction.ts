import type { ChainProblem } from '../numeric/index.ts';
import { ROW, STAGE_DATA } from './run-formula.ts';
import type { StageFlow } from './stage-flow.ts';
import { StagesFlow } from './stages-flow.ts';

/** Where corrections swing between two answers, half of each is taken. */
const SWINGS = 0.9;

/**
 * What the midpoint rule of the problem leaves out of each stage, read by following the equations of motion closely
 * through it: the problem's forcing, so that its answer is theirs (deferred correction).
 */
export class StageCorrection {
  readonly forcing: Float64Array;
  readonly #middles: Float64Array;
  readonly #values: Float64Array;
  readonly #found: Float64Array;
  readonly #parts: Int32Array;
  readonly #first: Float64Array;
  readonly #flow: StagesFlow;
  #before = Infinity;

  /** @param whole knows the time a stage takes, and how finely it is to be followed */
  constructor(
    private readonly problem: ChainProblem,
    private readonly nodes: Float64Array,
    private readonly whole: StageFlow,
    edgeAt: (place: number) => number,
  ) {
    const { states, controls, stages, stage } = problem;
    const n = states.length;
    this.forcing = problem.forcing ?? new Float64Array(stages * n);
    this.#middles = new Float64Array(stages * (n + controls.length));
    this.#values = new Float64Array(stages * stage.outputCount);
    this.#found = new Float64Array(this.forcing.length);
    this.#parts = new Int32Array(stages);
    this.#first = new Float64Array(n);
    this.#flow = new StagesFlow(problem, nodes, edgeAt);
  }

  /** For another search. */
  begin(): void {
    this.#before = Infinity;
  }

  /** Writes the forcing that fits a point; returns the greatest miss of a node by its stage followed closely. */
  read(x: Float64Array, u: Float64Array): number {
    const { nodes, forcing } = this;
    const { stage, stageData, states, controls, stages, step } = this.problem;
    const n = states.length;
    const m = controls.length;
    const z = n + m;
    const parts = this.#parts;
    const middles = this.#middles;
    for (let k = 0; k < stages; k++) {
      const c = k * n;
      parts[k] = this.whole.stepsFor(nodes[k], nodes[k + 1], this.#seconds(x, u, k), x, c);
      for (let i = 0; i < n; i++) middles[k * z + i] = 0.5 * (x[c + i] + x[c + n + i]);
      for (let i = 0; i < m; i++) middles[k * z + n + i] = u[k * m + i];
    }
    const values = this.#values;
    const outputs = stage.outputCount;
    stage.valuesOver(
      stages,
      { values: middles, at: 0, width: z },
      { values: stageData, at: 0, width: STAGE_DATA },
      { values, at: 0, width: outputs },
    );
    const found = this.#found;
    this.#flow.follow(x, u, parts, found);
    let worst = 0;
    for (let k = 0; k < stages; k++) {
      const c = k * n;
      for (let i = 0; i < n; i++) {
        worst = Math.max(worst, Math.abs(found[c + i] - x[c + n + i]));
        found[c + i] -= x[c + i] + step[k] * values[k * outputs + i];
      }
    }
    const share = worst > SWINGS * this.#before ? 0.5 : 1;
    for (let i = 0; i < found.length; i++) forcing[i] += share * (found[i] - forcing[i]);
    this.#before = worst;
    return worst;
  }

  #seconds(x: Float64Array, u: Float64Array, k: number): number {
    const { whole, nodes, problem } = this;
    const length = nodes[k + 1] - nodes[k];
    if (whole.overTime) return length;
    const first = this.#first;
    const n = first.length;
    for (let i = 0; i < n; i++) first[i] = x[k * n + i];
    whole.hold(u, k * problem.controls.length, problem.stageData[k * STAGE_DATA + 1]);
    return length * whole.read(nodes[k], first)[n + ROW.seconds];
  }
}
