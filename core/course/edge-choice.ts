import { brent, firstWhere } from '../numeric/index.ts';
import {
  holdUnderBoot,
  leanAngle,
  normalForce,
  sidewaysForce,
  snowLoad,
  type TurnRadius,
} from '../run/index.ts';
import { DEGREE } from '../units/index.ts';
import type { CourseConditions } from './gate-conditions.ts';

/** What the course needs to know of a pair. */
export interface CoursePair {
  readonly name: string;
  readonly turn: TurnRadius;
  /** b, rad. */
  readonly baseBevel: number;
}

/**
 * How a pair gets round one gate.
 * - `carves`: at the edge angle whose radius is the line's, the shelf holds.
 * - `tight arcs`: it holds only on more edge, so it turns more tightly and joins the arcs by traverses.
 * - `drifts`: no edge angle the skier reaches both holds and turns tightly enough.
 */
export type GateMode = 'carves' | 'tight arcs' | 'drifts';

export interface EdgeChoice {
  readonly mode: GateMode;
  /** Edge angle whose radius is the line's, rad; 0 when even the flat ski turns more tightly; null beyond 89°. */
  readonly neededEdge: number | null;
  /** Edge angle ridden, rad. */
  readonly edge: number;
  /** Radius the ski carves at that edge angle, m. */
  readonly skiRadius: number;
  /** Lean of the resultant on the path ridden, rad. */
  readonly lean: number;
  /** Load on both skis, N. */
  readonly load: number;
  /** θ − b − ψ under the boot, rad; where the pair drifts for want of hold, the best any edge angle gives. */
  readonly hold: number;
  /** Mean angle between the skis and the path, rad; nought unless the pair drifts. */
  readonly drift: number;
}

const steepest = 89 * DEGREE;
/** Skis are not turned further across the path than this while drifting, rad (a choice). */
const greatestDrift = 30 * DEGREE;
/** Missing hold over which a drift grows in, rad (a choice: it keeps neighbouring pairs comparable). */
const driftBlend = 3 * DEGREE;

/** Edge angle at which the pair turns on `radius` under `load` on the ski; 0 if it always does, null if never. */
export function edgeForRadius(turn: TurnRadius, radius: number, load: number): number | null {
  const over = (edge: number): number => turn.radius(edge, load) - radius;
  const flat = over(0);
  if (flat <= 0) return 0;
  const tipped = over(steepest);
  if (tipped > 0) return null;
  return brent(over, 0, steepest, 1e-12, flat, tipped);
}

/**
 * The edge angle for one gate: as much as the line's radius asks for, more if it does not hold, drifting where
 * neither will do. `radius` of the line m, `speed` m/s, `heading` rad from the fall line, `side` +1 right,
 * `turn` Φ the whole angle the line turns around the gate.
 *
 * Drift δ is half of what the skis would turn too much or too little over the gate's arc,
 * ½ Φ |R_line/R_ski − 1|, at most 30° [derived: the skis turn by v/R_ski while the path turns by v/R_line].
 */
export function chooseEdge(
  pair: CoursePair,
  radius: number,
  speed: number,
  heading: number,
  side: number,
  turn: number,
  conditions: CourseConditions,
): EdgeChoice {
  const { mass, slope, outerShare, greatestEdge } = conditions;
  const normal = normalForce(mass, slope);
  const sidewaysAt = (r: number): number => sidewaysForce(mass, speed, r, slope, heading, side);
  const onLine = sidewaysAt(radius);
  const lean = leanAngle(onLine, normal);
  const load = snowLoad(onLine, normal);
  const neededEdge = edgeForRadius(pair.turn, radius, outerShare * load);

  const tighter = (edge: number): Omit<EdgeChoice, 'mode' | 'neededEdge' | 'drift'> => {
    // The radius depends on the load and the load on the radius; each round cuts the error severalfold.
    let skiRadius = pair.turn.radius(edge, outerShare * load);
    let sideways = sidewaysAt(skiRadius);
    for (let i = 0; i < 4; i++) {
      const before = skiRadius;
      skiRadius = pair.turn.radius(edge, outerShare * snowLoad(sideways, normal));
      sideways = sidewaysAt(skiRadius);
      if (Math.abs(skiRadius - before) < 1e-7 * before) break;
    }
    const skiLean = leanAngle(sideways, normal);
    return {
      edge,
      skiRadius,
      lean: skiLean,
      load: snowLoad(sideways, normal),
      hold: holdUnderBoot(edge, pair.baseBevel, skiLean),
    };
  };

  let bestHold = Number.NEGATIVE_INFINITY;
  if (neededEdge !== null && neededEdge <= greatestEdge) {
    const hold = holdUnderBoot(neededEdge, pair.baseBevel, lean);
    if (hold >= 0 && neededEdge > 0) {
      return { mode: 'carves', neededEdge, edge: neededEdge, skiRadius: radius, lean, load, hold, drift: 0 };
    }
    bestHold = neededEdge > 0 ? hold : tighter(0).hold;
    let below = neededEdge;
    for (let i = 1; i <= 16; i++) {
      const above = neededEdge + ((greatestEdge - neededEdge) * i) / 16;
      const holdAbove = tighter(above).hold;
      if (holdAbove < 0) {
        bestHold = Math.max(bestHold, holdAbove);
        below = above;
        continue;
      }
      const holding = firstWhere(edge => tighter(edge).hold >= 0, below, above, 5e-9);
      return { mode: 'tight arcs', neededEdge, ...tighter(holding), drift: 0 };
    }
  }

  // Drifting round the line itself: enough edge for the shelf to hold, as far as the skier reaches.
  const cannotTurn = neededEdge === null || neededEdge > greatestEdge;
  const edge = cannotTurn
    ? greatestEdge
    : Math.min(greatestEdge, Math.max(neededEdge, lean + pair.baseBevel));
  const skiRadius = pair.turn.radius(edge, outerShare * load);
  const grown = cannotTurn ? 1 : Math.min(1, -bestHold / driftBlend);
  return {
    mode: 'drifts',
    neededEdge,
    edge,
    skiRadius,
    lean,
    load,
    hold: cannotTurn ? holdUnderBoot(greatestEdge, pair.baseBevel, lean) : bestHold,
    drift: grown * Math.min(greatestDrift, 0.5 * turn * Math.abs(radius / skiRadius - 1)),
  };
}
