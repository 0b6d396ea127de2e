/**
 * How a run whose edge angle is given is set out: its nodes, its ends and a first guess.
 */

import type { ChainGuess } from '../numeric/index.ts';
import { type EdgeProgramme, turnsBegun } from './edge-programme.ts';
import { balancedPush, type PointRun, pointRun, swungLean } from './first-guess.ts';
import { HOLD_ROOM } from './hold-data.ts';
import type { FullConditions } from './run-conditions.ts';
import {
  HEADING,
  LEAN,
  LEAN_RATE,
  LEG,
  MISMATCH,
  PUSH,
  PUSH_RATE,
  type RunShape,
  SPEED,
} from './run-formula.ts';
import { meshOver } from './run-mesh.ts';
import { liesFlat, type RunEnds } from './run-problem.ts';
import type { SmoothGround } from './smooth-ground.ts';
import { startHeading } from './start-heading.ts';
import type { RunEnd } from './track.ts';

/** What is solved for: the nodes, what holds at the ends, and where to begin looking. */
export interface RunPlan {
  readonly nodes: Float64Array;
  readonly parts: readonly number[];
  readonly ends: RunEnds;
  readonly end: RunEnd;
  /** There is nothing to solve: what cannot be kept, and when, s. */
  readonly none?: { readonly limit: string; readonly at: number };
  /** Signed edge angle at a place, rad; not asked where the skis follow the lean. */
  edgeAt(place: number): number;
  /** Turns begun by a place. */
  turnsAt(place: number): number;
  /** s into the run, as guessed. */
  timeAt(place: number): number;
  guess(): ChainGuess;
}

/** Runs over distance that have not ended by then are cut, s. */
const LONGEST = 600;
/** Near a limit a guess keeps this share of it. */
const WITHIN = 0.9;

export function edgedPlan(
  run: FullConditions,
  programme: EdgeProgramme,
  shape: RunShape,
  ground: SmoothGround,
  step: number,
  dropIn: boolean,
  like?: readonly number[],
  longest = LONGEST,
): RunPlan {
  const heading = startHeading(run);
  const point = pointRun(run, programme, ground, heading, longest);
  const last = point.at[point.at.length - 1];
  const end = Math.min(programme.end, last);
  const timeAt = (place: number) => rowOf(point.at, place) * point.step;
  const mesh = meshOver(
    [...programme.changeovers, ...programme.kinks],
    end,
    step,
    timeAt,
    time => valueAt(point.at, time / point.step),
    like,
  );
  const ends: RunEnds = {
    heading,
    flatStart: liesFlat(programme.edge(0)),
    flatEnd: liesFlat(programme.edge(end)),
    dropIn,
  };
  return {
    ...mesh,
    ends,
    end: point.stopped ? 'stopped' : 'programme over',
    edgeAt: place => programme.edge(place),
    turnsAt: place => turnsBegun(programme, place),
    timeAt,
    guess: () => swungGuess(run, shape, point, mesh.nodes, ends),
  };
}

/** The skis on the point's path, the mass leaning as a small swing would, on a leg at rest. */
function swungGuess(
  run: FullConditions,
  shape: RunShape,
  point: PointRun,
  nodes: Float64Array,
  ends: RunEnds,
): ChainGuess {
  const n = shape.states.length;
  const m = shape.controls.length;
  const count = point.at.length;
  const lean = swungLean(point.step, point.normal, point.sideways, run.legRest, ends.flatStart, ends.flatEnd);
  for (let i = 0; i < count; i++) {
    const side = point.edge[i] < 0 ? -1 : 1;
    const most = Math.max(0, Math.abs(point.edge[i]) - run.baseBevel + 0.5 * HOLD_ROOM);
    lean[i] = side * Math.min(side * lean[i], most);
  }
  const rate = slopeOf(lean, point.step);
  const x = new Float64Array(nodes.length * n);
  const u = new Float64Array((nodes.length - 1) * m);
  for (let k = 0; k < nodes.length; k++) {
    const at = rowOf(point.at, nodes[k]);
    const i = Math.min(count - 1, Math.round(at));
    const c = k * n;
    x[c + HEADING] = valueAt(point.heading, at);
    x[c + SPEED] = valueAt(point.speed, at);
    x[c + LEAN] = valueAt(lean, at);
    x[c + LEAN_RATE] = rate(i);
    x[c + LEG] = run.legRest;
    x[c + PUSH] = Math.min(
      WITHIN * run.pushMost,
      balancedPush(point.sideways[i], point.normal[i], lean[i], rate(i), run.legRest),
    );
    if (shape.down >= 0) x[c + shape.down] = valueAt(point.down, at);
  }
  const most = WITHIN * run.pushRate;
  for (let k = 0; k + 1 < nodes.length; k++) {
    const at = rowOf(point.at, 0.5 * (nodes[k] + nodes[k + 1]));
    u[k * m + MISMATCH] = valueAt(point.curvature, at) - valueAt(point.own, at);
    const seconds = (rowOf(point.at, nodes[k + 1]) - rowOf(point.at, nodes[k])) * point.step;
    const change = (x[(k + 1) * n + PUSH] - x[k * n + PUSH]) / seconds;
    u[k * m + PUSH_RATE] = Math.min(Math.max(change, -most), most);
  }
  return { x, u };
}

export function slopeOf(column: Float64Array, step: number): (row: number) => number {
  return row => {
    const a = Math.max(0, row - 1);
    const b = Math.min(column.length - 1, row + 1);
    return (column[b] - column[a]) / ((b - a) * step);
  };
}

/** Row, with its part, at which an ascending column reaches a value. */
function rowOf(column: Float64Array, value: number): number {
  let low = 0;
  let high = column.length - 1;
  if (value >= column[high]) return high;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (column[middle] <= value) low = middle;
    else high = middle;
  }
  return low + (value - column[low]) / (column[high] - column[low]);
}

export function valueAt(column: Float64Array, row: number): number {
  const i = Math.min(column.length - 2, Math.max(0, Math.floor(row)));
  return column[i] + (row - i) * (column[i + 1] - column[i]);
}
