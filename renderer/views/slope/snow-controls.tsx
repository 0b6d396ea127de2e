import type { JSX } from 'preact';
import { NAMED_SNOWS, wallStrengthOf } from '../../../core/carve/index.ts';
import { reachOf, rowOf, saidOf } from '../../../core/conditions/index.ts';
import { ConditionControl } from '../../controls/index.ts';
import { Quantity } from '../../kit/index.ts';
import { changeConditions, conditions, t } from '../../state/index.ts';

/** What the snow bears: its hardness, and the strength of the wall an edge leans on, which follows it until it is said. */
export function SnowControls(): JSX.Element {
  const c = conditions.value;
  const [min, max] = reachOf('wallStrengthKPa');
  const { measure, label: key } = rowOf('wallStrengthKPa');
  const label = t(key);
  const snow = NAMED_SNOWS.find(({ hardnessNPerMm3 }) => hardnessNPerMm3 === c.hardnessNPerMm3);
  const own = c.wallStrengthKPa !== undefined;
  return (
    <details class="control-group">
      <summary>{t('slope.snow')}</summary>
      <ConditionControl field="hardnessNPerMm3" note={snow && t(`snow.${snow.name}`)} />
      <Quantity
        label={label}
        measure={measure}
        value={saidOf('wallStrengthKPa', wallStrengthOf(c))}
        min={min}
        max={max}
        log
        note={own ? undefined : t('slope.byHardnessNote')}
        onInput={wallStrengthKPa => changeConditions(label, { wallStrengthKPa }, 'wallStrengthKPa')}
      />
      {own && (
        <button type="button" onClick={() => changeConditions(label, { wallStrengthKPa: undefined })}>
          {t('slope.byHardness')}
        </button>
      )}
    </details>
  );
}
