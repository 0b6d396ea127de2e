import type { PlainKey, Sentence } from '../../../core/language/index.ts';
import { DEGREE } from '../../../core/units/index.ts';
import { groundOf, type PairRun } from '../../answers/index.ts';
import type { TraceId } from './trace-list.ts';

/** What has been measured on snow, in the unit the trace holds. Context to read a trace against, no more. */
export interface MeasuredBand {
  readonly trace: TraceId;
  readonly low: number;
  readonly high: number;
  readonly label: Sentence;
}

/** Measurements that belong together, and where they were taken. */
export interface MeasuredTurns {
  /** m down the hill from turn to turn, least and most, within which they are shown. */
  readonly spacing: readonly [number, number];
  /** Slope, rad, least and most; absent where it was not told. */
  readonly slope?: readonly [number, number];
  readonly bands: readonly MeasuredBand[];
  /** What, where and by whom. */
  readonly words: PlainKey;
}

/** As far as this from the slope and the gate distance measured on, a turn is still read against them (our own choice). */
const NEAR_SLOPE = 3 * DEGREE;
const NEAR_GATES = 1.4;

function slalom(
  spacing: number,
  edge: readonly [mean: number, spread: number],
  radius: readonly [mean: number, spread: number],
): MeasuredTurns {
  const label: Sentence = { key: 'slope.measured.slalomBand', values: { spacing } };
  const band = (trace: TraceId, [mean, spread]: readonly [number, number], one: number): MeasuredBand => ({
    trace,
    low: (mean - spread) * one,
    high: (mean + spread) * one,
    label,
  });
  return {
    spacing: [spacing - NEAR_GATES, spacing + NEAR_GATES],
    slope: [19 * DEGREE - NEAR_SLOPE, 19 * DEGREE + NEAR_SLOPE],
    bands: [band('edge', edge, DEGREE), band('radius', radius, 1)],
    words: 'slope.measured.slalom',
  };
}

/** Greatest edge angle and least radius of elite slalom turns on 19°, and the load of giant slalom turns. */
export const MEASURED: readonly MeasuredTurns[] = [
  slalom(10, [65.7, 1.7], [3.96, 0.23]),
  slalom(13, [71.0, 1.9], [4.94, 0.59]),
  {
    spacing: [18, 32],
    bands: [{ trace: 'load', low: 0.7, high: 1.5, label: { key: 'slope.measured.giantSlalomBand' } }],
    words: 'slope.measured.giantSlalom',
  },
];

/** What was measured under conditions near those of a run. */
export function measuredNear({ plan, track }: Pick<PairRun, 'plan' | 'track'>): readonly MeasuredTurns[] {
  const { programme } = plan;
  const last = track.y.length - 1;
  const spacing =
    programme.kind === 'rhythm'
      ? programme.spacing
      : (track.y[last]! - track.y[0]!) / Math.max(1, track.summary.turns);
  const ground = groundOf(plan.ground);
  const slope = Math.asin(ground.sine((track.y[0]! + track.y[last]!) / 2));
  const within = (value: number, [low, high]: readonly [number, number]) => value >= low && value <= high;
  return MEASURED.filter(each => within(spacing, each.spacing) && (!each.slope || within(slope, each.slope)));
}
