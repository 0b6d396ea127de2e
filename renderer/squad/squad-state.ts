import { computed, signal } from '@preact/signals';
import { project } from '../state/index.ts';
import { type Arrangement, AS_IN_RACK, arrange } from './arrange.ts';
import { squadRows } from './squad-row.ts';
import { today } from './today.ts';

/** The day everything is due by; asked again whenever the page opens. */
export const day = signal(today());

export const arrangement = signal<Arrangement>(AS_IN_RACK);

export function changeArrangement(change: Partial<Arrangement>): void {
  arrangement.value = { ...arrangement.value, ...change };
}

const rack = computed(() => project.value.rack);
const log = computed(() => project.value.tuneLog);
const after = computed(() => project.value.dueAfter);

export const allRows = computed(() => squadRows(rack.value, log.value, after.value, day.value));
export const shownRows = computed(() => arrange(allRows.value, arrangement.value));

const wanted = signal<string | null>(null);

/** The pair whose log and owner stand at the right. */
export const selectedRow = computed(() => {
  const rows = allRows.value;
  const active = project.value.activeId;
  return (
    rows.find(row => row.entry.id === wanted.value) ??
    rows.find(row => row.entry.id === active) ??
    rows[0] ??
    null
  );
});

export function selectRow(id: string): void {
  wanted.value = id;
}

export const owners = computed(() =>
  [...new Set(allRows.value.map(row => row.owner))].filter(Boolean).sort((a, b) => a.localeCompare(b)),
);
