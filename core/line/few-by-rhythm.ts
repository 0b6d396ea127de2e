/**
 * Many pairs by the pace each could keep through gates as far apart as a set's are on average: which of them are worth
 * the whole set.
 */

import type { PairOnSnow } from './pair-on-snow.ts';
import { type LineFailure, meanRhythm, type Rhythm, rhythm } from './rhythm.ts';
import type { EachOtherOptions } from './runs-from-each-other.ts';
import { type RankingQuestion, rankByQuickestRun, type SetRanking } from './set-ranking.ts';

/** Coarser than a rhythm by itself: pairs are put in order, and the first of them looked at again. */
const STAGES = 24;

export interface RhythmPlace {
  /** Position among the pairs as given. */
  readonly index: number;
  /** From gate to gate; null where no pace can be kept. */
  readonly secondsPerGate: number | null;
  readonly failure: LineFailure | null;
}

/**
 * Every pair by its pace in the mean rhythm of the set, the quickest first, those without one last. Each is begun from
 * the one before, so pairs that are alike take little.
 *
 * @throws FieldError for a condition out of range
 */
function byRhythm(
  pairs: readonly PairOnSnow[],
  { conditions, poles }: RankingQuestion,
  options: { onProgress?(share: number): void; cancelled?(): boolean } = {},
): RhythmPlace[] {
  const gates = meanRhythm(poles);
  let from: Rhythm | undefined;
  const places = pairs.map(({ ski: { contactLength, baseBevel }, surface }, index): RhythmPlace => {
    options.onProgress?.(index / pairs.length);
    const request = { conditions: { ...conditions, ski: surface, contactLength, baseBevel }, ...gates };
    const found = rhythm(request, { stages: STAGES, from, cancelled: options.cancelled });
    if (!found.ok) return { index, secondsPerGate: null, failure: found };
    from = found;
    return { index, secondsPerGate: found.secondsPerGate, failure: null };
  });
  options.onProgress?.(1);
  const time = ({ secondsPerGate }: RhythmPlace) => secondsPerGate ?? Number.POSITIVE_INFINITY;
  return places.sort((a, b) => time(a) - time(b) || a.index - b.index);
}

export interface ManyRanking extends SetRanking {
  /** Pairs that were looked at by the rhythm alone, the quickest first. */
  readonly byRhythmAlone: readonly RhythmPlace[];
}

/** Pairs whose whole runs are solved, unless given. */
const WHOLE = 8;
/** Share of the work that rhythms are told as. */
const RHYTHM_SHARE = 0.3;

/**
 * Ranks any number of pairs: beyond `whole` of them all are put in order by the rhythm, and only the best of those that
 * may be picked are solved through the whole set.
 *
 * @throws FieldError for a question out of range, or no pair
 */
export function rankMany(
  pairs: readonly PairOnSnow[],
  question: RankingQuestion,
  { whole = WHOLE, onProgress, onRun, ...options }: EachOtherOptions & { readonly whole?: number } = {},
): ManyRanking {
  if (pairs.length <= whole) {
    const ranking = rankByQuickestRun(pairs, question, { ...options, onProgress, onRun });
    return { ...ranking, byRhythmAlone: [] };
  }
  const places = byRhythm(pairs, question, {
    ...options,
    onProgress: share => onProgress?.(RHYTHM_SHARE * share),
  });
  const may = places.filter(({ index }) => !pairs[index].barred);
  const few = [...may, ...places.filter(({ index }) => pairs[index].barred)].slice(0, whole);
  const of = few.map(({ index }) => index);
  const ranking = rankByQuickestRun(
    of.map(index => pairs[index]),
    question,
    {
      ...options,
      onProgress: share => onProgress?.(RHYTHM_SHARE + (1 - RHYTHM_SHARE) * share),
      onRun: (run, at) => onRun?.(run, of[at]),
    },
  );
  const back = <T extends { readonly index: number }>(each: T): T => ({ ...each, index: of[each.index] });
  return {
    pairs: ranking.pairs.map(back),
    untimed: ranking.untimed.map(back),
    pick: ranking.pick === null ? null : of[ranking.pick],
    because: [
      ...ranking.because,
      { key: 'line.byRhythmFirst', values: { count: pairs.length, whole: few.length } },
    ],
    byRhythmAlone: places.filter(place => !few.includes(place)),
  };
}
