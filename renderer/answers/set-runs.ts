import { computed } from '@preact/signals';
import { whatIf } from '../../core/line/index.ts';
import { t } from '../state/index.ts';
import { answer } from './answer.ts';
import { type Entered, enteredChosen, enteredRack } from './contenders.ts';
import {
  type FirstTimes,
  hardnessOf,
  type QuickestAnswer,
  type QuickestInput,
  rankingQuestionOf,
} from './jobs/set-jobs.ts';
import { scope, setQuestion } from './set-question.ts';

/** A hand that moves a gate or a slider is waited for: a set takes seconds. */
const SETTLE_MS = 700;

/**
 * What is asked of the pairs entered. While one of them is still being bent into other snow the question before stands,
 * so that its answer can tell what the change is worth.
 */
function question(entered: () => Entered, mayRank: () => boolean): () => QuickestInput | null {
  let held: QuickestInput | null = null;
  return () => {
    const { pairs, waiting } = entered();
    const asked = setQuestion.value;
    if (!mayRank() || asked.gates.length < 2 || (pairs.length === 0 && waiting === 0)) held = null;
    else if (waiting === 0) held = { ...asked, pairs };
    else if (held && !sameGates(held, asked)) held = null;
    return held;
  };
}

const chosenRuns = answer('quickestRuns', {
  label: () => t('answers.quickestRuns'),
  question: question(
    () => enteredChosen.value,
    () => scope.value === 'chosen',
  ),
  settleMs: SETTLE_MS,
});

const rackRuns = answer('quickestRuns', {
  label: () => t('answers.quickestRuns'),
  question: question(
    () => enteredRack.value,
    () => scope.value !== 'chosen',
  ),
  settleMs: SETTLE_MS,
});

/** The quickest runs of the pairs asked about, chosen ones or the rack's. */
export const setRuns = computed(() => (scope.value === 'chosen' ? chosenRuns.value : rackRuns.value));
export const retrySetRuns = (): void => (scope.value === 'chosen' ? chosenRuns : rackRuns).retry();
export const enteredNow = computed(() =>
  scope.value === 'chosen' ? enteredChosen.value : enteredRack.value,
);

/** Times found so far of the runs under way, s by pair; null before the first. */
export const firstTimes = computed(() => setRuns.value.soFar as FirstTimes | null);

const sameGates = (a: Pick<QuickestInput, 'gates'>, b: Pick<QuickestInput, 'gates'>) => a.gates === b.gates;

/**
 * What the runs would take as things stand now, s by pair, before they are solved anew; null where the answer is up to
 * date, or where other gates or another hill leave nothing to go by.
 */
export const estimated = computed<ReadonlyMap<string, number> | null>(() => {
  const { value, of } = setRuns.value;
  const now = setQuestion.value;
  if (!value || !of || sameQuestion(of, now)) return null;
  if (!sameGates(of, now) || of.profile !== now.profile || of.paceKmh !== null || now.paceKmh !== null)
    return null;
  const from = rankingQuestionOf(of);
  const to = rankingQuestionOf(now);
  const hardness = [hardnessOf(of.said), hardnessOf(now.said)] as const;
  return new Map(value.pairs.map(pair => [pair.id, pair.seconds + whatIf(pair, from, to, hardness)]));
});

const SETTINGS = ['gates', 'slopeDeg', 'profile', 'startSpeedKmh', 'paceKmh'] as const;

function sameQuestion(a: Omit<QuickestInput, 'pairs'>, b: Omit<QuickestInput, 'pairs'>): boolean {
  return SETTINGS.every(name => a[name] === b[name]) && JSON.stringify(a.said) === JSON.stringify(b.said);
}

/** The run of a chosen pair, where it was found. */
export const setRunOf = (id: string): QuickestAnswer['pairs'][number] | null =>
  setRuns.value.value?.pairs.find(pair => pair.id === id) ?? null;
