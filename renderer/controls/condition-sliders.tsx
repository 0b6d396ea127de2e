import type { JSX } from 'preact';
import { GRAVITY } from '../../core/run/index.ts';
import { decimal } from '../../core/units/index.ts';
import { LEAST_EDGE, LEAST_LOAD, MOST_EDGE, MOST_LOAD } from '../answers/index.ts';
import { Quantity } from '../kit/index.ts';
import { changeConditions, conditions } from '../state/index.ts';

/** The edge angle, however it is moved. */
export const EDGE_ANGLE = {
  label: 'Edge angle',
  measure: 'angleDeg',
  min: LEAST_EDGE,
  max: MOST_EDGE,
  step: 1,
  onInput: (value: number) => changeConditions('Edge angle', { edgeDeg: value }, 'edgeDeg'),
} as const;

/** Edge angle and load, the two conditions every question about a carved turn shares. */
export function ConditionSliders(): JSX.Element {
  const { edgeDeg, loadN, massKg } = conditions.value;
  return (
    <>
      <Quantity {...EDGE_ANGLE} value={edgeDeg} />
      <Quantity
        label="Load"
        measure="force"
        value={loadN}
        min={LEAST_LOAD}
        max={MOST_LOAD}
        step={50}
        note={`${decimal(loadN / (massKg * GRAVITY), 1)} × weight`}
        onInput={value => changeConditions('Load', { loadN: value }, 'loadN')}
      />
    </>
  );
}
