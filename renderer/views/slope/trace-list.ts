import type { PlainKey } from '../../../core/language/index.ts';
import type { Track } from '../../../core/run/index.ts';
import type { MeasureName } from '../../../core/units/index.ts';
import { gripJudged, onEdge, type PairRun } from '../../answers/index.ts';

export type TraceId = 'speed' | 'radius' | 'edge' | 'lean' | 'load' | 'leg' | 'hold' | 'slip';

export interface Trace {
  readonly id: string;
  readonly label: PlainKey;
  readonly measure: MeasureName;
  /** Zero stands on the axis. */
  readonly zero?: boolean;
  /** Least room the axis gives, in held units. */
  readonly atLeast?: readonly [number, number];
  /** Least length of the axis, in held units: what hardly changes is not drawn as if it did. */
  readonly leastSpan?: number;
  /** The column; NaN where the trace has nothing to say. */
  values(track: Track, run?: PairRun): Float64Array;
}

/** Radii beyond this are a straight run, not a turn, m. */
const STRAIGHT = 45;

export const TRACES: readonly (Trace & { readonly id: TraceId })[] = [
  { id: 'speed', label: 'slope.trace.speed', measure: 'speed', values: track => track.speed },
  {
    id: 'radius',
    label: 'common.radius',
    measure: 'radius',
    zero: true,
    values: track => track.radius.map((r, i) => (onEdge(track, i) && r < STRAIGHT ? r : Number.NaN)),
  },
  {
    id: 'edge',
    label: 'slope.trace.edge',
    measure: 'angle',
    zero: true,
    values: track => track.edge,
  },
  { id: 'lean', label: 'slope.trace.lean', measure: 'angle', zero: true, values: track => track.lean },
  {
    id: 'load',
    label: 'condition.load',
    measure: 'bodyWeights',
    zero: true,
    values: track => track.loadBodyWeights,
  },
  { id: 'leg', label: 'slope.trace.leg', measure: 'bodyLength', leastSpan: 0.2, values: track => track.leg },
  {
    id: 'hold',
    label: 'board.grip',
    measure: 'angle',
    zero: true,
    atLeast: [-0.1, 0.2],
    values: track => track.hold.map((h, i) => (gripJudged(track, i) ? h : Number.NaN)),
  },
  {
    id: 'slip',
    label: 'slope.trace.slip',
    measure: 'angle',
    zero: true,
    atLeast: [0, 0.05],
    values: track => track.slip,
  },
];
