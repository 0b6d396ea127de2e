/**
 * The whole run as one problem on a chain of stages: the ski keeps its own arc wherever the shelf holds, slips no
 * more than it must, and the legs work no more than balance asks.
 */

import type { ChainProblem } from '../numeric/index.ts';
import { BITE } from '../skier/index.ts';
import { STOPPED } from './first-guess.ts';
import { holdData } from './hold-data.ts';
import { type FullConditions, LEAST_PUSH } from './run-conditions.ts';
import {
  HEADING,
  LEAN,
  LEAN_RATE,
  LEG,
  LEG_SPEED,
  LIMIT_DATA,
  LIMITS,
  MISMATCH,
  PUSH,
  PUSH_RATE,
  type RunFormulas,
  type RunShape,
  SPEED,
  STAGE_DATA,
} from './run-formula.ts';

/** Where a programme ends flat the skier stands nearly upright, rad. */
const UPRIGHT = 0.2;
/** No lean beyond this, rad. */
const LYING = 1.48;
/** The path's radius is over this many longest legs: the mass stays on this side of the turn's centre. */
const ABOUT_THE_LEG = 0.9;
/** How nearly a turn ends on its traverse and flat, rad. */
const ON_THE_TRAVERSE = 1e-3;
/** Beyond it a ski has bitten, rad; readings of the edge angle in a stage before. */
const BITTEN = 2 * BITE;
const READINGS = 8;
const GREATEST_PULL = 20;
const QUICKEST_TURN = 0.1;
const SLOWEST_TURN = 60;

/** How a run begins and ends. */
export interface RunEnds {
  readonly heading: number;
  /** The skis lie flat there; else they are on an edge and the skier begins or ends in balance. */
  readonly flatStart: boolean;
  readonly flatEnd: boolean;
  /** The leg's speed is free at the start. */
  readonly dropIn: boolean;
  /** For runs counted in turns: heading at the node where a turn ends, rad, and the stages where one begins. */
  readonly traverses?: ReadonlyMap<number, number>;
  readonly begins?: ReadonlySet<number>;
}

export const liesFlat = (edge: number): boolean => Math.abs(edge) < 0.5 * BITE;

export function runProblem(
  run: FullConditions,
  shape: RunShape,
  formulas: RunFormulas,
  nodes: Float64Array,
  edgeAt: (place: number) => number,
  ends: RunEnds,
): ChainProblem {
  const n = shape.states.length;
  const m = shape.controls.length;
  const N = nodes.length - 1;
  const step = new Float64Array(N);
  const stageData = new Float64Array(N * STAGE_DATA);
  const limitData = new Float64Array((N + 1) * LIMIT_DATA);
  const stateLow = new Float64Array((N + 1) * n).fill(-Infinity);
  const stateHigh = new Float64Array((N + 1) * n).fill(Infinity);
  const controlLow = new Float64Array(N * m).fill(-Infinity);
  const controlHigh = new Float64Array(N * m).fill(Infinity);
  const six = new Float64Array(6);
  const tightest = ABOUT_THE_LEG / run.legLongest;
  const turns = shape.over === 'turns';
  for (let k = 0; k < N; k++) {
    step[k] = nodes[k + 1] - nodes[k];
    const edge = turns ? 0 : stageEdge(edgeAt, nodes[k], nodes[k + 1]);
    stageData[k * STAGE_DATA] = edge;
    stageData[k * STAGE_DATA + 1] = ends.begins?.has(k) ? 1 : 0;
    run.turn.curvature(edge, run.outerShare * run.mass * 10, six);
    const own = turns ? 0 : Math.tanh(edge / BITE) * six[0];
    controlLow[k * m + MISMATCH] = -tightest - own;
    controlHigh[k * m + MISMATCH] = tightest - own;
    controlLow[k * m + PUSH_RATE] = -run.pushRate;
    controlHigh[k * m + PUSH_RATE] = run.pushRate;
    if (shape.pull >= 0) {
      controlLow[k * m + shape.pull] = 0;
      controlHigh[k * m + shape.pull] = GREATEST_PULL;
    }
  }
  for (let k = 0; k <= N; k++) {
    const at = k * n;
    const bound = (state: number, low: number, high: number) => {
      stateLow[at + state] = low;
      stateHigh[at + state] = high;
    };
    bound(SPEED, STOPPED, Infinity);
    bound(LEAN, -LYING, LYING);
    bound(LEG, run.legShortest, run.legLongest);
    bound(LEG_SPEED, -run.legSpeed, run.legSpeed);
    bound(PUSH, LEAST_PUSH, run.pushMost);
    if (shape.pace >= 0) bound(shape.pace, QUICKEST_TURN, SLOWEST_TURN);
    if (!turns) {
      const edge = edgeAt(nodes[k]);
      holdData(edge, run.baseBevel, limitData, k * LIMIT_DATA);
      limitData[k * LIMIT_DATA + 2] = edge;
    }
  }
  for (const [k, heading] of ends.traverses ?? []) {
    for (const [state, value] of [
      [HEADING, heading],
      [LEAN, 0],
    ]) {
      stateLow[k * n + state] = value - ON_THE_TRAVERSE;
      stateHigh[k * n + state] = value + ON_THE_TRAVERSE;
    }
  }
  if (!turns && ends.flatEnd) {
    stateLow[N * n + LEAN] = -UPRIGHT;
    stateHigh[N * n + LEAN] = UPRIGHT;
  }
  return {
    states: shape.states,
    controls: shape.controls,
    stages: N,
    step,
    stage: formulas.stage,
    stageData,
    forcing: new Float64Array(N * n),
    ...(turns ? {} : { limits: limitsOf(formulas, limitData) }),
    stateLow,
    stateHigh,
    controlLow,
    controlHigh,
    ends: endRows(run, shape, ends),
  };
}

const limitsOf = ({ limits }: RunFormulas, data: Float64Array) => ({
  names: LIMITS.slice(0, limits.outputCount),
  formula: limits,
  data,
});

/** Edge angle that stands for a stage, rad: in the middle, and near flat the one whose bite is the stage's mean. */
function stageEdge(edgeAt: (place: number) => number, from: number, to: number): number {
  const middle = edgeAt(0.5 * (from + to));
  if (Math.abs(middle) > BITTEN) return middle;
  let sum = 0;
  for (let i = 0; i < READINGS; i++) {
    sum += Math.tanh(edgeAt(from + ((to - from) * (i + 0.5)) / READINGS) / BITE);
  }
  return BITE * Math.atanh(sum / READINGS);
}

/** Conditions on the first and last state; those that reach the last come first. */
function endRows(run: FullConditions, shape: RunShape, ends: RunEnds): NonNullable<ChainProblem['ends']> {
  const n = shape.states.length;
  const rows: { at: 'start' | 'end'; state: number; value: number }[] = [];
  if (shape.over !== 'turns' && !ends.flatEnd) rows.push({ at: 'end', state: LEAN_RATE, value: 0 });
  rows.push({ at: 'start', state: HEADING, value: ends.heading });
  rows.push({ at: 'start', state: SPEED, value: run.startSpeed });
  rows.push(
    ends.flatStart ? { at: 'start', state: LEAN, value: 0 } : { at: 'start', state: LEAN_RATE, value: 0 },
  );
  if (!ends.dropIn) rows.push({ at: 'start', state: LEG_SPEED, value: 0 });
  if (shape.down >= 0) rows.push({ at: 'start', state: shape.down, value: 0 });
  const start = new Float64Array(rows.length * n);
  const end = new Float64Array(rows.length * n);
  const value = new Float64Array(rows.length);
  for (const [r, row] of rows.entries()) {
    (row.at === 'start' ? start : end)[r * n + row.state] = 1;
    value[r] = row.value;
  }
  return { start, end, value };
}
