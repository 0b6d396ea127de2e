/**
 * Off the snow: when the ground falls away faster than the skier does (F_N would be negative), a point mass with
 * drag flies until it meets the ground again. On landing the part of the velocity into the ground is lost.
 */

import { DormandPrince } from '../numeric/index.ts';
import { GRAVITY } from './balance.ts';
import type { FullConditions } from './run-conditions.ts';

/** Horizontal across x, horizontal down the hill h, height z, their rates, distance flown and drag work. */
const SIZE = 8;

export interface Landing {
  readonly t: number;
  readonly x: number;
  readonly y: number;
  readonly heading: number;
  readonly speed: number;
  readonly distance: number;
  readonly drag: number;
  /** Energy lost into the ground, J. */
  readonly lost: number;
  /** False when the time ran out in the air; the state is then the last one flown. */
  readonly down: boolean;
  /** Height over the start, m. */
  readonly height: number;
}

/** What a row needs in the air. Heading is that of the velocity seen in the ground below. */
export type FlightRow = (
  t: number,
  x: number,
  y: number,
  heading: number,
  speed: number,
  distance: number,
  height: number,
  drag: number,
) => void;

/**
 * Flies from the take-off state to the ground or `tEnd`, calling `row` at multiples of `outputStep` from the
 * `firstRow`th on.
 *
 * @param from t, x, y, heading, speed, distance and drag work at take-off
 */
export function fly(
  run: FullConditions,
  from: { t: number; x: number; y: number; heading: number; speed: number; distance: number; drag: number },
  tEnd: number,
  outputStep: number,
  firstRow: number,
  row: FlightRow,
): Landing {
  const { profile, mass } = run;
  const k = (run.airDensity * run.dragArea) / (2 * mass);
  const solver = new DormandPrince(
    (_t, s, out) => {
      const v = Math.hypot(s[3], s[4], s[5]);
      out[0] = s[3];
      out[1] = s[4];
      out[2] = s[5];
      out[3] = -k * v * s[3];
      out[4] = -k * v * s[4];
      out[5] = -k * v * s[5] - GRAVITY;
      out[6] = v;
      out[7] = mass * k * v * v * v;
    },
    SIZE,
    // The ground may come up between two steps; short steps see it.
    { relative: 1e-10, absolute: 1e-10, maxStep: 0.05 },
  );
  const along = (h: number) => profile.along(h);
  const clearance = (_t: number, s: Float64Array) => s[2] - profile.height(along(s[1]));
  const sine = profile.sine(from.y);
  const downhill = from.speed * Math.cos(from.heading);
  solver.start(from.t, [
    from.x,
    profile.horizontal(from.y),
    profile.height(from.y),
    from.speed * Math.sin(from.heading),
    downhill * Math.sqrt(1 - sine * sine),
    -downhill * sine,
    from.distance,
    from.drag,
  ]);
  const state = new Float64Array(SIZE);
  const view = (t: number, s: Float64Array): Parameters<FlightRow> => {
    const y = along(s[1]);
    const below = profile.sine(y);
    const tangent = s[4] * Math.sqrt(1 - below * below) - s[5] * below;
    return [t, s[0], y, Math.atan2(s[3], tangent), Math.hypot(s[3], s[4], s[5]), s[6], s[2], s[7]];
  };
  let next = firstRow;
  let old = 0;
  let down = false;
  let t = from.t;
  while (!down && t < tEnd) {
    solver.step(tEnd);
    const now = clearance(solver.t, solver.y);
    t = solver.t;
    state.set(solver.y);
    if (now <= 0) {
      down = true;
      if (old > 0) t = solver.locate(clearance, old, now, state);
    }
    old = now;
    const rowState = new Float64Array(SIZE);
    for (; next * outputStep < t - 1e-9; next++) {
      solver.at(next * outputStep, rowState);
      row(...view(next * outputStep, rowState));
    }
  }
  const [, x, y, heading, speed, distance, height, drag] = view(t, state);
  const below = profile.sine(y);
  const kept = down
    ? Math.hypot(state[3], state[4] * Math.sqrt(1 - below * below) - state[5] * below)
    : speed;
  // A flight too short to leave the ground ends a hair below it; the book counts that height too.
  const sunk = down ? height - profile.height(y) : 0;
  const lost = 0.5 * mass * (speed * speed - kept * kept) + mass * GRAVITY * sunk;
  return { t, x, y, heading, speed: kept, distance, drag, lost, down, height };
}
