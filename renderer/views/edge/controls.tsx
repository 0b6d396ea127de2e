import type { JSX } from 'preact';
import { NAMED_SNOWS } from '../../../core/carve/index.ts';
import { ConditionControl, ConditionSliders } from '../../controls/index.ts';
import { Segments } from '../../kit/index.ts';
import { changeConditions, conditions, settle } from '../../state/index.ts';

/** Edge angle, load, fore-aft and snow: what is asked of the ski. */
export function Controls(): JSX.Element {
  const { hardnessNPerMm3, foreMm } = conditions.value;
  const snow = NAMED_SNOWS.find(each => each.hardnessNPerMm3 === hardnessNPerMm3);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would draw its own frame and legend
    <div class="edge-controls" role="group" aria-label="What is asked of the ski">
      <ConditionSliders />
      <ConditionControl
        field="foreMm"
        note={foreMm === 0 ? 'boot centre' : foreMm > 0 ? 'ahead of it' : 'behind it'}
      />
      <div class="snow-control">
        <ConditionControl field="hardnessNPerMm3" />
        <Segments
          label="Snow"
          labelHidden
          value={snow?.name ?? ''}
          options={NAMED_SNOWS.map(({ name, hardnessNPerMm3 }) => ({
            value: name as string,
            label: name,
            title: `${hardnessNPerMm3} N/mm³`,
          }))}
          onInput={name => {
            const chosen = NAMED_SNOWS.find(each => each.name === name)!;
            changeConditions('Snow', { hardnessNPerMm3: chosen.hardnessNPerMm3 });
            settle();
          }}
        />
      </div>
    </div>
  );
}
