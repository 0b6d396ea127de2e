import { computed } from '@preact/signals';
import { type PresetId, SKIER_PRESETS } from '../../core/skier/index.ts';
import type { Conditions, Project, SlopeSettings } from './project.ts';
import { edit, project } from './store.ts';
import { t } from './words.ts';

export { SKIER_PRESETS };

/** A skier with the hill and the rhythm that suit them, as one undo step. */
export function choosePreset(id: PresetId): void {
  const preset = SKIER_PRESETS.find(each => each.id === id);
  if (!preset) return;
  edit(t(`controls.preset.${id}`), (before: Project) => ({
    ...before,
    conditions: { ...before.conditions, ...preset.conditions },
    slope: { ...before.slope, ground: 'even', shape: 'sine' } satisfies SlopeSettings,
  }));
}

/** The preset whose every value is set, or null once one of them was changed. */
export const presetChosen = computed<PresetId | null>(() => {
  const { conditions, slope } = project.value;
  const found = SKIER_PRESETS.find(
    preset =>
      Object.entries(preset.conditions).every(
        ([key, value]) => conditions[key as keyof Conditions] === value,
      ) && slope.ground === 'even',
  );
  return found?.id ?? null;
});
