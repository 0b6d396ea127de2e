import { computed, type ReadonlySignal } from '@preact/signals';
import type { Gate } from '../../core/course/index.ts';
import type { Course } from './project.ts';
import { edit, project } from './store.ts';

/** The set of gates in force. */
export const course: ReadonlySignal<Course> = computed(() => project.value.course);

/** Changes the set as an undo step; a drag's moves share `key`. Changed gates are demo data no more. */
export function changeCourse(
  label: string,
  change: (course: Course) => Course,
  key: string | null = null,
): void {
  edit(label, before => ({ ...before, course: change(before.course) }), key);
}

const withGates = (course: Course, gates: readonly Gate[]): Course => ({ ...course, gates, demo: false });

/** Another place (or name, or colour) for the gate at `at`; gates stay in their order. */
export const moveGate =
  (at: number, change: Partial<Gate>) =>
  (course: Course): Course =>
    withGates(
      course,
      course.gates.map((gate, i) => (i === at ? { ...gate, ...change } : gate)),
    );

/** A new gate before the one at `at`. */
export const putGate =
  (at: number, gate: Gate) =>
  (course: Course): Course =>
    withGates(course, [...course.gates.slice(0, at), gate, ...course.gates.slice(at)]);

export const removeGate =
  (at: number) =>
  (course: Course): Course =>
    withGates(
      course,
      course.gates.filter((_, i) => i !== at),
    );
