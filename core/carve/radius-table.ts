/** R(edge angle, load) of one ski on one snow, made by solving a grid of equilibria. SI. */
export interface RadiusTable {
  /** Ascending, rad. */
  readonly edgeAngles: Float64Array;
  /** Ascending, N. */
  readonly loads: Float64Array;
  /** Row-major [edge angle][load], m. */
  readonly radii: Float64Array;
  readonly twistTips: Float64Array;
  readonly twistTails: Float64Array;
  readonly hardness: number;
}
