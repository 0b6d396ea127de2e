import type { CarveConditions } from './groove.ts';
import type { GrooveBalance } from './groove-balance.ts';
import type { GrooveNewton } from './newton.ts';

/** A question along the way to the one asked: its own conditions and its own rebound, m. */
export interface Waypoint {
  readonly conditions: CarveConditions;
  readonly rebound: number;
}

const MOST_ITERATIONS = 25;
const LEAST_STRIDE = 1 / 128;

/** Runs Newton at one waypoint from the present unknowns. */
export function solveAt(balance: GrooveBalance, newton: GrooveNewton, at: Waypoint) {
  balance.pose(at.conditions, at.rebound);
  return newton.run(at.conditions, MOST_ITERATIONS);
}

/**
 * Walks from a solved waypoint to another in strides that lengthen while Newton follows and shorten when it
 * does not. Loads, hardnesses and rebounds are stepped in proportion, angles evenly. Each stride begins by
 * extrapolating the last two answers, over the rebound where that is what changes: the ski follows the millimetres
 * the snow springs back, not their ratio. Returns the Newton steps spent, negative when the way is blocked; the unknowns
 * then hold the last answer reached.
 */
export function walk(
  balance: GrooveBalance,
  newton: GrooveNewton,
  from: Waypoint,
  to: Waypoint,
  firstStride: number,
): number {
  const { unknowns } = newton;
  const last = Float64Array.from(unknowns);
  const before = Float64Array.from(unknowns);
  const placeAt =
    from.rebound === to.rebound
      ? (share: number) => share
      : (share: number) => between(from, to, share).rebound;
  let lastPlace = Number.NaN;
  let reached = 0;
  let stride = firstStride;
  let spent = 0;
  while (reached < 1) {
    const next = Math.min(1, reached + stride);
    const place = placeAt(reached);
    const forward = Number.isNaN(lastPlace) ? 0 : (placeAt(next) - place) / (place - lastPlace);
    for (let i = 0; i < last.length; i++) unknowns[i] = last[i] + forward * (last[i] - before[i]);
    const outcome = solveAt(balance, newton, between(from, to, next));
    spent += outcome.iterations;
    if (outcome.converged) {
      before.set(last);
      last.set(unknowns);
      lastPlace = place;
      reached = next;
      stride *= outcome.iterations <= 6 ? 2 : 1;
    } else {
      stride = (next - reached) / 3;
      if (stride < LEAST_STRIDE) {
        unknowns.set(last);
        return -1 - spent;
      }
    }
  }
  return spent;
}

function between(from: Waypoint, to: Waypoint, share: number): Waypoint {
  if (share >= 1) return to;
  const even = (a: number, b: number) => a + (b - a) * share;
  const inProportion = (a: number, b: number) => a * (b / a) ** share;
  return {
    conditions: {
      edgeAngle: even(from.conditions.edgeAngle, to.conditions.edgeAngle),
      load: inProportion(from.conditions.load, to.conditions.load),
      hardness: inProportion(from.conditions.hardness, to.conditions.hardness),
      fore: even(from.conditions.fore, to.conditions.fore),
    },
    rebound: inProportion(from.rebound, to.rebound),
  };
}
