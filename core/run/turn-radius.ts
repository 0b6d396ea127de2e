/**
 * The one thing a run needs to know of a pair: the radius it turns at an edge angle and a load.
 */

import type { RadiusTable } from '../carve/index.ts';

export interface TurnRadius {
  /** Turn radius, m, at an edge angle (rad, ≥ 0) and the load on the ski (N). */
  radius(edgeAngle: number, load: number): number;
  /** Twist that lowers the edge angle at the tip, rad. */
  twistTip?(edgeAngle: number, load: number): number;
  /** Twist that lowers the edge angle at the tail, rad. */
  twistTail?(edgeAngle: number, load: number): number;
}

/** Cosine rule R = R_sc cosθ (Howe; Lind & Sanders, from memory): rigid snow, any load. */
export function cosineTurn(sidecutRadius: number): TurnRadius {
  if (!(sidecutRadius > 0)) {
    throw new RangeError(`sidecutRadius: ${sidecutRadius} m found; a positive radius is accepted`);
  }
  return { radius: edgeAngle => sidecutRadius * Math.cos(edgeAngle) };
}

/**
 * The solved groove's radius, looked up. Curvature 1/R and the twists are interpolated by a bicubic surface
 * (C1, Catmull-Rom slopes on the uneven grid) in edge angle and log load; the logarithm because a ski's answer
 * changes by the same amount with each doubling of the load. Outside the table the edge values stand, except
 * that a ski tilted beyond the last angle closes as the cosine rule does from there.
 *
 * @throws RangeError when the table has fewer than two values a side, is not ascending, or holds a value that
 *   is not a number
 */
export function tableTurn(table: RadiusTable): TurnRadius {
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
  const logLoads = loads.map(Math.log);
  const curvature = surface(
    edgeAngles,
    logLoads,
    table.radii.map(r => 1 / r),
  );
  const tip = surface(edgeAngles, logLoads, table.twistTips);
  const tail = surface(edgeAngles, logLoads, table.twistTails);
  const last = edgeAngles[edgeAngles.length - 1];
  const cosLast = Math.cos(last);
  return {
    radius: (edgeAngle, load) => {
      const r = 1 / curvature(edgeAngle, Math.log(load));
      return edgeAngle > last ? (r * Math.cos(edgeAngle)) / cosLast : r;
    },
    twistTip: (edgeAngle, load) => tip(edgeAngle, Math.log(load)),
    twistTail: (edgeAngle, load) => tail(edgeAngle, Math.log(load)),
  };
}

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

/** Slopes at the nodes of an uneven axis: parabola through three neighbours, one-sided at the ends. */
function slopes(axis: Float64Array, values: Float64Array): Float64Array {
  const n = axis.length;
  const m = new Float64Array(n);
  for (let i = 1; i < n - 1; i++) {
    const a = axis[i] - axis[i - 1];
    const b = axis[i + 1] - axis[i];
    m[i] = (((values[i] - values[i - 1]) / a) * b + ((values[i + 1] - values[i]) / b) * a) / (a + b);
  }
  const first = (values[1] - values[0]) / (axis[1] - axis[0]);
  const end = (values[n - 1] - values[n - 2]) / (axis[n - 1] - axis[n - 2]);
  m[0] = n > 2 ? 2 * first - m[1] : first;
  m[n - 1] = n > 2 ? 2 * end - m[n - 2] : end;
  return m;
}

/** Bicubic Hermite surface over rows (axis u) and columns (axis w), row-major; clamped outside. */
function surface(u: Float64Array, w: Float64Array, values: Float64Array): (u: number, w: number) => number {
  const rows = u.length;
  const cols = w.length;
  const du = new Float64Array(values.length);
  const dw = new Float64Array(values.length);
  const duw = new Float64Array(values.length);
  const alongU = (from: Float64Array, to: Float64Array) => {
    for (let j = 0; j < cols; j++) {
      const m = slopes(
        u,
        Float64Array.from(u, (_, i) => from[i * cols + j]),
      );
      for (let i = 0; i < rows; i++) to[i * cols + j] = m[i];
    }
  };
  for (let i = 0; i < rows; i++) dw.set(slopes(w, values.slice(i * cols, (i + 1) * cols)), i * cols);
  alongU(values, du);
  alongU(dw, duw);
  let i = 0;
  let j = 0;
  return (atU, atW) => {
    const x = Math.min(Math.max(atU, u[0]), u[rows - 1]);
    const y = Math.min(Math.max(atW, w[0]), w[cols - 1]);
    // Successive questions are close together, so the last cell is nearly always right.
    while (i > 0 && x < u[i]) i--;
    while (i < rows - 2 && x >= u[i + 1]) i++;
    while (j > 0 && y < w[j]) j--;
    while (j < cols - 2 && y >= w[j + 1]) j++;
    const hu = u[i + 1] - u[i];
    const hw = w[j + 1] - w[j];
    const s = (x - u[i]) / hu;
    const t = (y - w[j]) / hw;
    const s1 = s * s * (3 - 2 * s);
    const s0 = 1 - s1;
    const p0 = s * (1 - s) * (1 - s) * hu;
    const p1 = s * s * (s - 1) * hu;
    const t1 = t * t * (3 - 2 * t);
    const t0 = 1 - t1;
    const q0 = t * (1 - t) * (1 - t) * hw;
    const q1 = t * t * (t - 1) * hw;
    const a = i * cols + j;
    const b = a + cols;
    return (
      s0 * (t0 * values[a] + t1 * values[a + 1] + q0 * dw[a] + q1 * dw[a + 1]) +
      s1 * (t0 * values[b] + t1 * values[b + 1] + q0 * dw[b] + q1 * dw[b + 1]) +
      p0 * (t0 * du[a] + t1 * du[a + 1] + q0 * duw[a] + q1 * duw[a + 1]) +
      p1 * (t0 * du[b] + t1 * du[b + 1] + q0 * duw[b] + q1 * duw[b + 1])
    );
  };
}
