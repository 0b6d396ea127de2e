/**
 * The one thing a run needs to know of a pair: the radius it turns at an edge angle and a load.
 */

import { type RadiusTable, tableLookup } from '../carve/index.ts';
import type { OwnCurvature } from '../skier/ski-path.ts';

export interface TurnRadius {
  /** Turn radius, m, at an edge angle (rad, ≥ 0) and the load on the ski (N). */
  radius(edgeAngle: number, load: number): number;
  /** Twist that lowers the edge angle at the tip, rad. */
  twistTip?(edgeAngle: number, load: number): number;
  /** Twist that lowers the edge angle at the tail, rad. */
  twistTail?(edgeAngle: number, load: number): number;
}

/** The same with its curvature κ = 1/R twice differentiable: what a whole run is solved with. */
export interface CarvedTurn extends TurnRadius, OwnCurvature {}

/** Cosine rule R = R_sc cosθ (Howe; Lind & Sanders, from memory): rigid snow, any load. */
export function cosineTurn(sidecutRadius: number): CarvedTurn {
  if (!(sidecutRadius > 0)) {
    throw new RangeError(`sidecutRadius: ${sidecutRadius} m found; a positive radius is accepted`);
  }
  return {
    radius: edgeAngle => sidecutRadius * Math.cos(edgeAngle),
    curvature: (edgeAngle, _load, out) => {
      const tilt = Math.min(Math.max(edgeAngle, -STEEPEST), STEEPEST);
      const cosine = Math.cos(tilt);
      const tangent = Math.tan(tilt);
      const curvature = 1 / (sidecutRadius * cosine);
      const past = edgeAngle - tilt;
      const slope = curvature * tangent;
      const bend = curvature * (1 + 2 * tangent * tangent);
      out.fill(0);
      out[0] = curvature + past * (slope + 0.5 * past * bend);
      out[1] = slope + past * bend;
      out[3] = bend;
    },
  };
}

/** Beyond it the secant goes on as its parabola, rad. */
const STEEPEST = (89 * Math.PI) / 180;

/**
 * The solved groove's radius, looked up as `tableLookup` does. Outside the table the border's values stand,
 * except that a ski tilted beyond the last angle closes as the cosine rule does from there.
 *
 * @throws RangeError when the table has fewer than two values a side, is not ascending, or holds a value that
 *   is not a number
 */
export function tableTurn(table: RadiusTable): CarvedTurn {
  const { edgeAngles, loads } = table;
  checkAxis('edgeAngles', edgeAngles);
  checkAxis('loads', loads);
  if (!(loads[0] > 0)) throw new RangeError(`loads: ${loads[0]} N found first; positive loads are accepted`);
  for (const name of ['radii', 'twistTips', 'twistTails'] as const) {
    const bad = table[name].findIndex(v => !Number.isFinite(v));
    if (bad >= 0 || table[name].length !== edgeAngles.length * loads.length) {
      throw new RangeError(
        `${name}: ${table[name][bad] ?? `${table[name].length} values`} found; one number for each edge angle and load is accepted`,
      );
    }
  }
  const lookup = tableLookup(table);
  return { ...lookup, curvature: differences(lookup.radius) };
}

/** Curvature and its slopes by central differences. */
function differences(radius: (edgeAngle: number, load: number) => number): CarvedTurn['curvature'] {
  return (edgeAngle, load, out) => {
    const side = edgeAngle < 0 ? -1 : 1;
    const e = Math.max(Math.abs(edgeAngle), 0.02);
    const h = 0.01;
    const f = Math.max(load, 20);
    const g = 0.02 * f;
    const k = (a: number, b: number) => 1 / radius(Math.abs(a), b);
    const middle = k(e, f);
    const [left, right, less, more] = [k(e - h, f), k(e + h, f), k(e, f - g), k(e, f + g)];
    out[0] = middle;
    out[1] = (side * (right - left)) / (2 * h);
    out[2] = (more - less) / (2 * g);
    out[3] = (right - 2 * middle + left) / (h * h);
    out[4] = (side * (k(e + h, f + g) - k(e + h, f - g) - k(e - h, f + g) + k(e - h, f - g))) / (4 * h * g);
    out[5] = (more - 2 * middle + less) / (g * g);
  };
}

/** What a turn radius is worked out from, as plain data: a solved table, or a sidecut radius (m). */
export type TurnBasis = { readonly table: RadiusTable } | { readonly sidecutRadius: number };

/** @throws RangeError as `tableTurn` and `cosineTurn` do */
export const turnOf = (basis: TurnBasis): CarvedTurn =>
  'table' in basis ? tableTurn(basis.table) : cosineTurn(basis.sidecutRadius);

function checkAxis(name: string, axis: Float64Array): void {
  if (axis.length < 2) {
    throw new RangeError(`${name}: ${axis.length} values found; two or more are accepted`);
  }
  for (let i = 1; i < axis.length; i++) {
    if (!(axis[i] > axis[i - 1])) {
      throw new RangeError(`${name}: ${axis[i]} found after ${axis[i - 1]}; ascending values are accepted`);
    }
  }
}
