import { DEGREE } from '../units/index.ts';

/**
 * The wall of the groove that the edge leans on: its area ∫ e dx along the edge, and the shape that area follows.
 */

/** Rounds the wall's depth off where the ski lies flat, rad: under it nothing is asked of the wall. */
const FLAT = 2 * DEGREE;
/** The shape goes on as a parabola from here, rad. */
const STEEPEST = 89 * DEGREE;
const ROUND = Math.tan(FLAT) ** 2;

/** ∫ e dx over the edge that is in the snow, m², with penetration (m) linear between the stations `x` (m). */
export function wallAreaOf(x: Float64Array, penetration: Float64Array): number {
  let area = 0;
  for (let i = 0; i + 1 < x.length; i++) {
    const deeper = Math.max(penetration[i], penetration[i + 1]);
    const other = Math.min(penetration[i], penetration[i + 1]);
    if (deeper <= 0) continue;
    const mean = other >= 0 ? 0.5 * (deeper + other) : (0.5 * deeper * deeper) / (deeper - other);
    area += mean * (x[i + 1] - x[i]);
  }
  return area;
}

/**
 * Writes c = (tan²θ + tan²2°)^¼ and its two derivatives at θ ≥ 0: with it an evenly pressed edge of length L has
 * ∫ e dx = √(2LF/H_V) c, from the virgin wedge f = H_V e²/(2 tanθ).
 */
export function wallShape(tilt: number, out: Float64Array): void {
  const at = Math.min(tilt, STEEPEST);
  const tan = Math.tan(at);
  const up = 1 + tan * tan;
  const q = tan * tan + ROUND;
  const bySlope = (2 * tan * up) / (4 * q);
  const c = q ** 0.25;
  const slope = c * bySlope;
  const bend = c * ((2 * up * (1 + 3 * tan * tan)) / (4 * q) - 3 * bySlope * bySlope);
  const past = tilt - at;
  out[0] = c + past * (slope + 0.5 * past * bend);
  out[1] = slope + past * bend;
  out[2] = bend;
}

const shape = new Float64Array(3);

/** ∫ e dx over √F c(θ), m²/√N: nearly the same at every edge angle (rad, ≥ 0) and load (N). */
export function wallRatio(area: number, edgeAngle: number, load: number): number {
  wallShape(edgeAngle, shape);
  return area / (shape[0] * Math.sqrt(load));
}

/** Wall of an evenly pressed edge, `wallRatio` of it, m²/√N: contact length in m, hardness in N/m³. */
export const evenWallRatio = (contactLength: number, hardness: number): number =>
  Math.sqrt((2 * contactLength) / hardness);
