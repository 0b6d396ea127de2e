export const MM = 1e-3;
export const DEGREE = Math.PI / 180;
export const KMH = 1 / 3.6;
/** N/mm³ in N/m³. */
export const PER_MM3 = 1e9;

/**
 * Nine significant digits: more than any measurement holds, and free of the last bits that differ between
 * machines. What is not finite (the radius of a straight edge) is null, as JSON would have it.
 */
export function rounded(value: number): number | null {
  return Number.isFinite(value) ? Number(value.toPrecision(9)) : null;
}
