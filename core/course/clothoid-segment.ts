/**
 * One stretch of a curvature-continuous line: an arc, a clothoid and an arc, from one point and heading to the
 * next. Over its length (u from 0 to 1) curvature is κ0 up to u = a, runs straight to κ1 at u = 1 − a and stays
 * there. Headings in rad from the fall line, lengths in m.
 */

import { accept } from '../fault/index.ts';

export interface Segment {
  /** m. */
  length: number;
  /** 1/m, positive where the line turns to the right. */
  startCurvature: number;
  endCurvature: number;
}

/** Three panels of five Gauss points each: the profile is smooth inside each panel. */
const gaussAt = [-0.906179845938664, -0.5384693101056831, 0, 0.5384693101056831, 0.906179845938664];
const gaussWeight = [
  0.2369268850561891, 0.4786286704993665, 0.5688888888888889, 0.4786286704993665, 0.2369268850561891,
];

export interface SegmentRule {
  /** a, the share of the length taken by each of the two arcs, 0 to 0.45. */
  readonly arcShare: number;
  readonly u: Float64Array;
  readonly weight: Float64Array;
  /** G(u), the integral of the clothoid's share from 0 to u. */
  readonly gathered: Float64Array;
}

/** Quadrature points for one arc share. */
export function segmentRule(arcShare: number): SegmentRule {
  accept('arcShare', arcShare, { from: 0, to: 0.45 });
  const edges = [0, arcShare, 0.5, 1 - arcShare, 1];
  const u: number[] = [];
  const weight: number[] = [];
  for (let panel = 0; panel < 4; panel++) {
    const half = (edges[panel + 1] - edges[panel]) / 2;
    if (half <= 0) continue;
    for (let i = 0; i < 5; i++) {
      u.push(edges[panel] + half * (1 + gaussAt[i]));
      weight.push(half * gaussWeight[i]);
    }
  }
  return {
    arcShare,
    u: Float64Array.from(u),
    weight: Float64Array.from(weight),
    gathered: Float64Array.from(u, at => gatheredShare(at, arcShare)),
  };
}

/** G(u): how much of the change from κ0 to κ1 has been gathered into heading by u. */
export function gatheredShare(u: number, arcShare: number): number {
  if (u <= arcShare) return 0;
  if (u >= 1 - arcShare) return u - 0.5;
  return (u - arcShare) ** 2 / (2 * (1 - 2 * arcShare));
}

/**
 * Fits a segment to its chord (length `chord`, direction `bearing`) and its two headings: one unknown, found
 * by Newton's method. Returns false, leaving `out` alone, where no such segment runs forward.
 */
export function fitSegment(
  rule: SegmentRule,
  chord: number,
  bearing: number,
  startHeading: number,
  endHeading: number,
  out: Segment,
): boolean {
  const { u, weight, gathered } = rule;
  const turn = endHeading - startHeading;
  const start = startHeading - bearing;
  let skew = 0;
  let forward = 1;
  for (let step = 0; step < 40; step++) {
    let across = 0;
    let slope = 0;
    forward = 0;
    for (let i = 0; i < u.length; i++) {
      const angle = start + (turn - skew) * u[i] + 2 * skew * gathered[i];
      const cos = Math.cos(angle);
      across += weight[i] * Math.sin(angle);
      forward += weight[i] * cos;
      slope += weight[i] * cos * (2 * gathered[i] - u[i]);
    }
    if (Math.abs(across) < 1e-13) break;
    if (slope > -1e-6) return false;
    skew -= Math.max(-1, Math.min(1, across / slope));
    if (step === 39) return false;
  }
  if (forward < 0.05) return false;
  out.length = chord / forward;
  out.startCurvature = (turn - skew) / out.length;
  out.endCurvature = (turn + skew) / out.length;
  return true;
}
