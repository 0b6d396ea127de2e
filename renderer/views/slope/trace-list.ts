import { Phase, type Track } from '../../../core/run/index.ts';
import type { MeasureName } from '../../../core/units/index.ts';

export type TraceId = 'speed' | 'radius' | 'edge' | 'lean' | 'load' | 'hold';

export interface Trace {
  readonly id: TraceId;
  readonly label: string;
  readonly measure: MeasureName;
  /** Zero stands on the axis. */
  readonly zero?: boolean;
  /** Least room the axis gives, in held units. */
  readonly atLeast?: readonly [number, number];
  /** The column; NaN where the trace has nothing to say. */
  values(track: Track): Float64Array;
}

/** Radii beyond this are a straight run, not a turn, m. */
const STRAIGHT = 45;

const onEdge = (track: Track, row: number): boolean =>
  track.phase[row] === Phase.Holding || track.phase[row] === Phase.Slipping;

export const TRACES: readonly Trace[] = [
  { id: 'speed', label: 'Speed', measure: 'speed', values: track => track.speed },
  {
    id: 'radius',
    label: 'Radius',
    measure: 'radius',
    zero: true,
    values: track => track.radius.map((r, i) => (onEdge(track, i) && r < STRAIGHT ? r : Number.NaN)),
  },
  {
    id: 'edge',
    label: 'Edge',
    measure: 'angle',
    zero: true,
    values: track => track.edge,
  },
  { id: 'lean', label: 'Lean', measure: 'angle', zero: true, values: track => track.lean },
  {
    id: 'load',
    label: 'Load',
    measure: 'bodyWeights',
    zero: true,
    values: track => track.loadBodyWeights,
  },
  {
    id: 'hold',
    label: 'Hold',
    measure: 'angle',
    zero: true,
    atLeast: [-0.1, 0.2],
    values: track => track.hold.map((h, i) => (onEdge(track, i) ? h : Number.NaN)),
  },
];
