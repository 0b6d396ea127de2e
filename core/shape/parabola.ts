import type { Ski } from '../pair/index.ts';

/** y = a + b x + c x², lengths in m. */
export interface Parabola {
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

/**
 * Half width of the edge from three full widths: through the tail width at 0, the waist width at its
 * station and the tip width at L. Without a measured station the waist is taken midway, which is the
 * rulebook's R = L²/(8 d) with d = (S + T)/4 − W/2.
 */
export function threeWidthParabola(ski: Ski): Parabola {
  const { contactLength, tailWidth, tipWidth, waistWidth } = ski;
  const s = waistShare(ski);
  const chord = tailWidth + (tipWidth - tailWidth) * s;
  const bulge = (chord - waistWidth) / 2 / (s * (1 - s));
  return {
    a: tailWidth / 2,
    b: ((tipWidth - tailWidth) / 2 - bulge) / contactLength,
    c: bulge / contactLength ** 2,
  };
}

/** Where the waist was measured, as a share of the contact length. */
export function waistShare(ski: Ski): number {
  return ski.waistStation === null ? 0.5 : ski.waistStation / ski.contactLength;
}

/** Parabola of least squares with the standard error of `c` for a standard error `u` of each y. */
export function fitParabola(
  x: readonly number[],
  y: readonly number[],
  u: number,
): { readonly parabola: Parabola; readonly uC: number } {
  // Orthogonal polynomials on the given stations: no cancellation, and c's error falls out by itself.
  const n = x.length;
  const mean = x.reduce((sum, each) => sum + each, 0) / n;
  const p1 = x.map(each => each - mean);
  const s11 = dot(p1, p1);
  const s2 = s11 / n;
  const skew = p1.reduce((sum, each) => sum + each ** 3, 0) / s11;
  const p2 = p1.map(each => each * each - skew * each - s2);
  const s22 = dot(p2, p2);
  const c0 = y.reduce((sum, each) => sum + each, 0) / n;
  const c1 = dot(p1, y) / s11;
  const c = dot(p2, y) / s22;
  // c0 + c1 (x − m) + c ((x − m)² − skew (x − m) − s2), multiplied out.
  const linear = c1 - c * skew;
  return {
    parabola: { a: c0 - c * s2 - linear * mean + c * mean * mean, b: linear - 2 * c * mean, c },
    uC: u / Math.sqrt(s22),
  };
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, each, i) => sum + each * b[i], 0);
}
