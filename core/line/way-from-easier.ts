import type { ChainAnswer, ChainFailure } from '../numeric/index.ts';
import type { RhythmQuestion } from './rhythm.ts';

/** Gates that every pair finds its way through: distances in m, and the sine of a slope of 12°. */
const EASY = { spacing: 12, offset: 3, sine: 0.208 };
/** Share of the way of the first step, and how steps grow where they lead on; they are halved where they do not. */
const FIRST = 0.25;
const GROWTH = 1.6;
/** Steps that lead nowhere, after which there is no way on. */
const MOST_FAILURES = 3;

interface Walk {
  readonly begin: (request: RhythmQuestion) => ChainAnswer | ChainFailure;
  readonly next: (request: RhythmQuestion, last: ChainAnswer) => ChainAnswer | ChainFailure;
  readonly cancelled?: () => boolean;
}

/** How far it went: the last question that was solved, its answer, and whether it is the one asked. */
interface WayEnd {
  readonly question: RhythmQuestion;
  readonly answer: ChainAnswer;
  readonly arrived: boolean;
}

/**
 * Solves easy gates and walks from there to those asked in steps that are as long as they lead on, each answer begun
 * from the last. Null where even the easy gates lead nowhere.
 */
export function wayFromEasier(question: RhythmQuestion, { begin, next, cancelled }: Walk): WayEnd | null {
  const easy = begin(between(question, 0));
  if (!easy.ok) return null;
  let answer = easy;
  let walked = 0;
  let step = FIRST;
  let failures = 0;
  while (walked < 1 && failures < MOST_FAILURES && !cancelled?.()) {
    const to = Math.min(1, walked + step);
    const found = next(between(question, to), answer);
    if (found.ok) {
      answer = found;
      walked = to;
      step *= GROWTH;
    } else {
      failures++;
      step /= 2;
    }
  }
  return { question: between(question, walked), answer, arrived: walked === 1 };
}

function between(request: RhythmQuestion, share: number): RhythmQuestion {
  if (share === 1) return request;
  const blend = (easy: number, own: number) => easy + share * (own - easy);
  const { slope } = request.conditions;
  return {
    spacing: blend(EASY.spacing, request.spacing),
    offset: blend(EASY.offset, request.offset),
    conditions: {
      ...request.conditions,
      slope: { sine: y => blend(EASY.sine, slope.sine(y)), curvature: y => share * slope.curvature(y) },
    },
  };
}
