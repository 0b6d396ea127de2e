/**
 * What a run is made of, and the checks on it.
 */

import type { Programme } from './edge-programme.ts';
import type { SlopeProfile } from './slope-profile.ts';
import type { TurnRadius } from './turn-radius.ts';

export interface RunConditions {
  readonly turn: TurnRadius;
  readonly profile: SlopeProfile;
  readonly programme: Programme;
  /** Skier with equipment, kg. */
  readonly mass: number;
  /** Coefficient of friction ski on snow. */
  readonly friction: number;
  /** C_dA, m². */
  readonly dragArea: number;
  /** kg/m³. */
  readonly airDensity: number;
  /** m/s. */
  readonly startSpeed: number;
  /**
   * Angle of the first direction from the fall line, rad, positive to the right. Left out: banked turns start on
   * their traverse, linked turns half a first turn before the fall line, others straight down.
   */
  readonly startHeading?: number;
  /** Base bevel b, rad; 0 unless given. */
  readonly baseBevel?: number;
  /** Half of it is the travel in which drift dies away, m; 1.4 unless given. */
  readonly contactLength?: number;
  /** Part of the load on the outer ski; 0.7 unless given (60–80 %, from memory). */
  readonly outerShare?: number;
}

export interface RunOptions {
  /** Time between rows of the track, s; 0.01 unless given. */
  readonly outputStep?: number;
  /** The run is ended here at the latest, s; 300 unless given. */
  readonly maxSeconds?: number;
  /** Error allowed in a step, relative; 1e-8 unless given (1e-10 on uneven ground). */
  readonly tolerance?: number;
  /** Things to notice on the way: a gate passed, a line crossed. */
  readonly watch?: readonly RunWatch[];
}

/** A reading of the state whose change of sign is located and noted. Not looked at in the air. */
export interface RunWatch {
  readonly name: string;
  value(t: number, state: RunState): number;
  /** Sign of the change noticed; either when left out. */
  readonly direction?: 1 | -1;
  /** Ends the run. */
  readonly stop?: boolean;
}

/** The state as a watch sees it. SI, rad. */
export interface RunState {
  readonly x: number;
  readonly y: number;
  readonly heading: number;
  readonly speed: number;
  readonly drift: number;
  readonly distance: number;
}

/** Part of the load on the outer ski unless given (60–80 %, from memory). */
export const OUTER_SHARE = 0.7;

/** Conditions with every default filled in. */
export type FullConditions = Required<Omit<RunConditions, 'startHeading'>> &
  Pick<RunConditions, 'startHeading'>;

/** @throws RangeError naming the field, the value found and what is accepted */
export function fillConditions(given: RunConditions): FullConditions {
  const full = { baseBevel: 0, contactLength: 1.4, outerShare: OUTER_SHARE, ...dropUndefined(given) };
  accept('mass', full.mass, 'kg', 10, 500);
  accept('friction', full.friction, '', 0, 1);
  accept('dragArea', full.dragArea, 'm²', 0, 5);
  accept('airDensity', full.airDensity, 'kg/m³', 0, 2);
  accept('startSpeed', full.startSpeed, 'm/s', 0.5, 80);
  accept('baseBevel', full.baseBevel, 'rad', 0, 0.2);
  accept('contactLength', full.contactLength, 'm', 0.3, 3);
  accept('outerShare', full.outerShare, '', 0.1, 1);
  if (full.startHeading !== undefined) accept('startHeading', full.startHeading, 'rad', -Math.PI, Math.PI);
  return full;
}

export function accept(field: string, value: number, unit: string, low: number, high: number): void {
  if (!(value >= low && value <= high)) {
    throw new RangeError(`${field}: ${value} ${unit} found; ${low} to ${high} ${unit} is accepted`);
  }
}

function dropUndefined(given: RunConditions): RunConditions {
  return Object.fromEntries(
    Object.entries(given).filter(([, v]) => v !== undefined),
  ) as unknown as RunConditions;
}
