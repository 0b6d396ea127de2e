/**
 * The pace a pair can keep for ever through gates set in an even rhythm: half a period between two gates whose end
 * mirrors its beginning, in least time.
 */

import { acceptConditions, fieldsOf } from '../conditions/index.ts';
import { type ChainAnswer, type ChainFailure, type ChainProblem, ChainSolver } from '../numeric/index.ts';
import { acceptLine, type LineConditions } from './conditions.ts';
import { type LineChain, lineChain } from './line-chain.ts';
import { type LineModel, lineModel, OFFSET, STATES } from './line-model.ts';
import { HELD_BACK_BY, type LineRun, readLine } from './line-run.ts';
import { type GuessTone, rhythmGuess } from './rhythm-guess.ts';
import { MIRRORED } from './set-guess.ts';
import { wayFromEasier } from './way-from-easier.ts';

export interface RhythmQuestion {
  readonly conditions: LineConditions;
  /** Gates this far apart down the hill and from side to side, m. */
  readonly spacing: number;
  readonly offset: number;
}

export interface LineOptions {
  /** Stages between two gates; 48 for a rhythm, 16 for a set, unless given. */
  readonly stages?: number;
  /** An answer to a neighbouring question of the same size, to begin from. */
  readonly from?: Rhythm;
  readonly onProgress?: (share: number) => void;
  readonly cancelled?: () => boolean;
  /** Beginnings tried, the best kept; fewer is quicker and surer to miss a better turn. */
  readonly beginnings?: number;
}

export interface Rhythm {
  readonly ok: true;
  readonly question: RhythmQuestion;
  /** From gate to gate; the first turns left round a pole to the right of the middle. */
  readonly run: LineRun;
  readonly secondsPerGate: number;
  /** Down the fall line over the skis' path, m/s. */
  readonly meanSpeed: number;
  readonly chain: LineChain;
  readonly answer: ChainAnswer;
  /** Solver steps over all beginnings. */
  readonly iterations: number;
}

export interface LineFailure {
  readonly ok: false;
  readonly reason: ChainFailure['reason'];
  /** The equation or limit that could not be kept, and at what part of the line, 0 to 1. */
  readonly limit: string;
  readonly at: number;
}

/** Mean distance of the turning poles down the hill and from side to side, m. */
export function meanRhythm(poles: readonly { readonly x: number; readonly y: number }[]): {
  spacing: number;
  offset: number;
} {
  const last = poles.length - 1;
  const across = poles.reduce((sum, { x }, i) => (i === 0 ? 0 : sum + Math.abs(x - poles[i - 1].x)), 0);
  return { spacing: (poles[last].y - poles[0].y) / last, offset: across / last };
}

const RHYTHM_STAGES = 48;
const FIRST_BARRIER = 0.01;
const WARM_BARRIER = 1e-4;
const MOST_STEPS = 250;

/** Beginnings in the order they are tried. */
const BEGINNINGS: readonly GuessTone[] = [
  { pace: 1, lean: 1 },
  { pace: 0.8, lean: 0.8 },
  { pace: 1.15, lean: 1.1 },
];
const USUAL_BEGINNINGS = 2;

/**
 * Solves a rhythm: from a neighbour's answer, from guesses, and where these lead nowhere on a way from easier gates.
 *
 * @throws RangeError naming the field, the value found and what is accepted
 */
export function rhythm(question: RhythmQuestion, options: LineOptions = {}): Rhythm | LineFailure {
  const { conditions, spacing, offset } = question;
  acceptLine(conditions);
  acceptConditions({ spacing, offset }, fieldsOf('gates'));
  const stages = options.stages ?? RHYTHM_STAGES;
  const model = lineModel(conditions);
  const chain = rhythmChain(question, model, stages);
  const solver = new ChainSolver(chain.problem);
  let best: ChainAnswer | null = null;
  let failure: ChainFailure | null = null;
  let iterations = 0;
  const { cancelled } = options;
  const warm = (from: ChainAnswer, problem: ChainProblem) => {
    const found = solver.solve(from, { barrier: WARM_BARRIER, mostSteps: MOST_STEPS, cancelled }, problem);
    iterations += found.iterations;
    return found;
  };
  const afresh = (request: RhythmQuestion, problem: ChainProblem, tone: GuessTone) => {
    const guess = rhythmGuess(request, stages, tone);
    const found = solver.solve(guess, { barrier: FIRST_BARRIER, mostSteps: MOST_STEPS, cancelled }, problem);
    iterations += found.iterations;
    return found;
  };
  const from = options.from?.answer;
  if (from && from.x.length === (stages + 1) * STATES.length) {
    const found = warm(from, chain.problem);
    if (found.ok) best = found;
  }
  const beginnings = Math.min(options.beginnings ?? USUAL_BEGINNINGS, BEGINNINGS.length);
  let stuck: LineFailure | null = null;
  for (let i = 0; !(options.from && best) && i < beginnings && !cancelled?.(); i++) {
    const found = afresh(question, chain.problem, BEGINNINGS[i]);
    options.onProgress?.((i + 1) / beginnings);
    if (found.ok) {
      if (!best || found.objective < best.objective) best = found;
      continue;
    }
    failure ??= found;
    if (best || i > 0 || cancelled?.()) continue;
    // Where the likeliest guess leads nowhere others seldom do: a way there shows the answer, or that there is none.
    const end = wayFromEasier(question, {
      begin: request => afresh(request, rhythmChain(request, model, stages).problem, BEGINNINGS[0]),
      next: (request, last) => warm(last, rhythmChain(request, model, stages).problem),
      cancelled,
    });
    if (end?.arrived) best = end.answer;
    else if (end) {
      stuck = nearestLimit(readLine(rhythmChain(end.question, model, stages), end.answer, conditions));
    }
    if (best) break;
  }
  if (!best) return stuck ?? reported(failure as ChainFailure, stages);
  const run = readLine(chain, best, conditions);
  return {
    ok: true,
    question,
    run,
    secondsPerGate: run.seconds,
    meanSpeed: spacing / run.seconds,
    chain,
    answer: best,
    iterations,
  };
}

export function reported(failure: ChainFailure, stages: number): LineFailure {
  return { ok: false, reason: failure.reason, limit: failure.worst.name, at: failure.worst.at / stages };
}

/** Of the last question that could be solved on the way to one that cannot: the limit that costs most there. */
function nearestLimit({ limits, limit, t, seconds }: LineRun): LineFailure {
  const by = limits[0]?.by ?? 'hold';
  const node = limit.indexOf(HELD_BACK_BY.indexOf(by));
  return {
    ok: false,
    reason: 'no feasible step',
    limit: by === 'leg length' ? 'leg' : by,
    at: t[Math.max(0, node)] / seconds,
  };
}

/** The chain of half a period, its end the mirror of its beginning. */
function rhythmChain(
  { conditions, spacing, offset }: RhythmQuestion,
  model: LineModel,
  stages: number,
): LineChain {
  const across = offset / 2 + conditions.clearance;
  const points = [
    { x: across, y: 0, heading: 0 },
    { x: -across, y: spacing, heading: 0 },
  ];
  const chain = lineChain(points, conditions, model, stages);
  const n = STATES.length;
  const start = new Float64Array(n * n);
  const end = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    start[i * n + i] = MIRRORED.includes(i) ? 1 : -1;
    end[i * n + i] = 1;
  }
  const stateLow = chain.problem.stateLow.slice();
  // Past the first pole on its outside; the mirrored end then is too.
  stateLow[OFFSET] = 0;
  const problem: ChainProblem = {
    ...chain.problem,
    stateLow,
    ends: { start, end, value: new Float64Array(n) },
  };
  return { ...chain, problem };
}
