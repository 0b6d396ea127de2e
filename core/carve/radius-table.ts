import type { CarveFailure, CarvingSki, Equilibrium } from './groove.ts';
import { grooveSolver } from './groove-solver.ts';

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

export interface RadiusTableOptions {
  /** Edge angles, rad, ascending; 24 from 2 to 75 degrees when absent. */
  readonly edges?: ArrayLike<number>;
  /** Loads, N, ascending; 12 from 200 to 4000 N in equal ratios when absent. */
  readonly loads?: ArrayLike<number>;
  /** Load centre ahead of the boot centre, m. */
  readonly fore?: number;
  readonly elements?: number;
  /** Called after each edge angle with the share done, 0 to 1. */
  readonly onProgress?: (share: number) => void;
  /** Asked before each edge angle; true stops the work. */
  readonly cancelled?: () => boolean;
}

const DEGREE = Math.PI / 180;

export const defaultTableEdges = (): Float64Array =>
  Float64Array.from({ length: 24 }, (_, i) => (2 + (73 * i) / 23) * DEGREE);

export const defaultTableLoads = (): Float64Array =>
  Float64Array.from({ length: 12 }, (_, i) => 200 * 20 ** (i / 11));

/**
 * Solves the grid, each answer started from its neighbour's; hardness in N/m³. Returns null when cancelled, or
 * the first failure: a table with a hole is no table.
 */
export function buildRadiusTable(
  ski: CarvingSki,
  hardness: number,
  options: RadiusTableOptions = {},
): RadiusTable | CarveFailure | null {
  const edgeAngles = Float64Array.from(options.edges ?? defaultTableEdges());
  const loads = Float64Array.from(options.loads ?? defaultTableLoads());
  const solver = grooveSolver(ski, { elements: options.elements });
  const size = edgeAngles.length * loads.length;
  const radii = new Float64Array(size);
  const twistTips = new Float64Array(size);
  const twistTails = new Float64Array(size);
  const row: (Equilibrium | undefined)[] = new Array(loads.length).fill(undefined);
  for (let i = 0; i < edgeAngles.length; i++) {
    if (options.cancelled?.()) return null;
    for (let j = 0; j < loads.length; j++) {
      const conditions = { edgeAngle: edgeAngles[i], load: loads[j], hardness, fore: options.fore ?? 0 };
      const answer = solver.solve(conditions, { from: row[j] ?? row[j - 1] });
      if (!answer.ok) return answer;
      row[j] = answer;
      const at = i * loads.length + j;
      radii[at] = answer.turnRadius;
      twistTips[at] = answer.twistTip;
      twistTails[at] = answer.twistTail;
    }
    options.onProgress?.((i + 1) / edgeAngles.length);
  }
  return { edgeAngles, loads, radii, twistTips, twistTails, hardness };
}

/** Turn radius, m, at an edge angle (rad) and load (N); inputs outside the grid are taken at its border. */
export function tableRadius(table: RadiusTable, edgeAngle: number, load: number): number {
  const { edgeAngles, loads, radii } = table;
  // R/cosθ is nearly flat along a row of edge angles, which the interpolation is grateful for.
  const angle = clamp(edgeAngle, edgeAngles[0], edgeAngles[edgeAngles.length - 1]);
  return Math.cos(angle) * gridCubic(edgeAngles, loads, radii, angle, load, true);
}

/** Twist at the front contact point, rad. */
export function tableTwistTip(table: RadiusTable, edgeAngle: number, load: number): number {
  return gridCubic(table.edgeAngles, table.loads, table.twistTips, edgeAngle, load, false);
}

/** Twist at the rear contact point, rad. */
export function tableTwistTail(table: RadiusTable, edgeAngle: number, load: number): number {
  return gridCubic(table.edgeAngles, table.loads, table.twistTails, edgeAngle, load, false);
}

/** Cubic in the edge angle through four rows, each a cubic in the logarithm of the load. */
function gridCubic(
  angles: Float64Array,
  loads: Float64Array,
  values: Float64Array,
  angle: number,
  load: number,
  overCosine: boolean,
): number {
  const i = cell(angles, angle);
  const rows = angles.length;
  const row = (k: number) =>
    rowCubic(loads, values, k * loads.length, load) / (overCosine ? Math.cos(angles[k]) : 1);
  if (rows === 1) return row(0);
  const before = i > 0 ? i - 1 : i;
  const after = i + 2 < rows ? i + 2 : i + 1;
  const at = clamp(angle, angles[0], angles[rows - 1]);
  return hermiteCubic(
    at,
    angles[before],
    angles[i],
    angles[i + 1],
    angles[after],
    row(before),
    row(i),
    row(i + 1),
    row(after),
  );
}

function rowCubic(loads: Float64Array, values: Float64Array, offset: number, load: number): number {
  const columns = loads.length;
  if (columns === 1) return values[offset];
  const j = cell(loads, load);
  const before = j > 0 ? j - 1 : j;
  const after = j + 2 < columns ? j + 2 : j + 1;
  return hermiteCubic(
    Math.log(clamp(load, loads[0], loads[columns - 1])),
    Math.log(loads[before]),
    Math.log(loads[j]),
    Math.log(loads[j + 1]),
    Math.log(loads[after]),
    values[offset + before],
    values[offset + j],
    values[offset + j + 1],
    values[offset + after],
  );
}

/**
 * Cubic Hermite between x1 and x2 with parabolic end slopes, kept monotone by Hyman's limit (at most three
 * times the lesser neighbouring secant; SIAM J. Sci. Stat. Comput. 4 (1983), from memory). A missing outer
 * neighbour is given by repeating the inner point.
 */
function hermiteCubic(
  x: number,
  x0: number,
  x1: number,
  x2: number,
  x3: number,
  y0: number,
  y1: number,
  y2: number,
  y3: number,
): number {
  const h = x2 - x1;
  const secant = (y2 - y1) / h;
  const left = x1 > x0 ? endSlope(x1 - x0, h, (y1 - y0) / (x1 - x0), secant) : Number.NaN;
  const right = x3 > x2 ? endSlope(h, x3 - x2, secant, (y3 - y2) / (x3 - x2)) : Number.NaN;
  // At the border the parabola through the three nearest points goes on.
  const slope1 = Number.isNaN(left) ? (Number.isNaN(right) ? secant : 2 * secant - right) : left;
  const slope2 = Number.isNaN(right) ? 2 * secant - slope1 : right;
  const s = (x - x1) / h;
  const t = 1 - s;
  return (
    t * t * (1 + 2 * s) * y1 + h * s * t * t * slope1 + s * s * (3 - 2 * s) * y2 - h * s * s * t * slope2
  );
}

function endSlope(h0: number, h1: number, secant0: number, secant1: number): number {
  const parabolic = (h1 * secant0 + h0 * secant1) / (h0 + h1);
  if (secant0 * secant1 <= 0) return parabolic;
  const limit = 3 * Math.min(Math.abs(secant0), Math.abs(secant1));
  return Math.abs(parabolic) > limit ? Math.sign(parabolic) * limit : parabolic;
}

/** Index of the interval holding `value`, the outer ones for values outside. */
function cell(grid: Float64Array, value: number): number {
  let low = 0;
  let high = grid.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (grid[middle] <= value) low = middle;
    else high = middle;
  }
  return low;
}

function clamp(value: number, least: number, most: number): number {
  return Math.min(Math.max(value, least), most);
}
