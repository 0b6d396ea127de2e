/**
 * The quickest run through a set of gates, from a start to a finish.
 */

import { acceptConditions, fieldsOf } from '../conditions/index.ts';
import {
  type ChainAnswer,
  type ChainFailure,
  type ChainGuess,
  type ChainProblem,
  ChainSolver,
} from '../numeric/index.ts';
import { DEGREE } from '../units/index.ts';
import { acceptLine } from './conditions.ts';
import { keepTo } from './keep-to.ts';
import { column, type LineChain, lineChain } from './line-chain.ts';
import {
  COST_SCALE,
  DATA,
  EDGE,
  LEAN,
  LEAN_RATE,
  LEG_SPEED,
  lineModel,
  OFFSET,
  SPEED,
  STATES,
  TURNED,
} from './line-model.ts';
import { type LineRun, readLine } from './line-run.ts';
import { longerSet } from './longer-set.ts';
import type { LinePoint } from './reference-line.ts';
import { type LineFailure, meanRhythm, reported, rhythm } from './rhythm.ts';
import { setGuess } from './set-guess.ts';
import {
  acceptGates,
  lineSpeed,
  ROLLING,
  type SetQuestion,
  straightPull,
  straightSeconds,
} from './set-question.ts';

export interface SetOptions {
  /** Stages between two gates, 16 unless given; comparisons use one number for all. */
  readonly stages?: number;
  /** Answers to neighbouring questions through the same gates, to begin from; the best is kept. */
  readonly from?: readonly SetRun[];
  /** Whether to search from scratch too when a neighbour's answer led to one; false unless given. */
  readonly afresh?: boolean;
  /** Beginnings tried from scratch, up to 3, the best kept; 1 unless given, 0 to begin from neighbours' answers alone. */
  readonly beginnings?: number;
  readonly onProgress?: (share: number) => void;
  readonly cancelled?: () => boolean;
}

export interface SetRun {
  readonly ok: true;
  readonly question: SetQuestion;
  readonly run: LineRun;
  /** From the start, the straight run into it from rest with it. */
  readonly seconds: number;
  /** Node at which each pole is passed, in order. */
  readonly poleNodes: readonly number[];
  readonly chain: LineChain;
  readonly answer: ChainAnswer;
  readonly iterations: number;
}

const SET_STAGES = 16;
const FIRST_BARRIER = 0.01;
const WARM_BARRIER = 1e-4;
const RELEASED_BARRIER = 1e-3;
/** Sets of more gates than this are begun from their first few, solved alone. */
const LONG = 14;
const HEAD = 10;
const EXTENDED_BARRIER = 1e-3;
/** How many times dearer rates are at first, for each beginning; the best answer is kept. */
const FIRST_PRICES = [1, 10, 100];
/** Shares of the rhythm's own pace that the first guess takes, until one leads to an answer. */
const PACES = [1, 0.75, 0.55];
const MOST_STEPS = 600;
/** A neighbour's answer that has not led to one by then is no help. */
const WARM_STEPS = 250;
/** Heading at the start, rad from the fall line, away from and towards the first pole's side. */
const START_HEADING = [-0.1, 1.2] as const;
/** The run is ridden to its end: heading within this of the fall line as it crosses the finish, rad. */
const FINISH_HEADING = 20 * DEGREE;
/** A kept pace is kept to within this, m/s, so that a run that begins at it has room. */
const PACE_ROOM = 0.02;

/**
 * Solves the quickest run.
 *
 * @throws RangeError naming the field, the value found and what is accepted
 */
export function quickestRun(question: SetQuestion, options: SetOptions = {}): SetRun | LineFailure {
  // Every set is solved with its first turn to the left, so that a mirrored one gives the mirrored answer to the bit.
  if (question.poles[0]?.turn !== 1) return solveSet(question, options);
  const found = solveSet(mirrored(question), options);
  return found.ok ? { ...found, question, run: mirroredRun(found.run) } : found;
}

function solveSet(question: SetQuestion, options: SetOptions): SetRun | LineFailure {
  const { conditions, poles, startSpeed } = question;
  acceptLine(conditions);
  if (startSpeed !== 0) acceptConditions({ startSpeed }, fieldsOf('start'));
  acceptGates(poles);
  const straight = straightSeconds(question);
  const perPiece = options.stages ?? SET_STAGES;
  const { chain, problem, poleNodes } = setChain(question, perPiece);
  const solver = new ChainSolver(problem);
  let best: ChainAnswer | null = null;
  let failure: ChainFailure | null = null;
  let noRhythm: LineFailure | null = null;
  let iterations = 0;
  const { cancelled } = options;
  const tries = Math.min(FIRST_PRICES.length, options.beginnings ?? 1);
  // The error falls from one to the tolerance: its logarithm tells how far the work has come.
  let begun = 0;
  const beginnings = (options.from?.length ?? 0) + (options.from?.length && !options.afresh ? 0 : tries);
  const onStep = ({ error, barrier }: { error: number; barrier: number }) => {
    const left = Math.max(0, Math.log10(Math.max(error, barrier) / 1e-7)) / 7;
    options.onProgress?.((begun + Math.max(0, 1 - left)) / beginnings);
  };
  const search = (guess: ChainGuess, barrier: number, mostSteps = MOST_STEPS) => {
    const found = solver.solve(guess, { barrier, mostSteps, cancelled, onStep });
    iterations += found.iterations;
    begun++;
    if (found.ok) {
      if (!best || found.objective < best.objective) best = found;
    } else failure ??= found;
  };
  for (const { answer } of options.from ?? []) {
    if (answer.x.length !== (problem.stages + 1) * STATES.length) continue;
    // Where the wall can break on one ski only, their limits are not of a number, and multipliers do not carry over.
    const alike = answer.multipliers.limits.length === (problem.stages + 1) * chain.model.limits.outputCount;
    search(alike ? answer : { x: answer.x, u: answer.u }, WARM_BARRIER, WARM_STEPS);
  }
  const scratch = tries > 0;
  if (scratch && (!best || options.afresh) && poles.length > LONG && !cancelled?.()) {
    const head = solveSet(
      { ...question, poles: poles.slice(0, HEAD), finish: undefined },
      { stages: perPiece, cancelled },
    );
    if (head.ok) {
      iterations += head.iterations;
      const turns = poles.map(({ turn }) => turn);
      search(longerSet(head.answer, HEAD, turns, perPiece), EXTENDED_BARRIER);
    }
  }
  if (scratch && (!best || (options.afresh && poles.length <= LONG)) && !cancelled?.()) {
    for (const pace of PACES) {
      const guess = firstGuess(question, chain, perPiece, pace);
      if ('ok' in guess) {
        noRhythm = guess;
        break;
      }
      for (const price of FIRST_PRICES.slice(0, tries)) {
        if (price === 1) search(guess, FIRST_BARRIER);
        else {
          // With rates made dear the search keeps to even turns; let go from there it ends in other ones.
          const even = dearer(solver, problem, guess, price, cancelled);
          iterations += even.iterations;
          if (even.ok) search(even, RELEASED_BARRIER);
        }
        if (cancelled?.()) break;
      }
      if (best || cancelled?.()) break;
    }
  }

  const found = best as ChainAnswer | null;
  if (!found) {
    if (failure) return reported(failure, problem.stages);
    if (noRhythm && !cancelled?.()) return { ...noRhythm, at: 0 };
    return { ok: false, reason: 'cancelled', limit: '', at: 0 };
  }
  const run = readLine(chain, found, conditions);
  const seconds = run.seconds + straight;
  return { ok: true, question, run, seconds, poleNodes, chain, answer: found, iterations };
}

function mirrored(question: SetQuestion): SetQuestion {
  const over = <T extends { readonly x: number }>(point: T): T => ({ ...point, x: -point.x });
  return {
    ...question,
    poles: question.poles.map(pole => ({ ...over(pole), turn: -pole.turn as 1 | -1 })),
    start: question.start && over(question.start),
    finish: question.finish && over(question.finish),
    along: question.along && { ...question.along, points: question.along.points.map(over) },
  };
}

/** Columns that change sign with the side. */
const SIDED = ['x', 'massX', 'heading', 'lean', 'leanRate', 'edge', 'curvature', 'mismatch'] as const;

function mirroredRun(run: LineRun): LineRun {
  const sided = SIDED.map(name => [name, run[name].map(v => -v)] as const);
  return { ...run, ...Object.fromEntries(sided) };
}

/** The same set with every rate made dear, solved roughly. */
function dearer(
  solver: ChainSolver,
  problem: ChainProblem,
  guess: ChainGuess,
  price: number,
  cancelled?: () => boolean,
) {
  const stageData = problem.stageData.slice();
  for (let at = column('calm'); at < stageData.length; at += DATA.length) stageData[at] = price;
  return solver.solve(
    guess,
    { barrier: FIRST_BARRIER, mostSteps: MOST_STEPS, tolerance: 1e-4, cancelled },
    { ...problem, stageData },
  );
}

/** The rhythm nearest the set, laid along it; `pace` slows the guess. Why there is none, where no pace can be kept. */
function firstGuess(
  question: SetQuestion,
  chain: LineChain,
  perPiece: number,
  pace: number,
): ChainGuess | LineFailure {
  const { conditions, poles } = question;
  const { spacing, offset } = meanRhythm(poles);
  const pattern = rhythm(
    { conditions, spacing: Math.max(3, spacing), offset: Math.min(offset, 0.8 * spacing) },
    { stages: perPiece, beginnings: 1 },
  );
  if (!pattern.ok) return pattern;
  const turns = [0, ...poles.map(({ turn }) => turn)];
  const ends = [...poles.map(({ turn }) => turn), 0];
  const slower = { ...pattern.answer, x: pattern.answer.x.slice() };
  for (let k = 0; k < slower.x.length; k += STATES.length) slower.x[k + SPEED] *= pace;
  return setGuess(slower, perPiece, turns, ends, chain.places, lineSpeed(question), conditions);
}

/** Rows of the conditions at the ends: states that are nothing at the finish, states that are given at the start. */
const NONE_AT_END = [LEAN, EDGE];
const GIVEN_AT_START = [OFFSET, SPEED, LEAN, LEAN_RATE, LEG_SPEED, EDGE];
const START_SPEED_ROW = NONE_AT_END.length + GIVEN_AT_START.indexOf(SPEED);

/** Seconds for each m/s more at the start. */
export function startSpeedWorth({ question, answer }: SetRun): number {
  return question.startSpeed < ROLLING
    ? -1 / straightPull(question)
    : -answer.multipliers.ends[START_SPEED_ROW] / COST_SCALE;
}

function setChain(question: SetQuestion, perPiece: number) {
  const { conditions, poles, pace, along } = question;
  const points = linePoints(question);
  const chain = lineChain(points, conditions, lineModel(conditions), perPiece);
  const n = STATES.length;
  const nodes = chain.problem.stages;
  const stateLow = chain.problem.stateLow.slice();
  const stateHigh = chain.problem.stateHigh.slice();
  const poleNodes = poles.map((_, i) => (i + 1) * perPiece);
  for (const [i, { turn }] of poles.entries()) {
    const at = poleNodes[i] * n + OFFSET;
    if (turn < 0) stateLow[at] = 0;
    else stateHigh[at] = 0;
  }
  if (along) keepTo(along, chain, stateLow, stateHigh);
  const toRight = poles[0].turn < 0 ? 1 : -1;
  const [away, towards] = START_HEADING;
  const startLine = chain.places[0].heading;
  stateLow[TURNED] = Math.max(stateLow[TURNED], Math.min(toRight * away, toRight * towards) - startLine);
  stateHigh[TURNED] = Math.min(stateHigh[TURNED], Math.max(toRight * away, toRight * towards) - startLine);
  const finishLine = chain.places[nodes].heading;
  stateLow[nodes * n + TURNED] = -FINISH_HEADING - finishLine;
  stateHigh[nodes * n + TURNED] = FINISH_HEADING - finishLine;
  const rows = NONE_AT_END.length + GIVEN_AT_START.length;
  const start = new Float64Array(rows * n);
  const end = new Float64Array(rows * n);
  const value = new Float64Array(rows);
  for (const [r, state] of NONE_AT_END.entries()) end[r * n + state] = 1;
  for (const [r, state] of GIVEN_AT_START.entries()) start[(NONE_AT_END.length + r) * n + state] = 1;
  value[START_SPEED_ROW] = lineSpeed(question);
  if (pace !== undefined) for (let k = SPEED; k < stateHigh.length; k += n) stateHigh[k] = pace + PACE_ROOM;
  const problem: ChainProblem = { ...chain.problem, stateLow, stateHigh, ends: { start, end, value } };
  return { chain: { ...chain, problem }, problem, poleNodes };
}

/** Start, each pole passed on its outside, finish; headings halfway between the ways in and out. */
function linePoints({ conditions, poles, start, finish }: SetQuestion): LinePoint[] {
  const last = poles.length - 1;
  const middle = (i: number, j: number) => (poles[i].x + poles[j].x) / 2;
  const first = start ?? { x: middle(0, 1), y: poles[0].y - (poles[1].y - poles[0].y) };
  const end = finish ?? { x: middle(last, last - 1), y: poles[last].y + (poles[last].y - poles[last - 1].y) };
  const raw = [first, ...poles, end];
  const bearing = (a: { x: number; y: number }, b: { x: number; y: number }) =>
    Math.atan2(b.x - a.x, b.y - a.y);
  let points: LinePoint[] = raw.map(({ x, y }) => ({ x, y, heading: 0 }));
  // Passing beside a pole depends on the heading there and the heading on where the others are passed.
  for (let round = 0; round < 8; round++) {
    points = points.map((point, i) => {
      const before = points[i - 1];
      const after = points[i + 1];
      if (!before) return { ...point, heading: bearing(point, after) };
      if (!after) return { ...point, heading: 0 };
      const heading = 0.5 * (bearing(before, point) + bearing(point, after));
      const outside = -poles[i - 1].turn * conditions.clearance;
      return {
        x: raw[i].x + outside * Math.cos(heading),
        y: raw[i].y - outside * Math.sin(heading),
        heading,
      };
    });
  }
  return points;
}
