import type { JSX } from 'preact';
import { airDensity, DRAG_AREA, type Posture } from '../../../core/run/index.ts';
import { legOfHeight } from '../../../core/skier/index.ts';
import { formatQuantity, type System } from '../../../core/units/index.ts';
import { ConditionControl, ConditionControls } from '../../controls/index.ts';
import { Quantity, Segments } from '../../kit/index.ts';
import { changeConditions, conditions, t, view } from '../../state/index.ts';
import { altitudeOf } from './altitude.ts';

const legText = (height: number, system: System): string =>
  formatQuantity(legOfHeight(height).legLongest, 'bodyLength', { system }).text;

/** Those that have a word beside them, or another control. */
const DRAWN = ['massKg', 'heightM', 'friction', 'dragAreaM2', 'airDensity'] as const;

/** Mass, height, friction and the air. */
export function SkierControls(): JSX.Element {
  const c = conditions.value;
  const postures = Object.keys(DRAG_AREA) as Posture[];
  const posture = postures.find(each => DRAG_AREA[each] === c.dragAreaM2);
  return (
    <details class="control-group">
      <summary>{t('slope.skierAndAir')}</summary>
      <ConditionControl field="massKg" />
      <ConditionControl
        field="heightM"
        note={t('slope.legsUpTo', { length: legText(c.heightM, view.value.system) })}
      />
      <ConditionControl field="friction" />
      <Segments<Posture | ''>
        label={t('slope.posture')}
        labelHidden
        value={posture ?? ''}
        options={postures.map(value => ({
          value,
          label: t(`slope.posture.${value}`),
          title: t('slope.dragAreaOf', {
            area: formatQuantity(DRAG_AREA[value], 'areaM2', { system: view.value.system }).text,
          }),
        }))}
        onInput={value => value && changeConditions(t('slope.posture'), { dragAreaM2: DRAG_AREA[value] })}
      />
      <ConditionControl
        field="dragAreaM2"
        note={posture === 'race stance' ? t('slope.raceStance') : undefined}
      />
      <Quantity
        label={t('slope.altitude')}
        measure="distance"
        value={altitudeOf(c.airDensity)}
        min={0}
        max={4500}
        step={100}
        decimals={0}
        note={t('slope.airAt', {
          density: formatQuantity(c.airDensity, 'density', { system: view.value.system }).text,
        })}
        onInput={altitude =>
          changeConditions(t('slope.altitude'), { airDensity: airDensity(altitude) }, 'airDensity')
        }
      />
      <ConditionControls groups={['body', 'glide']} but={DRAWN} />
    </details>
  );
}
