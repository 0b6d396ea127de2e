/**
 * A first guess at a run: the skis follow their edges as far as the shelf holds a mass on them, and the mass
 * takes the shorter way. A pendulum on end cannot be followed forward, but small swings about the skis' path can
 * be found all at once from ψ − (ℓ/g cosα) ψ̈ = A/(g cosα), which is bounded.
 */

import { BITE, GRAVITY } from '../skier/index.ts';
import type { EdgeProgramme } from './edge-programme.ts';
import { HOLD_ROOM } from './hold-data.ts';
import type { FullConditions } from './run-conditions.ts';
import { LEAST_PUSH } from './run-conditions.ts';
import type { SmoothGround } from './smooth-ground.ts';

/** A run of a mass on the skis' own path, at even times. */
export interface PointRun {
  readonly step: number;
  /** Programme's measure at each time, s or m. */
  readonly at: Float64Array;
  readonly heading: Float64Array;
  readonly speed: Float64Array;
  readonly down: Float64Array;
  readonly edge: Float64Array;
  /** Of the path and of the edge alone, 1/m. */
  readonly curvature: Float64Array;
  readonly own: Float64Array;
  /** Pull into the snow, m/s². */
  readonly normal: Float64Array;
  /** Sideways acceleration that the path asks for, m/s². */
  readonly sideways: Float64Array;
  /** The skier has come to a stand at the last time. */
  readonly stopped: boolean;
}

/** Slower than this the run is over: the equations divide by the speed. m/s */
export const STOPPED = 0.3;
const STEP = 0.01;
const STEEPEST = 1.4;

/** @param heading of the start, rad */
export function pointRun(
  run: FullConditions,
  programme: EdgeProgramme,
  ground: SmoothGround,
  heading: number,
  longest: number,
): PointRun {
  const rows: number[][] = [];
  const six = new Float64Array(6);
  const perTime = programme.per === 'time';
  const air = (run.airDensity * run.dragArea) / (2 * run.mass);
  let chi = heading;
  let speed = run.startSpeed;
  let down = 0;
  let at = 0;
  let load = 1;
  let stopped = false;
  const duration = perTime ? Math.min(programme.end, longest) : longest;
  const count = Math.max(2, Math.ceil(duration / STEP - 1e-9));
  const step = perTime ? duration / count : STEP;
  for (let i = 0; i <= count; i++) {
    const edge = programme.edge(Math.min(at, programme.end));
    const bite = Math.tanh(edge / BITE);
    run.turn.curvature(edge, load * run.outerShare * run.mass * GRAVITY, six);
    const own = bite * six[0];
    ground.sine(down, 0, six);
    const sine = six[0];
    ground.cosine(down, 0, six);
    const level = six[0];
    ground.curvature(down, 0, six);
    const along = Math.cos(chi);
    const normal = Math.max(0.2 * GRAVITY, GRAVITY * level + speed * speed * six[0] * along * along);
    const across = GRAVITY * sine * Math.sin(chi);
    // Towards the side of the edge: what the shelf holds, and what the path asks.
    const side = Math.sign(edge);
    const most =
      normal * Math.tan(Math.min(STEEPEST, Math.max(0, Math.abs(edge) - run.baseBevel + HOLD_ROOM)));
    const wanted = speed * speed * own + across;
    const given = side === 0 ? 0 : side * Math.min(side * wanted, most);
    const curvature = side === 0 ? 0 : (given - across) / (speed * speed);
    const gentle = Math.abs(bite) * curvature;
    const sideways = speed * speed * gentle + across;
    load = Math.min(5, Math.hypot(sideways, normal) / GRAVITY);
    rows.push([at, chi, speed, down, edge, gentle, own, normal, sideways]);
    if (i === count || (!perTime && at >= programme.end)) break;
    const resisted =
      (run.friction + (run.scrape * Math.abs(gentle - own) * run.contactLength) / 4) * load * GRAVITY;
    speed += step * (GRAVITY * sine * along - resisted - air * speed * speed);
    if (speed < 1.2 * STOPPED) {
      stopped = true;
      break;
    }
    chi += step * speed * gentle;
    down += step * speed * along;
    at += step * (perTime ? 1 : speed);
  }
  const column = (c: number) => Float64Array.from(rows, row => row[c]);
  return {
    step,
    at: column(0),
    heading: column(1),
    speed: column(2),
    down: column(3),
    edge: column(4),
    curvature: column(5),
    own: column(6),
    normal: column(7),
    sideways: column(8),
    stopped,
  };
}

/** Lean of a mass at height `leg` over that path: ψ − (ℓ/N) ψ̈ = A/N, level at ends that are not fixed at zero. */
export function swungLean(
  step: number,
  normal: Float64Array,
  sideways: Float64Array,
  leg: number,
  uprightStart: boolean,
  uprightEnd: boolean,
): Float64Array {
  const n = normal.length;
  const c = new Float64Array(n);
  const d = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const s = leg / (normal[i] * step * step);
    const fixed = (i === 0 && uprightStart) || (i === n - 1 && uprightEnd);
    const below = i === 0 || fixed ? 0 : i === n - 1 ? -2 * s : -s;
    const above = i === n - 1 || fixed ? 0 : i === 0 ? -2 * s : -s;
    const diagonal = fixed ? 1 : 1 + 2 * s;
    // The lean itself, not its tangent: large leans are swung through less.
    const right = fixed ? 0 : Math.atan(sideways[i] / normal[i]);
    const pivot = diagonal - below * (i > 0 ? c[i - 1] : 0);
    c[i] = above / pivot;
    d[i] = (right - below * (i > 0 ? d[i - 1] : 0)) / pivot;
  }
  for (let i = n - 2; i >= 0; i--) d[i] -= c[i] * d[i + 1];
  return d;
}

/** Push of a leg that keeps its length, body weights. */
export function balancedPush(
  sideways: number,
  normal: number,
  lean: number,
  rate: number,
  leg: number,
): number {
  const push = (sideways * Math.sin(lean) + normal * Math.cos(lean) - leg * rate * rate) / GRAVITY;
  return Math.max(2 * LEAST_PUSH, push);
}
