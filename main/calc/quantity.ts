/**
 * Nine significant digits: more than any measurement holds, and free of the last bits that differ between
 * machines. What is not finite (the radius of a straight edge) is null, as JSON would have it.
 */
export function rounded(value: number): number | null {
  return Number.isFinite(value) ? Number(value.toPrecision(9)) : null;
}
