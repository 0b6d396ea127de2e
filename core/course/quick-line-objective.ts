import type { SplineRow } from '../numeric/index.ts';
import { advance, type Interval, type PathPhysics } from './timed-path.ts';
import { type IntervalWorth, weighInterval } from './timed-path-slopes.ts';

/**
 * Time of a spline path plus its constraints by the augmented Lagrangian, with the gradient by one sweep back
 * up the hill. Each constraint is written g ≤ 0 and scaled to about one.
 */
export interface QuickLineProblem {
  readonly physics: PathPhysics;
  readonly startEnergy: number;
  /** Extent of each interval down the hill, m, and its spline row at the middle. */
  readonly h: Float64Array;
  readonly rows: readonly SplineRow[];
  readonly gates: readonly {
    readonly row: SplineRow;
    readonly x: number;
    /** +1 where the path passes to the right of the pole. */
    readonly outside: number;
    readonly clearance: number;
  }[];
  /** Least radius of the pair, m; 0 is no limit. */
  readonly leastRadius: number;
  /** Greatest braking, m/s²; infinite is no limit. */
  readonly mostBraking: number;
  /** Greatest rate of change of lean, rad/s; infinite is no limit. */
  readonly mostRate: number;
}

/** Multipliers: radius, braking and rate for each interval, then one for each gate. */
export interface Multipliers {
  readonly radius: Float64Array;
  readonly braking: Float64Array;
  readonly rate: Float64Array;
  readonly gate: Float64Array;
}

export interface Violations {
  radius: number;
  braking: number;
  rate: number;
  gate: number;
  /** Interval or gate at which the worst one is. */
  worstAt: number;
}

/** A gate stands for the many intervals around it, so it pulls harder than any one of them. */
const gateStiffness = 30;

export class QuickLineObjective {
  readonly problem: QuickLineProblem;
  readonly multipliers: Multipliers;
  weight = 1;
  seconds = 0;
  private readonly n: number;
  private readonly slope: Float64Array;
  private readonly bend: Float64Array;
  private readonly energy: Float64Array;
  private readonly dt: Float64Array;
  private readonly lean: Float64Array;
  private readonly braking: Float64Array;
  private readonly curvature: Float64Array;
  private readonly toLean: Float64Array;
  private readonly toBraking: Float64Array;
  private readonly toCurvature: Float64Array;
  private readonly toTime: Float64Array;
  private readonly here: Interval = { energy: 0, seconds: 0, lean: 0, braking: 0, curvature: 0 };
  private readonly worth: IntervalWorth = {
    energy: 0,
    seconds: 0,
    lean: 0,
    braking: 0,
    curvature: 0,
    toSlope: 0,
    toBend: 0,
    toEnergy: 0,
  };

  constructor(problem: QuickLineProblem) {
    this.problem = problem;
    this.n = problem.h.length;
    const array = (): Float64Array => new Float64Array(this.n);
    this.slope = array();
    this.bend = array();
    this.energy = new Float64Array(this.n + 1);
    this.dt = array();
    this.lean = array();
    this.braking = array();
    this.curvature = array();
    this.toLean = array();
    this.toBraking = array();
    this.toCurvature = array();
    this.toTime = array();
    this.multipliers = {
      radius: array(),
      braking: array(),
      rate: array(),
      gate: new Float64Array(problem.gates.length),
    };
  }

  /** Value at the coefficients; fills `gradient`, one entry a coefficient. */
  evaluate(c: Float64Array, gradient: Float64Array): number {
    this.runDown(c);
    const { n, weight, multipliers } = this;
    this.toTime.fill(1);
    this.toLean.fill(0);
    this.toBraking.fill(0);
    this.toCurvature.fill(0);
    gradient.fill(0);
    let value = this.seconds;
    const charge = (g: number, multiplier: number, stiffness = weight): number => {
      const force = Math.max(0, multiplier + stiffness * g);
      value += (force * force - multiplier * multiplier) / (2 * stiffness);
      return force;
    };
    for (let j = 0; j < n; j++) {
      const radius = charge(this.radiusExcess(j), multipliers.radius[j]);
      this.toCurvature[j] += radius * 2 * this.curvature[j] * this.problem.leastRadius ** 2;
      if (Number.isFinite(this.problem.mostBraking)) {
        const braking = charge(this.brakingExcess(j), multipliers.braking[j]);
        this.toBraking[j] += braking / this.problem.mostBraking;
      }
      if (j > 0 && Number.isFinite(this.problem.mostRate)) {
        const rate = charge(this.rateExcess(j), multipliers.rate[j]);
        const between = (this.dt[j] + this.dt[j - 1]) / 2;
        const pace = (this.lean[j] - this.lean[j - 1]) / between;
        const toPace = (rate * 2 * pace) / this.problem.mostRate ** 2;
        this.toLean[j] += toPace / between;
        this.toLean[j - 1] -= toPace / between;
        this.toTime[j] -= (0.5 * toPace * pace) / between;
        this.toTime[j - 1] -= (0.5 * toPace * pace) / between;
      }
    }
    this.problem.gates.forEach((gate, k) => {
      const { x, stretch, slope } = this.atGate(c, k);
      const force = charge(this.gateExcess(c, k), multipliers.gate[k], gateStiffness * weight);
      if (force === 0) return;
      const toX = (-force * gate.outside) / (stretch * gate.clearance);
      const toSlope = (force * gate.outside * (x - gate.x) * slope) / (stretch ** 3 * gate.clearance);
      for (let i = 0; i < 4; i++) {
        gradient[gate.row.first + i] += toX * gate.row.value[i] + toSlope * gate.row.slope[i];
      }
    });
    this.sweepBack(gradient);
    return value;
  }

  /** Raises the multipliers by what is still exceeded. */
  raiseMultipliers(c: Float64Array): void {
    this.runDown(c);
    const { weight, multipliers } = this;
    const raise = (list: Float64Array, i: number, g: number, stiffness = weight): void => {
      list[i] = Math.max(0, list[i] + stiffness * g);
    };
    for (let j = 0; j < this.n; j++) {
      raise(multipliers.radius, j, this.radiusExcess(j));
      if (Number.isFinite(this.problem.mostBraking)) raise(multipliers.braking, j, this.brakingExcess(j));
      if (j > 0 && Number.isFinite(this.problem.mostRate)) raise(multipliers.rate, j, this.rateExcess(j));
    }
    for (let k = 0; k < multipliers.gate.length; k++) {
      raise(multipliers.gate, k, this.gateExcess(c, k), gateStiffness * weight);
    }
  }

  /** By how much each kind of constraint is exceeded at worst; below nought is kept. */
  violations(c: Float64Array): Violations {
    this.runDown(c);
    const worst: Violations = { radius: -1, braking: -1, rate: -1, gate: -1, worstAt: 0 };
    let most = Number.NEGATIVE_INFINITY;
    const note = (kind: 'radius' | 'braking' | 'rate' | 'gate', g: number, at: number): void => {
      worst[kind] = Math.max(worst[kind], g);
      if (g > most) {
        most = g;
        worst.worstAt = at;
      }
    };
    for (let j = 0; j < this.n; j++) {
      note('radius', this.radiusExcess(j), j);
      if (Number.isFinite(this.problem.mostBraking)) note('braking', this.brakingExcess(j), j);
      if (j > 0 && Number.isFinite(this.problem.mostRate)) note('rate', this.rateExcess(j), j);
    }
    this.problem.gates.forEach((_, k) => {
      note('gate', this.gateExcess(c, k), k);
    });
    return worst;
  }

  /** v²/2 at each interval's end and the time and lean of each interval, of the last path looked at. */
  get ride(): { energy: Float64Array; seconds: Float64Array; lean: Float64Array } {
    return { energy: this.energy, seconds: this.dt, lean: this.lean };
  }

  private runDown(c: Float64Array): void {
    const { rows, h, physics } = this.problem;
    this.energy[0] = this.problem.startEnergy;
    this.seconds = 0;
    for (let j = 0; j < this.n; j++) {
      const row = rows[j];
      let slope = 0;
      let bend = 0;
      for (let i = 0; i < 4; i++) {
        slope += row.slope[i] * c[row.first + i];
        bend += row.second[i] * c[row.first + i];
      }
      this.slope[j] = slope;
      this.bend[j] = bend;
      advance(physics, h[j], slope, bend, this.energy[j], this.here);
      this.energy[j + 1] = this.here.energy;
      this.dt[j] = this.here.seconds;
      this.lean[j] = this.here.lean;
      this.braking[j] = this.here.braking;
      this.curvature[j] = this.here.curvature;
      this.seconds += this.here.seconds;
    }
  }

  /** Adjoint of the run: each interval's own derivatives, chained up the hill. */
  private sweepBack(gradient: Float64Array): void {
    const { rows, h, physics } = this.problem;
    const { worth } = this;
    worth.energy = 0;
    for (let j = this.n - 1; j >= 0; j--) {
      worth.seconds = this.toTime[j];
      worth.lean = this.toLean[j];
      worth.braking = this.toBraking[j];
      worth.curvature = this.toCurvature[j];
      weighInterval(physics, h[j], this.slope[j], this.bend[j], this.energy[j], worth);
      worth.energy = worth.toEnergy;
      const row = rows[j];
      for (let i = 0; i < 4; i++) {
        gradient[row.first + i] += worth.toSlope * row.slope[i] + worth.toBend * row.second[i];
      }
    }
  }

  private radiusExcess(j: number): number {
    return (this.curvature[j] * this.problem.leastRadius) ** 2 - 1;
  }

  private brakingExcess(j: number): number {
    return this.braking[j] / this.problem.mostBraking - 1;
  }

  private rateExcess(j: number): number {
    const pace = (2 * (this.lean[j] - this.lean[j - 1])) / (this.dt[j] + this.dt[j - 1]);
    return (pace / this.problem.mostRate) ** 2 - 1;
  }

  /** Distance of the pole from the path's tangent at the pole's height, against the clearance. */
  private gateExcess(c: Float64Array, k: number): number {
    const gate = this.problem.gates[k];
    const { x, stretch } = this.atGate(c, k);
    return 1 - (gate.outside * (x - gate.x)) / (stretch * gate.clearance);
  }

  private atGate(c: Float64Array, k: number): { x: number; slope: number; stretch: number } {
    const { row } = this.problem.gates[k];
    let x = 0;
    let slope = 0;
    for (let i = 0; i < 4; i++) {
      x += row.value[i] * c[row.first + i];
      slope += row.slope[i] * c[row.first + i];
    }
    return { x, slope, stretch: Math.sqrt(1 + slope * slope) };
  }
}
