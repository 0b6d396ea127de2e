import type { PathPhysics } from './timed-path.ts';
import { lesser, standing } from './timed-path.ts';

/** What a change of each of an interval's results is worth, and what that makes of its three inputs. */
export interface IntervalWorth {
  /** Worth of a change of the energy at the lower end, the time, the lean, the braking and the curvature. */
  energy: number;
  seconds: number;
  lean: number;
  braking: number;
  curvature: number;
  /** Found: worth of a change of slope, of bend and of the energy at the upper end. */
  toSlope: number;
  toBend: number;
  toEnergy: number;
}

/**
 * The derivatives of `advance` by the chain rule, weighed by what each result is worth and summed: one step of
 * the sweep back up the hill. Same symbols and order as `advance`.
 */
export function weighInterval(
  physics: PathPhysics,
  h: number,
  slope: number,
  bend: number,
  energy: number,
  worth: IntervalWorth,
): void {
  const { pull, press, friction, drag, mostSideways } = physics;
  const stretch = Math.sqrt(1 + slope * slope);
  const cube = stretch * stretch * stretch;
  const ds = h * stretch;
  const dsBySlope = (h * slope) / stretch;
  const curvature = bend / cube;
  const curvatureBySlope = (-3 * bend * slope) / (cube * stretch * stretch);
  const sign = curvature < 0 ? -1 : 1;
  const bent = Math.max(Math.abs(curvature), 1e-3);
  const bentBy = Math.abs(curvature) > 1e-3 ? sign : 0;
  const limited = Number.isFinite(mostSideways);
  const most = limited
    ? (0.5 * (mostSideways * press - (sign * pull * slope) / stretch)) / bent
    : Number.POSITIVE_INFINITY;
  const mostBySlope = limited
    ? (-0.5 * sign * pull) / (cube * bent) - (most / bent) * bentBy * curvatureBySlope
    : 0;
  const mostByBend = limited ? (-(most / bent) * bentBy) / cube : 0;

  const ahead = energy + 0.5 * (pull * h - (friction * press + drag * energy) * ds);
  const aheadMoves = ahead > standing ? 1 : 0;
  const aheadUsed = Math.max(standing, ahead);
  const [aheadShare, aheadBound] = lesserSlopes(aheadUsed, most);
  const middle = lesser(aheadUsed, most);
  const sideways = (2 * middle * curvature + (pull * slope) / stretch) / press;
  const square = 1 + sideways * sideways;
  const load = press * Math.sqrt(square);
  const resisting = friction * load + drag * middle;
  const unchecked = energy + pull * h - resisting * ds;
  const freeMoves = unchecked > standing ? 1 : 0;
  const free = Math.max(standing, unchecked);
  const [freeShare, freeBound] = lesserSlopes(free, most);
  const next = lesser(free, most);
  const speeds = Math.sqrt(2 * Math.max(0, energy)) + Math.sqrt(2 * next);
  const braking = (free - next) / ds;

  const weigh = (
    byDs: number,
    byCurvature: number,
    byMost: number,
    byAhead: number,
    byTurn: number,
    byEnergy: number,
  ): number => {
    const middleBy = aheadShare * aheadMoves * byAhead + aheadBound * byMost;
    const sidewaysBy = (2 * (middleBy * curvature + middle * byCurvature) + byTurn) / press;
    const loadBy = (press * sideways * sidewaysBy) / Math.sqrt(square);
    const freeBy = freeMoves * (byEnergy - (friction * loadBy + drag * middleBy) * ds - resisting * byDs);
    const nextBy = freeShare * freeBy + freeBound * byMost;
    const speedsBy =
      nextBy / Math.sqrt(2 * next) + (byEnergy > 0 && energy > 0 ? byEnergy / Math.sqrt(2 * energy) : 0);
    return (
      worth.energy * nextBy +
      worth.seconds * ((2 * byDs) / speeds - (2 * ds * speedsBy) / (speeds * speeds)) +
      (worth.lean * sidewaysBy) / square +
      worth.braking * ((freeBy - nextBy) / ds - (braking * byDs) / ds) +
      worth.curvature * byCurvature
    );
  };
  const aheadBySlope = -0.5 * (friction * press + drag * energy) * dsBySlope;
  worth.toSlope = weigh(dsBySlope, curvatureBySlope, mostBySlope, aheadBySlope, pull / cube, 0);
  worth.toBend = weigh(0, 1 / cube, mostByBend, 0, 0, 0);
  worth.toEnergy = weigh(0, 0, 0, 1 - 0.5 * drag * ds, 0, 1);
}

/** How `lesser` changes with its value and with its bound. */
function lesserSlopes(value: number, bound: number): readonly [number, number] {
  if (value <= 0.98 * bound) return [1, 0];
  const round = 0.02 * bound;
  const over = value - bound + round;
  if (over >= 2 * round) return [0, 1];
  return [1 - over / (2 * round), (0.98 * over) / (2 * round) + (0.02 * over * over) / (4 * round * round)];
}
