/**
 * The equations of motion followed closely through one stage, its controls held: what the coarse rule of the
 * problem is corrected by, and where the rows of the track come from. Runge and Kutta's classical rule, in more
 * steps where the ski rolls through flat and its arc changes within hundredths of a second.
 */

import { BITE } from '../skier/index.ts';
import { ROW_RATES, ROW_SIZE, type RunFormulas, STAGE_DATA } from './run-formula.ts';

/** Longest step in time, s, and in edge angle near flat, rad. */
const LONGEST = 0.007;
const FINEST_ROLL = 0.25 * BITE;
/** Beyond it a ski's arc no longer depends on its bite, rad. */
const BITTEN = 4 * BITE;
const MOST_STEPS = 64;

export class StageFlow {
  readonly width: number;
  /** States and the integrals of `ROW` at the end of the last step followed, and their rates there. */
  readonly at: Float64Array;
  readonly #inputs: Float64Array;
  readonly #out: Float64Array;
  readonly #data = new Float64Array(STAGE_DATA);
  readonly #rates: readonly Float64Array[];

  constructor(
    private readonly formulas: RunFormulas,
    private readonly states: number,
    private readonly controls: number,
    /** Edge angle at a place, rad. */
    private readonly edgeAt: (place: number) => number,
  ) {
    this.width = states + ROW_RATES;
    this.at = new Float64Array(this.width);
    this.#inputs = new Float64Array(states + controls);
    this.#out = new Float64Array(states + ROW_SIZE);
    this.#rates = Array.from({ length: 4 }, () => new Float64Array(this.width));
  }

  /** Sets the controls of the stage to be followed, and whether its pace may change. */
  hold(u: Float64Array, from: number, free: number): void {
    for (let i = 0; i < this.controls; i++) this.#inputs[this.states + i] = u[from + i];
    this.#data[1] = free;
  }

  /** How many steps a stage of `seconds` from place to place is followed in. */
  stepsFor(from: number, to: number, seconds: number): number {
    const a = this.edgeAt(from);
    const b = this.edgeAt(to);
    const flat = Math.min(Math.abs(a), Math.abs(b)) < BITTEN || a * b < 0;
    const roll = flat ? Math.abs(b - a) / FINEST_ROLL : 0;
    return Math.min(MOST_STEPS, Math.max(1, Math.ceil(seconds / LONGEST), Math.ceil(roll)));
  }

  /** Rates and readings of `ROW` at a place with the controls held; the readings stay until the next call. */
  read(place: number, state: Float64Array): Float64Array {
    for (let i = 0; i < this.states; i++) this.#inputs[i] = state[i];
    this.#data[0] = this.edgeAt(place);
    this.formulas.row.values(this.#inputs, this.#data, 0, this.#out);
    return this.#out;
  }

  /** Follows `at` from a place over `step`. */
  step(place: number, step: number): void {
    const { at, width } = this;
    const [k1, k2, k3, k4] = this.#rates;
    const y = new Float64Array(this.states);
    const rate = (where: number, into: Float64Array) => {
      const out = this.read(where, y);
      for (let i = 0; i < width; i++) into[i] = out[i];
    };
    const move = (from: Float64Array, by: number) => {
      for (let i = 0; i < this.states; i++) y[i] = at[i] + by * from[i];
    };
    y.set(at.subarray(0, this.states));
    rate(place, k1);
    move(k1, 0.5 * step);
    rate(place + 0.5 * step, k2);
    move(k2, 0.5 * step);
    rate(place + 0.5 * step, k3);
    move(k3, step);
    rate(place + step, k4);
    for (let i = 0; i < width; i++) at[i] += (step / 6) * (k1[i] + 2 * k2[i] + 2 * k3[i] + k4[i]);
  }
}
