/**
 * A solved line read off its chain: what the skis and the skier do at every node, in columns. SI, rad; right positive.
 */

import type { ChainAnswer } from '../numeric/index.ts';
import { BITE, GRAVITY, wallUsed } from '../skier/index.ts';
import type { LineConditions } from './conditions.ts';
import { column, type LineChain } from './line-chain.ts';
import {
  CONTROLS,
  COST_SCALE,
  DATA,
  DRIFT,
  DRIFT_RATE_CONTROL,
  EDGE,
  EDGE_RATE,
  LEAN,
  LEAN_RATE,
  LEG,
  LEG_SPEED,
  loadAtWeight,
  METRES_OUTPUT,
  MISMATCH,
  MISMATCH_RATE_CONTROL,
  OFFSET,
  PUSH,
  PUSH_RATE,
  SECONDS_OUTPUT,
  SPEED,
  STATES,
  TURNED,
  WALL,
} from './line-model.ts';

/** What can hold a skier back at a place, in the order of `LineRun.limit`. */
export const HELD_BACK_BY = [
  'nothing',
  'push',
  'push rate',
  'leg speed',
  'leg length',
  'edge angle',
  'edge rate',
  'hold',
  'wall',
  'angulation',
  'drift',
] as const;
export type HeldBackBy = (typeof HELD_BACK_BY)[number];

export interface LineRun {
  readonly t: Float64Array;
  /** Of the skis' path, m. */
  readonly distance: Float64Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly massX: Float64Array;
  readonly massY: Float64Array;
  /** Of the skis' path from the fall line. */
  readonly heading: Float64Array;
  /** Of the skis, and of the mass along their path, m/s. */
  readonly speed: Float64Array;
  readonly massSpeed: Float64Array;
  readonly lean: Float64Array;
  readonly leanRate: Float64Array;
  readonly edge: Float64Array;
  readonly leg: Float64Array;
  readonly legSpeed: Float64Array;
  /** Load on the snow over the weight. */
  readonly push: Float64Array;
  /** Of the skis' path, and what of it is not the ski's own, 1/m. */
  readonly curvature: Float64Array;
  readonly mismatch: Float64Array;
  readonly drift: Float64Array;
  /** Grip to spare under the boot, θ − b − ψ towards the turn. */
  readonly hold: Float64Array;
  /** Part of the wall's strength that is used; past one it breaks. */
  readonly wall: Float64Array;
  /** What holds the skier back at each node, an index of `HELD_BACK_BY`. */
  readonly limit: Uint8Array;
  readonly seconds: number;
  /** Energy each takes, J a kg of skier; what the legs put in. */
  readonly energy: {
    readonly friction: number;
    readonly scrape: number;
    readonly drag: number;
    readonly legs: number;
  };
  /** Seconds that one per cent more of each limit would save, largest first. */
  readonly limits: readonly { readonly by: HeldBackBy; readonly seconds: number }[];
}

/** Reads the run off an answer of the chain. */
export function readLine(chain: LineChain, answer: ChainAnswer, conditions: LineConditions): LineRun {
  const { model, places, problem } = chain;
  const n = STATES.length;
  const nodes = places.length;
  const state = (name: number) => Float64Array.from({ length: nodes }, (_, k) => answer.x[k * n + name]);
  const offset = state(OFFSET);
  const turned = state(TURNED);
  const lean = state(LEAN);
  const leg = state(LEG);
  const edge = state(EDGE);
  const push = state(PUSH);
  const mismatch = state(MISMATCH);
  const massSpeed = state(SPEED);
  const heading = turned.map((v, k) => v + places[k].heading);
  const x = offset.map((e, k) => places[k].x + e * Math.cos(places[k].heading));
  const y = offset.map((e, k) => places[k].y - e * Math.sin(places[k].heading));
  const outward = leg.map((l, k) => l * Math.sin(lean[k]));
  const six = new Float64Array(6);
  const loadPerPush = loadAtWeight(conditions);
  const curvature = edge.map((angle, k) => {
    conditions.ski.curvature(angle, push[k] * loadPerPush, six);
    return Math.tanh(angle / BITE) * six[0] + mismatch[k];
  });
  const t = new Float64Array(nodes);
  const distance = new Float64Array(nodes);
  const energy = { friction: 0, scrape: 0, drag: 0, legs: 0 };
  const input = new Float64Array(n + CONTROLS.length);
  const out = new Float64Array(model.stage.outputCount);
  const width = DATA.length;
  const data = problem.stageData;
  for (let k = 0; k + 1 < nodes; k++) {
    for (let i = 0; i < n; i++) input[i] = 0.5 * (answer.x[k * n + i] + answer.x[(k + 1) * n + i]);
    for (let i = 0; i < CONTROLS.length; i++) input[n + i] = answer.u[k * CONTROLS.length + i];
    model.stage.values(input, data, k * width, out);
    const seconds = out[SECONDS_OUTPUT] * problem.step[k];
    t[k + 1] = t[k] + seconds;
    distance[k + 1] = distance[k] + out[METRES_OUTPUT] * problem.step[k];
    const force = input[PUSH] * GRAVITY;
    const travelled = input[SPEED] * seconds;
    const slip = Math.hypot(input[MISMATCH], 1e-3) * data[k * width + column('quarterLength')];
    energy.friction += data[k * width + column('friction')] * force * travelled;
    energy.scrape += data[k * width + column('scrape')] * (input[DRIFT] + slip) * force * travelled;
    energy.drag += data[k * width + column('drag')] * input[SPEED] ** 2 * travelled;
    energy.legs += force * input[LEG_SPEED] * seconds;
  }
  return {
    t,
    distance,
    x,
    y,
    massX: x.map((v, k) => v + outward[k] * Math.cos(heading[k])),
    massY: y.map((v, k) => v - outward[k] * Math.sin(heading[k])),
    heading,
    speed: massSpeed.map((u, k) => u / (1 - outward[k] * curvature[k])),
    massSpeed,
    lean,
    leanRate: state(LEAN_RATE),
    edge,
    leg,
    legSpeed: state(LEG_SPEED),
    push,
    curvature,
    mismatch,
    drift: state(DRIFT),
    hold: edge.map((angle, k) => Math.sign(angle) * (angle - lean[k]) - conditions.baseBevel),
    wall: edge.map((angle, k) =>
      wallUsed(conditions.ski, angle, lean[k], push[k] * loadPerPush, conditions.wallStrength),
    ),
    ...heldBack(answer, conditions, nodes),
    seconds: t[nodes - 1],
    energy,
  };
}

/** What one per cent more of each limit is worth at each node, from the multipliers; the dearest is told. */
function heldBack({ multipliers, x }: ChainAnswer, conditions: LineConditions, nodes: number) {
  const { skier } = conditions;
  const n = STATES.length;
  const m = CONTROLS.length;
  const g = multipliers.limits.length / nodes;
  const loadPerPush = loadAtWeight(conditions);
  const six = new Float64Array(6);
  const wall = (k: number) => {
    if (g <= WALL) return 0;
    conditions.ski.wallArea(x[k * n + EDGE], x[k * n + PUSH] * loadPerPush, six);
    return (limits[k * g + WALL] * conditions.wallStrength * six[0]) / loadPerPush;
  };
  const { stateLow, stateHigh, controlLow, controlHigh, limits } = multipliers;
  const both = (k: number, state: number) => stateLow[k * n + state] + stateHigh[k * n + state];
  const rate = (k: number, control: number) =>
    k + 1 < nodes ? controlLow[k * m + control] + controlHigh[k * m + control] : 0;
  const worthAt = (k: number): number[] => [
    0,
    stateHigh[k * n + PUSH] * skier.pushMost,
    rate(k, PUSH_RATE) * skier.pushRate,
    both(k, LEG_SPEED) * skier.legSpeed,
    (stateHigh[k * n + LEG] + stateLow[k * n + LEG]) * skier.legLongest,
    both(k, EDGE) * skier.edgeMost,
    rate(k, EDGE_RATE) * skier.edgeRate,
    limits[k * g] * skier.edgeMost,
    wall(k),
    (limits[k * g + 1] + limits[k * g + 2]) * skier.angulationMost,
    stateHigh[k * n + DRIFT] + rate(k, DRIFT_RATE_CONTROL) + rate(k, MISMATCH_RATE_CONTROL),
  ];
  const limit = new Uint8Array(nodes);
  const total = new Float64Array(HELD_BACK_BY.length);
  for (let k = 0; k < nodes; k++) {
    const worth = worthAt(k);
    let dearest = 0;
    for (const [i, v] of worth.entries()) {
      total[i] += (0.01 * v) / COST_SCALE;
      if (v > worth[dearest] && v > NOTICED) dearest = i;
    }
    limit[k] = dearest;
  }
  const ranked = HELD_BACK_BY.map((by, i) => ({ by, seconds: total[i] })).filter(
    ({ seconds }) => seconds > 1e-6,
  );
  return { limit, limits: ranked.sort((a, b) => b.seconds - a.seconds) };
}

/** Multipliers below this are what the barrier leaves of limits that are not reached. */
const NOTICED = 1e-4;
