import { accept } from '../fault/index.ts';
import { bendingMatrix, DEFAULT_ELEMENTS, gaussValues, meshThrough, nodeAt, solveSupported } from './beam.ts';
import type { Profile } from './profile.ts';

/** A ski laid across two supports and pressed between them, SI. */
export interface BenchSetup {
  /** Contact length: the ski is [0, length]. */
  readonly length: number;
  /** Supports, rear first, 0 ≤ rear < front ≤ length. */
  readonly rear: number;
  readonly front: number;
  /** Where the load stands, between the supports. */
  readonly at: number;
  /** N, downward. */
  readonly load: number;
  readonly elements?: number;
}

export interface BenchResult {
  /** Nodes, m from the rear contact point; supports and load stand exactly on nodes. */
  readonly x: Float64Array;
  /** Downward deflection at the nodes, m (overhanging ends rise: negative). */
  readonly deflection: Float64Array;
  readonly slope: Float64Array;
  /** Under the load, m. */
  readonly loadDeflection: number;
  /** Load over deflection under the load, N/m. */
  readonly spring: number;
}

/** Throws FieldError naming the setup's field unless 0 ≤ rear < at < front ≤ length. */
export function checkSetup({ length, rear, front, at }: Omit<BenchSetup, 'load'>): void {
  const slack = 1e-9 * length;
  accept('rearSupport', rear, { from: -slack, below: front, quantity: 'station' });
  accept('frontSupport', front, { above: rear, to: length + slack, quantity: 'station' });
  accept('at', at, { above: rear, below: front, quantity: 'station' });
}

/**
 * Small deflections of the ski on two knife edges under one load, by Euler–Bernoulli elements.
 * Throws FieldError (see `checkSetup`).
 */
export function benchPress(profile: Profile, setup: BenchSetup): BenchResult {
  checkSetup(setup);
  const { length, rear, front, at, load, elements = DEFAULT_ELEMENTS } = setup;
  const x = meshThrough(0, length, [rear, at, front], elements);
  // A unit load keeps the spring defined when the load is zero; the beam is linear.
  const u = new Float64Array(2 * x.length);
  const loaded = 2 * nodeAt(x, at);
  u[loaded] = 1;
  solveSupported(bendingMatrix(x, gaussValues(profile, x)), u, [
    [2 * nodeAt(x, rear), 0],
    [2 * nodeAt(x, front), 0],
  ]);
  const unit = u[loaded];
  return {
    x,
    deflection: x.map((_, i) => load * u[2 * i]),
    slope: x.map((_, i) => load * u[2 * i + 1]),
    loadDeflection: load * unit,
    spring: 1 / unit,
  };
}
