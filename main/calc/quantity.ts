import { sizeOf } from '../../core/units/index.ts';

/** SI values of the units the contract speaks in. */
export const MM = sizeOf('mm');
export const DEGREE = sizeOf('°');
export const KMH = sizeOf('km/h');
export const KPA = sizeOf('kPa');
export const N_PER_MM3 = sizeOf('N/mm³');

/**
 * Nine significant digits: more than any measurement holds, and free of the last bits that differ between
 * machines. What is not finite (the radius of a straight edge) is null, as JSON would have it.
 */
export function rounded(value: number): number | null {
  return Number.isFinite(value) ? Number(value.toPrecision(9)) : null;
}
