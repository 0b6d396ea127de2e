/**
 * The root of `f` in [a, b] to within `tolerance` in x.
 * R. P. Brent, Algorithms for Minimization without Derivatives (1973), ch. 4 (from memory).
 *
 * @param f continuous, with f(a) and f(b) of opposite sign (or one of them zero)
 * @throws RangeError naming the bracket when the signs agree or a value is not a number
 */
export function brent(
  f: (x: number) => number,
  a: number,
  b: number,
  tolerance = 1e-12,
  fa = f(a),
  fb = f(b),
): number {
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa * fb < 0)) {
    throw new RangeError(
      `root: f(${a}) = ${fa} and f(${b}) = ${fb}; a bracket with a change of sign is accepted`,
    );
  }
  let c = a;
  let fc = fa;
  let d = b - a;
  let e = d;
  for (let i = 0; i < 200; i++) {
    if (fb > 0 === fc > 0) {
      c = a;
      fc = fa;
      d = b - a;
      e = d;
    }
    if (Math.abs(fc) < Math.abs(fb)) {
      a = b;
      b = c;
      c = a;
      fa = fb;
      fb = fc;
      fc = fa;
    }
    const tol = 2 * Number.EPSILON * Math.abs(b) + 0.5 * tolerance;
    const m = 0.5 * (c - b);
    if (Math.abs(m) <= tol || fb === 0) return b;
    if (Math.abs(e) >= tol && Math.abs(fa) > Math.abs(fb)) {
      const s = fb / fa;
      let p: number;
      let q: number;
      if (a === c) {
        p = 2 * m * s;
        q = 1 - s;
      } else {
        const r = fb / fc;
        const u = fa / fc;
        p = s * (2 * m * u * (u - r) - (b - a) * (r - 1));
        q = (u - 1) * (r - 1) * (s - 1);
      }
      if (p > 0) q = -q;
      else p = -p;
      if (2 * p < Math.min(3 * m * q - Math.abs(tol * q), Math.abs(e * q))) {
        e = d;
        d = p / q;
      } else {
        d = m;
        e = m;
      }
    } else {
      d = m;
      e = m;
    }
    a = b;
    fa = fb;
    b += Math.abs(d) > tol ? d : m > 0 ? tol : -tol;
    fb = f(b);
  }
  return b;
}

/**
 * The least x in [low, high] at which `holds`, to within `tolerance` and never short of it: found by halving, so
 * `holds` may jump. It has to hold from some x on; `high` where it does not hold at all.
 *
 * @param tolerance the last digit of the range unless given
 */
export function firstWhere(
  holds: (x: number) => boolean,
  low: number,
  high: number,
  tolerance = Number.EPSILON * (high - low),
): number {
  while (high - low > tolerance) {
    const middle = low + (high - low) / 2;
    // No number lies between any more.
    if (middle <= low || middle >= high) break;
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return high;
}
