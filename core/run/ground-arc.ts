/**
 * A height profile re-read along the ground: from height over horizontal distance (natural cubic spline) to
 * height over arc length (quintic Hermite pieces on an even grid).
 *
 * Quintic, so that the slope angle handed to the equations of motion is exactly the derivative of the height in
 * the energy book, and the curvature is continuous; a book kept with two descriptions of one hill would not
 * close.
 */

import { gaussLegendre } from '../numeric/index.ts';

export interface ArcTable {
  /** m along the ground. */
  readonly length: number;
  /** Height (order 0) or its first or second derivative along the ground. */
  height(y: number, order: 0 | 1 | 2): number;
  horizontal(y: number): number;
  along(horizontal: number): number;
}

/** Node distance of the even grid, m, at most. */
const GRID = 0.5;

/** Points of horizontal distance (ascending, two or more) and height, m. */
export function arcTable(horizontal: ArrayLike<number>, height: ArrayLike<number>): ArcTable {
  const spline = naturalSpline(horizontal, height);
  const start = horizontal[0];
  const end = horizontal[horizontal.length - 1];
  const pieces = Math.max(4, Math.ceil((end - start) / GRID));
  const rule = gaussLegendre(5);
  const step = (end - start) / pieces;
  const arc = new Float64Array(pieces + 1);
  const speed = (d: number) => Math.hypot(1, spline(d, 1));
  for (let i = 0; i < pieces; i++) {
    let sum = 0;
    for (let g = 0; g < rule.nodes.length; g++) {
      sum += rule.weights[g] * speed(start + step * (i + 0.5 + 0.5 * rule.nodes[g]));
    }
    arc[i + 1] = arc[i] + 0.5 * step * sum;
  }
  const length = arc[pieces];
  const n = Math.max(4, Math.ceil(length / GRID));
  const dy = length / n;
  const d = new Float64Array(n + 1);
  const z = new Float64Array(n + 1);
  const z1 = new Float64Array(n + 1);
  const z2 = new Float64Array(n + 1);
  const origin = spline(start, 0);
  let k = 0;
  for (let i = 0; i <= n; i++) {
    const y = i * dy;
    while (k < pieces - 1 && arc[k + 1] < y) k++;
    // Newton on arc length within the piece; the ground is smooth so a few rounds settle it.
    let at = start + step * (k + (y - arc[k]) / (arc[k + 1] - arc[k]));
    for (let round = 0; round < 8; round++) {
      const from = start + step * k;
      let sum = 0;
      for (let g = 0; g < rule.nodes.length; g++) {
        sum += rule.weights[g] * speed(from + (at - from) * (0.5 + 0.5 * rule.nodes[g]));
      }
      const error = arc[k] + 0.5 * (at - from) * sum - y;
      at -= error / speed(at);
      if (Math.abs(error) < 1e-13 * length) break;
    }
    const slope = spline(at, 1);
    const stretch = 1 + slope * slope;
    d[i] = at - start;
    z[i] = spline(at, 0) - origin;
    z1[i] = slope / Math.sqrt(stretch);
    z2[i] = spline(at, 2) / (stretch * stretch);
  }
  // Straight on beyond the ends.
  z2[0] = 0;
  z2[n] = 0;
  const pieceAt = (y: number) => Math.min(n - 1, Math.max(0, Math.floor(y / dy)));
  const heightAt = (y: number, order: 0 | 1 | 2): number => {
    if (y < 0 || y > length) {
      const i = y < 0 ? 0 : n;
      return order === 0 ? z[i] + z1[i] * (y - i * dy) : order === 1 ? z1[i] : 0;
    }
    const i = pieceAt(y);
    return quintic(y / dy - i, dy, z[i], z1[i], z2[i], z[i + 1], z1[i + 1], z2[i + 1], order);
  };
  const cosine = (i: number) => Math.sqrt(1 - z1[i] * z1[i]);
  const horizontalAt = (y: number): number => {
    if (y < 0) return y * cosine(0);
    if (y > length) return d[n] + (y - length) * cosine(n);
    const i = pieceAt(y);
    const t = y / dy - i;
    const u = 1 - t;
    return (
      u * u * ((1 + 2 * t) * d[i] + t * dy * cosine(i)) +
      t * t * ((3 - 2 * t) * d[i + 1] - u * dy * cosine(i + 1))
    );
  };
  const alongAt = (h: number): number => {
    let y = h < 0 ? h / cosine(0) : h > d[n] ? length + (h - d[n]) / cosine(n) : (h / d[n]) * length;
    if (h < 0 || h > d[n]) return y;
    for (let round = 0; round < 50; round++) {
      const error = horizontalAt(y) - h;
      if (Math.abs(error) < 1e-12 * (1 + length)) break;
      const s = heightAt(y, 1);
      y -= error / Math.sqrt(1 - s * s);
    }
    return y;
  };
  return { length, height: heightAt, horizontal: horizontalAt, along: alongAt };
}

function quintic(
  t: number,
  h: number,
  a0: number,
  a1: number,
  a2: number,
  b0: number,
  b1: number,
  b2: number,
  order: 0 | 1 | 2,
): number {
  const c1 = h * a1;
  const c2 = 0.5 * h * h * a2;
  const rise = b0 - a0 - c1 - c2;
  const slope = h * b1 - c1 - 2 * c2;
  const bend = h * h * b2 - 2 * c2;
  const c3 = 10 * rise - 4 * slope + 0.5 * bend;
  const c4 = -15 * rise + 7 * slope - bend;
  const c5 = 6 * rise - 3 * slope + 0.5 * bend;
  if (order === 0) return a0 + t * (c1 + t * (c2 + t * (c3 + t * (c4 + t * c5))));
  if (order === 1) return (c1 + t * (2 * c2 + t * (3 * c3 + t * (4 * c4 + t * 5 * c5)))) / h;
  return (2 * c2 + t * (6 * c3 + t * (12 * c4 + t * 20 * c5))) / (h * h);
}

/** Natural cubic spline (second derivative zero at the ends): value and derivatives. */
function naturalSpline(x: ArrayLike<number>, y: ArrayLike<number>): (at: number, order: 0 | 1 | 2) => number {
  const n = x.length;
  const m = new Float64Array(n);
  const c = new Float64Array(n);
  for (let i = 1; i < n - 1; i++) {
    const a = x[i] - x[i - 1];
    const b = x[i + 1] - x[i];
    const p = 2 * (a + b) - a * c[i - 1];
    c[i] = b / p;
    m[i] = (6 * ((y[i + 1] - y[i]) / b - (y[i] - y[i - 1]) / a) - a * m[i - 1]) / p;
  }
  for (let i = n - 2; i > 0; i--) m[i] -= c[i] * m[i + 1];
  let k = 0;
  return (at, order) => {
    while (k > 0 && at < x[k]) k--;
    while (k < n - 2 && at >= x[k + 1]) k++;
    const h = x[k + 1] - x[k];
    const b = (at - x[k]) / h;
    const a = 1 - b;
    if (order === 2) return a * m[k] + b * m[k + 1];
    if (order === 1) {
      return (y[k + 1] - y[k]) / h + (h / 6) * ((3 * b * b - 1) * m[k + 1] - (3 * a * a - 1) * m[k]);
    }
    return a * y[k] + b * y[k + 1] + ((h * h) / 6) * ((a * a * a - a) * m[k] + (b * b * b - b) * m[k + 1]);
  };
}
