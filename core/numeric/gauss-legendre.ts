/** Nodes on [-1, 1] in ascending order and their weights (sum 2). */
export interface GaussRule {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

const rules = new Map<number, GaussRule>();

/**
 * Gauss–Legendre rule with `points` nodes, exact for polynomials up to degree 2·points − 1.
 * Nodes are roots of the Legendre polynomial found by Newton's method from the usual cosine guess.
 * Throws RangeError when `points` is not a whole number from 1 to 64.
 */
export function gaussLegendre(points: number): GaussRule {
  const known = rules.get(points);
  if (known) return known;
  if (!Number.isInteger(points) || points < 1 || points > 64) {
    throw new RangeError(`points: ${points} is not a whole number from 1 to 64`);
  }
  const nodes = new Float64Array(points);
  const weights = new Float64Array(points);
  for (let i = 0; i < points; i++) {
    let x = -Math.cos((Math.PI * (i + 0.75)) / (points + 0.5));
    let slope = 1;
    for (let step = 0; step < 100; step++) {
      let previous = 0;
      let value = 1;
      for (let k = 1; k <= points; k++) {
        const next = ((2 * k - 1) * x * value - (k - 1) * previous) / k;
        previous = value;
        value = next;
      }
      slope = (points * (x * value - previous)) / (x * x - 1);
      const change = value / slope;
      x -= change;
      if (Math.abs(change) < 1e-15) break;
    }
    nodes[i] = x;
    weights[i] = 2 / ((1 - x * x) * slope * slope);
  }
  if (points % 2 === 1) nodes[(points - 1) / 2] = 0;
  const rule = { nodes, weights };
  rules.set(points, rule);
  return rule;
}

/** ∫ f over [from, to] with one Gauss–Legendre rule on each of `panels` equal pieces. */
export function quadrature(
  f: (x: number) => number,
  from: number,
  to: number,
  panels = 1,
  points = 5,
): number {
  const { nodes, weights } = gaussLegendre(points);
  const half = (to - from) / (2 * panels);
  let sum = 0;
  for (let p = 0; p < panels; p++) {
    const middle = from + (2 * p + 1) * half;
    for (let q = 0; q < points; q++) sum += weights[q] * f(middle + half * nodes[q]);
  }
  return sum * half;
}
