/**
 * The equations of motion followed closely through one stage, its controls held: what the coarse rule of the
 * problem is corrected by, and where the rows of the track come from. Runge and Kutta's classical rule, in more
 * steps where the ski rolls through flat and its arc changes within hundredths of a second.
 */

import type { Formula } from '../numeric/index.ts';
import { BITE } from '../skier/index.ts';
import { LEAN, LEAN_RATE, type RunShape, STAGE_DATA } from './run-formula.ts';

/** Longest step in time, s; in edge angle near flat, rad; in the rate of the lean, rad/s. */
const LONGEST = 0.0101;
const FINEST_ROLL = 0.25 * BITE;
const FINEST_SWING = 0.5;
/** Beyond it a ski's arc no longer depends on its bite, rad. */
const BITTEN = 4 * BITE;
const MOST_STEPS = 64;

export class StageFlow {
  /** States, and the integrals of the formula's further rates, at the end of the last step followed. */
  readonly at: Float64Array;
  /** Whether places are seconds. */
  readonly overTime: boolean;
  readonly #states: number;
  readonly #follows: boolean;
  readonly #controls: number;
  readonly #inputs: Float64Array;
  readonly #out: Float64Array;
  readonly #data = new Float64Array(STAGE_DATA);
  readonly #between: Float64Array;
  readonly #rates: readonly [Float64Array, Float64Array, Float64Array, Float64Array];

  /** @param further how many of the formula's outputs after the states' rates are rates to be followed too */
  constructor(
    private readonly formula: Formula,
    further: number,
    shape: RunShape,
    /** Edge angle at a place, rad. */
    private readonly edgeAt: (place: number) => number,
  ) {
    const states = shape.states.length;
    const width = states + further;
    this.#states = states;
    this.overTime = shape.over === 'time';
    this.#follows = shape.over === 'turns';
    this.#controls = shape.controls.length;
    this.at = new Float64Array(width);
    this.#inputs = new Float64Array(states + this.#controls);
    this.#between = new Float64Array(states);
    this.#out = new Float64Array(formula.outputCount);
    const rates = () => new Float64Array(width);
    this.#rates = [rates(), rates(), rates(), rates()];
  }

  /** Sets the controls of the stage to be followed, and whether its pace may change. */
  hold(u: Float64Array, from: number, free: number): void {
    for (let i = 0; i < this.#controls; i++) this.#inputs[this.#states + i] = u[from + i];
    this.#data[1] = free;
  }

  /**
   * How many steps a stage of `seconds` from place to place is followed in.
   *
   * @param x states at all nodes, and the place among them of the stage's first: skis that follow the lean roll as it does
   */
  stepsFor(from: number, to: number, seconds: number, x: Float64Array, at: number): number {
    const a = this.#follows ? x[at + LEAN] : this.edgeAt(from);
    const b = this.#follows ? x[at + this.#states + LEAN] : this.edgeAt(to);
    const flat = Math.min(Math.abs(a), Math.abs(b)) < BITTEN || a * b < 0;
    const roll = flat ? Math.abs(b - a) / FINEST_ROLL : 0;
    const swing = Math.abs(x[at + this.#states + LEAN_RATE] - x[at + LEAN_RATE]) / FINEST_SWING;
    return Math.min(MOST_STEPS, Math.ceil(Math.max(1, seconds / LONGEST, roll, swing)));
  }

  /** The formula's outputs at a place with the controls held; they stay until the next call. */
  read(place: number, state: Float64Array): Float64Array {
    for (let i = 0; i < this.#states; i++) this.#inputs[i] = state[i];
    this.#data[0] = this.edgeAt(place);
    this.formula.values(this.#inputs, this.#data, 0, this.#out);
    return this.#out;
  }

  /** Follows `at` from a place over `step`. */
  step(place: number, step: number): void {
    const { at } = this;
    const [k1, k2, k3, k4] = this.#rates;
    const half = place + 0.5 * step;
    this.#rate(place, at, 0, k1);
    this.#rate(half, k1, 0.5 * step, k2);
    this.#rate(half, k2, 0.5 * step, k3);
    this.#rate(place + step, k3, step, k4);
    for (let i = 0; i < at.length; i++) at[i] += (step / 6) * (k1[i] + 2 * k2[i] + 2 * k3[i] + k4[i]);
  }

  /** Rates at a place, `by` along `slope` from where it stands. */
  #rate(place: number, slope: Float64Array, by: number, to: Float64Array): void {
    const { at } = this;
    const y = this.#between;
    for (let i = 0; i < y.length; i++) y[i] = at[i] + by * slope[i];
    const out = this.read(place, y);
    for (let i = 0; i < to.length; i++) to[i] = out[i];
  }
}
