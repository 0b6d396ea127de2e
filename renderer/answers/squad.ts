import { computed, signal } from '@preact/signals';
import { project } from '../state/index.ts';
import { squadRows } from './squad-rows.ts';
import { today } from './today.ts';

/** The day everything is due by; asked again whenever the squad's page opens. */
export const day = signal(today());

const rack = computed(() => project.value.rack);
const log = computed(() => project.value.tuneLog);
const after = computed(() => project.value.dueAfter);

/** The whole squad: every pair of the rack, what is due and what is odd about it. */
export const allRows = computed(() => squadRows(rack.value, log.value, after.value, day.value));
