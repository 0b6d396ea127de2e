import { computed, signal } from '@preact/signals';
import { course } from '../../state/index.ts';

export type SetSheet = 'pairs' | 'worth' | 'gates' | 'along' | 'edit' | 'make' | 'setting' | 'rules';

export const sheet = signal<SetSheet>('pairs');
/** Gates drawn at once; 0 for all of them. */
export const inView = signal<0 | 6 | 12>(12);
export const trueScale = signal(false);

const wantedGate = signal(0);

/** The gate that keys move and detail is shown of. */
export const selectedGate = computed(() =>
  Math.max(0, Math.min(course.value.gates.length - 1, wantedGate.value)),
);

export function selectGate(at: number): void {
  wantedGate.value = at;
}
