/**
 * One instant of a turn, for the coach's chain: edge angle → radius → sideways force → lean → hold.
 */

import {
  angulation,
  holdUnderBoot,
  leanAngle,
  normalForce,
  outwardWeight,
  sidewaysForce,
  snowLoad,
} from './balance.ts';
import type { TurnRadius } from './turn-radius.ts';

/** The instant asked about, SI and rad. */
export interface TurnQuestion {
  readonly turn: TurnRadius;
  readonly edgeAngle: number;
  readonly speed: number;
  readonly mass: number;
  /** Slope angle α; 0 is level ground. */
  readonly slope: number;
  /** Direction of travel from the fall line, counted towards the turn: negative before it, positive after. */
  readonly pastFallLine: number;
  readonly baseBevel: number;
  readonly outerShare: number;
}

export interface TurnMoment {
  /** m, agreed with the load. */
  readonly radius: number;
  /** N */
  readonly normal: number;
  /** N, towards the turn's centre. */
  readonly sideways: number;
  /** rad */
  readonly lean: number;
  /** N, both skis. */
  readonly load: number;
  /** N, the outer ski's part. */
  readonly outerLoad: number;
  /** rad; negative skids. */
  readonly hold: number;
  /** rad */
  readonly angulation: number;
}

/** The chain solved: radius and load agree with each other. */
export function turnMoment(question: TurnQuestion): TurnMoment {
  const { turn, edgeAngle, speed, mass, slope, pastFallLine, baseBevel, outerShare } = question;
  const normal = normalForce(mass, slope);
  let load = normal;
  let radius = 0;
  let sideways = 0;
  for (let i = 0; i < 100; i++) {
    radius = turn.radius(edgeAngle, outerShare * load);
    sideways = sidewaysForce(mass, speed, radius, slope, pastFallLine, 1);
    const next = snowLoad(sideways, normal);
    const change = Math.abs(next - load);
    load = next;
    if (change <= 1e-12 * next) break;
  }
  const lean = leanAngle(sideways, normal);
  return {
    radius,
    normal,
    sideways,
    lean,
    load,
    outerLoad: outerShare * load,
    hold: holdUnderBoot(edgeAngle, baseBevel, lean),
    angulation: angulation(edgeAngle, lean),
  };
}

/** Greatest speed at which this edge angle holds this turn, m/s; 0 when the weight alone is too much for it. */
export function holdingSpeed(question: TurnQuestion): number {
  const spare = spareForce(question);
  return spare > 0 ? Math.sqrt((spare * radiusAtLimit(question)) / question.mass) : 0;
}

/** Radius that this edge angle would just hold at this speed, m; Infinity when none. */
export function holdingRadius(question: TurnQuestion): number {
  const spare = spareForce(question);
  return spare > 0 ? (question.mass * question.speed * question.speed) / spare : Infinity;
}

/**
 * Least edge angle that holds at this speed, rad, looked for from a little beyond the bevel to 80°; null when
 * none does, since a larger angle also tightens the turn.
 */
export function holdingEdge(question: TurnQuestion): number | null {
  const hold = (edgeAngle: number) => turnMoment({ ...question, edgeAngle }).hold;
  const from = question.baseBevel;
  const step = (0.5 * Math.PI) / 180;
  const end = (80 * Math.PI) / 180;
  for (let high = from + step; high <= end; high += step) {
    if (hold(high) < 0) continue;
    let low = high - step;
    for (let i = 0; i < 50; i++) {
      const middle = 0.5 * (low + high);
      if (hold(middle) < 0) low = middle;
      else high = middle;
    }
    return high;
  }
  return null;
}

/** What the shelf gives beyond the pull of the weight, N. */
function spareForce({ mass, slope, pastFallLine, edgeAngle, baseBevel }: TurnQuestion): number {
  const shelf = normalForce(mass, slope) * Math.tan(Math.max(0, edgeAngle - baseBevel));
  return shelf - outwardWeight(mass, slope, pastFallLine, 1);
}

function radiusAtLimit({ turn, mass, slope, edgeAngle, baseBevel, outerShare }: TurnQuestion): number {
  const load = normalForce(mass, slope) / Math.cos(Math.max(0, edgeAngle - baseBevel));
  return turn.radius(edgeAngle, outerShare * load);
}
