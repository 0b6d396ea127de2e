import { computed, type ReadonlySignal } from '@preact/signals';
import * as z from 'zod';
import type { Gate } from '../../core/course/index.ts';
import { categories } from '../../core/rules/index.ts';
import { COURSE_RANGES, type Course, NO_COURSE } from './project.ts';
import { adjust, edit, project } from './store.ts';

/** The set of gates in force. */
export const course: ReadonlySignal<Course> = computed(() => project.value.course);

/** Whether there are gates that are in no file. */
export const courseUnsaved: ReadonlySignal<boolean> = computed(
  () => !course.value.saved && course.value.gates.length > 0,
);

/** Notes that these gates are in a file now; undo skips it. Gates changed meanwhile stay unsaved. */
export function markCourseSaved(gates: readonly Gate[]): void {
  adjust(now => (now.course.gates === gates ? { ...now, course: { ...now.course, saved: true } } : now));
}

/** Changes the set as an undo step; a drag's moves share `key`. Changed gates are demo data no more. */
export function changeCourse(
  label: string,
  change: (course: Course) => Course,
  key: string | null = null,
): void {
  edit(label, before => ({ ...before, course: change(before.course) }), key);
}

const withGates = (course: Course, gates: readonly Gate[]): Course => ({
  ...course,
  gates,
  demo: false,
  saved: false,
});

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

/** A set from a draft; every value that is none falls back to its default. */
export function courseFrom(value: unknown): Course {
  const { gates, ...given } = (value ?? {}) as Record<string, unknown>;
  const listed = (Array.isArray(gates) ? gates : []).flatMap(gateFrom);
  return { ...schema.parse(given), gates: listed };
}

const within = (from: number, to: number, otherwise: number) => z.number().min(from).max(to).catch(otherwise);

const schema = z.object({
  name: z.string().catch(NO_COURSE.name),
  discipline: z.enum(['SL', 'GS']).catch(NO_COURSE.discipline),
  demo: z.boolean().catch(NO_COURSE.demo),
  saved: z.boolean().catch(NO_COURSE.saved),
  slopeDeg: within(...COURSE_RANGES.slopeDeg, NO_COURSE.slopeDeg),
  speedKmh: within(...COURSE_RANGES.speedKmh, NO_COURSE.speedKmh),
  keepSpeed: z.boolean().catch(NO_COURSE.keepSpeed),
  greatestEdgeDeg: within(...COURSE_RANGES.greatestEdgeDeg, NO_COURSE.greatestEdgeDeg),
  gateWidthM: z.number().positive().max(COURSE_RANGES.gateWidthM[1]).nullable().catch(NO_COURSE.gateWidthM),
  category: z.enum(categories).catch(NO_COURSE.category),
});

function gateFrom(value: unknown): Gate[] {
  const { label, x, y, colour, turn } = (value ?? {}) as Record<string, unknown>;
  if (typeof label !== 'string' || typeof x !== 'number' || typeof y !== 'number') return [];
  if (!Number.isFinite(x) || !Number.isFinite(y)) return [];
  return [
    {
      label,
      x,
      y,
      colour: typeof colour === 'string' ? colour : null,
      turn: turn === 1 || turn === -1 ? turn : null,
    },
  ];
}
