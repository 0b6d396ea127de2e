/**
 * What the edge's reaction asks of the boot. The snow pushes at the edge, the foot stands half a waist aside of it
 * and a hand's breadth above; angulation decides on which side of the foot the push passes. Lengths m, angles
 * rad, forces N, moments N·m.
 */

import { FieldError } from '../fault/index.ts';

/** Where the push acts as the foot sees it. */
export interface EdgeBelowFoot {
  /** From the midline of the ski to where the push acts, m: half the waist, or the solved pressure's centre. */
  readonly aside: number;
  /** From there up to the foot bed, m. */
  readonly below: number;
}

/** Angulation γ = θ − ψ, rad: how far the ski is tipped beyond the lean of the snow's push. */
export function angulationOf(edgeAngle: number, lean: number): number {
  return edgeAngle - lean;
}

/** Lever of the push about the foot, m: aside·cosγ − below·sinγ. Positive, it flattens the ski; negative, it tips it. */
export function bootLever({ aside, below }: EdgeBelowFoot, angulation: number): number {
  return aside * Math.cos(angulation) - below * Math.sin(angulation);
}

/** Moment the boot must carry, N·m: M = F (y_w cosγ − H sinγ). Positive, it takes edge angle away. */
export function bootMoment(load: number, edge: EdgeBelowFoot, angulation: number): number {
  return load * bootLever(edge, angulation);
}

/** Angulation at which the push passes through the foot and the boot carries nothing, rad: tanγ = y_w/H. */
export function freeAngulation({ aside, below }: EdgeBelowFoot): number {
  return Math.atan2(aside, below);
}

/**
 * Edge angle lost in boot and leg, rad: M/k; negative where the push tips the ski further.
 *
 * @throws FieldError when the stiffness is not above 0
 */
export function edgeAngleLost(moment: number, stiffness: number): number {
  if (stiffness > 0) return moment / stiffness;
  throw new FieldError({ field: 'stiffness', found: stiffness, accepted: { above: 0, unit: 'N·m/rad' } });
}

/**
 * Force between ski and snow whose part normal to the base is `normal` (N), at an angulation (rad).
 *
 * @throws FieldError for an angulation of 90 degrees or more
 */
export function pushOf(normal: number, angulation: number): number {
  const share = Math.cos(angulation);
  if (share > 1e-6) return normal / share;
  throw new FieldError({
    field: 'angulation',
    found: { quantity: 'angle', value: angulation },
    accepted: { above: -Math.PI / 2, below: Math.PI / 2, quantity: 'angle' },
  });
}
