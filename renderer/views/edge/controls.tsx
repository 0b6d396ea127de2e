import type { JSX } from 'preact';
import { NAMED_SNOWS } from '../../../core/carve/index.ts';
import { ConditionControl, ConditionSliders } from '../../controls/index.ts';
import { Segments } from '../../kit/index.ts';
import { changeConditions, conditions, settle, t } from '../../state/index.ts';

/** Edge angle, load, fore-aft and snow: what is asked of the ski. */
export function Controls(): JSX.Element {
  const { hardnessNPerMm3, foreMm } = conditions.value;
  const snow = NAMED_SNOWS.find(each => each.hardnessNPerMm3 === hardnessNPerMm3);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would draw its own frame and legend
    <div class="edge-controls" role="group" aria-label={t('edge.askedOfSki')}>
      <ConditionSliders />
      <ConditionControl
        field="foreMm"
        note={
          foreMm === 0 ? t('common.bootCentre') : foreMm > 0 ? t('edge.fore.ahead') : t('edge.fore.behind')
        }
      />
      <div class="snow-control">
        <ConditionControl field="hardnessNPerMm3" />
        <Segments
          label={t('edge.snow')}
          labelHidden
          value={snow?.name ?? ''}
          options={NAMED_SNOWS.map(({ name, hardnessNPerMm3 }) => ({
            value: name as string,
            label: t(`snow.${name}`),
            title: t('edge.hardnessOf', { hardness: hardnessNPerMm3 }),
          }))}
          onInput={name => {
            const chosen = NAMED_SNOWS.find(each => each.name === name)!;
            changeConditions(t('edge.snow'), { hardnessNPerMm3: chosen.hardnessNPerMm3 });
            settle();
          }}
        />
      </div>
    </div>
  );
}
