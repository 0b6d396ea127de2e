/**
 * The equations of motion on the snow. State: place x, y in the unrolled slope, heading χ and speed v of the
 * velocity, drift δ of the ski's axis ahead of the velocity (positive to the right, like χ), distance, and the
 * work done by friction, drag and skidding.
 */

import { GRAVITY } from './balance.ts';
import type { FullConditions } from './run-conditions.ts';
import type { SnowContact } from './snow-contact.ts';

export const X = 0;
export const Y = 1;
export const HEADING = 2;
export const SPEED = 3;
export const DRIFT = 4;
export const DISTANCE = 5;
export const FRICTION_WORK = 6;
export const DRAG_WORK = 7;
export const SKID_WORK = 8;
export const STATE_SIZE = 9;

/** How the ski is running, which decides what turns it. */
export const Mode = { Holding: 0, Slipping: 1, Changeover: 2, Flat: 4, Banked: 5 } as const;
export type Mode = (typeof Mode)[keyof typeof Mode];

/** Slower than this the run is over: the equations divide by the speed. m/s */
export const STOPPED = 0.3;

/** Writes the rates of change, given a contact already solved for this state. */
export function motion(
  run: FullConditions,
  contact: SnowContact,
  mode: Mode,
  state: Float64Array,
  rate: Float64Array,
): void {
  const v = Math.max(state[SPEED], 0.5 * STOPPED);
  const drift = state[DRIFT];
  const { side, sideways, outward, curvature, bite, down, across, alongDrift } = contact;
  const asEdged = side * v * curvature;
  const settle = v / (0.5 * run.contactLength);
  let turning = asEdged;
  let drifting = 0;
  switch (mode) {
    case Mode.Holding:
      // Along the edge; with the snow pushing outwards through a half-taken bite, as fast as the forces say.
      if (contact.needed < 0) turning = (side * (sideways - outward)) / (run.mass * v);
      drifting = asEdged - turning - bite * settle * drift;
      break;
    case Mode.Changeover:
      // Light skis fall in with their own direction while the mass crosses over them.
      drifting = -settle * drift;
      break;
    case Mode.Slipping:
    case Mode.Flat:
      turning = (side * (sideways * alongDrift - outward)) / (run.mass * v);
      drifting = asEdged * alongDrift - turning;
      break;
    case Mode.Banked:
      break;
  }
  // The snow's force is square to the ski; on a ski yawed into the turn part of it points backwards. A yaw the
  // other way is no brake: the ski runs off its shelf.
  const brake = sideways > 0 && side * drift > 0 ? sideways * Math.sin(Math.abs(drift)) : 0;
  const friction = run.friction * contact.load;
  const drag = 0.5 * run.airDensity * run.dragArea * v * v;
  rate[X] = v * across;
  rate[Y] = v * down;
  rate[HEADING] = turning;
  rate[SPEED] = GRAVITY * contact.sine * down - (friction + drag + brake) / run.mass;
  rate[DRIFT] = drifting;
  rate[DISTANCE] = v;
  rate[FRICTION_WORK] = friction * v;
  rate[DRAG_WORK] = drag * v;
  rate[SKID_WORK] = brake * v;
}
