/**
 * Quickest runs of several pairs through the same gates, begun from one another's answers until none improves: a gap
 * then comes of the skis, not of two different local optima.
 */

import type { LineFailure } from './rhythm.ts';
import type { SetQuestion } from './set-question.ts';
import { quickestRun, type SetOptions, type SetRun } from './set-run.ts';

export interface EachOtherOptions
  extends Pick<SetOptions, 'stages' | 'beginnings' | 'onProgress' | 'cancelled'> {
  /** Times that every pair is tried again from the others, 3 unless given. */
  readonly rounds?: number;
  /** Told of every first run as it is found: the position of its question. */
  readonly onRun?: (run: SetRun, index: number) => void;
}

const ROUNDS = 3;
/** Neighbours in time that a pair is tried from in a round. */
const NEIGHBOURS = 2;
/** What counts as better: of the objective, some 10⁻⁵ of the time. */
const BETTER = 1e-5;
/** Share of the work that the first round of runs is told as, where there are others to come. */
const FIRST_SHARE = 0.6;

/**
 * The quickest run of each question, in order. All must ask for the same gates, start and clearance; the first is
 * solved from scratch, the others from answers found before them.
 *
 * @throws FieldError for a question out of range
 */
export function runsFromEachOther(
  questions: readonly SetQuestion[],
  { stages, beginnings, rounds = ROUNDS, onProgress, onRun, cancelled }: EachOtherOptions = {},
): (SetRun | LineFailure)[] {
  const count = questions.length;
  const firstShare = count > 1 ? FIRST_SHARE : 1;
  let last: SetRun | null = null;
  const found = questions.map((question, i): SetRun | LineFailure => {
    const run: SetRun | LineFailure = quickestRun(question, {
      stages,
      beginnings,
      from: last ? [last] : [],
      cancelled,
      onProgress: share => onProgress?.((firstShare * (i + share)) / count),
    });
    if (run.ok) {
      last = run;
      onRun?.(run, i);
    }
    return run;
  });
  /** Answers that each pair was already begun from. */
  const tried = found.map(
    (_, i) => new Set<SetRun>(found.slice(Math.max(0, i - 1), i).filter(run => run.ok)),
  );
  for (let round = 0; round < rounds && !cancelled?.(); round++) {
    let improved = false;
    for (const [i, question] of questions.entries()) {
      onProgress?.(firstShare + ((1 - firstShare) * (round + i / count)) / rounds);
      const own = found[i];
      if (!own.ok || cancelled?.()) continue;
      const others = found
        .filter((run): run is SetRun => run.ok && run !== own && !tried[i].has(run))
        .sort((a, b) => Math.abs(a.seconds - own.seconds) - Math.abs(b.seconds - own.seconds))
        .slice(0, NEIGHBOURS);
      for (const run of others) tried[i].add(run);
      if (others.length === 0) continue;
      const again = quickestRun(question, { stages, from: others, beginnings: 0, cancelled });
      if (again.ok && again.answer.objective < own.answer.objective * (1 - BETTER)) {
        found[i] = again;
        improved = true;
      }
    }
    if (!improved) break;
  }
  onProgress?.(1);
  return found;
}
