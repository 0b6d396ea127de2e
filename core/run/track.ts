/**
 * A run as columns of numbers at even times. SI and radians; one entry a row, all arrays of one length.
 */

import { BITE } from '../skier/index.ts';
import { DEGREE } from '../units/index.ts';

/** What the ski was doing in a row. */
export const Phase = { Holding: 0, Slipping: 1, Airborne: 3, Flat: 4 } as const;
export type Phase = (typeof Phase)[keyof typeof Phase];

/** Mean slip over the edge beyond which a ski is said to slip, rad (1°, a choice: twice that at tip and tail). */
export const SLIPPING_FROM = DEGREE;

/** Edge angle under which a ski is said to lie flat and its hold is not judged: that over which it comes to bite. */
export const FLAT_UP_TO = BITE;

export interface EnergyColumns {
  /** Potential energy that the mass has given up since the start, J. */
  readonly drop: Float64Array;
  /** Gain of kinetic energy since the start, of the mass with its swing across and up and down, J. */
  readonly kinetic: Float64Array;
  /** The part of it that is in the swing, J. */
  readonly swing: Float64Array;
  /** Work of the legs since the start, positive where they put in, J. */
  readonly legs: Float64Array;
  readonly friction: Float64Array;
  readonly drag: Float64Array;
  /** Lost to edges that scrape because the path is not the ski's own, J. */
  readonly scrape: Float64Array;
  /** How far the book fails to close, over the larger of the drop and the starting energy. */
  readonly errorRatio: Float64Array;
}

export interface Track {
  readonly t: Float64Array;
  /** Of the skis: across the slope, positive to the right looking down, m. */
  readonly x: Float64Array;
  /** Of the skis: along the ground down the fall line, m. */
  readonly y: Float64Array;
  /** Of the skier's mass, seen square to the slope, m. */
  readonly massX: Float64Array;
  readonly massY: Float64Array;
  /** Of the skis' path from the fall line, positive to the right, rad. */
  readonly heading: Float64Array;
  /** Of the skier's mass along the skis' path, m/s. */
  readonly speed: Float64Array;
  /** Of the skis, m/s: more than the mass's where they go the longer way round. */
  readonly skiSpeed: Float64Array;
  /** Signed edge angle, positive in right turns, rad. */
  readonly edge: Float64Array;
  /** Lean of leg and force from the slope's normal, positive to the right, rad. */
  readonly lean: Float64Array;
  /** How fast the lean changes, rad/s. */
  readonly leanRate: Float64Array;
  /** Edge angle less lean, counted towards the side of the edge, rad. */
  readonly angulation: Float64Array;
  /** Skis to the mass, m. */
  readonly leg: Float64Array;
  /** How fast the leg stretches, m/s. */
  readonly legSpeed: Float64Array;
  /** Force between skis and snow, N; 0 in the air. */
  readonly load: Float64Array;
  readonly loadBodyWeights: Float64Array;
  /** Of the skis' path, positive to the right, 1/m. */
  readonly curvature: Float64Array;
  /** Of the skis' path, m; Infinity where it is straight. */
  readonly radius: Float64Array;
  /** Curvature of the path less that of the ski's own arc, positive to the right, 1/m. */
  readonly mismatch: Float64Array;
  /** Mean angle at which the edge slips because of it, |q| L/4, rad. */
  readonly slip: Float64Array;
  /**
   * θ − b − ψ under the boot for the side the edge is on, rad; the bevel counts as far as the edge has bitten. See
   * `phase` for where it is judged and `holdAtEnds` for the tip and tail.
   */
  readonly hold: Float64Array;
  /** Part of the strength of the groove's wall that is used; at one it breaks. 0 where it bears everything. */
  readonly wall: Float64Array;
  /** Along the skis' path, m. */
  readonly distance: Float64Array;
  /** Of the ground under the skis, m. */
  readonly drop: Float64Array;
  readonly phase: Uint8Array;
  readonly energy: EnergyColumns;
  readonly events: readonly TrackEvent[];
  readonly summary: TrackSummary;
}

/** Something between two rows. */
export interface TrackEvent {
  /** `slip begins`, `slip ends`, `airborne`, `landed`, `traverse`. */
  readonly name: string;
  readonly t: number;
  readonly x: number;
  readonly y: number;
  readonly heading: number;
  readonly speed: number;
}

export type RunEnd = 'programme over' | 'end of slope' | 'stopped';

export interface TrackSummary {
  readonly seconds: number;
  readonly distance: number;
  readonly drop: number;
  readonly endSpeed: number;
  readonly maxSpeed: number;
  readonly maxLoadBodyWeights: number;
  /** Greatest lean to either side, rad. */
  readonly maxLean: number;
  readonly minLeg: number;
  /** Greatest mismatch to either side, 1/m. */
  readonly maxMismatch: number;
  /** Least hold under the boot where it is judged (on an edge past the change of edges), rad; NaN when it never is. */
  readonly minHold: number;
  /** Greatest part of the wall's strength that is used. */
  readonly maxWall: number;
  /** Time with a slip over `SLIPPING_FROM`. */
  readonly skidSeconds: number;
  readonly airSeconds: number;
  /** Turns begun. */
  readonly turns: number;
  readonly energyErrorRatio: number;
  readonly end: RunEnd;
}

/** Columns of a track beside its phases and its book. */
export const COLUMNS = [
  't',
  'x',
  'y',
  'massX',
  'massY',
  'heading',
  'speed',
  'skiSpeed',
  'edge',
  'lean',
  'leanRate',
  'angulation',
  'leg',
  'legSpeed',
  'load',
  'loadBodyWeights',
  'curvature',
  'radius',
  'mismatch',
  'slip',
  'hold',
  'wall',
  'distance',
  'drop',
] as const;

export type Column = (typeof COLUMNS)[number];

export const ENERGY_COLUMNS = [
  'drop',
  'kinetic',
  'swing',
  'legs',
  'friction',
  'drag',
  'scrape',
  'errorRatio',
] as const;

export type EnergyColumn = (typeof ENERGY_COLUMNS)[number];
