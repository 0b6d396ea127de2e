import type { JSX } from 'preact';
import { choosePreset, presetChosen, SKIER_PRESETS, t } from '../state/index.ts';

/** Skiers to begin with: each sets mass, height, hill, speed, edge angle, period and gates at once. */
export function PresetChoice(props: { readonly label?: string }): JSX.Element {
  const chosen = presetChosen.value;
  return (
    <label class="preset-choice">
      <span>{props.label ?? t('controls.skierAndHill')}</span>
      <select
        value={chosen ?? ''}
        onChange={event => {
          const preset = SKIER_PRESETS.find(each => each.id === event.currentTarget.value);
          if (preset) choosePreset(preset.id);
        }}
      >
        {chosen === null && <option value="">{t('controls.yourOwn')}</option>}
        {SKIER_PRESETS.map(({ id }) => (
          <option key={id} value={id}>
            {t(`controls.preset.${id}`)}
          </option>
        ))}
      </select>
    </label>
  );
}
