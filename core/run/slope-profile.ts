/**
 * The hill along the fall line: even, or a smooth profile through measured points. A profile that varies only
 * down the hill unrolls into a plane without stretching, so tracks are followed in the unrolled plane (x across,
 * y along the ground down the fall line) and keep their true lengths and radii.
 */

import { type AcceptedRange, accept, FieldError, isAccepted, numberFound } from '../fault/index.ts';
import { fromTwoColumns } from '../table/index.ts';
import { DEGREE } from '../units/index.ts';
import { type ArcTable, arcTable } from './ground-arc.ts';

/** Steepest ground, rad, and its rise over a run of 1. */
const STEEPEST = 80 * DEGREE;
const STEEPEST_RISE = Math.tan(STEEPEST);

export interface SlopeProfile {
  /** Length along the ground, m; Infinity for an even slope. */
  readonly length: number;
  /** Sine of the slope angle α at y (m along the ground). */
  sine(y: number): number;
  /** −dα/dy, 1/m: positive in a dip, negative over a crest. */
  curvature(y: number): number;
  /** Height over the start, m; falls as y grows. */
  height(y: number): number;
  /** Horizontal distance from the start, m. */
  horizontal(y: number): number;
  /** Length along the ground at a horizontal distance, m: the inverse of `horizontal`. */
  along(horizontal: number): number;
  /** Invented ground, for demonstration. */
  readonly demo?: boolean;
}

/** Slope angle α at y, rad. */
export function slopeAngle(profile: SlopeProfile, y: number): number {
  return Math.asin(profile.sine(y));
}

/**
 * An even slope of angle `alpha`, rad.
 *
 * @throws FieldError unless 0 ≤ alpha < 80°
 */
export function evenSlope(alpha: number): SlopeProfile {
  accept('slope', alpha, { from: 0, below: STEEPEST, quantity: 'angle' });
  const sin = Math.sin(alpha);
  const cos = Math.cos(alpha);
  return {
    length: Infinity,
    sine: () => sin,
    curvature: () => 0,
    height: y => -y * sin,
    horizontal: y => y * cos,
    along: h => h / cos,
  };
}

/** No run is longer, m. */
const LONGEST = 20_000;
/** Altitudes are, at most, those of the earth, m. */
const HIGHEST = 10_000;

/**
 * A smooth profile through points of horizontal distance (m, ascending) and height (m): natural cubic spline,
 * so slope and curvature are continuous. Beyond the ends the ground runs straight on.
 *
 * @throws FieldError when fewer than two are given; and where distances do not ascend or the ground
 *   between two points is steeper than 80°
 */
export function profileThrough(horizontal: ArrayLike<number>, height: ArrayLike<number>): SlopeProfile {
  const n = horizontal.length;
  if (n < 2 || height.length !== n) {
    throw new FieldError({
      field: 'profile',
      found: [n, height.length],
      accepted: { key: 'accepted.twoRows' },
    });
  }
  for (let i = 0; i < n; i++) {
    const where = { row: i + 1 };
    const refuse = (field: 'distance' | 'height', value: number, accepted: AcceptedRange) => {
      throw new FieldError({ field, found: numberFound(value, accepted), accepted, where });
    };
    const before = horizontal[i - 1] ?? -Infinity;
    const heights: AcceptedRange = { from: -HIGHEST, to: HIGHEST, unit: 'm' };
    if (!isAccepted(height[i], heights)) refuse('height', height[i], heights);
    const distances: AcceptedRange = { above: before, to: horizontal[0] + LONGEST, unit: 'm' };
    if (!isAccepted(horizontal[i], distances)) refuse('distance', horizontal[i], distances);
    const rise = STEEPEST_RISE * (horizontal[i] - before);
    if (i > 0 && Math.abs(height[i] - height[i - 1]) > rise) {
      refuse('height', height[i], { from: height[i - 1] - rise, to: height[i - 1] + rise, unit: 'm' });
    }
  }
  return fromArc(arcTable(horizontal, height));
}

/**
 * Reads `distance,height` rows in metres. Heights may be altitudes; only differences count.
 *
 * @throws FieldError for the first bad row, with the others behind it
 */
export function readProfile(text: string): SlopeProfile {
  return fromTwoColumns(text, 'distance (m)', 'height (m)', (distance, height) =>
    profileThrough(distance, height),
  );
}

/** Invented slopes for demonstration: even, a roller, steepening. */
export function demoProfiles(): SlopeProfile[] {
  const even = evenSlope(14 * DEGREE);
  return [
    { ...even, demo: true },
    { ...built(d => -0.22 * d + 1.2 * Math.cos(d / 12)), demo: true },
    { ...built(d => -0.12 * d - 0.00045 * d * d), demo: true },
  ];
}

function built(height: (d: number) => number): SlopeProfile {
  const d = Float64Array.from({ length: 101 }, (_, i) => i * 4);
  return profileThrough(d, d.map(height));
}

function fromArc(arc: ArcTable): SlopeProfile {
  return {
    length: arc.length,
    sine: y => -arc.height(y, 1),
    // z'' = −cosα dα/dy.
    curvature: y => {
      const s = arc.height(y, 1);
      return arc.height(y, 2) / Math.sqrt(1 - s * s);
    },
    height: y => arc.height(y, 0),
    horizontal: arc.horizontal,
    along: arc.along,
  };
}
