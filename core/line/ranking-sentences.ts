import type { Sentence } from '../language/index.ts';
import { runFailureSentence } from './failure-sentence.ts';
import type { TimedPair, UntimedPair } from './set-ranking.ts';

interface Outcome {
  readonly pairs: readonly TimedPair[];
  readonly untimed: readonly UntimedPair[];
  /** Quickest of the pairs that may be picked; null where there is none. */
  readonly best: TimedPair | null;
  /** Pairs that may be picked and are no further behind it than is known. */
  readonly level: readonly TimedPair[];
  /** How far the best is ahead of the next. */
  readonly ahead?: { readonly by: number; readonly plusMinus: number; readonly name: string };
  readonly barred: readonly { readonly name: string; readonly why: Sentence }[];
}

const time = (value: number, plusMinus?: number) =>
  ({ quantity: 'time', value, decimals: 2, ...(plusMinus !== undefined && { plusMinus }) }) as const;

/** Which pair and why, or that they are level and what tells them apart; then what was left out. */
export function rankingSentences({ pairs, untimed, best, level, ahead, barred }: Outcome): Sentence[] {
  return [
    ...(best ? answer(best, level, ahead) : []),
    ...barred.map(({ name, why }): Sentence => ({ key: 'line.barred', values: { name, why } })),
    ...untimed.map(untimedSentence),
    ...(best || pairs.length === 0 ? [] : [{ key: 'line.noneAllowed' } as const]),
  ];
}

function answer(best: TimedPair, level: readonly TimedPair[], ahead: Outcome['ahead']): Sentence[] {
  const { name } = best;
  if (!ahead) return [{ key: 'line.onePairTimed', values: { name, time: time(best.seconds) } }];
  if (level.length === 0) {
    const gap = time(ahead.by, ahead.plusMinus);
    return [{ key: 'line.quickest', values: { name, time: time(best.seconds), gap, next: ahead.name } }];
  }
  const apart = level[level.length - 1].seconds - best.seconds;
  return [
    {
      key: 'line.level',
      values: { names: [best, ...level].map(pair => pair.name), apart: time(apart) },
    },
    ...[best, ...level].map(differs),
  ];
}

/** What a kept pace asks of each pair; it does not say which is quicker. */
export const paceSentences = (
  pace: number,
  pairs: readonly TimedPair[],
  untimed: readonly UntimedPair[],
): Sentence[] => [
  ...(pairs.length > 0
    ? [
        { key: 'line.atPace', values: { pace: { quantity: 'speed', value: pace } } } as const,
        ...pairs.map(differs),
      ]
    : []),
  ...untimed.map(untimedSentence),
];

const untimedSentence = ({ name, failure }: UntimedPair): Sentence => ({
  key: 'line.untimed',
  values: { name, problem: runFailureSentence(failure) },
});

const differs = ({ name, neededEdge, scrapeWork, greatestLoad, legWork }: TimedPair): Sentence => ({
  key: 'line.differs',
  values: {
    name,
    edge: { quantity: 'angle', value: neededEdge, decimals: 0 },
    load: { quantity: 'bodyWeights', value: greatestLoad, decimals: 1 },
    scrape: { quantity: 'work', value: scrapeWork },
    work: { quantity: 'work', value: legWork },
  },
});
