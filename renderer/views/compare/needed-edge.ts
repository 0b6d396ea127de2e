import { leanAngle, normalForce, sidewaysForce, snowLoad, type TurnRadius } from '../../../core/run/index.ts';

/** A turn of one radius through the fall line, SI and rad. */
export interface ChosenTurn {
  readonly radius: number;
  readonly mass: number;
  readonly slope: number;
  /** Part of the load on the outer ski. */
  readonly outerShare: number;
}

const DEGREE = Math.PI / 180;
const LEAST = 2 * DEGREE;
const MOST = 80 * DEGREE;
const STEP = DEGREE;
const SPEED_STEP = 0.5;
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
    let low = high - STEP;
    for (let i = 0; i < 40; i++) {
      const middle = 0.5 * (low + high);
      if (spare(middle) > 0) low = middle;
      else high = middle;
    }
    return high;
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
  for (let high = SPEED_STEP; high <= FASTEST; high += SPEED_STEP) {
    const at = spare(high);
    if (at !== null && at >= 0) continue;
    let low = high - SPEED_STEP;
    let beyond = high;
    for (let i = 0; i < 30; i++) {
      const middle = 0.5 * (low + beyond);
      if ((spare(middle) ?? -1) >= 0) low = middle;
      else beyond = middle;
    }
    return low;
  }
  return FASTEST;
}
