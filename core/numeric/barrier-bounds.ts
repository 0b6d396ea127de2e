/** Multipliers stay within this factor of μ over the distance, so that each step sees a useful curvature. */
const MULTIPLIER_BAND = 1e10;
/** A neighbour's multipliers stay within this factor of it at the start. */
const WARM_BAND = 10;

/** Low and high may be ±Infinity; low < high everywhere. */
export interface Limits {
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/**
 * Variables between bounds in a primal-dual barrier method, with the bounds' multipliers, the step of both, and a
 * trial point: −μ Σ ln(x − low) − μ Σ ln(high − x), multipliers z ≈ μ/distance.
 */
export class BarrierBounds {
  readonly at: Float64Array;
  readonly trial: Float64Array;
  readonly change: Float64Array;
  readonly lowMultiplier: Float64Array;
  readonly highMultiplier: Float64Array;
  readonly lowChange: Float64Array;
  readonly highChange: Float64Array;
  /** What the step's second order adds to distance · multiplier; nothing unless it was bent. */
  readonly lowBend: Float64Array;
  readonly highBend: Float64Array;
  low: Float64Array;
  high: Float64Array;
  /** How many of them are finite, counted when it begins. */
  bounds = 0;

  constructor(limits: Limits) {
    const size = limits.low.length;
    this.low = limits.low;
    this.high = limits.high;
    this.at = new Float64Array(size);
    this.trial = new Float64Array(size);
    this.change = new Float64Array(size);
    this.lowMultiplier = new Float64Array(size);
    this.highMultiplier = new Float64Array(size);
    this.lowChange = new Float64Array(size);
    this.highChange = new Float64Array(size);
    this.lowBend = new Float64Array(size);
    this.highBend = new Float64Array(size);
  }

  get size(): number {
    return this.at.length;
  }

  /** Begins at `from`, moved inside by `push` of a bound's size (at least 1) and of the span between two. */
  begin(from: Float64Array, push: number): void {
    const { at, low, high } = this;
    this.bounds = 0;
    for (let i = 0; i < at.length; i++) {
      const span = high[i] - low[i];
      const below = Math.min(push * Math.max(1, Math.abs(low[i])), push * span);
      const above = Math.min(push * Math.max(1, Math.abs(high[i])), push * span);
      let v = from[i];
      if (low[i] > -Infinity) {
        this.bounds++;
        v = Math.max(v, low[i] + below);
      }
      if (high[i] < Infinity) {
        this.bounds++;
        v = Math.min(v, high[i] - above);
      }
      at[i] = v;
    }
  }

  /** Multipliers that fit the barrier: μ over the distance, or a neighbour's as far as they agree with it. */
  fit(mu: number, low?: Float64Array, high?: Float64Array): void {
    const { at } = this;
    for (let i = 0; i < at.length; i++) {
      this.lowMultiplier[i] = fitted(mu, at[i] - this.low[i], low?.[i]);
      this.highMultiplier[i] = fitted(mu, this.high[i] - at[i], high?.[i]);
    }
  }

  /** Gradient of the barrier at `i`. */
  pull(mu: number, i: number): number {
    return (
      (mu - this.highBend[i]) / (this.high[i] - this.at[i]) -
      (mu - this.lowBend[i]) / (this.at[i] - this.low[i])
    );
  }

  /** Leaves the second order out again. */
  straighten(): void {
    this.lowBend.fill(0);
    this.highBend.fill(0);
  }

  /** Counts with a share of the products of the changes of distance and multiplier, `most` at most. */
  bend(share: number, most: number): void {
    const { change, lowChange, highChange, lowBend, highBend } = this;
    for (let i = 0; i < change.length; i++) {
      const low = share * change[i] * lowChange[i];
      const high = -share * change[i] * highChange[i];
      lowBend[i] = Math.min(Math.max(low, -most), most);
      highBend[i] = Math.min(Math.max(high, -most), most);
    }
  }

  /** Curvature that stands for the bounds in a Newton step at `i`. */
  curvature(i: number): number {
    return (
      this.lowMultiplier[i] / (this.at[i] - this.low[i]) +
      this.highMultiplier[i] / (this.high[i] - this.at[i])
    );
  }

  /** The multipliers' changes that belong to `change`. */
  followChange(mu: number): void {
    const { at, low, high, change, lowMultiplier, highMultiplier, lowChange, highChange, lowBend, highBend } =
      this;
    for (let i = 0; i < at.length; i++) {
      const below = at[i] - low[i];
      const above = high[i] - at[i];
      const d = change[i];
      lowChange[i] =
        below < Infinity ? (mu - lowBend[i] - lowMultiplier[i] * d) / below - lowMultiplier[i] : 0;
      highChange[i] =
        above < Infinity ? (mu - highBend[i] + highMultiplier[i] * d) / above - highMultiplier[i] : 0;
    }
  }

  /** The longest share of `change`, at most `share`, that leaves 1 − toBound of every distance. */
  reach(share: number, toBound: number): number {
    const { at, low, high, change } = this;
    let most = share;
    for (let i = 0; i < at.length; i++) {
      const d = change[i];
      if (d < 0) {
        const room = toBound * (at[i] - low[i]);
        if (-d * most > room) most = room / -d;
      } else if (d > 0) {
        const room = toBound * (high[i] - at[i]);
        if (d * most > room) most = room / d;
      }
    }
    return most;
  }

  /** The same for the multipliers, which stay positive. */
  multiplierReach(share: number, toBound: number): number {
    const first = positiveReach(share, toBound, this.lowMultiplier, this.lowChange);
    return positiveReach(first, toBound, this.highMultiplier, this.highChange);
  }

  tryStep(alpha: number): void {
    const { at, change, trial } = this;
    for (let i = 0; i < at.length; i++) trial[i] = at[i] + alpha * change[i];
  }

  /** Σ ln of the distances of a point. */
  logDistances(point: Float64Array): number {
    const { low, high } = this;
    let sum = 0;
    for (let i = 0; i < point.length; i++) {
      if (low[i] > -Infinity) sum += Math.log(point[i] - low[i]);
      if (high[i] < Infinity) sum += Math.log(high[i] - point[i]);
    }
    return sum;
  }

  /** Change of the barrier along `change`, to first order. */
  barrierSlope(mu: number): number {
    const { at, low, high, change } = this;
    let slope = 0;
    for (let i = 0; i < at.length; i++) slope += change[i] * (1 / (high[i] - at[i]) - 1 / (at[i] - low[i]));
    return mu * slope;
  }

  takeTrial(): void {
    this.at.set(this.trial);
  }

  /** Moves the multipliers by a share of their change and back into their band round μ over the distance. */
  takeMultipliers(alpha: number, mu: number): void {
    const { at, low, high, lowMultiplier, highMultiplier, lowChange, highChange } = this;
    for (let i = 0; i < at.length; i++) {
      const below = at[i] - low[i];
      const above = high[i] - at[i];
      if (below < Infinity) lowMultiplier[i] = banded(lowMultiplier[i] + alpha * lowChange[i], mu / below);
      if (above < Infinity) highMultiplier[i] = banded(highMultiplier[i] + alpha * highChange[i], mu / above);
    }
  }

  /** Greatest miss of distance · multiplier = μ. */
  complementarity(mu: number): number {
    const { at, low, high, lowMultiplier, highMultiplier } = this;
    let worst = 0;
    for (let i = 0; i < at.length; i++) {
      if (low[i] > -Infinity) worst = Math.max(worst, Math.abs(lowMultiplier[i] * (at[i] - low[i]) - mu));
      if (high[i] < Infinity) worst = Math.max(worst, Math.abs(highMultiplier[i] * (high[i] - at[i]) - mu));
    }
    return worst;
  }
}

function fitted(mu: number, distance: number, from: number | undefined): number {
  if (!(distance < Infinity)) return 0;
  const fit = mu / distance;
  return from === undefined ? fit : Math.min(Math.max(from, fit / WARM_BAND), fit * WARM_BAND);
}

function banded(multiplier: number, fit: number): number {
  return Math.min(Math.max(multiplier, fit / MULTIPLIER_BAND), fit * MULTIPLIER_BAND);
}

function positiveReach(share: number, toBound: number, at: Float64Array, change: Float64Array): number {
  let most = share;
  for (let i = 0; i < at.length; i++) {
    if (change[i] < 0 && -change[i] * most > toBound * at[i]) most = (toBound * at[i]) / -change[i];
  }
  return most;
}
