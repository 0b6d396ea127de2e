/**
 * The balance of one instant of a run, term by term, read from the rows of its track: what the skis' path asks
 * sideways, how the mass swings and the leg works, and the lean and load that follow. Rates come from differences
 * of neighbouring rows, so the solved lean and load are checked by them and not fed into themselves.
 */

import { GRAVITY } from '../skier/index.ts';
import type { SlopeProfile } from './slope-profile.ts';
import type { Track } from './track.ts';

/** Signed to the right, SI, rad; accelerations a unit mass. */
export interface DynamicMoment {
  readonly row: number;
  readonly t: number;
  /** α under the skis. */
  readonly slope: number;
  readonly heading: number;
  readonly edge: number;
  /** u and v. */
  readonly speed: number;
  readonly skiSpeed: number;
  /** κ of the skis' path, 1/m. */
  readonly curvature: number;
  /** κ_c = κ − q. */
  readonly ownCurvature: number;
  readonly mismatch: number;
  /** A = u v κ + g sinα sinχ. */
  readonly sideways: number;
  /** N = g cosα, with the ground's own curve. */
  readonly intoSnow: number;
  readonly leg: number;
  readonly legSpeed: number;
  /** ℓ̈, from the rows before and after. */
  readonly legAcceleration: number;
  readonly leanRate: number;
  /** ψ̈, from the rows before and after. */
  readonly leanAcceleration: number;
  /** As solved. */
  readonly lean: number;
  /** ψ = atan(A/N) + asin((ℓ ψ̈ + 2 ℓ̇ ψ̇)/√(A² + N²)). */
  readonly leanFromBalance: number;
  /** As solved, N. */
  readonly load: number;
  /** F = m (ℓ̈ + A sinψ + N cosψ − ℓ ψ̇²), N. */
  readonly loadFromBalance: number;
  /** Towards the side of the edge, rad. */
  readonly angulation: number;
  readonly hold: number;
  /** Mean slip of the edge, rad. */
  readonly slip: number;
}

/**
 * @param row of the track; at either end the neighbour within is taken for the rates
 * @param mass skier with equipment, kg
 */
export function dynamicMoment(
  track: Track,
  row: number,
  { profile, mass }: { readonly profile: SlopeProfile; readonly mass: number },
): DynamicMoment {
  const last = track.t.length - 1;
  const a = Math.max(0, Math.min(row - 1, last - 2));
  const middle = Math.min(last, a + 1);
  const b = Math.min(last, a + 2);
  // Derivative at the row of the parabola through three rows.
  const rate = (column: Float64Array): number => {
    const [t0, t1, t2] = [track.t[a], track.t[middle], track.t[b]];
    if (!(t1 > t0 && t2 > t1)) return t2 > t0 ? (column[b] - column[a]) / (t2 - t0) : 0;
    const first = (column[middle] - column[a]) / (t1 - t0);
    const second = (column[b] - column[middle]) / (t2 - t1);
    const bend = (second - first) / (t2 - t0);
    return first + bend * (2 * track.t[row] - t0 - t1);
  };
  const at = (column: Float64Array) => column[row];
  const sine = profile.sine(at(track.y));
  const heading = at(track.heading);
  const down = Math.cos(heading);
  const speed = at(track.speed);
  const skiSpeed = at(track.skiSpeed);
  const curvature = at(track.curvature);
  const ground = profile.curvature(at(track.y)) * down * down;
  const sideways = speed * skiSpeed * curvature + GRAVITY * sine * Math.sin(heading);
  const intoSnow = GRAVITY * Math.sqrt(1 - sine * sine) + speed * skiSpeed * ground;
  const lean = at(track.lean);
  const leg = at(track.leg);
  const legSpeed = at(track.legSpeed);
  const leanRate = at(track.leanRate);
  const legAcceleration = rate(track.legSpeed);
  const leanAcceleration = rate(track.leanRate);
  const swing = leg * leanAcceleration + 2 * legSpeed * leanRate;
  const pull = Math.hypot(sideways, intoSnow);
  return {
    row,
    t: at(track.t),
    slope: Math.asin(sine),
    heading,
    edge: at(track.edge),
    speed,
    skiSpeed,
    curvature,
    ownCurvature: curvature - at(track.mismatch),
    mismatch: at(track.mismatch),
    sideways,
    intoSnow,
    leg,
    legSpeed,
    legAcceleration,
    leanRate,
    leanAcceleration,
    lean,
    leanFromBalance: Math.atan2(sideways, intoSnow) + Math.asin(Math.min(1, Math.max(-1, swing / pull))),
    load: at(track.load),
    loadFromBalance:
      mass *
      (legAcceleration + sideways * Math.sin(lean) + intoSnow * Math.cos(lean) - leg * leanRate * leanRate),
    angulation: at(track.angulation),
    hold: at(track.hold),
    slip: at(track.slip),
  };
}
