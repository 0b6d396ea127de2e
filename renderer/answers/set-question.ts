import { computed, signal } from '@preact/signals';
import type { CourseConditions } from '../../core/course/index.ts';
import { conditions, course } from '../state/index.ts';

export type Scope = 'chosen' | 'rack';
export type TurnModel = 'bent' | 'cosine';

/** Which pairs are ranked. */
export const scope = signal<Scope>('chosen');
export const turnModel = signal<TurnModel>('bent');

/** Slope, skier and air of the set, SI. */
export const courseConditions = computed<Partial<CourseConditions>>(() => {
  const { massKg, friction, dragAreaM2, airDensity } = conditions.value;
  const { slopeDeg, speedKmh, keepSpeed, greatestEdgeDeg } = course.value;
  return {
    slope: (slopeDeg * Math.PI) / 180,
    mass: massKg,
    friction,
    dragArea: dragAreaM2,
    airDensity,
    startSpeed: speedKmh / 3.6,
    holdSpeed: keepSpeed,
    greatestEdge: (greatestEdgeDeg * Math.PI) / 180,
  };
});
