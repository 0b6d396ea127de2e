import { computed, signal } from '@preact/signals';
import { activePair, conditions, course, slope } from '../state/index.ts';
import type { QuickestInput } from './jobs/set-jobs.ts';

export type Scope = 'chosen' | 'owner' | 'rack';
export type TurnModel = 'bent' | 'cosine';

/** Which pairs are ranked. */
export const scope = signal<Scope>('chosen');
/** Whose pairs can be asked about besides: the owner's of the active pair. */
export const scopeOwner = computed(() => activePair.value?.pair.owner ?? null);
export const turnModel = signal<TurnModel>('bent');

/** Gates, hill, snow and skier of the set; the profile is the one opened on Slope, where the set asks for it. */
export const setQuestion = computed<Omit<QuickestInput, 'pairs'>>(() => {
  const { gates, discipline, slopeDeg, speedKmh, keepSpeed, greatestEdgeDeg, onProfile } = course.value;
  return {
    gates,
    discipline,
    slopeDeg,
    profile: onProfile ? (slope.value.groundFile?.text ?? null) : null,
    rigidAsked: turnModel.value === 'cosine',
    startSpeedKmh: speedKmh,
    paceKmh: keepSpeed ? speedKmh : null,
    said: { ...conditions.value, edgeMostDeg: greatestEdgeDeg },
  };
});
