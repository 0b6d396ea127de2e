/**
 * Ideal carving: no angulation, the skis tilted exactly as far as the resultant leans (θ = ψ), so speed and
 * place in the turn fix the radius. U. D. Jentschura, F. Fahrbach, Can. J. Phys. 82 (2004) 249-261 (abstract
 * seen); the form solved here is derived from the balance in `balance.ts` and R = R_sc cosθ.
 */

import { GRAVITY } from './balance.ts';

/**
 * The lean ψ of an ideal carve, rad, by the cosine rule.
 *
 * With tanψ = c/cosψ + q the equation closes: sinψ − q cosψ = c, so ψ = atan q + asin(c/√(1 + q²)).
 *
 * @param c m v²/(R_sc F_N): sideways need of the flat-ski radius over the normal force
 * @param q outward weight over the normal force (tanα sinχ·side on an even slope)
 * @returns NaN when no lean balances (too fast); zero or less when the weight alone turns the skier faster
 *   than the skis would
 */
export function idealLean(c: number, q: number): number {
  return Math.atan(q) + Math.asin(c / Math.sqrt(1 + q * q));
}

/**
 * Turn radius R (m) of the ideal carve: √(R_sc²/R² − 1) = v²/(g R cosα) + tanα cosβ.
 *
 * @param speed m/s
 * @param sidecutRadius m
 * @param slope α, rad
 * @param beta β, rad: direction of travel from the horizontal traverse, 0 to π/2
 * @param half +1 in the lower half of the turn (after the fall line), −1 in the upper
 * @returns null where no such carve exists
 */
export function idealRadius(
  speed: number,
  sidecutRadius: number,
  slope: number,
  beta: number,
  half: 1 | -1,
): number | null {
  const c = (speed * speed) / (GRAVITY * sidecutRadius * Math.cos(slope));
  const lean = idealLean(c, half * Math.tan(slope) * Math.cos(beta));
  return lean > 0 && lean < Math.PI / 2 ? sidecutRadius * Math.cos(lean) : null;
}
