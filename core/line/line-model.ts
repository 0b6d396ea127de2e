/**
 * The skier on a leg along a reference line: eleven states over the line's parameter, four rates that the skier
 * chooses, and what a metre of it takes in time. Derivatives exact, from core/numeric's tape.
 */

import { type Formula, Tape } from '../numeric/index.ts';
import {
  bite,
  canBreak,
  GRAVITY,
  type GrooveWall,
  legRates,
  massOverSkis,
  type OwnCurvature,
  ownCurvature,
  scrapeShare,
  wallRoom,
} from '../skier/index.ts';
import type { LineConditions } from './conditions.ts';

export const OFFSET = 0;
export const TURNED = 1;
export const SPEED = 2;
export const LEAN = 3;
export const LEAN_RATE = 4;
export const LEG = 5;
export const LEG_SPEED = 6;
export const EDGE = 7;
export const MISMATCH = 8;
export const DRIFT = 9;
export const PUSH = 10;
export const STATES = [
  'offset from the line',
  'heading from the line',
  'speed',
  'lean',
  'lean rate',
  'leg',
  'leg speed',
  'edge angle',
  'mismatch',
  'drift',
  'push',
] as const;

export const EDGE_RATE = 0;
export const MISMATCH_RATE_CONTROL = 1;
export const DRIFT_RATE_CONTROL = 2;
export const PUSH_RATE = 3;
export const CONTROLS = ['edge rate', 'mismatch rate', 'drift rate', 'push rate'] as const;

/** Data of a stage, in order. */
export const DATA = [
  'lineHeading',
  'lineCurvature',
  'lineMetres',
  'downhill',
  'intoSnow',
  'ground',
  'friction',
  'drag',
  'scrape',
  'quarterLength',
  'extraCurvature',
  'calm',
] as const;

/** Limits at a node, in order; the wall where it can break. */
export const LIMITS = ['hold', 'angulation', 'angulation backward', 'centre of the turn', 'wall'] as const;
export const WALL = 4;
export const LIMIT_DATA = ['grip', 'greatestAngulation', 'strength'] as const;

/** Weights that keep the rates from chattering, s per (unit a second)²: far below a thousandth of a second. */
const CALM = { edge: 1e-5, mismatch: 3e-4, drift: 3e-5, push: 1e-7 };

/** The solver sees a second as ten: its tolerances and barrier fit costs of some tens. */
export const COST_SCALE = 10;

/** Least 1 − pκ: the mass stays on this side of the turn's centre. */
const CENTRE_ROOM = 0.1;

/** Outputs of the stage after the rates and the cost: seconds and metres of the skis' path, both per unit of the line. */
export const SECONDS_OUTPUT = STATES.length + 1;
export const METRES_OUTPUT = STATES.length + 2;

export interface LineModel {
  readonly stage: Formula;
  readonly limits: Formula;
}

export function lineModel(conditions: LineConditions): LineModel {
  const { ski, wallStrength } = conditions;
  const loadPerPush = loadAtWeight(conditions);
  return {
    stage: stageFormula(ski, loadPerPush),
    limits: limitFormula(ski, loadPerPush, canBreak(ski, wallStrength)),
  };
}

/** Load on the outer ski at a push of one body weight, N. */
export const loadAtWeight = ({ outerShare, skier }: LineConditions): number =>
  outerShare * skier.mass * GRAVITY;

function stageFormula(ski: OwnCurvature, loadPerPush: number): Formula {
  const t = new Tape();
  const [offset, turned, speed, lean, leanRate, leg, legSpeed, edge, mismatch, drift, push] = STATES.map(() =>
    t.input(),
  );
  const [edgeRate, mismatchRate, driftRate, pushRate] = CONTROLS.map(() => t.input());
  const [
    lineHeading,
    lineCurvature,
    lineMetres,
    downhill,
    intoSlope,
    ground,
    friction,
    drag,
    scrape,
    quarterLength,
    extra,
    calmness,
  ] = DATA.map(() => t.datum());
  const curvature = t.add(ownCurvature(t, ski, loadPerPush, edge, push), mismatch, extra);
  // Metres of the skis' path, and seconds, for one unit of the line's parameter.
  const metres = t.multiply(
    lineMetres,
    t.divide(t.shift(t.scale(t.multiply(offset, lineCurvature), -1), 1), t.cosine(turned)),
  );
  const seconds = t.divide(t.multiply(metres, massOverSkis(t, leg, lean, curvature)), speed);
  const heading = t.add(lineHeading, turned);
  // A dip presses the skier into the snow, a crest lifts.
  const intoSnow = t.add(intoSlope, t.multiply(ground, t.square(t.multiply(speed, t.cosine(heading)))));
  const rates = legRates(
    t,
    {
      heading,
      speed,
      lean,
      leanRate,
      leg,
      legSpeed,
      push,
      curvature,
      scrape: scrapeShare(t, mismatch, drift, scrape, quarterLength),
      downhill,
      intoSnow,
      friction,
      drag,
    },
    { seconds, metres },
  );
  const calm = t.add(
    t.scale(t.square(edgeRate), CALM.edge),
    t.scale(t.square(mismatchRate), CALM.mismatch),
    t.scale(t.square(driftRate), CALM.drift),
    t.scale(t.square(pushRate), CALM.push),
  );
  return t.compile([
    t.multiply(metres, t.sine(turned)),
    t.subtract(rates.heading, t.multiply(lineCurvature, lineMetres)),
    rates.speed,
    rates.lean,
    rates.leanRate,
    rates.leg,
    rates.legSpeed,
    t.multiply(edgeRate, seconds),
    t.multiply(mismatchRate, seconds),
    t.multiply(driftRate, seconds),
    t.multiply(pushRate, seconds),
    t.scale(t.multiply(t.shift(t.multiply(calmness, calm), 1), seconds), COST_SCALE),
    seconds,
    metres,
  ]);
}

function limitFormula(ski: OwnCurvature & GrooveWall, loadPerPush: number, breaks: boolean): Formula {
  const t = new Tape();
  const [, , , lean, , leg, , edge, mismatch, , push] = STATES.map(() => t.input());
  const [grip, greatest, strength] = LIMIT_DATA.map(() => t.datum());
  const bitten = bite(t, edge);
  const angulation = t.subtract(edge, lean);
  const curvature = t.add(ownCurvature(t, ski, loadPerPush, edge, push), mismatch);
  const limits = [
    t.add(t.multiply(bitten, angulation), grip),
    t.subtract(greatest, angulation),
    t.add(greatest, angulation),
    t.shift(massOverSkis(t, leg, lean, curvature), -CENTRE_ROOM),
  ];
  if (breaks) limits.push(wallRoom(t, ski, loadPerPush, strength, edge, lean, push));
  return t.compile(limits);
}
