import type { JSX } from 'preact';
import type { MeasureName } from '../../../core/units/index.ts';
import { Quantity } from '../../kit/index.ts';
import { changeSlope, conditions, LIMIT_RANGES, type SkierLimits, slope } from '../../state/index.ts';
import { setCondition as set } from './set-condition.ts';

interface LimitControl {
  readonly key: keyof SkierLimits;
  readonly label: string;
  readonly measure: MeasureName;
  readonly step: number;
  readonly decimals?: number;
}

const LIMITS: readonly LimitControl[] = [
  {
    key: 'pushBodyWeights',
    label: 'Greatest push of the legs',
    measure: 'bodyWeights',
    step: 0.1,
    decimals: 1,
  },
  { key: 'pushRateBodyWeights', label: 'Fastest change of push', measure: 'bodyWeightRate', step: 1 },
  { key: 'legSpeedMps', label: 'Leg speed', measure: 'legSpeed', step: 0.1 },
  { key: 'edgeDeg', label: 'Greatest edge angle', measure: 'angleDeg', step: 1, decimals: 0 },
  { key: 'angulationDeg', label: 'Greatest angulation', measure: 'angleDeg', step: 1, decimals: 0 },
];

/** The gates of a rhythm, and what the skier can do. */
export function RhythmControls(): JSX.Element {
  const c = conditions.value;
  const { clearanceM, limits } = slope.value;
  return (
    <>
      <p class="reading-hint">
        The quickest turn from gate to gate, at the pace that can be kept for ever, within what the skier can
        do.
      </p>
      <Quantity
        label="Gate distance"
        measure="distance"
        value={c.gateSpacingM}
        min={5}
        max={40}
        step={0.5}
        onInput={set('Gate spacing', 'gateSpacingM')}
      />
      <Quantity
        label="Gate offset"
        measure="distance"
        value={c.gateOffsetM}
        min={0}
        max={15}
        step={0.1}
        onInput={set('Gate offset', 'gateOffsetM')}
      />
      <Quantity
        label="Clearance at the pole"
        measure="bodyLength"
        value={clearanceM}
        min={0}
        max={2}
        step={0.05}
        onInput={value => changeSlope('Clearance', { clearanceM: value }, 'clearanceM')}
      />
      <details class="control-group">
        <summary>What the skier can do</summary>
        {LIMITS.map(({ key, ...shown }) => (
          <Quantity
            key={key}
            {...shown}
            value={limits[key]}
            min={LIMIT_RANGES[key][0]}
            max={LIMIT_RANGES[key][1]}
            onInput={value =>
              changeSlope(shown.label, { limits: { ...slope.value.limits, [key]: value } }, key)
            }
          />
        ))}
      </details>
    </>
  );
}
