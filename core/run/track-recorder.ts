/**
 * Follows a solved run stage by stage, writes rows at even times, and keeps the energy book by quadratures that
 * took no part in the solution.
 */

import { BITE, GRAVITY, GRIP_FROM, wallUsed } from '../skier/index.ts';
import type { RunPlan } from './edged-plan.ts';
import type { FullConditions } from './run-conditions.ts';
import {
  HEADING,
  LEAN,
  LEAN_RATE,
  LEG,
  LEG_SPEED,
  MISMATCH,
  PUSH,
  ROW,
  type RunShape,
  SPEED,
} from './run-formula.ts';
import type { StageFlow } from './stage-flow.ts';
import {
  COLUMNS,
  type Column,
  ENERGY_COLUMNS,
  type EnergyColumn,
  FLAT_UP_TO,
  Phase,
  type RunEnd,
  SLIPPING_FROM,
  type Track,
  type TrackEvent,
} from './track.ts';

/** Of a run that never tips to where grip is judged, the rows from this share of its steepest edge on count. */
const JUDGED_SHARE = 0.8;

/** A pull of more than this many body weights means that the skis are off the snow. */
const PULLED = 0.01;
const STRAIGHT = 1e-9;

/** A solved run, as far as rows are read from it. */
export interface SolvedRun {
  readonly run: FullConditions;
  readonly shape: RunShape;
  readonly plan: RunPlan;
  readonly x: Float64Array;
  readonly u: Float64Array;
  readonly flow: StageFlow;
}

export function readTrack(solved: SolvedRun, outputStep: number): Track {
  const { shape, plan, x, u, flow, run } = solved;
  const { nodes } = plan;
  const n = shape.states.length;
  const m = shape.controls.length;
  const N = nodes.length - 1;
  const rows = new Rows(solved);
  const { at } = flow;
  const before = new Float64Array(at.length);
  const sums = new Float64Array(at.length - n);
  const between = new Float64Array(at.length);
  let next = 0;
  let ended = false;
  for (let k = 0; k < N && !ended; k++) {
    at.set(x.subarray(k * n, k * n + n));
    at.set(sums, n);
    flow.hold(u, k * m, plan.ends.begins?.has(k) ? 1 : 0);
    const pull = shape.pull >= 0 ? u[k * m + shape.pull] : 0;
    const mismatch = u[k * m + MISMATCH];
    const from = nodes[k];
    const to = nodes[k + 1];
    const seconds = (to - from) * flow.read(from, at)[n + ROW.seconds];
    const parts = flow.stepsFor(from, to, seconds, x, k * n);
    const step = (to - from) / parts;
    for (let p = 0; p < parts && !ended; p++) {
      const place = from + p * step;
      const ratesBefore = flow.read(place, at).slice();
      before.set(at);
      flow.step(place, step);
      const ratesAfter = flow.read(place + step, at).slice();
      const time = at[n + ROW.seconds];
      const began = before[n + ROW.seconds];
      // The last instant on the ground that is known.
      const out = run.profile.length;
      let share = 1;
      if (at[n + ROW.down] >= out) {
        share = crossing(before, at, ratesBefore, ratesAfter, step, n + ROW.down, out);
        ended = true;
      }
      const last = ended || (k === N - 1 && p === parts - 1);
      const until = began + share * (time - began);
      for (; next * outputStep <= (last ? until : time) - 1e-12; next++) {
        const s = shareAt(before, at, ratesBefore, ratesAfter, step, n + ROW.seconds, next * outputStep);
        if (last && s > share) break;
        hermite(before, at, ratesBefore, ratesAfter, step, s, between);
        rows.add(place + s * step, between, mismatch, pull);
      }
      if (last) {
        hermite(before, at, ratesBefore, ratesAfter, step, share, between);
        rows.add(place + share * step, between, mismatch, pull);
      }
    }
    sums.set(at.subarray(n));
    if (plan.ends.traverses?.has(k + 1)) rows.pass('traverse', at);
  }
  return rows.finish(ended ? 'end of slope' : plan.end);
}

/** All values at a share of a step, by cubics through values and rates. */
function hermite(
  a: Float64Array,
  b: Float64Array,
  ra: Float64Array,
  rb: Float64Array,
  step: number,
  s: number,
  out: Float64Array,
): void {
  for (let i = 0; i < out.length; i++) out[i] = cubic(a[i], b[i], step * ra[i], step * rb[i], s);
}

function cubic(a: number, b: number, da: number, db: number, s: number): number {
  const r = 1 - s;
  return r * r * ((1 + 2 * s) * a + s * da) + s * s * ((3 - 2 * s) * b - r * db);
}

/** Share of the step at which an ascending value is reached. */
function shareAt(
  a: Float64Array,
  b: Float64Array,
  ra: Float64Array,
  rb: Float64Array,
  step: number,
  i: number,
  value: number,
): number {
  let low = 0;
  let high = 1;
  let s = Math.min(1, Math.max(0, (value - a[i]) / (b[i] - a[i])));
  for (let round = 0; round < 60; round++) {
    const miss = cubic(a[i], b[i], step * ra[i], step * rb[i], s) - value;
    if (Math.abs(miss) < 1e-14 * Math.max(1, Math.abs(value))) break;
    if (miss > 0) high = s;
    else low = s;
    const newton = s - miss / (b[i] - a[i]);
    s = newton > low && newton < high ? newton : 0.5 * (low + high);
  }
  return s;
}

const crossing = shareAt;

class Rows {
  readonly #columns = Object.fromEntries(COLUMNS.map(c => [c, [] as number[]])) as Record<Column, number[]>;
  readonly #energy = Object.fromEntries(ENERGY_COLUMNS.map(c => [c, [] as number[]])) as Record<
    EnergyColumn,
    number[]
  >;
  readonly #phase: number[] = [];
  readonly #events: TrackEvent[] = [];
  #begun: { height: number; kinetic: number; swing: number } | null = null;
  #place = 0;

  constructor(private readonly solved: SolvedRun) {}

  add(place: number, state: Float64Array, mismatch: number, pull: number): void {
    const { run, shape, plan, flow } = this.solved;
    const n = shape.states.length;
    const { mass } = run;
    const c = this.#columns;
    const t = state[n + ROW.seconds];
    const before = c.t.length - 1;
    if (before >= 0 && t <= c.t[before] + 1e-12) return;
    this.#place = place;
    const out = flow.read(place, state);
    const heading = state[HEADING];
    const lean = state[LEAN];
    const leg = state[LEG];
    const offset = leg * Math.sin(lean);
    const height = leg * Math.cos(lean);
    const x = state[n + ROW.across];
    const y = state[n + ROW.down];
    const curvature = out[n + ROW.curvature];
    const edge = shape.over === 'turns' ? lean : plan.edgeAt(place);
    const side = edge < 0 ? -1 : 1;
    const net = Math.max(0, state[PUSH] - pull);
    const flies = pull > PULLED;
    const load = flies ? 0 : net;
    const slip = (Math.abs(mismatch) * run.contactLength) / 4;
    c.t.push(t);
    c.x.push(x);
    c.y.push(y);
    c.massX.push(x + offset * Math.cos(heading));
    c.massY.push(y - offset * Math.sin(heading));
    c.heading.push(heading);
    c.speed.push(state[SPEED]);
    c.skiSpeed.push(out[n + ROW.skiSpeed]);
    c.edge.push(edge);
    c.lean.push(lean);
    c.leanRate.push(state[LEAN_RATE]);
    c.angulation.push(side * (edge - lean));
    c.leg.push(leg);
    c.legSpeed.push(state[LEG_SPEED]);
    c.load.push(load * mass * GRAVITY);
    c.loadBodyWeights.push(load);
    c.curvature.push(curvature);
    c.radius.push(Math.abs(curvature) > STRAIGHT ? 1 / Math.abs(curvature) : Infinity);
    c.mismatch.push(mismatch);
    c.slip.push(slip);
    const bevel = shape.over === 'turns' ? 0 : run.baseBevel * Math.tanh(Math.abs(edge) / BITE);
    c.hold.push(Math.abs(edge) - bevel - side * lean);
    c.wall.push(wallUsed(run.turn, edge, lean, run.outerShare * load * mass * GRAVITY, run.wallStrength));
    c.distance.push(state[n + ROW.distance]);
    c.drop.push(-run.profile.height(y));
    const phase = flies
      ? Phase.Airborne
      : slip > SLIPPING_FROM
        ? Phase.Slipping
        : Math.abs(edge) < FLAT_UP_TO
          ? Phase.Flat
          : Phase.Holding;
    this.#note(phase, t);
    this.#phase.push(phase);
    this.#book(state, n, offset, height);
  }

  /** Closes the book on the row just added. */
  #book(state: Float64Array, n: number, offset: number, height: number): void {
    const { run, shape } = this.solved;
    const { mass, profile } = run;
    const e = this.#energy;
    const across =
      state[LEG] * Math.cos(state[LEAN]) * state[LEAN_RATE] + state[LEG_SPEED] * Math.sin(state[LEAN]);
    const up =
      state[LEG_SPEED] * Math.cos(state[LEAN]) - state[LEG] * Math.sin(state[LEAN]) * state[LEAN_RATE];
    const swing = 0.5 * mass * (across * across + up * up);
    const kineticNow = 0.5 * mass * state[SPEED] * state[SPEED] + swing;
    const sine = profile.sine(0);
    const cosine = Math.sqrt(1 - sine * sine);
    const heightNow = height * cosine - (state[n + ROW.down] - offset * Math.sin(state[HEADING])) * sine;
    this.#begun ??= { height: heightNow, kinetic: kineticNow, swing };
    const kinetic = kineticNow - this.#begun.kinetic;
    // On even ground the drop is known without following anything.
    const drop = shape.down < 0 ? mass * GRAVITY * (this.#begun.height - heightNow) : state[n + ROW.gravity];
    const legs = state[n + ROW.legs];
    const friction = state[n + ROW.friction];
    const drag = state[n + ROW.drag];
    const scrape = state[n + ROW.scrape];
    e.drop.push(drop);
    e.kinetic.push(kinetic);
    e.swing.push(swing - this.#begun.swing);
    e.legs.push(legs);
    e.friction.push(friction);
    e.drag.push(drag);
    e.scrape.push(scrape);
    const error = drop + legs - kinetic - friction - drag - scrape;
    e.errorRatio.push(Math.abs(error) / Math.max(Math.abs(drop), this.#begun.kinetic));
  }

  #note(phase: Phase, t: number): void {
    const last = this.#phase[this.#phase.length - 1];
    const c = this.#columns;
    const i = c.t.length - 1;
    const note = (name: string) =>
      this.#events.push({ name, t, x: c.x[i], y: c.y[i], heading: c.heading[i], speed: c.speed[i] });
    if (phase === Phase.Slipping && last !== Phase.Slipping) note('slip begins');
    if (phase !== Phase.Slipping && last === Phase.Slipping) note('slip ends');
    if (phase === Phase.Airborne && last !== Phase.Airborne) note('airborne');
    if (phase !== Phase.Airborne && last === Phase.Airborne) note('landed');
  }

  /** Something at a node. */
  pass(name: string, state: Float64Array): void {
    const n = this.solved.shape.states.length;
    const [t, x, y] = [ROW.seconds, ROW.across, ROW.down].map(i => state[n + i]);
    this.#events.push({ name, t, x, y, heading: state[HEADING], speed: state[SPEED] });
  }

  finish(end: RunEnd): Track {
    const columns = Object.fromEntries(
      COLUMNS.map(name => [name, Float64Array.from(this.#columns[name])]),
    ) as Record<Column, Float64Array>;
    const energy = Object.fromEntries(
      ENERGY_COLUMNS.map(name => [name, Float64Array.from(this.#energy[name])]),
    ) as Record<EnergyColumn, Float64Array>;
    const phase = Uint8Array.from(this.#phase);
    const last = phase.length - 1;
    const most = (of: Float64Array) => of.reduce((a, b) => Math.max(a, Math.abs(b)), 0);
    const timeIn = (which: Phase) => {
      let sum = 0;
      for (let i = 0; i < last; i++) if (phase[i] === which) sum += columns.t[i + 1] - columns.t[i];
      return sum;
    };
    const steepest = columns.edge.reduce((most, edge) => Math.max(most, Math.abs(edge)), 0);
    const judgedFrom = Math.max(FLAT_UP_TO, Math.min(GRIP_FROM, JUDGED_SHARE * steepest));
    const judged = columns.hold.filter(
      (_, i) =>
        (phase[i] === Phase.Holding || phase[i] === Phase.Slipping) &&
        Math.abs(columns.edge[i]) >= judgedFrom,
    );
    return {
      ...columns,
      phase,
      energy,
      events: this.#events,
      summary: {
        seconds: columns.t[last],
        distance: columns.distance[last],
        drop: columns.drop[last],
        endSpeed: columns.speed[last],
        maxSpeed: most(columns.speed),
        maxLoadBodyWeights: most(columns.loadBodyWeights),
        maxLean: most(columns.lean),
        minLeg: columns.leg.reduce((a, b) => Math.min(a, b), Infinity),
        maxMismatch: most(columns.mismatch),
        minHold: judged.length === 0 ? Number.NaN : judged.reduce((a, b) => Math.min(a, b), Infinity),
        maxWall: most(columns.wall),
        skidSeconds: timeIn(Phase.Slipping),
        airSeconds: timeIn(Phase.Airborne),
        turns: this.solved.plan.turnsAt(this.#place),
        energyErrorRatio: most(energy.errorRatio),
        end,
      },
    };
  }
}
