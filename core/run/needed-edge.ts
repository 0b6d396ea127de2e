import { firstWhere } from '../numeric/index.ts';
import { DEGREE } from '../units/index.ts';
import { leanAngle, normalForce, sidewaysForce, snowLoad } from './balance.ts';
import type { TurnRadius } from './turn-radius.ts';

/** A turn of one radius through the fall line, SI and rad. */
export interface ChosenTurn {
  readonly radius: number;
  readonly mass: number;
  readonly slope: number;
  /** Part of the load on the outer ski. */
  readonly outerShare: number;
}

const LEAST = 2 * DEGREE;
const MOST = 80 * DEGREE;
const STEP = DEGREE;
const SPEED_STEP = 0.5;
const SPEED_DIGIT = 1e-9;
const FASTEST = 60;

const sideways = (turn: ChosenTurn, speed: number) =>
  sidewaysForce(turn.mass, speed, turn.radius, turn.slope, 0, 1);

/** Lean of the skier that this turn takes at this speed, rad. */
export const leanIn = (turn: ChosenTurn, speed: number): number =>
  leanAngle(sideways(turn, speed), normalForce(turn.mass, turn.slope));

/**
 * Edge angle at which the outer ski, loaded as the turn loads it, carves just this radius, rad. Null when the
 * ski turns tighter than that from the start (its sidecut is too deep) or never gets that tight by 80°.
 */
export function neededEdge(ski: TurnRadius, turn: ChosenTurn, speed: number): number | null {
  const load = turn.outerShare * snowLoad(sideways(turn, speed), normalForce(turn.mass, turn.slope));
  const spare = (edge: number) => ski.radius(edge, load) - turn.radius;
  if (!(spare(LEAST) >= 0)) return null;
  for (let high = LEAST + STEP; high <= MOST; high += STEP) {
    if (spare(high) > 0) continue;
    return firstWhere(edge => spare(edge) <= 0, high - STEP, high);
  }
  return null;
}

/**
 * Greatest speed, m/s, at which the edge angle that carves the turn is also steep enough to hold it: beyond,
 * the shelf is flatter than the lean asks and the ski slides. Null when the ski cannot carve the turn; at most
 * 60 m/s.
 */
export function fastestHeld(ski: TurnRadius, turn: ChosenTurn, baseBevel: number): number | null {
  const spare = (speed: number) => {
    const edge = neededEdge(ski, turn, speed);
    return edge === null ? null : edge - baseBevel - leanIn(turn, speed);
  };
  const start = spare(0);
  if (start === null || start < 0) return null;
  const slides = (speed: number) => (spare(speed) ?? -1) < 0;
  for (let high = SPEED_STEP; high <= FASTEST; high += SPEED_STEP) {
    if (slides(high)) return firstWhere(slides, high - SPEED_STEP, high, SPEED_DIGIT) - SPEED_DIGIT;
  }
  return FASTEST;
}
