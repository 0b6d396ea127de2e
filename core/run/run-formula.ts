/**
 * The equations of a run written once on a tape: a stage of the problem to be solved, and the finer quantities a
 * row of the track is read from. Section by section they are those of core/skier; here the ground and the
 * programme are joined to them.
 */

import { type Formula, Tape, type Term } from '../numeric/index.ts';
import {
  canBreak,
  GRAVITY,
  legRates,
  massOverSkis,
  ownCurvature,
  scrapeShare,
  wallRoom,
} from '../skier/index.ts';
import type { FullConditions } from './run-conditions.ts';
import type { SmoothGround } from './smooth-ground.ts';

/** States every run has, in this order. Push in body weights. */
export const HEADING = 0;
export const SPEED = 1;
export const LEAN = 2;
export const LEAN_RATE = 3;
export const LEG = 4;
export const LEG_SPEED = 5;
export const PUSH = 6;
const BASIC_STATES = ['heading', 'speed', 'lean', 'lean rate', 'leg', 'leg speed', 'push'];

/** Controls every run has. */
export const MISMATCH = 0;
export const PUSH_RATE = 1;
const BASIC_CONTROLS = ['mismatch', 'push rate'];

/** Cost of a mismatch of 1/50 m for a second, beside which everything is weighed. */
const MISMATCH_UNIT = 0.02;
/** Cost of a leg 10 cm from its rest, a second. */
const LEG_COST = 0.05;
const LEG_UNIT = 0.1;
/** Cost of a push that changes by a body weight a second, a second. */
const PUSH_RATE_COST = 2e-5;
/** Cost of a body weight of pull for a second: dearer than what a slip is worth, so that it is the last way out. */
const PULL_COST = 30;
/** And of its square for a second: a flight is drawn out instead of a blow that brings the skis down at once. */
const PULL_SQUARED = 30;
const PACE_COST = 1e-6;

/** What a run is counted over: seconds, metres of the skis' way, or turns from traverse to traverse. */
export type Over = 'time' | 'distance' | 'turns';

/** Which states and controls a run has beside the basic ones, by their place; −1 for none. */
export interface RunShape {
  readonly over: Over;
  readonly states: readonly string[];
  readonly controls: readonly string[];
  /** Of the skis along the ground, where the ground is not even. */
  readonly down: number;
  /** Seconds of the turn under way, where turns are counted. */
  readonly pace: number;
  /** Downward force that nobody supplies, body weights, where the skis may leave the snow. */
  readonly pull: number;
  readonly paceRate: number;
}

export function runShape(over: Over, uneven: boolean, mayFly: boolean): RunShape {
  const states = [...BASIC_STATES];
  const controls = [...BASIC_CONTROLS];
  const add = (to: string[], name: string, wanted: boolean) => (wanted ? to.push(name) - 1 : -1);
  return {
    over,
    states,
    controls,
    down: add(states, 'way down', uneven),
    pace: add(states, 'length of the turn', over === 'turns'),
    pull: add(controls, 'pull', mayFly),
    paceRate: add(controls, 'change of pace', over === 'turns'),
  };
}

/** Readings of the row formula after the rates of the states, over the unit the run is counted in. */
export const ROW = {
  seconds: 0,
  across: 1,
  down: 2,
  distance: 3,
  friction: 4,
  scrape: 5,
  drag: 6,
  legs: 7,
  gravity: 8,
  /** No rates: values of the instant. */
  skiSpeed: 9,
  curvature: 10,
  own: 11,
} as const;
/** How many of them are rates. */
export const ROW_RATES = 9;

export interface RunFormulas {
  /** Rates of the states and the cost; data: edge angle, whether the pace may change. */
  readonly stage: Formula;
  /** Rates of the states and the readings of `ROW`, in joules and metres; data as the stage's. */
  readonly row: Formula;
  /** Limits at a node, as `LIMITS` says; data: bite, bite times the shelf's angle and its room, edge angle. */
  readonly limits: Formula;
}

/** Data of the stage and row formulas a stage. */
export const STAGE_DATA = 2;
export const LIMIT_DATA = 3;
/** Limits at a node; the wall where it can break. */
export const LIMITS = ['hold', 'wall'] as const;

export function runFormulas(run: FullConditions, shape: RunShape, ground: SmoothGround): RunFormulas {
  return {
    stage: compile(run, shape, ground, false),
    row: compile(run, shape, ground, true),
    limits: limitFormula(run, shape),
  };
}

function compile(run: FullConditions, shape: RunShape, ground: SmoothGround, rows: boolean): Formula {
  const t = new Tape();
  const x = shape.states.map(() => t.input());
  const u = shape.controls.map(() => t.input());
  const datum = t.datum();
  const free = t.datum();
  const one = t.constant(1);
  const lean = x[LEAN];
  const speed = x[SPEED];
  const edge = shape.over === 'turns' ? lean : datum;
  const own = ownCurvature(t, run.turn, run.outerShare * run.mass * GRAVITY, edge, x[PUSH]);
  const curvature = t.add(own, u[MISMATCH]);
  const sinLean = t.sine(lean);
  const cosLean = t.cosine(lean);
  const down = t.cosine(x[HEADING]);
  const uneven = shape.down >= 0;
  const at = uneven ? x[shape.down] : one;
  const sine = uneven ? t.external(ground.sine, at, at) : t.constant(ground.alpha.sine);
  const cosine = uneven ? t.external(ground.cosine, at, at) : t.constant(ground.alpha.cosine);
  // The ground's own curve along the way.
  const bend = uneven ? t.multiply(t.external(ground.curvature, at, at), t.square(down)) : null;
  let over = massOverSkis(t, x[LEG], lean, curvature);
  if (bend) over = t.subtract(over, t.multiply(x[LEG], cosLean, bend));
  const skiSpeed = t.divide(speed, over);
  const pace =
    shape.over === 'time'
      ? { seconds: one, metres: skiSpeed }
      : shape.over === 'distance'
        ? { seconds: t.reciprocal(skiSpeed), metres: one }
        : { seconds: x[shape.pace], metres: t.multiply(skiSpeed, x[shape.pace]) };
  const scrape = scrapeShare(t, u[MISMATCH], null, t.constant(run.scrape), t.constant(run.contactLength / 4));
  const intoSnow = bend
    ? t.add(t.scale(cosine, GRAVITY), t.multiply(speed, skiSpeed, bend))
    : t.scale(cosine, GRAVITY);
  const downhill = t.scale(sine, GRAVITY);
  const friction = t.constant(run.friction);
  const drag = t.constant((run.airDensity * run.dragArea) / (2 * run.mass));
  const pull = shape.pull >= 0 ? u[shape.pull] : null;
  const rates = legRates(
    t,
    {
      heading: x[HEADING],
      speed,
      lean,
      leanRate: x[LEAN_RATE],
      leg: x[LEG],
      legSpeed: x[LEG_SPEED],
      push: x[PUSH],
      curvature,
      scrape,
      downhill,
      intoSnow,
      friction,
      drag,
    },
    pace,
  );
  const upward = t.subtract(t.multiply(x[LEG_SPEED], cosLean), t.multiply(x[LEG], sinLean, x[LEAN_RATE]));
  // What the mass gains along the way by being lifted towards the centre of a dip, as by swinging towards a turn's.
  const along = bend ? t.add(rates.speed, t.multiply(upward, bend, pace.metres)) : rates.speed;
  const net = pull ? t.subtract(x[PUSH], pull) : x[PUSH];
  const lengthening = pull
    ? t.subtract(rates.legSpeed, t.scale(t.multiply(pull, pace.seconds), GRAVITY))
    : rates.legSpeed;
  const way = t.multiply(down, pace.metres);
  const outputs: Term[] = [
    rates.heading,
    along,
    rates.lean,
    rates.leanRate,
    rates.leg,
    lengthening,
    t.multiply(u[PUSH_RATE], pace.seconds),
  ];
  if (uneven) outputs.push(way);
  if (shape.pace >= 0) outputs.push(t.multiply(free, u[shape.paceRate]));
  if (!rows) {
    let cost = t.add(
      t.square(t.scale(u[MISMATCH], 1 / MISMATCH_UNIT)),
      t.scale(t.square(t.scale(t.shift(x[LEG], -run.legRest), 1 / LEG_UNIT)), LEG_COST),
      t.scale(t.square(u[PUSH_RATE]), PUSH_RATE_COST),
    );
    if (pull) cost = t.add(cost, t.scale(pull, PULL_COST), t.scale(t.square(pull), PULL_SQUARED));
    cost = t.multiply(cost, pace.seconds);
    if (shape.paceRate >= 0) cost = t.add(cost, t.scale(t.square(u[shape.paceRate]), PACE_COST));
    return t.compile([...outputs, cost]);
  }
  const { mass } = run;
  const push = t.multiply(x[PUSH], pace.seconds);
  const resisted = t.scale(t.multiply(push, speed), mass * GRAVITY);
  const outward = t.add(t.multiply(x[LEG], cosLean, x[LEAN_RATE]), t.multiply(x[LEG_SPEED], sinLean));
  const across = t.sine(x[HEADING]);
  const fall = t.subtract(t.multiply(speed, down), t.multiply(outward, across));
  return t.compile([
    ...outputs,
    pace.seconds,
    t.multiply(across, pace.metres),
    way,
    pace.metres,
    t.multiply(friction, resisted),
    t.multiply(scrape, resisted),
    t.scale(t.multiply(drag, speed, t.square(speed), pace.seconds), mass),
    t.scale(t.multiply(net, x[LEG_SPEED], pace.seconds), mass * GRAVITY),
    t.scale(
      t.multiply(t.subtract(t.multiply(sine, fall), t.multiply(cosine, upward)), pace.seconds),
      mass * GRAVITY,
    ),
    skiSpeed,
    curvature,
    own,
  ]);
}

/** What the shelf leaves, room − ψ·bite (see `holdData`), and what the wall does. */
function limitFormula(run: FullConditions, shape: RunShape): Formula {
  const t = new Tape();
  const x = shape.states.map(() => t.input());
  const share = t.datum();
  const room = t.datum();
  const edge = t.datum();
  const hold = t.subtract(room, t.multiply(x[LEAN], share));
  if (!canBreak(run.turn, run.wallStrength)) return t.compile([hold]);
  const loadPerPush = run.outerShare * run.mass * GRAVITY;
  const strength = t.constant(run.wallStrength / loadPerPush);
  return t.compile([hold, wallRoom(t, run.turn, loadPerPush, strength, edge, x[LEAN], x[PUSH])]);
}
