/**
 * A steady turn at one instant, for the coach's chain: edge angle → radius → sideways push → lean → grip to spare.
 * The skier is a mass at the end of a leg, whose mass goes round on the smaller circle:
 *
 *   tanψ = (v²κ (1 − κ ℓ sinψ) + g sinα sinχ)/(g cosα)
 */

import { DEGREE } from '../units/index.ts';
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
  /** ℓ, skis to the mass, m; 0 unless given: a mass on the skis themselves. */
  readonly leg?: number;
}

export interface TurnMoment {
  /** m, agreed with the load. */
  readonly radius: number;
  /** N */
  readonly normal: number;
  /** N, towards the turn's centre. */
  readonly sideways: number;
  /** ψ, rad. */
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
  const { turn, edgeAngle, mass, slope, baseBevel, outerShare } = question;
  const normal = normalForce(mass, slope);
  let load = normal;
  let radius = 0;
  let sideways = 0;
  for (let i = 0; i < 100; i++) {
    radius = turn.radius(edgeAngle, outerShare * load);
    sideways = sidewaysPush(question, radius);
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

/**
 * Sideways push of a skier in balance on a turn of this radius, N. What the turn asks falls as the mass leans into
 * it, so there is one lean at which both agree; it is found by halving on tanψ and polished by Newton's rule.
 */
function sidewaysPush(question: TurnQuestion, radius: number): number {
  const { speed, mass, slope, pastFallLine, leg = 0 } = question;
  const standing = sidewaysForce(mass, speed, radius, slope, pastFallLine, 1);
  if (leg === 0) return standing;
  const normal = normalForce(mass, slope);
  const inward = (mass * speed * speed * leg) / (radius * radius);
  // Between the push without a leg and that with it lying flat.
  let low = standing - inward;
  let high = standing + inward;
  let push = standing;
  for (let i = 0; i < 100; i++) {
    const load = Math.hypot(push, normal);
    const miss = push + (inward * push) / load - standing;
    if (miss > 0) high = push;
    else low = push;
    const next = push - miss / (1 + (inward * normal * normal) / load ** 3);
    const to = next > low && next < high ? next : 0.5 * (low + high);
    if (Math.abs(to - push) <= 1e-14 * (Math.abs(standing) + normal)) return to;
    push = to;
  }
  return push;
}

/** A mass this near to the turn's centre, as a share of the radius, asks for next to nothing. */
export const AT_THE_CENTRE = 1e-6;

/** Greatest speed at which this edge angle holds this turn, m/s; 0 when the weight alone is too much for it. */
export function holdingSpeed(question: TurnQuestion): number {
  const spare = Math.max(0, spareForce(question));
  const radius = radiusAtLimit(question);
  const roundShare = Math.max(AT_THE_CENTRE, 1 - insideAtLimit(question) / radius);
  return Math.sqrt((spare * radius) / (question.mass * roundShare));
}

/**
 * Radius that this edge angle would just hold at this speed, m: the widest of them. Infinity when none; 0 when every
 * radius holds, as for a slow skier whose mass comes to stand inside a tight turn.
 */
export function holdingRadius(question: TurnQuestion): number {
  const spare = spareForce(question);
  if (!(spare > 0)) return Infinity;
  // κ (1 − κ p) m v² = spare, p the mass's distance from the skis.
  const request = spare / (question.mass * question.speed * question.speed);
  const root = 1 - 4 * request * insideAtLimit(question);
  return root < 0 ? 0 : (1 + Math.sqrt(root)) / (2 * request);
}

/**
 * Least edge angle that holds at this speed, rad, looked for from a little beyond the bevel to 80°; null when
 * none does, since a larger angle also tightens the turn.
 */
export function holdingEdge(question: TurnQuestion): number | null {
  const hold = (edgeAngle: number) => turnMoment({ ...question, edgeAngle }).hold;
  const from = question.baseBevel;
  const step = 0.5 * DEGREE;
  const end = 80 * DEGREE;
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

/** How far inside its skis the mass is when it leans as far as the shelf carries, m. */
const insideAtLimit = ({ leg = 0, edgeAngle, baseBevel }: TurnQuestion): number =>
  leg * Math.sin(Math.max(0, edgeAngle - baseBevel));

function radiusAtLimit({ turn, mass, slope, edgeAngle, baseBevel, outerShare }: TurnQuestion): number {
  const load = normalForce(mass, slope) / Math.cos(Math.max(0, edgeAngle - baseBevel));
  return turn.radius(edgeAngle, outerShare * load);
}
