import { computed, signal, useSignalEffect } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { course } from '../state/index.ts';
import { enteredChosen, enteredRack } from './contenders.ts';
import { type RankAnswer, type RankInput, useWork, type WorkState } from './runner.ts';
import { courseConditions, scope } from './set-question.ts';

const NOTHING: WorkState<RankAnswer> = { value: null, error: null, running: false };

/** The chosen pairs ranked on the set, and the whole rack where it was asked for. */
export const chosenRanking = signal<WorkState<RankAnswer>>(NOTHING);
const rackRanking = signal<WorkState<RankAnswer>>(NOTHING);

/** The ranking on show. */
export const ranking = computed(() => (scope.value === 'rack' ? rackRanking.value : chosenRanking.value));
export const enteredNow = computed(() => (scope.value === 'rack' ? enteredRack.value : enteredChosen.value));

const gates = computed(() => course.value.gates);

const chosenInput = computed<RankInput | null>(() => {
  const { pairs, waiting } = enteredChosen.value;
  if (pairs.length === 0 || waiting > 0 || gates.value.length < 2) return null;
  return { pairs, gates: gates.value, conditions: courseConditions.value };
});

const rackInput = computed<RankInput | null>(() => {
  if (scope.value !== 'rack') return null;
  const { pairs, waiting } = enteredRack.value;
  if (pairs.length === 0 || waiting > 0 || gates.value.length < 2) return null;
  return { pairs, gates: gates.value, conditions: courseConditions.value };
});

/** The rack is asked about when the hand has come to rest. */
const REST_MS = 250;
const rested = signal<RankInput | null>(null);

/** Keeps both rankings up to date while the view is on screen. */
export function useRankings(): void {
  const own = useWork('rankChosen', 'Ranking the chosen pairs', () => chosenInput.value);
  const rack = useWork('rankRack', 'Ranking the rack', () => rested.value);
  useSignalEffect(() => {
    chosenRanking.value = own.value;
  });
  useSignalEffect(() => {
    rackRanking.value = rack.value;
  });
  useSignalEffect(() => {
    const input = rackInput.value;
    if (input === null) {
      rested.value = null;
      return;
    }
    const timer = setTimeout(() => {
      rested.value = input;
    }, REST_MS);
    return () => clearTimeout(timer);
  });
  useEffect(
    () => () => {
      rested.value = null;
    },
    [],
  );
}
