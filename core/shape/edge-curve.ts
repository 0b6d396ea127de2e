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
