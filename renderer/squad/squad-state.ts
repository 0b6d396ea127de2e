import { computed, signal } from '@preact/signals';
import { allRows } from '../answers/index.ts';
import { project } from '../state/index.ts';
import { type Arrangement, AS_IN_RACK, arrange } from './arrange.ts';

export const arrangement = signal<Arrangement>(AS_IN_RACK);

export function changeArrangement(change: Partial<Arrangement>): void {
  arrangement.value = { ...arrangement.value, ...change };
}

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
