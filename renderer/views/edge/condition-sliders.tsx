import type { JSX } from 'preact';
import { GRAVITY } from '../../../core/run/index.ts';
import { decimal } from '../../../core/units/index.ts';
import { Quantity } from '../../kit/index.ts';
import { changeConditions, conditions } from '../../state/index.ts';
import { LEAST_EDGE, LEAST_LOAD, MOST_EDGE, MOST_LOAD } from './asked.ts';

/** Edge angle and load, the two conditions every question about a carved turn shares. */
export function ConditionSliders(): JSX.Element {
  const { edgeDeg, loadN, massKg } = conditions.value;
  return (
    <>
      <Quantity
        label="Edge angle"
        measure="angleDeg"
        value={edgeDeg}
        min={LEAST_EDGE}
        max={MOST_EDGE}
        step={1}
        onInput={value => changeConditions('Edge angle', { edgeDeg: value }, 'edgeDeg')}
      />
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
