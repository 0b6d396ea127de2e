/**
 * Damping ratio from a decay: ζ = ln 2/(2π f t½), t½ the time in which the swing halves (half-value time of
 * ISO 6267, scope only) [derived]. f in Hz, t½ in s; throws RangeError unless both are over 0.
 */
export function dampingRatio(hz: number, halfValueTime: number): number {
  if (!(hz > 0)) throw new RangeError(`frequency: ${hz} Hz found; over 0 is accepted`);
  if (!(halfValueTime > 0))
    throw new RangeError(`halfValueTime: ${halfValueTime} s found; over 0 is accepted`);
  return Math.LN2 / (2 * Math.PI * hz * halfValueTime);
}
