/**
 * The hill along the fall line: even, or a smooth profile through measured points. A profile that varies only
 * down the hill unrolls into a plane without stretching, so tracks are followed in the unrolled plane (x across,
 * y along the ground down the fall line) and keep their true lengths and radii.
 */

import { fromTwoColumns, RowError } from '../table/index.ts';
import { DEGREE } from '../units/index.ts';
import { type ArcTable, arcTable } from './ground-arc.ts';

export interface SlopeProfile {
  readonly name: string;
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
 * @throws RangeError unless 0 ≤ alpha < 80°
 */
export function evenSlope(alpha: number, name = 'even slope'): SlopeProfile {
  if (!(alpha >= 0 && alpha < 80 * DEGREE)) {
    throw new RangeError(`slope: ${(alpha / DEGREE).toFixed(2)}° found; 0 to 80° is accepted`);
  }
  const sin = Math.sin(alpha);
  const cos = Math.cos(alpha);
  return {
    name,
    length: Infinity,
    sine: () => sin,
    curvature: () => 0,
    height: y => -y * sin,
    horizontal: y => y * cos,
    along: h => h / cos,
  };
}

/**
 * A smooth profile through points of horizontal distance (m, ascending) and height (m): natural cubic spline,
 * so slope and curvature are continuous. Beyond the ends the ground runs straight on.
 *
 * @throws RangeError when fewer than two are given; RowError where distances do not ascend or the ground
 *   between two points is steeper than 80°
 */
export function profileThrough(
  horizontal: ArrayLike<number>,
  height: ArrayLike<number>,
  name = 'measured profile',
): SlopeProfile {
  const n = horizontal.length;
  if (n < 2 || height.length !== n) {
    throw new RangeError(
      `profile: ${n} distances and ${height.length} heights found; two or more pairs are accepted`,
    );
  }
  for (let i = 0; i < n; i++) {
    if (!Number.isFinite(horizontal[i]) || !Number.isFinite(height[i])) {
      throw new RowError(i, `(${horizontal[i]}, ${height[i]})`, 'finite numbers are accepted');
    }
    if (i === 0) continue;
    const run = horizontal[i] - horizontal[i - 1];
    if (!(run > 0)) {
      throw new RowError(
        i,
        `distance ${horizontal[i]} m after ${horizontal[i - 1]} m`,
        'ascending distances are accepted',
      );
    }
    if (Math.abs(height[i] - height[i - 1]) > run * Math.tan(80 * DEGREE)) {
      throw new RowError(
        i,
        `height ${height[i]} m, ${run} m after ${height[i - 1]} m,`,
        'ground up to 80° is accepted',
      );
    }
  }
  return fromArc(arcTable(horizontal, height), name);
}

/**
 * Reads `distance,height` rows in metres. Heights may be altitudes; only differences count.
 *
 * @throws TableTextError with one line for each bad row
 */
export function readProfile(text: string, name = 'measured profile'): SlopeProfile {
  return fromTwoColumns(text, 'distance (m)', 'height (m)', (distance, height) =>
    profileThrough(distance, height, name),
  );
}

/** Invented slopes for demonstration. */
export function demoProfiles(): SlopeProfile[] {
  const even = evenSlope(14 * DEGREE, 'Pala Ostrelle, even (demo)');
  return [
    { ...even, demo: true },
    { ...built('Pala Ostrelle, roller (demo)', d => -0.22 * d + 1.2 * Math.cos(d / 12)), demo: true },
    { ...built('Pala Ostrelle, steepening (demo)', d => -0.12 * d - 0.00045 * d * d), demo: true },
  ];
}

function built(name: string, height: (d: number) => number): SlopeProfile {
  const d = Float64Array.from({ length: 101 }, (_, i) => i * 4);
  return profileThrough(d, d.map(height), name);
}

function fromArc(arc: ArcTable, name: string): SlopeProfile {
  return {
    name,
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
