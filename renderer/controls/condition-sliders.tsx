import type { JSX } from 'preact';
import { GRAVITY } from '../../core/run/index.ts';
import { decimal } from '../../core/units/index.ts';
import { conditions, t } from '../state/index.ts';
import { ConditionControl } from './condition.tsx';

/** Edge angle and load, the two conditions every question about a carved turn shares. */
export function ConditionSliders(): JSX.Element {
  const { loadN, massKg } = conditions.value;
  return (
    <>
      <ConditionControl field="edgeDeg" />
      <ConditionControl
        field="loadN"
        note={t('controls.timesWeight', { times: decimal(loadN / (massKg * GRAVITY), 1) })}
      />
    </>
  );
}
