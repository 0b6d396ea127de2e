import {
  acceptConditions,
  type FieldOf,
  fieldsOf,
  inSi,
  type Said,
  type SiOf,
  USUAL,
} from '../conditions/index.ts';
import { accept } from '../fault/index.ts';
import { KMH } from '../units/index.ts';

type Asked = Exclude<FieldOf<'course' | 'glide'>, 'gateWidthM'> | 'massKg' | 'outerShare';
const ASKED: readonly Asked[] = [
  'courseSlopeDeg',
  'courseSpeedKmh',
  'courseEdgeMostDeg',
  ...fieldsOf('glide'),
  'massKg',
  'outerShare',
];

/** A pace that is kept all the way. */
const LEAST_KEPT_KMH = 5;

/** Slope, skier, snow and air of a course, SI and rad; `startSpeed` at the first sample of the line. */
export interface CourseConditions extends SiOf<Asked> {
  /** Keep the start speed all the way, as a coach asks "at 45 km/h?". */
  readonly holdSpeed: boolean;
}

/** Where nobody says: the slope and the speed, kept all the way, that juniors know from gates of a discipline. */
export const USUAL_COURSE = {
  SL: { courseSlopeDeg: USUAL.courseSlopeDeg, courseSpeedKmh: USUAL.courseSpeedKmh },
  GS: { courseSlopeDeg: 16.5, courseSpeedKmh: 50 },
} as const;

/** What is said of a course and of the skier on it, in SI; what is not said is as usual. */
export const courseConditionsOf = (said: Partial<Said>, holdSpeed: boolean): CourseConditions => ({
  ...inSi({ ...USUAL, ...said }, ASKED),
  holdSpeed,
});

/** Fills in what is usual. `FieldError` for what is out of range. */
export function fillCourseConditions(given: Partial<CourseConditions>): CourseConditions {
  const full = { ...courseConditionsOf({}, false), ...given };
  acceptConditions(full, ASKED);
  // A run may begin at rest; nobody keeps that pace.
  if (full.holdSpeed)
    accept('startSpeed', full.startSpeed / KMH, { from: LEAST_KEPT_KMH, quantity: 'speedKmh' });
  return full;
}
