import { signal } from '@preact/signals';
import type { Gate, QuickLine } from '../../core/course/index.ts';
import { course, inWords, report, t } from '../state/index.ts';
import { enteredChosen } from './contenders.ts';
import type { SetPair } from './jobs/set-jobs.ts';
import { Superseded } from './queue.ts';
import { courseConditions } from './set-question.ts';
import { work } from './work.ts';

/** Quick lines found, by pair id, with the question each answers. */
const quickLines = signal<
  ReadonlyMap<
    string,
    { readonly key: string; readonly line: QuickLine | null; readonly reason: string | null }
  >
>(new Map());

/** What a quick line was asked for: another set, skier or snow makes it another question. */
function questionOf(pair: SetPair, gates: readonly Gate[]): string {
  const turn = 'table' in pair.turn ? [pair.turn.table.hardness, ...pair.turn.table.radii] : pair.turn;
  return JSON.stringify([
    gates.map(gate => [gate.x, gate.y, gate.turn]),
    courseConditions.value,
    turn,
    pair.baseBevel,
  ]);
}

/** The quick line of a pair for the set as it stands, or null when none was found for it. */
export function quickLineOf(id: string) {
  const pair = enteredChosen.value.pairs.find(each => each.id === id);
  const found = quickLines.value.get(id);
  return pair && found?.key === questionOf(pair, course.value.gates) ? found : null;
}

/** Looks for it in the worker, with progress and a stop in the foot. */
export async function findQuickLine(id: string): Promise<void> {
  const pair = enteredChosen.value.pairs.find(each => each.id === id);
  if (!pair) return;
  const { gates } = course.value;
  const key = questionOf(pair, gates);
  try {
    const answer = await work('quick-line', 'quickLineOf', t('answers.fastestLine', { name: pair.name }), {
      pair,
      gates,
      conditions: { ...courseConditions.value, holdSpeed: false },
    });
    const next = new Map(quickLines.value);
    next.set(id, {
      key,
      line: answer.ok ? answer : null,
      reason: answer.ok ? null : inWords(answer.reason),
    });
    quickLines.value = next;
    if (!answer.ok) report(`${pair.name}: ${inWords(answer.reason)}`, 'error');
  } catch (error) {
    if (error instanceof Superseded) report(t('answers.fastestLineStopped'));
    else report((error as Error).message, 'error');
  }
}
