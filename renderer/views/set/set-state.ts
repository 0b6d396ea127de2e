import { computed, signal } from '@preact/signals';
import type { CourseConditions, QuickLine } from '../../../core/course/index.ts';
import { conditions, course } from '../../state/index.ts';

export type SetSheet = 'pairs' | 'gates' | 'along' | 'edit' | 'make' | 'setting' | 'rules';
export type Scope = 'chosen' | 'rack';
export type TurnModel = 'bent' | 'cosine';

export const sheet = signal<SetSheet>('pairs');
/** Which pairs are ranked. */
export const scope = signal<Scope>('chosen');
export const turnModel = signal<TurnModel>('bent');
/** Gates drawn at once; 0 for all of them. */
export const inView = signal<0 | 6 | 12>(12);
export const trueScale = signal(false);

const wantedGate = signal(0);

/** The gate that keys move and detail is shown of. */
export const selectedGate = computed(() =>
  Math.max(0, Math.min(course.value.gates.length - 1, wantedGate.value)),
);

export function selectGate(at: number): void {
  wantedGate.value = at;
}

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

/** Quick lines found, by pair id, with the question each answers. */
export const quickLines = signal<
  ReadonlyMap<
    string,
    { readonly key: string; readonly line: QuickLine | null; readonly reason: string | null }
  >
>(new Map());
