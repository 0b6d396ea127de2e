import { type AcceptedRange, accept, FieldError, isAccepted, numberFound } from '../fault/index.ts';
import type { Sentence } from '../language/index.ts';
import {
  factorSymmetric,
  gaussLegendre,
  monotoneCubic,
  solveSymmetric,
  symmetricBand,
} from '../numeric/index.ts';
import { meshThrough } from './beam.ts';
import type { Profile } from './profile.ts';

/** One reading on the bench, SI: a load on a ski across two supports and a dial somewhere along it. */
export interface BenchReading {
  readonly loadAt: number;
  readonly load: number;
  readonly dialAt: number;
  /** Downward, m. */
  readonly deflection: number;
  readonly rear: number;
  readonly front: number;
}

export interface IdentifyOptions {
  /** Contact length, m. */
  readonly length: number;
  /** Standard measuring uncertainty of one deflection, m; a dial read to 0.1 mm unless given. */
  readonly uncertainty?: number;
  /** Knots of log EI, 5–9; as many as there are readings unless given. */
  readonly knots?: number;
}

export interface IdentifiedStation {
  readonly x: number;
  readonly newtonM2: number;
  /** 95 % band from the measuring uncertainty. */
  readonly low: number;
  readonly high: number;
}

export interface IdentifiedProfile {
  readonly stations: readonly IdentifiedStation[];
  readonly profile: Profile;
  /** Root mean square of measured less computed deflection, m. */
  readonly residual: number;
  /** Weight of the second-difference penalty. */
  readonly smoothing: number;
  /** How many independent things the readings say about the profile. */
  readonly resolved: number;
  readonly enough: boolean;
  /** Plain words, one sentence each. */
  readonly notes: readonly Sentence[];
}

/** No bench puts more on a ski, N. */
const MOST_LOAD = 20_000;
export const DEFAULT_UNCERTAINTY = 5e-5;
/** Penalty weights tried, smoothest first: one over the square of the second difference of log EI let pass. */
const SMOOTHEST = 100;
const ROUGHEST = 1e-4;
/** The band lets log EI turn by 0.5 a knot, about what a ski does at its middle. */
const BAND_SMOOTHING = 4;
const COVERAGE = 1.96;
const WIDE = 0.25;

/**
 * EI(x) from bench readings: log EI at evenly spaced knots with a monotone cubic between, found by
 * Gauss–Newton on squared misfit over uncertainty plus a second-difference penalty. The penalty is the greatest
 * that still fits to the uncertainty (discrepancy principle, Morozov 1966 [from memory]).
 * Deflections come from the unit-load theorem, exact for a ski on two supports.
 * Throws FieldError naming the reading and field that cannot be used.
 */
export function identify(readings: readonly BenchReading[], options: IdentifyOptions): IdentifiedProfile {
  const { length, uncertainty = DEFAULT_UNCERTAINTY } = options;
  readings.forEach((reading, i) => {
    checkReading(reading, i + 1, length);
  });
  if (readings.length < 2) {
    throw new FieldError({
      field: 'readings',
      found: readings.length,
      accepted: { key: 'accepted.twoOrMore' },
    });
  }
  accept('uncertainty', uncertainty, { above: 0, quantity: 'deflection' });
  const count = options.knots ?? Math.min(9, Math.max(5, readings.length));
  accept('knots', count, { from: 5, to: 9, whole: true });
  const fit = new ProfileFit(readings, length, uncertainty, count);

  let z = fit.uniformStart();
  let smoothing = SMOOTHEST;
  for (; ; smoothing /= Math.sqrt(10)) {
    z = fit.solve(z, smoothing);
    if (fit.misfit(z) <= readings.length || smoothing < ROUGHEST) break;
  }
  const misfit = fit.misfit(z);
  // Readings that disagree beyond their uncertainty show that it was set too low: the band owns up to it.
  const inflate = Math.max(1, Math.sqrt(misfit / readings.length));
  const { spread, resolved } = fit.band(z, Math.min(smoothing, BAND_SMOOTHING));
  const stations = Array.from(fit.knots, (x, k) => {
    const ratio = Math.exp(COVERAGE * inflate * spread[k]);
    const newtonM2 = Math.exp(z[k]);
    return { x, newtonM2, low: newtonM2 / ratio, high: newtonM2 * ratio };
  });
  const { enough, notes } = judge(readings, stations, resolved, inflate, length);
  const log = monotoneCubic(fit.knots, z);
  return {
    stations,
    profile: x => Math.exp(log(x)),
    residual: uncertainty * Math.sqrt(misfit / readings.length),
    smoothing,
    resolved,
    enough,
    notes,
  };
}

function checkReading(reading: BenchReading, row: number, length: number): void {
  const { loadAt, load, dialAt, deflection, rear, front } = reading;
  const slack = 1e-9 * length;
  const between: AcceptedRange = { above: rear, below: front, quantity: 'station' };
  const columns: readonly (readonly [field: string, value: number, range: AcceptedRange])[] = [
    ['rearSupport', rear, { from: -slack, below: length, quantity: 'station' }],
    ['frontSupport', front, { above: rear, to: length + slack, quantity: 'station' }],
    ['loadAt', loadAt, between],
    ['dialAt', dialAt, between],
    ['load', load, { above: 0, to: MOST_LOAD, quantity: 'force' }],
    ['deflection', deflection, { above: 0, to: length, quantity: 'deflection' }],
  ];
  for (const [field, value, accepted] of columns) {
    if (isAccepted(value, accepted)) continue;
    throw new FieldError({ field, found: numberFound(value, accepted), accepted, where: { row } });
  }
}

/** The forward model with everything that does not depend on EI worked out once. */
class ProfileFit {
  readonly knots: Float64Array;
  private readonly points: Float64Array;
  /** Load × moment × unit moment × weight at each point, row-major [reading][point], over the uncertainty. */
  private readonly influence: Float64Array;
  private readonly measured: Float64Array;
  private readonly rows: number;

  constructor(readings: readonly BenchReading[], length: number, uncertainty: number, knots: number) {
    this.rows = readings.length;
    this.knots = Float64Array.from({ length: knots }, (_, k) => (length * k) / (knots - 1));
    // Elements end where moments have kinks and the interpolant has knots, so each piece is smooth.
    const marks = readings.flatMap(r => [r.loadAt, r.dialAt, r.rear, r.front]);
    const x = meshThrough(0, length, [...marks, ...this.knots], 80);
    const { nodes, weights } = gaussLegendre(3);
    const many = 3 * (x.length - 1);
    this.points = new Float64Array(many);
    this.influence = new Float64Array(this.rows * many);
    for (let p = 0; p < many; p++) {
      const e = Math.floor(p / 3);
      const half = (x[e + 1] - x[e]) / 2;
      this.points[p] = x[e] + half * (1 + nodes[p % 3]);
      const weight = (half * weights[p % 3]) / uncertainty;
      readings.forEach((r, i) => {
        const moment = r.load * unitMoment(r, r.loadAt, this.points[p]);
        this.influence[i * many + p] = weight * moment * unitMoment(r, r.dialAt, this.points[p]);
      });
    }
    this.measured = Float64Array.from(readings, r => r.deflection / uncertainty);
  }

  /** log of the one EI that fits the readings best in the mean of their ratios. */
  uniformStart(): Float64Array {
    const computed = this.deflections(new Float64Array(this.points.length).fill(1));
    let log = 0;
    for (let i = 0; i < this.rows; i++) log += Math.log(computed[i] / this.measured[i]) / this.rows;
    return new Float64Array(this.knots.length).fill(log);
  }

  /** Sum of squared misfits, each over its uncertainty. */
  misfit(z: Float64Array): number {
    const computed = this.deflections(this.flexibility(z));
    return computed.reduce((sum, d, i) => sum + (this.measured[i] - d) ** 2, 0);
  }

  /** Gauss–Newton with halved steps from `start` at one penalty weight. */
  solve(start: Float64Array, smoothing: number): Float64Array {
    let z = start;
    let cost = this.misfit(z) + smoothing * roughness(z);
    for (let turn = 0; turn < 40; turn++) {
      const { normal, gradient } = this.linearise(z, smoothing);
      factorSymmetric(normal);
      solveSymmetric(normal, gradient);
      let share = 1;
      let next = z;
      let nextCost = cost;
      for (; share > 1e-4; share /= 2) {
        next = z.map((value, k) => value + share * Math.max(-1, Math.min(1, gradient[k])));
        nextCost = this.misfit(next) + smoothing * roughness(next);
        if (nextCost < cost) break;
      }
      if (!(nextCost < cost)) return z;
      const gained = cost - nextCost;
      z = next;
      cost = nextCost;
      if (gained < 1e-9 * (cost + 1e-9)) return z;
    }
    return z;
  }

  /** Standard deviation of log EI at each knot, and the trace of the resolution. */
  band(z: Float64Array, smoothing: number): { spread: Float64Array; resolved: number } {
    const n = z.length;
    const { normal } = this.linearise(z, smoothing);
    const { normal: data } = this.linearise(z, 0);
    factorSymmetric(normal);
    const spread = new Float64Array(n);
    let resolved = 0;
    for (let k = 0; k < n; k++) {
      const column = new Float64Array(n);
      column[k] = 1;
      solveSymmetric(normal, column);
      spread[k] = Math.sqrt(column[k]);
      for (let i = 0; i < n; i++)
        resolved += column[i] * data.data[Math.max(i, k) * n + Math.min(i, k) - Math.max(i, k) + n - 1];
    }
    return { spread, resolved };
  }

  private flexibility(z: Float64Array): Float64Array {
    const log = monotoneCubic(this.knots, z);
    return this.points.map(x => Math.exp(-log(x)));
  }

  private deflections(flexibility: Float64Array): Float64Array {
    const many = flexibility.length;
    const out = new Float64Array(this.rows);
    for (let i = 0; i < this.rows; i++) {
      let sum = 0;
      for (let p = 0; p < many; p++) sum += this.influence[i * many + p] * flexibility[p];
      out[i] = sum;
    }
    return out;
  }

  /** Normal matrix JᵀJ + smoothing·DᵀD and the downhill direction's right-hand side, by differences. */
  private linearise(z: Float64Array, smoothing: number) {
    const n = z.length;
    const base = this.deflections(this.flexibility(z));
    const step = 1e-5;
    const columns = Array.from({ length: n }, (_, k) => {
      const moved = Float64Array.from(z);
      moved[k] += step;
      return this.deflections(this.flexibility(moved)).map((d, i) => (d - base[i]) / step);
    });
    const normal = symmetricBand(n, n - 1);
    const gradient = new Float64Array(n);
    for (let a = 0; a < n; a++) {
      for (let i = 0; i < this.rows; i++) gradient[a] += columns[a][i] * (this.measured[i] - base[i]);
      for (let b = 0; b <= a; b++) {
        let sum = 0;
        for (let i = 0; i < this.rows; i++) sum += columns[a][i] * columns[b][i];
        normal.data[a * n + b - a + n - 1] = sum;
      }
    }
    const weights = [1, -2, 1];
    for (let k = 0; k + 2 < n; k++) {
      const turn = z[k] - 2 * z[k + 1] + z[k + 2];
      for (let a = 0; a < 3; a++) {
        gradient[k + a] -= smoothing * weights[a] * turn;
        for (let b = 0; b <= a; b++) {
          normal.data[(k + a) * n + b - a + n - 1] += smoothing * weights[a] * weights[b];
        }
      }
    }
    return { normal, gradient };
  }
}

/** Bending moment at x of a unit downward load at `at` on the reading's supports. */
function unitMoment({ rear, front }: BenchReading, at: number, x: number): number {
  if (x <= rear || x >= front) return 0;
  const span = front - rear;
  return x < at ? ((front - at) * (x - rear)) / span : ((at - rear) * (front - x)) / span;
}

function roughness(z: Float64Array): number {
  let sum = 0;
  for (let k = 0; k + 2 < z.length; k++) sum += (z[k] - 2 * z[k + 1] + z[k + 2]) ** 2;
  return sum;
}

function judge(
  readings: readonly BenchReading[],
  stations: readonly IdentifiedStation[],
  resolved: number,
  inflate: number,
  length: number,
): { enough: boolean; notes: Sentence[] } {
  const notes: Sentence[] = [];
  const places = new Set(readings.map(r => `${Math.round(r.loadAt * 1e3)}/${Math.round(r.dialAt * 1e3)}`))
    .size;
  const inner = stations.filter(s => s.x > 0.2 * length && s.x < 0.8 * length);
  const wide = (s: IdentifiedStation) => (s.high - s.low) / (2 * s.newtonM2) > WIDE;
  const at = ({ x }: IdentifiedStation) => ({ quantity: 'station', value: x }) as const;
  let enough = true;
  if (resolved < 2.5) {
    enough = false;
    const things = Math.max(1, Math.round(resolved));
    notes.push({ key: 'flex.tooFewReadings', values: { readings: readings.length, places, things } });
  }
  const unsure = inner.filter(wide);
  if (unsure.length > 0) {
    enough = false;
    const share = { quantity: 'share', value: WIDE } as const;
    notes.push({ key: 'flex.stiffnessUnsure', values: { share, places: unsure.map(at) } });
  }
  const ends = stations.filter(s => !inner.includes(s) && wide(s));
  if (ends.length > 0) {
    notes.push({ key: 'flex.nearSupports', values: { places: ends.map(at) } });
  }
  if (inflate > 1.5) {
    enough = false;
    const times = { quantity: 'number', value: inflate, decimals: 1 } as const;
    notes.push({ key: 'flex.readingsDisagree', values: { times } });
  }
  if (notes.length === 0) notes.push({ key: 'flex.readingsSettle' });
  return { enough, notes };
}
