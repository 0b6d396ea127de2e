import { computed, signal } from '@preact/signals';
import { type CourseConditions, courseConditionsOf } from '../../core/course/index.ts';
import { conditions, course } from '../state/index.ts';

export type Scope = 'chosen' | 'rack';
export type TurnModel = 'bent' | 'cosine';

/** Which pairs are ranked. */
export const scope = signal<Scope>('chosen');
export const turnModel = signal<TurnModel>('bent');

/** Slope, skier and air of the set, SI. */
export const courseConditions = computed<CourseConditions>(() => {
  const { slopeDeg, speedKmh, keepSpeed, greatestEdgeDeg } = course.value;
  return courseConditionsOf(
    {
      ...conditions.value,
      courseSlopeDeg: slopeDeg,
      courseSpeedKmh: speedKmh,
      courseEdgeMostDeg: greatestEdgeDeg,
    },
    keepSpeed,
  );
});
