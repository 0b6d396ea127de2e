/**
 * Pairs through the same gates by the time of their quickest runs: how far apart, how surely, and which to pick.
 */

import { FieldError } from '../fault/index.ts';
import type { Sentence } from '../language/index.ts';
import { GRAVITY, GRIP_FROM } from '../skier/index.ts';
import type { LineConditions } from './conditions.ts';
import { type InputShares, ownShares, sharedShares } from './input-uncertainty.ts';
import type { PairOnSnow } from './pair-on-snow.ts';
import { paceSentences, rankingSentences } from './ranking-sentences.ts';
import type { LineFailure } from './rhythm.ts';
import { type EachOtherOptions, runsFromEachOther } from './runs-from-each-other.ts';
import type { SetQuestion } from './set-question.ts';
import { type SetRun, startSpeedWorth } from './set-run.ts';
import { type SkiWorth, skiWorths } from './ski-changes.ts';
import { type LineWorth, worthOf } from './worth.ts';

/** The same gates, hill, snow and skier for every pair. */
export interface RankingQuestion extends Omit<SetQuestion, 'conditions'> {
  readonly conditions: Omit<LineConditions, 'ski' | 'contactLength' | 'baseBevel'>;
}

export interface TimedPair {
  readonly name: string;
  /** Position among the pairs as given. */
  readonly index: number;
  readonly run: SetRun;
  readonly seconds: number;
  /** Two standard uncertainties, some 95 %, as every ± here. */
  readonly secondsPlusMinus: number;
  /** Behind the first, s; what all pairs share cancels in its ±. */
  readonly gap: number;
  readonly gapPlusMinus: number;
  readonly worth: LineWorth;
  /** Seconds for each m/s more at the start. */
  readonly startSpeedWorth: number;
  readonly skiWorths: readonly SkiWorth[];
  /** Greatest edge angle, rad. */
  readonly neededEdge: number;
  /** Least grip to spare of an edged ski, rad. */
  readonly leastGrip: number;
  /** Greatest load, body weights. */
  readonly greatestLoad: number;
  /** Work of the stretching legs, J: what tires. */
  readonly legWork: number;
  /** Lost to edges that scrape, J: what a ski costs that turns too wide or too tight. */
  readonly scrapeWork: number;
}

export interface UntimedPair {
  readonly name: string;
  readonly index: number;
  readonly failure: LineFailure;
}

export interface SetRanking {
  /** Quickest first. */
  readonly pairs: readonly TimedPair[];
  /** Pairs for which no run was found, each with the limit in its way. */
  readonly untimed: readonly UntimedPair[];
  /** Position of the pair to pick among those given; null where no gap is larger than its ±. */
  readonly pick: number | null;
  readonly because: readonly Sentence[];
}

/** Standard uncertainties that ± covers: some 95 %. */
const COVERAGE = 2;
/**
 * What another local optimum may bring although runs were begun from each other: of the time, and at least, s (own
 * choice: whole sets from several beginnings came out within 0.04 %).
 */
const SEARCH_SHARE = 2e-4;
const LEAST_SEARCH = 0.0025;
/** A gap that is no more than its ± as both are told, in hundredths, is level, s. */
const HALF_A_HUNDREDTH = 0.005;

/**
 * Ranks pairs by their quickest runs. A pair that is barred is timed and not picked.
 *
 * @throws FieldError for a question out of range, or no pair
 */
export function rankByQuickestRun(
  pairs: readonly PairOnSnow[],
  question: RankingQuestion,
  options: EachOtherOptions = {},
): SetRanking {
  if (pairs.length === 0) {
    throw new FieldError({ field: 'pairs', found: undefined, accepted: { key: 'course.onePair' } });
  }
  const questions = pairs.map(({ ski: { contactLength, baseBevel }, surface }) => ({
    ...question,
    conditions: { ...question.conditions, ski: surface, contactLength, baseBevel },
  }));
  const runs = runsFromEachOther(questions, options);
  const timed = runs
    .flatMap((run, index) => (run.ok ? [timedPair(pairs[index], index, run)] : []))
    .sort((a, b) => a.seconds - b.seconds || a.index - b.index);
  const untimed = runs.flatMap((run, index) =>
    run.ok ? [] : [{ name: pairs[index].ski.name, index, failure: run }],
  );
  const first = timed[0];
  const ranked = timed.map(({ shared, own, ...pair }) => ({
    ...pair,
    secondsPlusMinus: COVERAGE * Math.hypot(...Object.values(shared), ...Object.values(own)),
    gap: pair.seconds - first.seconds,
    gapPlusMinus:
      pair.index === first.index ? 0 : gapPlusMinus(first, { seconds: pair.seconds, shared, own }),
  }));
  const allowed = timed.filter(({ index }) => !pairs[index].barred);
  const best = allowed[0];
  const level = allowed.filter(
    other => other !== best && other.seconds - best.seconds <= gapPlusMinus(best, other) + HALF_A_HUNDREDTH,
  );
  const pick = best && level.length === 0 && question.pace === undefined ? best.index : null;
  const next = allowed[1];
  if (question.pace !== undefined) {
    return { pairs: ranked, untimed, pick, because: paceSentences(question.pace, ranked, untimed) };
  }
  return {
    pairs: ranked,
    untimed,
    pick,
    because: rankingSentences({
      pairs: ranked,
      untimed,
      best: ranked.find(({ index }) => index === best?.index) ?? null,
      level: ranked.filter(({ index }) => level.some(pair => pair.index === index)),
      ahead: next && {
        by: next.seconds - best.seconds,
        plusMinus: gapPlusMinus(best, next),
        name: next.name,
      },
      barred: pairs.flatMap(({ ski: { name }, barred }) => (barred ? [{ name, why: barred }] : [])),
    }),
  };
}

interface Known {
  readonly seconds: number;
  readonly shared: InputShares;
  readonly own: InputShares;
}

/** Shared inputs count by the difference of what they are worth to either, own ones each for itself. */
function gapPlusMinus(a: Known, b: Known): number {
  const apart = Object.keys(a.shared).map(input => a.shared[input] - b.shared[input]);
  const search = Math.max(LEAST_SEARCH, SEARCH_SHARE * a.seconds);
  return COVERAGE * Math.hypot(search, ...apart, ...Object.values(a.own), ...Object.values(b.own));
}

function timedPair(pair: PairOnSnow, index: number, found: SetRun) {
  const { ski, surface, groove } = pair;
  const { run, chain, answer, poleNodes } = found;
  const { conditions } = found.question;
  const worth = worthOf(chain, answer, conditions, poleNodes);
  const startSpeed = startSpeedWorth(found);
  const changes = groove ? skiWorths(ski, surface, groove, worth.groove) : [];
  const most = (of: Float64Array) => of.reduce((greatest, v) => Math.max(greatest, Math.abs(v)), 0);
  return {
    name: ski.name,
    index,
    run: found,
    seconds: found.seconds,
    worth,
    startSpeedWorth: startSpeed,
    skiWorths: changes,
    neededEdge: most(run.edge),
    leastGrip: run.hold.reduce(
      (least, hold, k) => (Math.abs(run.edge[k]) > GRIP_FROM ? Math.min(least, hold) : least),
      Number.POSITIVE_INFINITY,
    ),
    greatestLoad: most(run.push),
    legWork: stretchingWork(found),
    scrapeWork: run.energy.scrape * conditions.skier.mass,
    shared: sharedShares(worth, startSpeed, conditions, changes),
    own: ownShares(pair, worth, changes),
  };
}

/** ∫ F ℓ̇ dt while the legs stretch, J. */
function stretchingWork({ run, question }: SetRun): number {
  const weight = question.conditions.skier.mass * GRAVITY;
  let work = 0;
  for (let k = 0; k + 1 < run.t.length; k++) {
    const push = (run.push[k] + run.push[k + 1]) / 2;
    const speed = (run.legSpeed[k] + run.legSpeed[k + 1]) / 2;
    work += weight * push * Math.max(0, speed) * (run.t[k + 1] - run.t[k]);
  }
  return work;
}
