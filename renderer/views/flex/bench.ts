import { computed, signal } from '@preact/signals';
import { changeConditions, conditions, t } from '../../state/index.ts';

export type Field = 'bending' | 'torsion';

/** Which stiffness the profile chart shows. */
export const field = signal<Field>('bending');
/** Heights drawn larger than lengths. */
export const enlarged = signal(true);

/** How far the supports stand inside the contact points, mm. */
export const rearInMm = computed(() => conditions.value.benchRearInMm);
export const frontInMm = computed(() => conditions.value.benchFrontInMm);

export const moveBench = {
  press: (mm: number) => changeConditions(t('flex.step.press'), { benchForeMm: mm }, 'benchForeMm'),
  rear: (mm: number) => changeConditions(t('condition.benchRearIn'), { benchRearInMm: mm }, 'benchRearInMm'),
  front: (mm: number) =>
    changeConditions(t('condition.benchFrontIn'), { benchFrontInMm: mm }, 'benchFrontInMm'),
};
