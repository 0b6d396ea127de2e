import { computed } from '@preact/signals';
import { course, t } from '../state/index.ts';
import { answer } from './answer.ts';
import { type Entered, enteredChosen, enteredRack } from './contenders.ts';
import type { RankInput } from './jobs/set-jobs.ts';
import { courseConditions, scope } from './set-question.ts';

const gates = computed(() => course.value.gates);

function questionFor({ pairs, waiting }: Entered): RankInput | null {
  if (pairs.length === 0 || waiting > 0 || gates.value.length < 2) return null;
  return { pairs, gates: gates.value, conditions: courseConditions.value };
}

const chosenQuestion = computed(() => questionFor(enteredChosen.value));
const rackQuestion = computed(() => (scope.value === 'rack' ? questionFor(enteredRack.value) : null));

/** The chosen pairs ranked on the set. */
export const chosenRanking = answer('rankChosen', {
  label: () => t('answers.rankingChosen'),
  question: () => chosenQuestion.value,
});

/** The whole rack, where it was asked for: asked about when the hand has come to rest. */
const rackRanking = answer('rankRack', {
  label: () => t('answers.rankingRack'),
  question: () => rackQuestion.value,
  settleMs: 250,
});

/** The ranking on show. */
export const ranking = computed(() => (scope.value === 'rack' ? rackRanking.value : chosenRanking.value));
export const enteredNow = computed(() => (scope.value === 'rack' ? enteredRack.value : enteredChosen.value));
