import { FieldError, type FieldFault, plainFault } from '../fault/index.ts';
import type { Sentence } from '../language/index.ts';
import { descend, greville, pieceAt, type SplineRow, splineBasis, splineRow } from '../numeric/index.ts';
import { GRAVITY, type TurnRadius } from '../run/index.ts';
import { DEGREE } from '../units/index.ts';
import { type CourseConditions, fillCourseConditions } from './gate-conditions.ts';
import type { Gate } from './gates.ts';
import { gateTurns, type Line, lineThroughGates } from './line.ts';
import { QuickLineObjective } from './quick-line-objective.ts';
import { pathPhysics } from './timed-path.ts';

export interface QuickLineQuestion {
  readonly gates: readonly Gate[];
  /** Where the path begins and ends, m; a gate interval above the first gate and below the last unless given. */
  readonly start?: { readonly x: number; readonly y: number };
  readonly finish?: { readonly x: number; readonly y: number };
  readonly conditions?: Partial<CourseConditions>;
  /** The pair, for its least radius at the greatest edge angle; without one the radius is not limited. */
  readonly turn?: TurnRadius;
  /** rad; 0 unless given. */
  readonly baseBevel?: number;
  /** Whether the greatest edge angle has to hold the lean; true unless given. */
  readonly hold?: boolean;
  /** Greatest rate at which the edge angle follows the lean, rad/s; 300°/s unless given (a choice). */
  readonly edgeRate?: number;
  /** Greatest braking where the speed is too high to hold, m/s²; 1.2 g unless given (a choice). */
  readonly mostBraking?: number;
  /** Between path and poles, m. */
  readonly clearance?: number;
  /** Freedom of the path: spline pieces from gate to gate. */
  readonly piecesPerGate?: number;
  /** Called after each round with the time found so far, s; answering false stops the search. */
  readonly progress?: (round: number, seconds: number) => boolean;
}

export interface QuickLine extends Line {
  readonly ok: true;
  readonly seconds: number;
  /** m/s, one a sample. */
  readonly speed: Float64Array;
  /** rad, one a sample, positive to the right. */
  readonly lean: Float64Array;
  /** Which limits hold the line back somewhere. */
  readonly heldBackBy: readonly ('least radius' | 'braking' | 'edge rate' | 'gates')[];
  readonly rounds: number;
}

export interface NoQuickLine {
  readonly ok: false;
  /** The limit that could not be kept, where, and what would be accepted; or that it was stopped. */
  readonly reason: Sentence | FieldFault;
}

/** Limits are kept to one part in two hundred, which for the clearance is a few millimetres. */
const tolerance = 0.005;
const mostRounds = 40;
const patience = 10;

/**
 * Minimum-time line: a path of continuous curvature outside the gates, improved directly (cubic B-spline,
 * augmented Lagrangian, limited-memory descent). Limits: the least radius of the pair at the greatest edge
 * angle, hold at that angle (speed beyond it is braked away, no harder than stated), and how fast the edge
 * angle can follow the lean. A path may be straighter than the pair's own radius; that costs nothing here, as
 * a traverse does on snow. Local optimum from the drawn
 * line. Compare Hirano, Sports Eng. 9 (2006) [seen abstract]: edging angle as control.
 */
export function quickLine(question: QuickLineQuestion): QuickLine | NoQuickLine {
  const conditions = fillCourseConditions(question.conditions ?? {});
  const { gates } = question;
  const clearance = question.clearance ?? 0.4;
  let drawn: Line | null = null;
  if (gates.length >= 2) {
    try {
      drawn = lineThroughGates(gates, { clearance });
    } catch (error) {
      if (error instanceof FieldError) return { ok: false, reason: plainFault(error) };
      throw error;
    }
  }
  const start = question.start ?? (drawn ? { x: drawn.x[0], y: drawn.y[0] } : null);
  const end = drawn ? drawn.s.length - 1 : 0;
  const finish = question.finish ?? (drawn ? { x: drawn.x[end], y: drawn.y[end] } : null);
  if (!start || !finish) {
    return {
      ok: false,
      reason: { field: 'start', found: undefined, accepted: { key: 'course.endsOrGates' } },
    };
  }
  const heights = [start.y, ...gates.map(gate => gate.y), finish.y];
  const wrong = heights.findIndex((y, i) => i > 0 && !(y > heights[i - 1] + 0.2));
  if (wrong > 0) {
    const down = (y: number) => ({ quantity: 'distance', value: y }) as const;
    return {
      ok: false,
      reason: {
        field: wrong > gates.length ? 'finish' : `gate ${gates[wrong - 1].label}`,
        found: down(heights[wrong]),
        accepted: { key: 'course.furtherDown', values: { than: down(heights[wrong - 1]) } },
      },
    };
  }

  const pieces = question.piecesPerGate ?? (gates.length === 0 ? 16 : 6);
  const fromRest = conditions.startSpeed < 1;
  const basis = splineBasis(divide(heights, pieces, fromRest));
  const nodes = divide(heights, pieces * (gates.length === 0 ? 24 : 4), fromRest);
  const h = Float64Array.from({ length: nodes.length - 1 }, (_, j) => nodes[j + 1] - nodes[j]);
  const rows = Array.from(h, (_, j) => splineRow(basis, (nodes[j] + nodes[j + 1]) / 2));
  const turns = gateTurns(gates);
  const leastRadius = question.turn ? radiusAtGreatestEdge(question.turn, conditions) : 0;
  const objective = new QuickLineObjective({
    physics: pathPhysics(
      conditions,
      (question.hold ?? true)
        ? Math.tan(conditions.greatestEdge - (question.baseBevel ?? 0))
        : Number.POSITIVE_INFINITY,
    ),
    startEnergy: 0.5 * conditions.startSpeed ** 2,
    h,
    rows,
    gates: gates.map((gate, k) => ({
      row: splineRow(basis, gate.y),
      x: gate.x,
      outside: -turns[k],
      clearance,
    })),
    leastRadius,
    mostBraking: question.mostBraking ?? 1.2 * GRAVITY,
    mostRate: question.edgeRate ?? 300 * DEGREE,
  });

  const coefficients = Float64Array.from(greville(basis), y => {
    const straight = start.x + ((finish.x - start.x) * (y - start.y)) / (finish.y - start.y);
    return drawn && y > drawn.y[0] && y < drawn.y[end] ? acrossAt(drawn, y) : straight;
  });
  coefficients[0] = start.x;
  coefficients[coefficients.length - 1] = finish.x;
  // The two ends are fixed: the descent sees only what lies between.
  const inner = coefficients.slice(1, -1);
  const full = new Float64Array(coefficients.length);
  full.set(coefficients);
  const fullGradient = new Float64Array(coefficients.length);
  const evaluate = (x: Float64Array, gradient: Float64Array): number => {
    full.set(x, 1);
    const value = objective.evaluate(full, fullGradient);
    gradient.set(fullGradient.subarray(1, -1));
    return value;
  };

  let before = Number.POSITIVE_INFINITY;
  let lastSeconds = Number.POSITIVE_INFINITY;
  let rounds = 0;
  let exceeded = 1;
  let least = Number.POSITIVE_INFINITY;
  const nearest = inner.slice();
  for (; rounds < mostRounds; rounds++) {
    descend(evaluate, inner, { iterations: rounds === 0 ? 400 : 200, tolerance: 1e-6 });
    full.set(inner, 1);
    const found = objective.violations(full);
    exceeded = Math.max(found.radius, found.braking, found.rate, found.gate);
    if (exceeded < tolerance && Math.abs(objective.seconds - lastSeconds) < 3e-4 * objective.seconds) break;
    lastSeconds = objective.seconds;
    if (exceeded < least) {
      least = exceeded;
      nearest.set(inner);
    }
    if (question.progress?.(rounds, objective.seconds) === false)
      return { ok: false, reason: { key: 'course.stopped' } };
    // Past this the multipliers only grow: what is asked cannot be kept.
    if (rounds >= patience && least > 0.1) break;
    objective.raiseMultipliers(full);
    if (exceeded > 0.5 * before) objective.weight = Math.min(200, objective.weight * 2.5);
    before = Math.max(exceeded, tolerance);
  }
  if (!(exceeded < tolerance)) {
    full.set(nearest, 1);
    return { ok: false, reason: failure(objective, full, gates, nodes, conditions) };
  }
  return lay(objective, full, basis, nodes, gates, turns, rounds);
}

/** Breakpoints: each stretch between heights in equal pieces, closing up towards a start from rest. */
function divide(heights: readonly number[], pieces: number, fromRest: boolean): Float64Array {
  const points = [heights[0]];
  for (let i = 1; i < heights.length; i++) {
    const span = heights[i] - heights[i - 1];
    for (let k = 1; k <= pieces; k++) {
      const share = k / pieces;
      points.push(heights[i - 1] + span * (fromRest && i === 1 ? share * share : share));
    }
  }
  return Float64Array.from(points);
}

function radiusAtGreatestEdge(turn: TurnRadius, conditions: CourseConditions): number {
  const load = (conditions.mass * GRAVITY * Math.cos(conditions.slope)) / Math.cos(conditions.greatestEdge);
  return turn.radius(conditions.greatestEdge, conditions.outerShare * load);
}

function acrossAt(line: Line, y: number): number {
  const i = pieceAt(line.y, y);
  const share = (y - line.y[i]) / (line.y[i + 1] - line.y[i]);
  return line.x[i] + share * (line.x[i + 1] - line.x[i]);
}

function failure(
  objective: QuickLineObjective,
  full: Float64Array,
  gates: readonly Gate[],
  nodes: Float64Array,
  conditions: CourseConditions,
): FieldFault {
  const found = objective.violations(full);
  const worst = Math.max(found.radius, found.braking, found.rate, found.gate);
  const missed = { quantity: 'share', value: worst, decimals: 1 } as const;
  if (worst === found.gate) {
    const { label } = gates[found.worstAt];
    return {
      field: `gate ${label}`,
      found: missed,
      accepted: { key: 'course.moreRoom' },
      because: { key: 'course.clearanceMissed', values: { missed } },
    };
  }
  const values = {
    at: { quantity: 'distance', value: nodes[found.worstAt] },
    speed: { quantity: 'speed', value: conditions.startSpeed, decimals: 0 },
  } as const;
  if (worst === found.radius) {
    return {
      field: 'least radius',
      found: missed,
      accepted: { key: 'course.widerSetOrTighterPair' },
      because: { key: 'course.radiusNotKept', values },
    };
  }
  const accepted = { key: 'course.slowerOrWider' } as const;
  return worst === found.braking
    ? { field: 'braking', found: missed, accepted, because: { key: 'course.brakingNotKept', values } }
    : { field: 'edge rate', found: missed, accepted, because: { key: 'course.edgeRateNotKept', values } };
}

function lay(
  objective: QuickLineObjective,
  c: Float64Array,
  basis: ReturnType<typeof splineBasis>,
  nodes: Float64Array,
  gates: readonly Gate[],
  turns: Int8Array,
  rounds: number,
): QuickLine {
  const n = nodes.length;
  const line = {
    s: new Float64Array(n),
    x: new Float64Array(n),
    y: nodes,
    heading: new Float64Array(n),
    curvature: new Float64Array(n),
    speed: new Float64Array(n),
    lean: new Float64Array(n),
  };
  const { energy, lean } = objective.ride;
  const times = (row: SplineRow, part: 'value' | 'slope' | 'second'): number => {
    let sum = 0;
    for (let i = 0; i < 4; i++) sum += row[part][i] * c[row.first + i];
    return sum;
  };
  for (let j = 0; j < n; j++) {
    const row = splineRow(basis, nodes[j]);
    const slope = times(row, 'slope');
    line.x[j] = times(row, 'value');
    line.heading[j] = Math.atan(slope);
    line.curvature[j] = times(row, 'second') / (1 + slope * slope) ** 1.5;
    line.speed[j] = Math.sqrt(2 * energy[j]);
    line.lean[j] = j === 0 ? lean[0] : j === n - 1 ? lean[n - 2] : (lean[j - 1] + lean[j]) / 2;
    if (j > 0) {
      const middle = times(objective.problem.rows[j - 1], 'slope');
      line.s[j] = line.s[j - 1] + (nodes[j] - nodes[j - 1]) * Math.sqrt(1 + middle * middle);
    }
  }
  const { multipliers } = objective;
  const active = (list: Float64Array): boolean => list.some(value => value > 1e-4);
  return {
    ok: true,
    ...line,
    turns,
    gateSamples: Int32Array.from(gates, gate => nodes.findIndex(y => y >= gate.y - 1e-9)),
    length: line.s[n - 1],
    seconds: objective.seconds,
    heldBackBy: [
      ...(active(multipliers.radius) ? ['least radius' as const] : []),
      ...(active(multipliers.braking) ? ['braking' as const] : []),
      ...(active(multipliers.rate) ? ['edge rate' as const] : []),
      ...(active(multipliers.gate) ? ['gates' as const] : []),
    ],
    rounds,
  };
}
