/**
 * One row of the track while the skis are on the snow.
 */

import { holdUnderBoot } from './balance.ts';
import {
  DISTANCE,
  DRAG_WORK,
  DRIFT,
  FRICTION_WORK,
  HEADING,
  Mode,
  SKID_WORK,
  SPEED,
  X,
  Y,
} from './equations.ts';
import type { FullConditions } from './run-conditions.ts';
import type { SnowContact } from './snow-contact.ts';
import { Phase } from './track.ts';
import type { Row } from './track-recorder.ts';

/** Fills everything but the time and the landing loss, from a contact already solved for this state. */
export function fillRow(
  row: Row,
  run: FullConditions,
  contact: SnowContact,
  mode: Mode,
  state: Float64Array,
): void {
  const { edge, side, bite, load, normal, needed, sideways } = contact;
  const changing = mode === Mode.Changeover && (contact.margin < 0 || bite < 1);
  row.x = state[X];
  row.y = state[Y];
  row.heading = state[HEADING];
  row.speed = state[SPEED];
  row.drift = state[DRIFT];
  row.edge = side * edge;
  row.side = side;
  // A shelf at its limit leans the force as far as the shelf is steep, without the arctangent of its tangent.
  const limited = sideways > 0 && sideways === contact.shelf && normal > 0;
  row.lean = limited ? edge - run.baseBevel : Math.atan2(sideways, normal);
  row.load = load;
  row.radius = bite > 0 ? contact.radius / bite : Infinity;
  // Passing from turn to turn the snow is asked for no more than it gives; see changeoverStretches.
  const atEdge = needed / Math.max(contact.alongDrift, 1e-3);
  const asked = changing || atEdge === sideways ? row.lean : Math.atan2(atEdge, normal);
  // Ideal carving tilts the base-edge face itself with the lean, whatever the bevel.
  row.hold = mode === Mode.Banked ? 0 : holdUnderBoot(edge, run.baseBevel, asked);
  row.distance = state[DISTANCE];
  row.height = run.profile.height(state[Y]);
  row.phase = phaseOf(mode, changing, bite);
  row.friction = state[FRICTION_WORK];
  row.drag = state[DRAG_WORK];
  row.skid = state[SKID_WORK];
}

function phaseOf(mode: Mode, changing: boolean, bite: number): Phase {
  if (changing) return Phase.Changeover;
  if (mode === Mode.Slipping) return Phase.Slipping;
  return mode === Mode.Flat || bite === 0 ? Phase.Flat : Phase.Holding;
}
