import { computed, type ReadonlySignal } from '@preact/signals';
import * as z from 'zod';
import { type Field, reachOf } from '../../core/conditions/index.ts';
import { type Gate, USUAL_COURSE, writeGates } from '../../core/course/index.ts';
import { categories } from '../../core/rules/index.ts';
import { type Course, NO_COURSE } from './project.ts';
import { amendAllSteps, edit, project } from './store.ts';

/** The set of gates in force. */
export const course: ReadonlySignal<Course> = computed(() => project.value.course);

/** What a file of the set holds: the gates, and what is stated of all of them. */
export function courseText(course: Course): string {
  const { gates, gateWidthM, ...stated } = course;
  return writeGates(gates, ',', { ...stated, ...(gateWidthM !== null && { gateWidthM }) });
}

/** Whether there is work on the set that is in no file; a demo set whose gates stand is none. */
export const courseUnsaved: ReadonlySignal<boolean> = computed(() => {
  const { gates, demo, inFile } = course.value;
  return gates.length > 0 && !demo && inFile !== courseText(course.value);
});

/** Notes what a file of the set holds now, in every step: undo takes back edits, not what lies on the disk. */
export function markCourseSaved(name: string, text: string): void {
  amendAllSteps(now =>
    now.course.name === name ? { ...now, course: { ...now.course, inFile: text } } : now,
  );
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

/** A discipline for the set; slope and speed that nobody changed become those usual in it. */
export function asUsual(
  before: Course,
  discipline: Course['discipline'],
): Pick<Course, 'discipline' | 'slopeDeg' | 'speedKmh'> {
  const was = USUAL_COURSE[before.discipline];
  const is = USUAL_COURSE[discipline];
  const { slopeDeg, speedKmh } = before;
  return {
    discipline,
    slopeDeg: slopeDeg === was.courseSlopeDeg ? is.courseSlopeDeg : slopeDeg,
    speedKmh: speedKmh === was.courseSpeedKmh ? is.courseSpeedKmh : speedKmh,
  };
}

/** A set from a draft; every value that is none falls back to its default. */
export function courseFrom(value: unknown): Course {
  const { gates, ...given } = (value ?? {}) as Record<string, unknown>;
  const listed = (Array.isArray(gates) ? gates : []).flatMap(gateFrom);
  return { ...schema.parse(given), gates: listed };
}

const within = (field: Field) => {
  const [least, most] = reachOf(field);
  return z.number().min(least).max(most);
};

const schema = z.object({
  name: z.string().catch(NO_COURSE.name),
  discipline: z.enum(['SL', 'GS']).catch(NO_COURSE.discipline),
  demo: z.boolean().catch(NO_COURSE.demo),
  inFile: z.string().nullable().catch(NO_COURSE.inFile),
  comments: z.array(z.string()).catch([]),
  slopeDeg: within('courseSlopeDeg').catch(NO_COURSE.slopeDeg),
  speedKmh: within('courseSpeedKmh').catch(NO_COURSE.speedKmh),
  keepSpeed: z.boolean().catch(NO_COURSE.keepSpeed),
  onProfile: z.boolean().catch(NO_COURSE.onProfile),
  greatestEdgeDeg: within('courseEdgeMostDeg').catch(NO_COURSE.greatestEdgeDeg),
  gateWidthM: within('gateWidthM').nullable().catch(NO_COURSE.gateWidthM),
  category: z.enum(categories).catch(NO_COURSE.category),
});

const otherCells = z.array(z.tuple([z.string(), z.string()])).min(1);

function gateFrom(value: unknown): Gate[] {
  const { label, x, y, colour, turn, others } = (value ?? {}) as Record<string, unknown>;
  if (typeof label !== 'string' || typeof x !== 'number' || typeof y !== 'number') return [];
  if (!Number.isFinite(x) || !Number.isFinite(y)) return [];
  const cells = otherCells.safeParse(others);
  return [
    {
      label,
      x,
      y,
      colour: typeof colour === 'string' ? colour : null,
      turn: turn === 1 || turn === -1 ? turn : null,
      ...(cells.success && { others: cells.data }),
    },
  ];
}
