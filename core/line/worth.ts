/**
 * What every input is worth in seconds: at an optimum the slope of the least time to an input is the partial
 * derivative of the Lagrangian (the envelope theorem), so one solved line tells them all.
 */

import type { ChainAnswer } from '../numeric/index.ts';
import { BITE, GRAVITY, type GrooveWall, type OwnCurvature } from '../skier/index.ts';
import type { LineConditions } from './conditions.ts';
import { column, type LineChain } from './line-chain.ts';
import {
  CONTROLS,
  COST_SCALE,
  DATA,
  EDGE,
  EDGE_RATE,
  LEG,
  LEG_SPEED,
  loadAtWeight,
  OFFSET,
  PUSH,
  PUSH_RATE,
  STATES,
  WALL,
} from './line-model.ts';

/** Seconds per unit (SI, rad) of each input. */
export interface Worth {
  readonly friction: number;
  readonly dragArea: number;
  readonly airDensity: number;
  readonly scrape: number;
  readonly mass: number;
  readonly slope: number;
  readonly pushMost: number;
  readonly pushRate: number;
  readonly legSpeed: number;
  readonly legLongest: number;
  readonly legShortest: number;
  readonly edgeMost: number;
  readonly edgeRate: number;
  readonly angulationMost: number;
  readonly clearance: number;
  readonly baseBevel: number;
  /** Seconds per N/m² of the wall's strength; 0 where it cannot break. */
  readonly wallStrength: number;
  readonly contactLength: number;
}

/** The places of a line at which a ski's own curvature and the wall of its groove count. */
export interface GrooveWorth {
  /** Edge angle, rad, and load on the ski, N, in the middle of each stage. */
  readonly edge: Float64Array;
  readonly load: Float64Array;
  /** Seconds per 1/m of the ski's own curvature (of tanh(θ/4°)/R, signed as the edge). */
  readonly seconds: Float64Array;
  /** The same at each node with seconds per m² of the wall; empty where it cannot break. */
  readonly wall: {
    readonly edge: Float64Array;
    readonly load: Float64Array;
    readonly seconds: Float64Array;
  };
}

export interface LineWorth {
  readonly inputs: Worth;
  readonly groove: GrooveWorth;
}

/** Slopes of the least time to every input. `passes`: nodes at which a pole bounds the offset. */
export function worthOf(
  chain: LineChain,
  answer: ChainAnswer,
  conditions: LineConditions,
  passes: readonly number[],
): LineWorth {
  const { problem, model } = chain;
  const { skier } = conditions;
  const n = STATES.length;
  const m = CONTROLS.length;
  const stages = problem.stages;
  const width = DATA.length;
  const data = problem.stageData;
  const { multipliers, x, u } = answer;
  const input = new Float64Array(n + m);
  const weights = new Float64Array(model.stage.outputCount);
  const byData = model.stage.derivativesOf(0, model.stage.outputCount, true);
  const slopes = new Float64Array(width);
  const total = new Float64Array(width);
  const g = multipliers.limits.length / (stages + 1);
  const columns = (rows: number) => ({
    edge: new Float64Array(rows),
    load: new Float64Array(rows),
    seconds: new Float64Array(rows),
  });
  const groove: GrooveWorth = { ...columns(stages), wall: columns(g > WALL ? stages + 1 : 0) };
  const loadPerPush = loadAtWeight(conditions);
  const six = new Float64Array(6);
  let byLoad = 0;
  let bySlope = 0;
  for (let k = 0; k < stages; k++) {
    for (let i = 0; i < n; i++) {
      input[i] = 0.5 * (x[k * n + i] + x[(k + 1) * n + i]);
      weights[i] = (problem.step[k] * multipliers.costate[k * n + i]) / COST_SCALE;
    }
    weights[n] = problem.step[k] / COST_SCALE;
    for (let i = 0; i < m; i++) input[n + i] = u[k * m + i];
    slopes.fill(0);
    byData.run(
      1,
      { values: input, at: 0, width: 0 },
      { values: data, at: k * width, width: 0 },
      { values: weights, at: 0, width: 0 },
      { dataGradient: { values: slopes, at: 0, width: 0 } },
    );
    for (let i = 0; i < width; i++) total[i] += slopes[i];
    const sine = data[k * width + column('downhill')] / GRAVITY;
    bySlope +=
      GRAVITY * Math.sqrt(1 - sine * sine) * slopes[column('downhill')] -
      GRAVITY * sine * slopes[column('intoSnow')];
    const load = input[PUSH] * loadPerPush;
    groove.edge[k] = input[EDGE];
    groove.load[k] = load;
    groove.seconds[k] = slopes[column('extraCurvature')];
    conditions.ski.curvature(input[EDGE], load, six);
    byLoad += slopes[column('extraCurvature')] * Math.tanh(input[EDGE] / BITE) * six[2] * load;
  }
  let byWall = 0;
  for (let k = 0; k < groove.wall.edge.length; k++) {
    const { edge, load, seconds } = groove.wall;
    edge[k] = x[k * n + EDGE];
    load[k] = x[k * n + PUSH] * loadPerPush;
    seconds[k] = (-multipliers.limits[k * g + WALL] * conditions.wallStrength) / loadPerPush / COST_SCALE;
    conditions.ski.wallArea(edge[k], load[k], six);
    byWall += seconds[k] * six[0];
    // A heavier skier asks for more of the wall, and cuts it deeper.
    byLoad += seconds[k] * (six[2] * load[k] - six[0]);
  }
  const states = (part: Float64Array, state: number) => {
    let sum = 0;
    for (let k = 0; k <= stages; k++) sum += part[k * n + state];
    return sum / COST_SCALE;
  };
  const controls = (control: number) => {
    let sum = 0;
    for (let k = 0; k < stages; k++) {
      sum += multipliers.controlLow[k * m + control] + multipliers.controlHigh[k * m + control];
    }
    return sum / COST_SCALE;
  };
  const limits = (limit: number) => {
    let sum = 0;
    for (let k = 0; k <= stages; k++) sum += multipliers.limits[k * g + limit];
    return sum / COST_SCALE;
  };
  const { stateLow, stateHigh } = multipliers;
  const perDrag = total[column('drag')] / (2 * skier.mass);
  let clearance = 0;
  for (const k of passes) clearance += (stateLow[k * n + OFFSET] + stateHigh[k * n + OFFSET]) / COST_SCALE;
  return {
    inputs: {
      friction: total[column('friction')],
      dragArea: perDrag * conditions.airDensity,
      airDensity: perDrag * skier.dragArea,
      scrape: total[column('scrape')],
      mass: (byLoad - perDrag * conditions.airDensity * skier.dragArea) / skier.mass,
      slope: bySlope,
      pushMost: -states(stateHigh, PUSH),
      pushRate: -controls(PUSH_RATE),
      legSpeed: -states(stateHigh, LEG_SPEED) - states(stateLow, LEG_SPEED),
      legLongest: -states(stateHigh, LEG),
      legShortest: states(stateLow, LEG),
      edgeMost: -states(stateHigh, EDGE) - states(stateLow, EDGE),
      edgeRate: -controls(EDGE_RATE),
      angulationMost: -limits(1) - limits(2),
      clearance,
      baseBevel: limits(0),
      wallStrength: byWall / conditions.wallStrength,
      contactLength: total[column('quarterLength')] / 4,
    },
    groove,
  };
}

/** Seconds that another groove of the ski brings, to first order: another shape, stiffness or snow. */
export function worthOfCurvature(
  { edge, load, seconds, wall }: GrooveWorth,
  from: OwnCurvature & GrooveWall,
  to: OwnCurvature & GrooveWall,
): number {
  const a = new Float64Array(6);
  const b = new Float64Array(6);
  let sum = 0;
  for (let k = 0; k < seconds.length; k++) {
    from.curvature(edge[k], load[k], a);
    to.curvature(edge[k], load[k], b);
    sum += seconds[k] * Math.tanh(edge[k] / BITE) * (b[0] - a[0]);
  }
  for (let k = 0; k < wall.seconds.length; k++) {
    from.wallArea(wall.edge[k], wall.load[k], a);
    to.wallArea(wall.edge[k], wall.load[k], b);
    sum += wall.seconds[k] * (b[0] - a[0]);
  }
  return sum;
}

/** Seconds that turn radii longer by a small share bring, the wall being the same, to first order. */
export function worthOfRadius(
  { edge, load, seconds }: GrooveWorth,
  ski: OwnCurvature,
  share: number,
): number {
  const six = new Float64Array(6);
  let sum = 0;
  for (let k = 0; k < seconds.length; k++) {
    ski.curvature(edge[k], load[k], six);
    sum -= seconds[k] * Math.tanh(edge[k] / BITE) * six[0] * share;
  }
  return sum;
}
