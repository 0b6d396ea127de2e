import { type MeasuringUncertainty, TAPE_AND_CALIPER } from '../shape/index.ts';

/**
 * u_R of R = L²/(2000 (S + H − 2W)), m from mm:
 * (u_R/R)² = (2u_L/L)² + (u_S² + u_H² + 4u_W²)/(S + H − 2W)².
 */
export function radiusUncertainty(
  lengthMm: number,
  frontMm: number,
  rearMm: number,
  waistMm: number,
  uncertainty: MeasuringUncertainty = TAPE_AND_CALIPER,
): number {
  const spread = frontMm + rearMm - 2 * waistMm;
  if (!(spread > 0)) return Number.POSITIVE_INFINITY;
  const radius = (lengthMm * lengthMm) / (2000 * spread);
  const alongShare = (2000 * uncertainty.uLength) / lengthMm;
  const acrossShare = (Math.sqrt(6) * 1000 * uncertainty.uWidth) / spread;
  return radius * Math.hypot(alongShare, acrossShare);
}
