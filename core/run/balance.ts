/**
 * Forces on a skier in a turn, in the frame of the slope: what the snow must give, how far that leans, and
 * whether the shelf cut by the ski carries it. Angles in rad, everything else SI.
 *
 * Sides: x points to the skier's right looking down the hill, heading χ is measured from the fall line and is
 * positive to the right, `side` is +1 in a right turn and −1 in a left turn. So χ·side < 0 is before the fall
 * line and χ·side > 0 after it.
 */

import { GRAVITY } from '../skier/index.ts';

export { GRAVITY };

/** Force square to the slope, N: m g cosα + m v² κ, with κ (1/m) the terrain curvature, positive in a dip. */
export function normalForce(mass: number, slope: number, speed = 0, terrainCurvature = 0): number {
  return mass * (GRAVITY * Math.cos(slope) + speed * speed * terrainCurvature);
}

/** Part of the weight that pulls out of the turn, N: m g sinα sin(χ)·side; negative before the fall line. */
export function outwardWeight(mass: number, slope: number, heading: number, side: number): number {
  return mass * GRAVITY * Math.sin(slope) * Math.sin(heading) * side;
}

/**
 * Sideways force the snow must give towards the turn's centre, N: m v²/R − m g sinα (fall line · n).
 * Before the fall line the weight helps, after it the weight adds.
 */
export function sidewaysForce(
  mass: number,
  speed: number,
  radius: number,
  slope: number,
  heading: number,
  side: number,
): number {
  return (mass * speed * speed) / radius + outwardWeight(mass, slope, heading, side);
}

/** Lean of the resultant from the slope's normal towards the turn's centre, rad. */
export function leanAngle(sideways: number, normal: number): number {
  return Math.atan2(sideways, normal);
}

/** Force between ski and snow, N. */
export function snowLoad(sideways: number, normal: number): number {
  return Math.hypot(sideways, normal);
}

/** Hold under the boot, rad: the shelf must be steeper than the resultant leans. Negative skids. */
export function holdUnderBoot(edgeAngle: number, baseBevel: number, lean: number): number {
  return edgeAngle - baseBevel - lean;
}

/** Angulation, rad: how far the skis are tilted beyond the lean of the body's balance. */
export function angulation(edgeAngle: number, lean: number): number {
  return edgeAngle - lean;
}

/** Load over weight F/(m g) of a balanced skier at lean ψ on slope α: cosα/cosψ. */
export function balancedLoad(lean: number, slope = 0): number {
  return Math.cos(slope) / Math.cos(lean);
}

/** Speed that an unangulated carve holds on level ground, m/s: v² = g R_sc sinθ. */
export function levelSpeed(sidecutRadius: number, edgeAngle: number): number {
  return Math.sqrt(GRAVITY * sidecutRadius * Math.sin(edgeAngle));
}

/** Speed no unangulated carve exceeds on level ground, m/s: √(g R_sc). */
export function speedCeiling(sidecutRadius: number): number {
  return Math.sqrt(GRAVITY * sidecutRadius);
}
