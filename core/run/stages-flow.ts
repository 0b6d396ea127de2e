import type { ChainProblem } from '../numeric/index.ts';
import { STAGE_DATA } from './run-formula.ts';

/**
 * The equations of motion followed through all stages of a problem at once, each from its own first node with its
 * controls held: Runge and Kutta's classical rule, each stage in as many steps as it is given.
 */
export class StagesFlow {
  /** Stages by how many steps they take, the most first: those still under way are the first of them. */
  readonly #order: Int32Array;
  /** In that order: where each stage stands, and inputs and data of the formula, a row a stage. */
  readonly #at: Float64Array;
  readonly #inputs: Float64Array;
  readonly #data: Float64Array;
  readonly #rates: readonly [Float64Array, Float64Array, Float64Array, Float64Array];

  constructor(
    private readonly problem: ChainProblem,
    private readonly nodes: Float64Array,
    /** Edge angle at a place, rad. */
    private readonly edgeAt: (place: number) => number,
  ) {
    const { states, controls, stages, stage } = problem;
    this.#order = new Int32Array(stages);
    this.#at = new Float64Array(stages * states.length);
    this.#inputs = new Float64Array(stages * (states.length + controls.length));
    this.#data = new Float64Array(stages * STAGE_DATA);
    const rates = () => new Float64Array(stages * stage.outputCount);
    this.#rates = [rates(), rates(), rates(), rates()];
  }

  /** Writes the states at the end of every stage, stages × states. */
  follow(x: Float64Array, u: Float64Array, parts: Int32Array, to: Float64Array): void {
    const { states, controls, stages, stageData } = this.problem;
    const n = states.length;
    const m = controls.length;
    const z = n + m;
    const order = this.#order;
    const at = this.#at;
    const inputs = this.#inputs;
    for (let k = 0; k < stages; k++) order[k] = k;
    order.sort((j, k) => parts[k] - parts[j]);
    for (let p = 0; p < stages; p++) {
      const k = order[p];
      for (let i = 0; i < n; i++) at[p * n + i] = x[k * n + i];
      for (let i = 0; i < m; i++) inputs[p * z + n + i] = u[k * m + i];
      this.#data[p * STAGE_DATA + 1] = stageData[k * STAGE_DATA + 1];
    }
    let active = stages;
    for (let round = 0; ; round++) {
      while (active > 0 && parts[order[active - 1]] <= round) active--;
      if (active === 0) break;
      this.#step(active, round, parts);
    }
    for (let p = 0; p < stages; p++) {
      const k = order[p];
      for (let i = 0; i < n; i++) to[k * n + i] = at[p * n + i];
    }
  }

  /** One step of the first `active` stages, in the order. */
  #step(active: number, round: number, parts: Int32Array): void {
    const { nodes } = this;
    const at = this.#at;
    const order = this.#order;
    const [k1, k2, k3, k4] = this.#rates;
    const n = this.problem.states.length;
    const width = this.problem.stage.outputCount;
    this.#rate(active, round, parts, 0, k1, k1);
    this.#rate(active, round, parts, 0.5, k1, k2);
    this.#rate(active, round, parts, 0.5, k2, k3);
    this.#rate(active, round, parts, 1, k3, k4);
    for (let p = 0; p < active; p++) {
      const k = order[p];
      const sixth = (nodes[k + 1] - nodes[k]) / (6 * parts[k]);
      for (let i = 0; i < n; i++) {
        const r = p * width + i;
        at[p * n + i] += sixth * (k1[r] + 2 * k2[r] + 2 * k3[r] + k4[r]);
      }
    }
  }

  /** Rates a share of the step on, along `slope` from where the stages stand. */
  #rate(
    active: number,
    round: number,
    parts: Int32Array,
    share: number,
    slope: Float64Array,
    to: Float64Array,
  ): void {
    const { nodes, problem, edgeAt } = this;
    const { stage, states, controls } = problem;
    const n = states.length;
    const z = n + controls.length;
    const width = stage.outputCount;
    const at = this.#at;
    const inputs = this.#inputs;
    const data = this.#data;
    for (let p = 0; p < active; p++) {
      const k = this.#order[p];
      const step = (nodes[k + 1] - nodes[k]) / parts[k];
      data[p * STAGE_DATA] = edgeAt(nodes[k] + (round + share) * step);
      const by = share * step;
      for (let i = 0; i < n; i++) {
        inputs[p * z + i] = by === 0 ? at[p * n + i] : at[p * n + i] + by * slope[p * width + i];
      }
    }
    stage.valuesOver(
      active,
      { values: inputs, at: 0, width: z },
      { values: data, at: 0, width: STAGE_DATA },
      { values: to, at: 0, width },
    );
  }
}
