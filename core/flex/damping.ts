import { accept } from '../fault/index.ts';
/**
 * Damping ratio from a decay: ζ = ln 2/(2π f t½), t½ the time in which the swing halves (half-value time of
 * ISO 6267, scope only) [derived]. f in Hz, t½ in s; throws FieldError unless both are over 0.
 */
export function dampingRatio(hz: number, halfValueTime: number): number {
  accept('frequency', hz, { above: 0, unit: 'Hz' });
  accept('halfValueTime', halfValueTime, { above: 0, unit: 's' });
  return Math.LN2 / (2 * Math.PI * hz * halfValueTime);
}
