import { DEGREE } from '../../../core/units/index.ts';
/**
 * Arcs on the snow as the board draws them: all leave one point along one heading and turn to the skier's right.
 * x across the slope to the right, y down it, m; heading from the fall line, rad.
 */

/** Angle the arc of the first ski turns through. */
export const SWEEP = 100 * DEGREE;
/** No arc on the board is longer, m. */
const LONGEST = 40;

export interface Start {
  readonly heading: number;
  /** Common length of the arcs, m. */
  readonly length: number;
}

/** Where and how far the arcs go, from the radius of the first: it passes the fall line half-way. */
export function startOf(radius: number): Start {
  const length = Math.min(LONGEST, Math.max(2, radius * SWEEP));
  return { heading: -length / radius / 2, length };
}

/** The point a length along an arc. */
export function pointAlong(radius: number, heading: number, length: number): { x: number; y: number } {
  const end = heading + length / radius;
  return {
    x: radius * (Math.cos(heading) - Math.cos(end)),
    y: radius * (Math.sin(end) - Math.sin(heading)),
  };
}

/**
 * Radius of the right-hand arc from the start through a point of the snow; null for points straight ahead,
 * behind or to the left, which no right turn of less than a half circle reaches.
 */
export function radiusToward(heading: number, x: number, y: number): number | null {
  const aside = x * Math.cos(heading) - y * Math.sin(heading);
  const ahead = x * Math.sin(heading) + y * Math.cos(heading);
  if (aside <= 1e-6 || ahead < 0) return null;
  return (x * x + y * y) / (2 * aside);
}

/** How far the end of the guessed arc is from the end of the true one, m; both leave and end as `start` says. */
export function missOf(radius: number, guess: number, start = startOf(radius)): number {
  const { heading, length } = start;
  const a = pointAlong(radius, heading, length);
  const b = pointAlong(guess, heading, length);
  return Math.hypot(a.x - b.x, a.y - b.y);
}
