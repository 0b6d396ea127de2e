/**
 * The chain problem of a skier along a reference line: places, bounds and data of every node and stage.
 */

import type { ChainProblem } from '../numeric/index.ts';
import {
  DRIFT_MOST,
  DRIFT_RATE,
  GRAVITY,
  LEAST_PUSH,
  MISMATCH_MOST,
  MISMATCH_RATE,
  SHELF_ALLOWANCE,
} from '../skier/index.ts';
import type { LineConditions } from './conditions.ts';
import {
  CONTROLS,
  DATA,
  DRIFT,
  DRIFT_RATE_CONTROL,
  EDGE,
  EDGE_RATE,
  LEAN,
  LEG,
  LEG_SPEED,
  LIMIT_DATA,
  LIMITS,
  type LineModel,
  loadAtWeight,
  MISMATCH,
  MISMATCH_RATE_CONTROL,
  OFFSET,
  PUSH,
  PUSH_RATE,
  SPEED,
  STATES,
  TURNED,
} from './line-model.ts';
import { type LinePlace, type LinePoint, placeBetween } from './reference-line.ts';

/** A mass leaning further than this has fallen, rad. */
const LEAN_MOST = 1.35;
/** Heading from the line, rad: beyond it the skis no longer go along it. */
const TURNED_MOST = 1.4;
const SPEED_LEAST = 1;
const SPEED_MOST = 60;
/** Offset from the line, as a share of its radius there: it must not reach the line's own centre. */
const OFFSET_SHARE = 0.9;

export interface LineChain {
  readonly problem: ChainProblem;
  readonly model: LineModel;
  /** Places of the line at the nodes. */
  readonly places: readonly LinePlace[];
  /** First node of each piece, and the last node. */
  readonly pieceNodes: Int32Array;
}

/** Columns of a stage's data that conditions set. */
export const column = (name: (typeof DATA)[number]): number => DATA.indexOf(name);

/**
 * The chain along a line through `points`, each piece cut into `nodes` stages; bounds as the skier has them, no
 * conditions at the ends yet.
 */
export function lineChain(
  points: readonly LinePoint[],
  conditions: LineConditions,
  model: LineModel,
  nodes: number,
): LineChain {
  const pieces = points.length - 1;
  const stages = pieces * nodes;
  const width = DATA.length;
  const stageData = new Float64Array(stages * width);
  const places: LinePlace[] = [];
  for (let p = 0; p < pieces; p++) {
    for (let i = 0; i < nodes; i++) {
      const middle = placeBetween(points[p], points[p + 1], (i + 0.5) / nodes);
      fillStage(stageData, (p * nodes + i) * width, middle, conditions);
      places.push(placeBetween(points[p], points[p + 1], i / nodes));
    }
  }
  places.push(placeBetween(points[pieces - 1], points[pieces], 1));
  const limitData = new Float64Array((stages + 1) * LIMIT_DATA.length);
  for (let k = 0; k <= stages; k++) {
    limitData[k * LIMIT_DATA.length] = SHELF_ALLOWANCE - conditions.baseBevel;
    limitData[k * LIMIT_DATA.length + 1] = conditions.skier.angulationMost;
    limitData[k * LIMIT_DATA.length + 2] = conditions.wallStrength / loadAtWeight(conditions);
  }
  const problem: ChainProblem = {
    states: STATES,
    controls: CONTROLS,
    stages,
    step: new Float64Array(stages).fill(1 / nodes),
    stage: model.stage,
    stageData,
    limits: { names: LIMITS.slice(0, model.limits.outputCount), formula: model.limits, data: limitData },
    ...bounds(places, conditions),
  };
  return { problem, model, places, pieceNodes: Int32Array.from({ length: pieces + 1 }, (_, p) => p * nodes) };
}

function fillStage(data: Float64Array, at: number, place: LinePlace, conditions: LineConditions): void {
  const { skier, slope } = conditions;
  const sine = slope.sine(place.y);
  data[at + column('lineHeading')] = place.heading;
  data[at + column('lineCurvature')] = place.curvature;
  data[at + column('lineMetres')] = place.metres;
  data[at + column('downhill')] = GRAVITY * sine;
  data[at + column('intoSnow')] = GRAVITY * Math.sqrt(1 - sine * sine);
  data[at + column('ground')] = slope.curvature(place.y);
  data[at + column('friction')] = conditions.friction;
  data[at + column('drag')] = (conditions.airDensity * skier.dragArea) / (2 * skier.mass);
  data[at + column('scrape')] = conditions.scrape;
  data[at + column('quarterLength')] = conditions.contactLength / 4;
  data[at + column('calm')] = 1;
}

function bounds(places: readonly LinePlace[], { skier }: LineConditions) {
  const n = STATES.length;
  const m = CONTROLS.length;
  const stages = places.length - 1;
  const stateLow = new Float64Array(places.length * n).fill(-Infinity);
  const stateHigh = new Float64Array(places.length * n).fill(Infinity);
  for (const [k, { curvature }] of places.entries()) {
    const low = stateLow.subarray(k * n, (k + 1) * n);
    const high = stateHigh.subarray(k * n, (k + 1) * n);
    const both = (state: number, most: number) => {
      low[state] = -most;
      high[state] = most;
    };
    if (curvature > 0) high[OFFSET] = OFFSET_SHARE / curvature;
    if (curvature < 0) low[OFFSET] = OFFSET_SHARE / curvature;
    both(TURNED, TURNED_MOST);
    low[SPEED] = SPEED_LEAST;
    high[SPEED] = SPEED_MOST;
    both(LEAN, LEAN_MOST);
    low[LEG] = skier.legShortest;
    high[LEG] = skier.legLongest;
    both(LEG_SPEED, skier.legSpeed);
    both(EDGE, skier.edgeMost);
    both(MISMATCH, MISMATCH_MOST);
    low[DRIFT] = 0;
    high[DRIFT] = DRIFT_MOST;
    low[PUSH] = LEAST_PUSH;
    high[PUSH] = skier.pushMost;
  }
  const controlHigh = new Float64Array(stages * m);
  for (let k = 0; k < stages; k++) {
    controlHigh[k * m + EDGE_RATE] = skier.edgeRate;
    controlHigh[k * m + MISMATCH_RATE_CONTROL] = MISMATCH_RATE;
    controlHigh[k * m + DRIFT_RATE_CONTROL] = DRIFT_RATE;
    controlHigh[k * m + PUSH_RATE] = skier.pushRate;
  }
  return { stateLow, stateHigh, controlHigh, controlLow: controlHigh.map(v => -v) };
}
