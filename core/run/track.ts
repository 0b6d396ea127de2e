/**
 * A run as columns of numbers at even times. SI and radians; one entry a row, all arrays of one length.
 */

/** What the ski was doing in a row. */
export const Phase = { Holding: 0, Slipping: 1, Changeover: 2, Airborne: 3, Flat: 4 } as const;
export type Phase = (typeof Phase)[keyof typeof Phase];

export interface EnergyColumns {
  /** Potential energy given up since the start, J. */
  readonly drop: Float64Array;
  /** Gain of kinetic energy since the start, J. */
  readonly kinetic: Float64Array;
  readonly friction: Float64Array;
  readonly drag: Float64Array;
  readonly skid: Float64Array;
  /** Lost on landing from a flight, J. */
  readonly landing: Float64Array;
  /** How far the book fails to close, over the larger of the drop and the starting energy. */
  readonly errorRatio: Float64Array;
}

export interface Track {
  readonly t: Float64Array;
  /** Across the slope, positive to the right looking down, m. */
  readonly x: Float64Array;
  /** Along the ground down the fall line, m. */
  readonly y: Float64Array;
  /** Of the velocity from the fall line, positive to the right, rad. */
  readonly heading: Float64Array;
  readonly speed: Float64Array;
  /** Ski axis ahead of the velocity, positive to the right, rad. */
  readonly drift: Float64Array;
  /** Signed edge angle, positive in right turns, rad. */
  readonly edge: Float64Array;
  /** Lean of the resultant that the snow gives, signed like `edge`, rad. */
  readonly lean: Float64Array;
  /** |edge| − |lean| towards the turn, rad. */
  readonly angulation: Float64Array;
  /** Force between skis and snow, N. */
  readonly load: Float64Array;
  readonly loadBodyWeights: Float64Array;
  /** Radius the skis ask for, m; Infinity where they lie flat or fly. */
  readonly radius: Float64Array;
  /** θ − b − ψ under the boot for the turn the edge asks for, rad; see `phase` for where it is judged and `holdAtEnds` for
   *  the tip and tail. */
  readonly hold: Float64Array;
  readonly distance: Float64Array;
  readonly drop: Float64Array;
  readonly phase: Uint8Array;
  readonly energy: EnergyColumns;
  readonly events: readonly TrackEvent[];
  readonly summary: TrackSummary;
}

/** Something located in time between the rows. */
export interface TrackEvent {
  /** `hold lost`, `hold found` (or relieved by the change of edge), `airborne`, `landed`, `traverse`, a watch's name. */
  readonly name: string;
  readonly t: number;
  readonly x: number;
  readonly y: number;
  readonly heading: number;
  readonly speed: number;
}

export type RunEnd =
  | 'programme over'
  | 'end of slope'
  | 'stopped'
  | 'time over'
  | 'no balanced lean'
  | 'watch';

export interface TrackSummary {
  readonly seconds: number;
  readonly distance: number;
  readonly drop: number;
  readonly endSpeed: number;
  readonly maxSpeed: number;
  readonly maxLoadBodyWeights: number;
  /** Least hold under the boot where it is judged (holding or slipping), rad; NaN when it never is. */
  readonly minHold: number;
  readonly skidSeconds: number;
  readonly airSeconds: number;
  /** Turns begun. */
  readonly turns: number;
  readonly energyErrorRatio: number;
  readonly end: RunEnd;
}

/** Columns in the order the recorder keeps them. */
export const COLUMNS = [
  't',
  'x',
  'y',
  'heading',
  'speed',
  'drift',
  'edge',
  'lean',
  'angulation',
  'load',
  'loadBodyWeights',
  'radius',
  'hold',
  'distance',
  'drop',
] as const;

export type Column = (typeof COLUMNS)[number];

export const ENERGY_COLUMNS = [
  'drop',
  'kinetic',
  'friction',
  'drag',
  'skid',
  'landing',
  'errorRatio',
] as const;

export type EnergyColumn = (typeof ENERGY_COLUMNS)[number];
