import { computed, type ReadonlySignal } from '@preact/signals';
import type { CarveConditions, CarveFailure, Equilibrium } from '../../core/carve/index.ts';
import { type ChosenPair, chosenPairs, inWords, t } from '../state/index.ts';
import { answer } from './answer.ts';
import { carvingOf } from './radius-tables.ts';
import { request } from './request.ts';

interface Question {
  readonly pairs: readonly ChosenPair[];
  readonly conditions: CarveConditions;
}

export interface Grooves {
  /** By rack id, the last answer of every chosen pair that can be bent. */
  readonly answers: ReadonlyMap<string, Equilibrium | CarveFailure>;
  /** A newer question has been under way for a moment; the answers belong to the one before. */
  readonly running: boolean;
  /** The calculation itself broke. */
  readonly fault: string | null;
}

const question = computed<Question | null>(() => {
  const pairs = chosenPairs.value.filter(({ pair }) => carvingOf(pair).ok);
  return pairs.length > 0 ? { pairs, conditions: request.value } : null;
});

const solved = answer('equilibria', {
  label: () => t('answers.groove'),
  question: () => question.value,
  input: ({ pairs, conditions }: Question) => ({ pairs: pairs.map(({ pair }) => pair), conditions }),
});

/** The chosen pairs in their grooves under the present conditions. Answers come all along a drag. */
export const grooves: ReadonlySignal<Grooves> = computed(() => {
  const { value, of, running, error } = solved.value;
  return { answers: new Map(of?.pairs.map(({ id }, at) => [id, value![at]!])), running, fault: error };
});

/** The pair's equilibrium, or null while there is none. */
export function grooveOf(pair: Pick<ChosenPair, 'id'>): Equilibrium | null {
  const answer = grooves.value.answers.get(pair.id);
  return answer?.ok ? answer : null;
}

/** Why a pair has no groove, in words; null when it has one or is about to. */
export function faultOf(pair: ChosenPair): string | null {
  const carving = carvingOf(pair.pair);
  if (!carving.ok) return carving.missing ? null : inWords(carving.reason);
  const { answers, fault } = grooves.value;
  const answer = answers.get(pair.id);
  return answer && !answer.ok ? inWords(answer.reason) : fault;
}

/** The pair states no bending stiffness, so only the cosine rule can be said of it. */
export function unbendable(pair: Pick<ChosenPair, 'pair'>): boolean {
  const carving = carvingOf(pair.pair);
  return !carving.ok && carving.missing;
}
