import { firstWhere, smoothingSpline } from '../numeric/index.ts';
import type { Ski } from '../pair/index.ts';
import { fitParabola, type Parabola, threeWidthParabola } from './parabola.ts';
import { TAPE_AND_CALIPER } from './sidecut-uncertainty.ts';

/**
 * The edge seen from above: half width y(x) and its derivatives, x in metres from the rear contact point.
 * Functions take and return metres (y'' in 1/m) and are defined on [0, length].
 */
export interface EdgeCurve {
  readonly length: number;
  halfWidth(x: number): number;
  slope(x: number): number;
  curvature(x: number): number;
}

/**
 * The edge of a ski: the parabola through its three widths, or a smoothing spline through its width
 * stations when five or more are given. `uWidth` is the standard uncertainty of one full width, m.
 */
export function edgeCurve(ski: Ski, { uWidth = TAPE_AND_CALIPER.uWidth } = {}): EdgeCurve {
  const stations = ski.widthStations;
  if (stations === null) return parabolicEdge(threeWidthParabola(ski), ski.contactLength);
  const x = stations.map(station => station.x);
  const y = stations.map(station => station.width / 2);
  const { parabola } = fitParabola(x, y, uWidth / 2);
  const base = parabolicEdge(parabola, ski.contactLength);
  // Smoothing what is left over the parabola keeps the ends curved, where a natural spline would go straight.
  const rest = smoothingSpline(
    x,
    y.map((each, i) => each - base.halfWidth(x[i])),
    uWidth / 2,
  );
  return {
    length: ski.contactLength,
    halfWidth: at => base.halfWidth(at) + rest.value(at),
    slope: at => base.slope(at) + rest.slope(at),
    curvature: at => base.curvature(at) + rest.curvature(at),
  };
}

/** A parabola as an edge. */
function parabolicEdge({ a, b, c }: Parabola, length: number): EdgeCurve {
  return {
    length,
    halfWidth: x => a + x * (b + x * c),
    slope: x => b + 2 * c * x,
    curvature: () => 2 * c,
  };
}

/** Local radius (1 + y'²)^{3/2}/y'' at x, m; Infinity where the edge is straight, negative where it bulges. */
export function localRadius(edge: EdgeCurve, x: number): number {
  const curvature = edge.curvature(x);
  return curvature === 0 ? Number.POSITIVE_INFINITY : (1 + edge.slope(x) ** 2) ** 1.5 / curvature;
}

/** The station of least width on [0, length], m. */
export function narrowestStation(edge: EdgeCurve): number {
  const steps = 200;
  let best = 0;
  for (let i = 1; i <= steps; i += 1) {
    if (edge.halfWidth((i / steps) * edge.length) < edge.halfWidth((best / steps) * edge.length)) best = i;
  }
  const low = (Math.max(0, best - 1) / steps) * edge.length;
  const high = (Math.min(steps, best + 1) / steps) * edge.length;
  // The slope rises through zero at the least width; at an end of the edge it may not reach it.
  return firstWhere(x => edge.slope(x) > 0, low, high);
}
