/** Standard uncertainties, m. */
export interface MeasuringUncertainty {
  /** One full width. */
  readonly uWidth: number;
  /** The contact length. */
  readonly uLength: number;
}

/** A tape to 1 mm and a caliper to 0.25 mm on the edge: common practice unless better is stated. */
export const TAPE_AND_CALIPER: MeasuringUncertainty = { uWidth: 0.25e-3, uLength: 1e-3 };

/**
 * Standard uncertainty of R = L²/(2 E), E = (chord − W)/(2 s (1 − s)), from three full widths with the
 * waist at the share s of the length. Midway E = S + T − 2W and
 * (u_R/R)² = (2u_L/L)² + (u_S² + u_T² + 4u_W²)/(S + T − 2W)².
 */
export function threeWidthUncertainty(
  radius: number,
  length: number,
  s: number,
  { uWidth, uLength }: MeasuringUncertainty,
): number {
  const spread = length ** 2 / (2 * radius);
  const uSpread = (uWidth * Math.sqrt(s ** 2 + (1 - s) ** 2 + 1)) / (2 * s * (1 - s));
  return Math.abs(radius) * Math.hypot((2 * uLength) / length, uSpread / spread);
}
