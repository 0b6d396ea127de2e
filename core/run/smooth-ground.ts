/**
 * The ground as the equations of motion read it: its slope angle with two continuous derivatives, so that a
 * solver with exact second derivatives may ask. The curvature of the profile is read at even distances and joined
 * by a natural cubic spline; the angle is its integral.
 */

import type { TwoArgumentFunction } from '../numeric/index.ts';
import type { SlopeProfile } from './slope-profile.ts';

export interface SmoothGround {
  /** At the start. */
  readonly alpha: { readonly sine: number; readonly cosine: number };
  /** Of the slope's angle at y, m along the ground, as functions of a first argument; the second is not looked at. */
  readonly sine: TwoArgumentFunction;
  readonly cosine: TwoArgumentFunction;
  /** −dα/dy, 1/m. */
  readonly curvature: TwoArgumentFunction;
}

/** Distance between readings of the profile, m. */
const GRID = 0.5;

export function smoothGround(profile: SlopeProfile): SmoothGround {
  const first = profile.sine(0);
  const alpha = { sine: first, cosine: Math.sqrt(1 - first * first) };
  if (!Number.isFinite(profile.length)) {
    const level: TwoArgumentFunction = (_a, _b, out) => {
      out.fill(0);
    };
    const constant =
      (value: number): TwoArgumentFunction =>
      (_a, _b, out) => {
        out.fill(0);
        out[0] = value;
      };
    return { alpha, sine: constant(alpha.sine), cosine: constant(alpha.cosine), curvature: level };
  }
  const bends = bendSpline(profile);
  const start = Math.asin(first);
  // κ and its two derivatives, and the angle at y.
  const read = new Float64Array(4);
  return {
    alpha,
    sine: (y, _b, out) => {
      bends(y, read);
      const angle = start - read[3];
      out.fill(0);
      out[0] = Math.sin(angle);
      out[1] = -Math.cos(angle) * read[0];
      out[3] = -Math.sin(angle) * read[0] * read[0] - Math.cos(angle) * read[1];
    },
    cosine: (y, _b, out) => {
      bends(y, read);
      const angle = start - read[3];
      out.fill(0);
      out[0] = Math.cos(angle);
      out[1] = Math.sin(angle) * read[0];
      out[3] = -Math.cos(angle) * read[0] * read[0] + Math.sin(angle) * read[1];
    },
    curvature: (y, _b, out) => {
      bends(y, read);
      out.fill(0);
      out[0] = read[0];
      out[1] = read[1];
      out[3] = read[2];
    },
  };
}

/** Writes [κ, κ', κ'', ∫κ] at y; beyond the ends the ground runs straight on. */
function bendSpline(profile: SlopeProfile): (y: number, out: Float64Array) => void {
  const n = Math.max(4, Math.ceil(profile.length / GRID));
  const h = profile.length / n;
  // One node more on either side, at zero, so that the curvature ends smoothly.
  const size = n + 3;
  const k = new Float64Array(size);
  for (let i = 1; i < n; i++) k[i + 1] = profile.curvature(i * h);
  const m = secondDerivatives(k, h);
  const integral = new Float64Array(size);
  for (let i = 1; i < size; i++) {
    integral[i] = integral[i - 1] + (h * (k[i - 1] + k[i])) / 2 - (h * h * h * (m[i - 1] + m[i])) / 24;
  }
  // The angle at y = 0 is the profile's own.
  const zero = integral[1];
  return (y, out) => {
    const at = y / h + 1;
    if (!(at > 0)) {
      out.fill(0);
      out[3] = -zero;
      return;
    }
    if (at >= size - 1) {
      out.fill(0);
      out[3] = integral[size - 1] - zero;
      return;
    }
    const i = Math.floor(at);
    const b = at - i;
    const a = 1 - b;
    const hh = h * h;
    out[0] = a * k[i] + b * k[i + 1] + (hh / 6) * ((a * a * a - a) * m[i] + (b * b * b - b) * m[i + 1]);
    out[1] = (k[i + 1] - k[i]) / h + (h / 6) * ((1 - 3 * a * a) * m[i] + (3 * b * b - 1) * m[i + 1]);
    out[2] = a * m[i] + b * m[i + 1];
    const part =
      h * (k[i] * (b - (b * b) / 2) + (k[i + 1] * b * b) / 2) +
      ((hh * h) / 6) * (m[i] * ((1 - a ** 4) / 4 - (1 - a * a) / 2) + m[i + 1] * (b ** 4 / 4 - (b * b) / 2));
    out[3] = integral[i] + part - zero;
  };
}

/** Of the natural cubic spline through values a step apart. */
function secondDerivatives(value: Float64Array, step: number): Float64Array {
  const n = value.length;
  const m = new Float64Array(n);
  const c = new Float64Array(n);
  for (let i = 1; i < n - 1; i++) {
    const pivot = 4 - c[i - 1];
    c[i] = 1 / pivot;
    m[i] = ((6 * (value[i + 1] - 2 * value[i] + value[i - 1])) / (step * step) - m[i - 1]) / pivot;
  }
  for (let i = n - 2; i > 0; i--) m[i] -= c[i] * m[i + 1];
  return m;
}
