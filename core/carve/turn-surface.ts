import { FieldError } from '../fault/index.ts';
import { BicubicSpline, calmValues, type EvenAxis, followingCoefficients } from '../numeric/index.ts';
import { DEGREE } from '../units/index.ts';
import { bentness, tableLookup } from './radius-lookup.ts';
import type { RadiusTable } from './radius-table.ts';
import { steepParts } from './steep-parts.ts';
import { evenWallRatio, wallShape } from './wall-area.ts';

/**
 * What a ski does in its groove over edge angle and load, twice continuously differentiable: what an optimiser with
 * exact second derivatives needs of a ski. Either writes value and derivatives [s, s_θ, s_F, s_θθ, s_θF, s_FF] at an
 * edge angle (rad, of either sign: both are even in it) and the load on this ski, N. Allocates nothing. Finite and
 * positive at every load and angle; steeper than 89° both go on as their parabola there.
 */
export interface TurnSurface {
  /** Curvature it carves, κ = 1/R, 1/m. */
  curvature(edgeAngle: number, load: number, out: Float64Array): void;
  /** Wall of its groove that a sideways force leans on, ∫ e dx, m²; lenient within 2° of flat. */
  wallArea(edgeAngle: number, load: number, out: Float64Array): void;
  /** True where smoothing the table's steep parts has moved κ by over 0.3 % from what it would be without. */
  smoothedAt(edgeAngle: number, load: number): boolean;
}

/** 1/cosθ goes on as a parabola from here, rad. */
const STEEPEST = 89 * DEGREE;
/** Nodes of the spline to a cell of the table, each way: what keeps it within 0.5 % of the table. */
const NODES_PER_CELL = 2;
/** Nodes beyond the table: two for the slope to die away, three that are level, so that it stays so. */
const BEYOND = 5;
/** What of the last difference goes on to the first and second node beyond. */
const FADING = [0.5, 0.125];
/** Most that the border's difference may be to go on, of the value. */
const MOST_DIFFERENCE = 0.1;
/** Most that following the values may move a coefficient, of the value: half of this is the greatest overshoot. */
const FOLLOWING_LIMIT = 0.01;
/** Passes that spread a jump over two nodes to either side: ±2° and ±20 % of the load on the default table. */
const CALMING_PASSES = 4;
/** How far κ is moved before it counts as smoothed, of κ. */
const TOLD_FROM = 0.003;
/** The wall's area follows the square root of the load down to here, N. */
const LEAST_LOAD = 1;

/** A ski evenly pressed over its contact length (m) into virgin snow of a hardness (N/m³). */
export interface EvenPress {
  readonly contactLength: number;
  readonly hardness: number;
}

/**
 * The cosine rule's curvature, κ = 1/(R_sc cosθ) whatever the load (Howe; Lind & Sanders, from memory), and the wall
 * an evenly pressed edge leans on, ∫ e dx = √(2LF tanθ/H_V) by the virgin wedge; without a press the wall is endless.
 *
 * @throws FieldError for a sidecut radius (m) that is not positive
 */
export function cosineTurnSurface(sidecutRadius: number, press?: EvenPress): TurnSurface {
  if (!(sidecutRadius > 0 && sidecutRadius < Number.POSITIVE_INFINITY)) {
    throw new FieldError({
      field: 'sidecutRadius',
      found: sidecutRadius,
      accepted: { above: 0, quantity: 'radius' },
    });
  }
  const ratio = press ? evenWallRatio(press.contactLength, press.hardness) : Number.POSITIVE_INFINITY;
  const even = (_tilt: number, _logLoad: number, out: Float64Array) => {
    out.fill(0);
    out[0] = ratio;
  };
  const secant = new Float64Array(3);
  return {
    curvature(edgeAngle, _load, out) {
      secantAt(Math.abs(edgeAngle), secant);
      out[0] = secant[0] / sidecutRadius;
      out[1] = (Math.sign(edgeAngle) * secant[1]) / sidecutRadius;
      out[2] = 0;
      out[3] = secant[2] / sidecutRadius;
      out[4] = 0;
      out[5] = 0;
    },
    wallArea: press ? wallOver(even, 0) : endless,
    smoothedAt: () => false,
  };
}

function endless(_edgeAngle: number, _load: number, out: Float64Array): void {
  out.fill(0);
  out[0] = Number.POSITIVE_INFINITY;
}

/**
 * A solved table as a surface: κ cosθ, and the wall over √F c(θ), over edge angle and log load as bicubic splines,
 * sampled from the table at twice its own fineness. Within 0.5 % of `tableRadius` where it is not `smoothedAt`. Below
 * the first edge angle they go on as an even parabola; beyond the last one, and outside the loads, their slope dies away
 * within two nodes and they stay level, so that a ski tilted further closes as the cosine rule does. Parts marked steep
 * (see `TableLookup`) are smoothed over about two nodes to either side first.
 *
 * @throws FieldError when the table has fewer than two edge angles or loads, or its edge angles do not lie between
 * 0 and 89 degrees
 */
export function tableTurnSurface(table: RadiusTable): TurnSurface {
  const { edgeAngles, loads } = table;
  const lookup = tableLookup(table);
  const lastEdge = edgeAngles[edgeAngles.length - 1];
  if (!(edgeAngles[0] >= 0 && lastEdge < STEEPEST)) {
    throw new FieldError({
      field: 'edgeAngles',
      found: [edgeAngles[0], lastEdge],
      accepted: { above: 0, below: 1.55, unit: 'rad' },
    });
  }
  const edges = evenly(0, lastEdge, (lastEdge - edgeAngles[0]) / (edgeAngles.length - 1));
  const firstLog = Math.log(loads[0]);
  const lastLog = Math.log(loads[loads.length - 1]);
  const logLoads = evenly(firstLog, lastLog, (lastLog - firstLog) / (loads.length - 1));
  const calm = calmShares(table, edges, logLoads);
  const splined = (value: (edgeAngle: number, load: number) => number) => {
    const sampled = sample(value, edgeAngles[0], edges, logLoads);
    const followed = spread(sampled, edges, logLoads, null);
    const calmed = spread(
      calmValues(sampled, logLoads.count, calm, CALMING_PASSES),
      edges,
      logLoads,
      calm,
    ).coefficients;
    return { ...followed, calmed, surface: new BicubicSpline(followed.u, followed.w, calmed) };
  };
  const bent = splined((edgeAngle, load) => bentness(lookup.radius(edgeAngle, load), edgeAngle));
  const wall = splined(lookup.wallRatio);
  const moved = new BicubicSpline(
    bent.u,
    bent.w,
    bent.calmed.map((c, k) => Math.abs(c / bent.coefficients[k] - 1)),
  );
  const secant = new Float64Array(3);
  const request = new Float64Array(6);
  const lightest = Math.exp(bent.w.first);

  return {
    curvature(edgeAngle, load, out) {
      const tilt = Math.abs(edgeAngle);
      const force = Math.max(load, lightest);
      bent.surface.evaluate(tilt, Math.log(force), out);
      secantAt(tilt, secant);
      const s = secant[0];
      const su = secant[1];
      const suu = secant[2];
      const g = out[0];
      const gu = out[1];
      const gw = out[2];
      const side = edgeAngle < 0 ? -1 : 1;
      out[0] = g * s;
      out[1] = side * (gu * s + g * su);
      out[2] = (gw * s) / force;
      out[5] = ((out[5] - gw) * s) / (force * force);
      out[4] = (side * (out[4] * s + gw * su)) / force;
      out[3] = out[3] * s + 2 * gu * su + g * suu;
    },
    wallArea: wallOver((tilt, logLoad, out) => wall.surface.evaluate(tilt, logLoad, out), wall.w.first),
    smoothedAt(edgeAngle, load) {
      moved.evaluate(Math.abs(edgeAngle), Math.log(Math.max(load, lightest)), request);
      return request[0] > TOLD_FROM;
    },
  };
}

/** The wall's area from its ratio g over edge angle and log load: A = g c(θ) √F. */
function wallOver(
  ratio: (tilt: number, logLoad: number, out: Float64Array) => void,
  leastLog: number,
): TurnSurface['wallArea'] {
  const shape = new Float64Array(3);
  return (edgeAngle, load, out) => {
    const tilt = Math.abs(edgeAngle);
    const force = Math.max(load, LEAST_LOAD);
    ratio(tilt, Math.max(leastLog, Math.log(force)), out);
    wallShape(tilt, shape);
    const g = out[0];
    const gu = out[1];
    const gw = out[2];
    const guw = out[4];
    const c = shape[0];
    const cu = shape[1];
    const root = Math.sqrt(force);
    const side = edgeAngle < 0 ? -1 : 1;
    out[0] = g * c * root;
    out[1] = side * (gu * c + g * cu) * root;
    out[2] = ((gw + g / 2) * c) / root;
    out[3] = (out[3] * c + 2 * gu * cu + g * shape[2]) * root;
    out[4] = (side * ((guw + gu / 2) * c + (gw + g / 2) * cu)) / root;
    out[5] = ((out[5] - g / 4) * c) / (root * force);
  };
}

/** Values at the nodes; below the first edge angle the even parabola that goes on with value and slope. */
function sample(
  value: (edgeAngle: number, load: number) => number,
  first: number,
  edges: EvenAxis,
  logLoads: EvenAxis,
): Float64Array {
  const sampled = new Float64Array(edges.count * logLoads.count);
  for (let i = 0; i < edges.count; i++) {
    const edgeAngle = edges.first + i * edges.step;
    for (let j = 0; j < logLoads.count; j++) {
      const load = Math.exp(logLoads.first + j * logLoads.step);
      sampled[i * logLoads.count + j] =
        edgeAngle >= first ? value(edgeAngle, load) : evenBelow(value, first, edgeAngle, load);
    }
  }
  return sampled;
}

/** Nodes from `from` to `to`, about `NODES_PER_CELL` to each stretch `cell`. */
function evenly(from: number, to: number, cell: number): EvenAxis {
  const parts = Math.max(2, Math.round((NODES_PER_CELL * (to - from)) / cell));
  return { first: from, step: (to - from) / parts, count: parts + 1 };
}

function evenBelow(
  value: (edgeAngle: number, load: number) => number,
  first: number,
  edgeAngle: number,
  load: number,
): number {
  const step = first / 4;
  const border = value(first, load);
  const slope = (value(first + step, load) - border) / step;
  const most = MOST_DIFFERENCE * border;
  const fall = Math.min(Math.max(0.5 * slope * first, -most), most);
  return border - fall * (1 - (edgeAngle / first) ** 2);
}

/** How much each node is calmed: fully beside a steep part, half one node further away. */
function calmShares(table: RadiusTable, edges: EvenAxis, logLoads: EvenAxis): Float64Array {
  const shares = new Float64Array(edges.count * logLoads.count);
  const nodes = ({ first, step, count }: EvenAxis, from: number, to: number, margin: number) => [
    Math.max(0, Math.ceil((from - first) / step - margin)),
    Math.min(count - 1, Math.floor((to - first) / step + margin)),
  ];
  for (const part of steepParts(table)) {
    for (const [margin, share] of [
      [2, 0.5],
      [1, 1],
    ]) {
      const [i0, i1] = nodes(edges, part.edgeFrom, part.edgeTo, margin);
      const [j0, j1] = nodes(logLoads, part.logLoadFrom, part.logLoadTo, margin);
      for (let i = i0; i <= i1; i++) {
        for (let j = j0; j <= j1; j++) {
          const at = i * logLoads.count + j;
          shares[at] = Math.max(shares[at], share);
        }
      }
    }
  }
  return shares;
}

/** Coefficients that follow the values, on the axes drawn out past the table: mirrored at 0, fading elsewhere. */
function spread(values: Float64Array, edges: EvenAxis, logLoads: EvenAxis, calm: Float64Array | null) {
  const u = { ...edges, first: -2 * edges.step, count: edges.count + 2 + BEYOND };
  const w = {
    ...logLoads,
    first: logLoads.first - BEYOND * logLoads.step,
    count: logLoads.count + 2 * BEYOND,
  };
  const all = new Float64Array(u.count * w.count);
  const follow = new Float64Array(all.length).fill(1);
  for (let i = 0; i < edges.count; i++) {
    const row = (i + 2) * w.count;
    for (let j = 0; j < logLoads.count; j++) {
      all[row + j + BEYOND] = values[i * logLoads.count + j];
      if (calm) follow[row + j + BEYOND] = 1 - calm[i * logLoads.count + j];
    }
    fade(all, row + BEYOND, -1);
    fade(all, row + BEYOND + logLoads.count - 1, 1);
  }
  for (let j = 0; j < w.count; j++) {
    fade(all, (edges.count + 1) * w.count + j, w.count);
    for (const row of [1, 2]) {
      all[(2 - row) * w.count + j] = all[(2 + row) * w.count + j];
      follow[(2 - row) * w.count + j] = follow[(2 + row) * w.count + j];
    }
  }
  return { u, w, coefficients: followingCoefficients(all, w.count, FOLLOWING_LIMIT, follow) };
}

/** Fills the nodes beyond a border, `stride` apart: the last difference dies away and the value stays. */
function fade(values: Float64Array, border: number, stride: number): void {
  const most = MOST_DIFFERENCE * values[border];
  const last = Math.min(Math.max(values[border] - values[border - stride], -most), most);
  let value = values[border];
  for (let k = 0; k < BEYOND; k++) {
    value += (FADING[k] ?? 0) * last;
    values[border + (k + 1) * stride] = value;
  }
}

/** Writes 1/cosθ, its slope and its second derivative at θ ≥ 0; past `STEEPEST` their parabola. */
function secantAt(tilt: number, out: Float64Array): void {
  const at = Math.min(tilt, STEEPEST);
  const s = 1 / Math.cos(at);
  const t = Math.tan(at);
  const slope = s * t;
  const bend = s * (1 + 2 * t * t);
  const past = tilt - at;
  out[0] = s + past * (slope + 0.5 * past * bend);
  out[1] = slope + past * bend;
  out[2] = bend;
}
