/**
 * What the skier does with the skis: the edge angle over time or over distance travelled, positive in right
 * turns; or no programme at all but a rule ("banked": the skis tilt as far as the body leans).
 */

import { type AcceptedRange, accept, FieldError, isAccepted, numberFound } from '../fault/index.ts';
import { brent, monotoneCubic } from '../numeric/index.ts';
import { fromTwoColumns } from '../table/index.ts';
import { DEGREE } from '../units/index.ts';

/** What is accepted of an edge angle that must tilt, of one to either side, of a length of time, of a count. */
const TILTED: AcceptedRange = { above: 0, below: Math.PI / 2, quantity: 'angle' };
const EITHER_WAY: AcceptedRange = { above: -Math.PI / 2, below: Math.PI / 2, quantity: 'angle' };
const POSITIVE: AcceptedRange = { above: 0 };
const WHOLE: AcceptedRange = { from: 1, whole: true };

export interface EdgeProgramme {
  readonly kind: 'edge';
  /** What the programme runs over: s or m. */
  readonly per: 'time' | 'distance';
  /** Where it ends, s or m. */
  readonly end: number;
  /** Signed edge angle, rad. */
  edge(at: number): number;
  /** Where the skis pass from one edge to the other (or leave or reach the flat), ascending, s or m. */
  readonly changeovers: readonly number[];
  /** Where the programme is not smooth; the integrator starts afresh there. */
  readonly kinks: readonly number[];
}

/** Ideal carving from traverse to traverse: θ = ψ at every instant. */
export interface BankedProgramme {
  readonly kind: 'banked';
  /** Angle of the traverse from the fall line at which the turn changes side, rad. */
  readonly traverse: number;
  readonly first: 'right' | 'left';
  readonly turns: number;
}

export type Programme = EdgeProgramme | BankedProgramme;

export type TurnShape = 'sine' | 'trapezoid';

export interface LinkedTurns {
  /** Greatest edge angle of each turn, rad. */
  readonly peakEdge: number;
  /** One right and one left turn, s (or m with `per: 'distance'`). */
  readonly period: number;
  readonly turns: number;
  readonly shape?: TurnShape;
  readonly first?: 'right' | 'left';
  readonly per?: 'time' | 'distance';
}

/** Share of a trapezoid turn spent rolling on, and again rolling off. */
const RAMP = 0.3;

/**
 * Linked turns, right and left in turn, each half a period long.
 *
 * @throws FieldError unless 0 < peakEdge < 90°, period > 0 and turns ≥ 1 (a whole number)
 */
export function linkedTurns(options: LinkedTurns): EdgeProgramme {
  const { peakEdge, period, turns, shape = 'sine', first = 'right', per = 'time' } = options;
  accept('peakEdge', peakEdge, TILTED);
  accept('period', period, POSITIVE);
  accept('turns', turns, WHOLE);
  const half = period / 2;
  const sign = first === 'right' ? 1 : -1;
  const shapeAt = shape === 'sine' ? (u: number) => Math.sin(Math.PI * u) : trapezoid;
  return {
    kind: 'edge',
    per,
    end: turns * half,
    edge: at => {
      const turn = Math.min(turns - 1, Math.max(0, Math.floor(at / half)));
      return (turn % 2 === 0 ? sign : -sign) * peakEdge * shapeAt(at / half - turn);
    },
    changeovers: Array.from({ length: turns + 1 }, (_, i) => i * half),
    kinks: [],
  };
}

/** One edge angle held throughout, rad signed: a single arc, or a straight run at 0. */
export function heldEdge(edge: number, end: number, per: 'time' | 'distance' = 'time'): EdgeProgramme {
  accept('edge', edge, EITHER_WAY);
  if (!(end > 0)) throw new FieldError({ field: 'end', found: end, accepted: POSITIVE });
  return { kind: 'edge', per, end, edge: () => edge, changeovers: [], kinks: [] };
}

/**
 * A programme drawn or measured as points of time (s; or distance, m) and signed edge angle (rad), joined by a
 * monotone cubic, so it never tilts beyond the points.
 *
 * @throws FieldError naming the row when fewer than two are given, times do not ascend, the first is before
 *   0 or an angle is not within ±90°
 */
export function drawnEdges(
  at: ArrayLike<number>,
  edges: ArrayLike<number>,
  per: 'time' | 'distance' = 'time',
): EdgeProgramme {
  const n = at.length;
  if (n < 2 || edges.length !== n) {
    throw new FieldError({
      field: 'points',
      found: [n, edges.length],
      accepted: { key: 'accepted.twoRows' },
    });
  }
  for (let i = 0; i < n; i++) {
    const range = i === 0 ? { from: 0 } : { above: at[i - 1] };
    const where = { row: i + 1 };
    if (!isAccepted(at[i], range)) throw new FieldError({ field: per, found: at[i], accepted: range, where });
    if (!isAccepted(edges[i], EITHER_WAY)) {
      throw new FieldError({
        field: 'edge',
        found: numberFound(edges[i], EITHER_WAY),
        accepted: EITHER_WAY,
        where,
      });
    }
  }
  const curve = monotoneCubic(at, edges);
  const changeovers: number[] = [];
  for (let i = 0; i < n; i++) {
    if (edges[i] === 0 && ((i > 0 && edges[i - 1] !== 0) || (i < n - 1 && edges[i + 1] !== 0))) {
      changeovers.push(at[i]);
    }
    if (i < n - 1 && edges[i] * edges[i + 1] < 0) changeovers.push(brent(curve, at[i], at[i + 1]));
  }
  return {
    kind: 'edge',
    per,
    end: at[n - 1],
    edge: curve,
    changeovers,
    kinks: Array.from({ length: n }, (_, i) => at[i]),
  };
}

/** Turns that have begun by `at`, s or m; stretches on the flat are none. */
export function turnsBegun(programme: EdgeProgramme, at: number): number {
  const { changeovers, end } = programme;
  const starts = [0, ...changeovers.filter(c => c > 0 && c < end)];
  return starts.filter((from, i) => {
    const middle = 0.5 * (from + (starts[i + 1] ?? end));
    return from < at && programme.edge(middle) !== 0;
  }).length;
}

/**
 * Reads rows of time (s) and signed edge angle (degrees, positive in right turns).
 *
 * @throws FieldError for the first bad row, with the others behind it
 */
export function readEdges(text: string, per: 'time' | 'distance' = 'time'): EdgeProgramme {
  const name = per === 'time' ? 'time (s)' : 'distance (m)';
  return fromTwoColumns(text, name, 'edge angle (deg)', (at, degreesAt) =>
    drawnEdges(
      at,
      degreesAt.map(d => d * DEGREE),
      per,
    ),
  );
}

/**
 * Banked turns between traverses.
 *
 * @throws FieldError unless 0 < traverse < 90° and turns ≥ 1 (a whole number)
 */
export function bankedTurns(
  traverse: number,
  turns: number,
  first: 'right' | 'left' = 'right',
): BankedProgramme {
  accept('traverse', traverse, TILTED);
  accept('turns', turns, WHOLE);
  return { kind: 'banked', traverse, turns, first };
}

/** 0 → 1 → 0 with smooth ramps (quintic, so the roll starts and ends without a jerk). */
function trapezoid(u: number): number {
  return smoothStep(Math.min(u, 1 - u) / RAMP);
}

/** Quintic step from 0 to 1, flat to second order at both ends. */
function smoothStep(s: number): number {
  const t = Math.min(1, Math.max(0, s));
  return t * t * t * (10 + t * (6 * t - 15));
}
