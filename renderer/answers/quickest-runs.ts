import { computed, type ReadonlySignal, signal } from '@preact/signals';
import { conditions, course, project, report, t } from '../state/index.ts';
import { enteredChosen } from './contenders.ts';
import type { QuickestAnswer, QuickestInput } from './jobs/set-jobs.ts';
import { Superseded } from './queue.ts';
import { checkOf } from './rule-check.ts';
import { work } from './work.ts';

/** What would be asked now; null without gates or pairs, or while one of them is still being bent. */
const question = computed<QuickestInput | null>(() => {
  const { gates, discipline, slopeDeg, speedKmh, greatestEdgeDeg } = course.value;
  const { pairs, waiting } = enteredChosen.value;
  if (gates.length < 2 || pairs.length === 0 || waiting > 0) return null;
  const { rack } = project.value;
  return {
    gates,
    discipline,
    slopeDeg,
    startSpeedKmh: speedKmh,
    said: { ...conditions.value, edgeMostDeg: greatestEdgeDeg },
    pairs: pairs.flatMap(({ id, turn }) => {
      const pair = rack.find(entry => entry.id === id)?.pair;
      if (!pair) return [];
      const check = checkOf(pair, discipline);
      const failed =
        check.verdict === 'fails' ? check.items.filter(({ verdict }) => verdict === 'fails') : [];
      return [{ id, pair, turn, failedRules: failed.map(({ rule }) => rule) }];
    }),
  };
});

const found = signal<{ readonly of: QuickestInput; readonly answer: QuickestAnswer } | null>(null);

/** The quickest runs of the chosen pairs, once asked for; null when they were not, or something has changed since. */
export const quickestRuns: ReadonlySignal<QuickestAnswer | null> = computed(() =>
  found.value !== null && found.value.of === question.value ? found.value.answer : null,
);

export const canTimeQuickestRuns: ReadonlySignal<boolean> = computed(() => question.value !== null);

/** Times them in the worker, with progress and a stop in the foot. */
export async function timeQuickestRuns(): Promise<void> {
  const of = question.value;
  if (!of) return;
  try {
    found.value = { of, answer: await work('quickest-runs', 'quickestRuns', t('answers.quickestRuns'), of) };
  } catch (error) {
    if (error instanceof Superseded) report(t('answers.quickestRunsStopped'));
    else report((error as Error).message, 'error');
  }
}
