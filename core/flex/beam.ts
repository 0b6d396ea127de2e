import { FieldError } from '../fault/index.ts';
import {
  addSymmetric,
  factorSymmetric,
  gaussLegendre,
  prescribe,
  type SymmetricBand,
  solveSymmetric,
  symmetricBand,
} from '../numeric/index.ts';
import type { Profile } from './profile.ts';

/**
 * Euler–Bernoulli beam in Hermite cubic elements (any text on finite elements). Two unknowns a node, in the
 * order w₀, w₀', w₁, w₁', …: deflection in m and slope. EI varies inside an element and is integrated there.
 */
export const DEFAULT_ELEMENTS = 120;
/** Half bandwidth of the bending matrix: an element couples two neighbouring nodes of two unknowns each. */
export const BENDING_HALF = 3;
/** Gauss points an element, enough for EI up to cubic inside it. */
const GAUSS_POINTS = 3;

/**
 * Nodes over [from, to] with one exactly at each of `through` (supports, loads, edges of the boot), the rest
 * spread evenly between; about `elements` elements in all. Positions outside the range are left out.
 */
export function meshThrough(
  from: number,
  to: number,
  through: readonly number[] = [],
  elements = DEFAULT_ELEMENTS,
): Float64Array {
  const length = to - from;
  const near = 1e-9 * length;
  const marks = [from];
  for (const x of [...through].sort((a, b) => a - b)) {
    if (x - marks[marks.length - 1] > near && to - x > near) marks.push(x);
  }
  marks.push(to);
  const nodes = [from];
  for (let k = 1; k < marks.length; k++) {
    const piece = marks[k] - marks[k - 1];
    const count = Math.max(1, Math.round((elements * piece) / length));
    for (let i = 1; i < count; i++) nodes.push(marks[k - 1] + (piece * i) / count);
    nodes.push(marks[k]);
  }
  return Float64Array.from(nodes);
}

/** Index of the node nearest to `at`. */
export function nodeAt(x: Float64Array, at: number): number {
  let best = 0;
  for (let i = 1; i < x.length; i++) if (Math.abs(x[i] - at) < Math.abs(x[best] - at)) best = i;
  return best;
}

/** The profile at each element's Gauss points, `GAUSS_POINTS` values an element. */
export function gaussValues(profile: Profile, x: Float64Array, out?: Float64Array): Float64Array {
  const { nodes } = gaussLegendre(GAUSS_POINTS);
  const elements = x.length - 1;
  const values = out ?? new Float64Array(elements * GAUSS_POINTS);
  for (let e = 0; e < elements; e++) {
    const half = (x[e + 1] - x[e]) / 2;
    for (let q = 0; q < GAUSS_POINTS; q++)
      values[e * GAUSS_POINTS + q] = profile(x[e] + half * (1 + nodes[q]));
  }
  return values;
}

/** Second derivatives of the four Hermite cubics at t in [0, 1] of an element of length h, into `out`. */
export function hermiteCurvature(t: number, h: number, out: Float64Array): void {
  out[0] = (12 * t - 6) / (h * h);
  out[1] = (6 * t - 4) / h;
  out[2] = -out[0];
  out[3] = (6 * t - 2) / h;
}

/** The four Hermite cubics at t in [0, 1] of an element of length h, into `out`. */
export function hermite(t: number, h: number, out: Float64Array): void {
  const u = 1 - t;
  out[0] = u * u * (1 + 2 * t);
  out[1] = h * t * u * u;
  out[2] = t * t * (1 + 2 * u);
  out[3] = -h * u * t * t;
}

/** Lower triangle, row by row, of the 4 × 4 element stiffness from EI at the Gauss points from `offset` on. */
function elementBending(gaussEI: Float64Array, offset: number, h: number, out: Float64Array): void {
  const { nodes, weights } = gaussLegendre(GAUSS_POINTS);
  out.fill(0);
  for (let q = 0; q < GAUSS_POINTS; q++) {
    const t = (1 + nodes[q]) / 2;
    const weight = (gaussEI[offset + q] * weights[q]) / (2 * h * h * h);
    const a = 12 * t - 6;
    const b = (6 * t - 4) * h;
    const d = (6 * t - 2) * h;
    out[0] += weight * a * a;
    out[1] += weight * a * b;
    out[2] += weight * b * b;
    out[4] -= weight * a * b;
    out[6] += weight * a * d;
    out[7] += weight * b * d;
    out[8] -= weight * a * d;
    out[9] += weight * d * d;
  }
  out[3] = -out[0];
  out[5] = out[0];
}

const element = new Float64Array(10);

/** Adds the bending stiffness of every element to `band` (made when not given): 2 rows a node. */
export function bendingMatrix(
  x: Float64Array,
  gaussEI: Float64Array,
  band: SymmetricBand = symmetricBand(2 * x.length, BENDING_HALF),
): SymmetricBand {
  for (let e = 0; e + 1 < x.length; e++) {
    elementBending(gaussEI, e * GAUSS_POINTS, x[e + 1] - x[e], element);
    let k = 0;
    for (let i = 0; i < 4; i++) {
      for (let j = 0; j <= i; j++) addSymmetric(band, 2 * e + i, 2 * e + j, element[k++]);
    }
  }
  return band;
}

/**
 * Solves K u = load with u[index] = value for each support, overwriting `band` and `load`; returns `load`.
 * Throws RangeError when the supports leave the beam free to move.
 */
export function solveSupported(
  band: SymmetricBand,
  load: Float64Array,
  supports: readonly (readonly [index: number, value: number])[],
): Float64Array {
  for (const [index, value] of supports) prescribe(band, load, index, value);
  const last = band.data.length - 1;
  const turning = band.data[last];
  const moving = band.data[last - BENDING_HALF - 1];
  // Rounding hides an exact zero, but a free motion leaves next to nothing of the last node's two pivots.
  const held =
    factorSymmetric(band) === 0 &&
    band.data[last] > 1e-6 * turning &&
    band.data[last - BENDING_HALF - 1] > 1e-12 * moving;
  if (held) return solveSymmetric(band, load);
  throw new FieldError({ field: 'supports', found: supports.length, accepted: { key: 'flex.heldBeam' } });
}
