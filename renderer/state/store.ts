import { computed, type ReadonlySignal, signal } from '@preact/signals';
import * as history from './history.ts';
import { type Conditions, EMPTY_PROJECT, type Project, type ViewSettings } from './project.ts';
import { type Edit, setConditions, setView } from './rack-edits.ts';

/** The one place where the project changes. Views read signals and call the functions below. */
const timeline = signal(history.begin<Project>(EMPTY_PROJECT));

export const project: ReadonlySignal<Project> = computed(() => timeline.value.present);
export const conditions: ReadonlySignal<Conditions> = computed(() => project.value.conditions);
export const view: ReadonlySignal<ViewSettings> = computed(() => project.value.view);

/** Name of the step that undo (redo) would take back (bring back), or null when there is none. */
export const undoLabel: ReadonlySignal<string | null> = computed(
  () => timeline.value.past.at(-1)?.label ?? null,
);
export const redoLabel: ReadonlySignal<string | null> = computed(
  () => timeline.value.future[0]?.label ?? null,
);

/**
 * Makes an edit and keeps it in the history under `label` ("Waist width"). Edits with the same `key` that
 * follow each other are one step; call `settle()` when a drag ends.
 */
export function edit(label: string, change: Edit, key: string | null = null): void {
  timeline.value = history.push(timeline.value, change(project.value), label, key);
}

/** Makes an edit that undo skips: what is on screen, what is looked at. */
export function editWithoutUndo(change: Edit): void {
  timeline.value = history.replace(timeline.value, change(project.value));
}

/** Notes a fact that holds whatever is undone or redone: what was saved, and where. */
export function amendAllSteps(change: Edit): void {
  timeline.value = history.everywhere(timeline.value, change);
}

export function settle(): void {
  timeline.value = history.settle(timeline.value);
}

/** Undo gives back the rack, the choice and the conditions; the view stays where the person is looking. */
export function undo(): void {
  step(history.undo(timeline.value));
}

export function redo(): void {
  step(history.redo(timeline.value));
}

function step(next: history.History<Project>): void {
  if (next === timeline.value) return;
  timeline.value = history.replace(next, reconciled(next.present, project.value));
}

/** A step back keeps the present view; what was saved since stands in every step (see `amendAllSteps`). */
function reconciled(restored: Project, present: Project): Project {
  return { ...restored, view: present.view };
}

/** Starts over with another project and an empty history. */
export function load(next: Project): void {
  timeline.value = history.begin(next);
}

/** Sets conditions; `key` coalesces a slider's moves into one undo step. */
export function changeConditions(
  label: string,
  change: Partial<Conditions>,
  key: string | null = null,
): void {
  edit(label, setConditions(change), key);
}

export function changeView(change: Partial<ViewSettings>): void {
  // Going to a question leaves the page that lay over it.
  editWithoutUndo(setView(change.question && !('page' in change) ? { ...change, page: null } : change));
}
