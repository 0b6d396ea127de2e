/**
 * What the edge's reaction asks of the boot. The snow pushes at the edge, the foot stands half a waist aside of it
 * and a hand's breadth above; angulation decides on which side of the foot the push passes. Lengths m, angles
 * rad, forces N, moments N·m.
 */

import { FieldError } from '../fault/index.ts';

const DEGREE = Math.PI / 180;

/**
 * Lateral stiffness of boot and leg, N·m a radian: 20 N·m a degree, an order of magnitude recalled from memory
 * (some 10 to 40); confirm before relying on it.
 */
export const USUAL_BOOT_STIFFNESS = 20 / DEGREE;

/** What may be taken for it, N·m a radian: 2 to 200 N·m a degree, a soft child's boot to a plaster cast. */
export const BOOT_STIFFNESS_SPAN = { from: 2 / DEGREE, to: 200 / DEGREE } as const;

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
