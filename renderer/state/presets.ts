import { computed } from '@preact/signals';
import { type PresetId, SKIER_PRESETS, type SkierPreset } from '../../core/skier/index.ts';
import type { Conditions, Project, SlopeSettings } from './project.ts';
import { edit, project } from './store.ts';

export { SKIER_PRESETS };

const DEGREE = Math.PI / 180;
/** Written short: 7, not 6.999…. */
const short = (value: number): number => Number(value.toFixed(6));

function conditionsOf(preset: SkierPreset): Partial<Conditions> {
  return {
    massKg: preset.mass,
    heightM: preset.height,
    slopeDeg: short(preset.slope / DEGREE),
    speedKmh: short(preset.startSpeed * 3.6),
    edgeDeg: short(preset.edge / DEGREE),
    periodS: preset.period,
    gateSpacingM: preset.spacing,
    gateOffsetM: preset.offset,
  };
}

/** A skier with the hill and the rhythm that suit them, as one undo step. */
export function choosePreset(id: PresetId): void {
  const preset = SKIER_PRESETS.find(each => each.id === id);
  if (!preset) return;
  edit(preset.name, (before: Project) => ({
    ...before,
    conditions: { ...before.conditions, ...conditionsOf(preset) },
    slope: {
      ...before.slope,
      ground: 'even',
      shape: 'sine',
      clearanceM: preset.clearance,
      limits: { ...before.slope.limits, pushBodyWeights: preset.pushMost },
    } satisfies SlopeSettings,
  }));
}

/** The preset whose every value is set, or null once one of them was changed. */
export const presetChosen = computed<PresetId | null>(() => {
  const { conditions, slope } = project.value;
  const found = SKIER_PRESETS.find(
    preset =>
      Object.entries(conditionsOf(preset)).every(
        ([key, value]) => conditions[key as keyof Conditions] === value,
      ) &&
      slope.ground === 'even' &&
      slope.clearanceM === preset.clearance &&
      slope.limits.pushBodyWeights === preset.pushMost,
  );
  return found?.id ?? null;
});
