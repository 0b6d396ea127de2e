/**
 * Solves a whole run at once: from a first guess or a neighbouring run, then corrected until the equations of
 * motion followed closely through every stage agree with it.
 */

import { accept } from '../fault/index.ts';
import {
  type ChainAnswer,
  type ChainFailure,
  type ChainGuess,
  type ChainProblem,
  ChainSolver,
} from '../numeric/index.ts';
import { bankedPlan } from './banked-plan.ts';
import type { EdgeProgramme } from './edge-programme.ts';
import { edgedPlan, type RunPlan } from './edged-plan.ts';
import {
  type FullConditions,
  fillConditions,
  type RunConditions,
  type RunOptions,
} from './run-conditions.ts';
import { ROW, type RunFormulas, type RunShape, runFormulas, runShape, STAGE_DATA } from './run-formula.ts';
import { runProblem } from './run-problem.ts';
import { smoothGround } from './smooth-ground.ts';
import { StageFlow } from './stage-flow.ts';
import type { Track } from './track.ts';
import { readTrack } from './track-recorder.ts';

/** A run that keeps every equation and limit. */
export interface Run {
  readonly ok: true;
  readonly track: Track;
  /** Newton steps it took in all. */
  readonly iterations: number;
  /** What is least: ∫ (q/0.02)² + 0.05 ((ℓ − ℓ₀)/0.1)² + 2·10⁻⁵ Ḟ² dt, see `run-formula`. */
  readonly objective: number;
  /** How far a stage followed closely misses the next node at most, in the states' units. */
  readonly defect: number;
  /** What a neighbouring run begins from; plain data. */
  readonly solution: RunSolution;
}

export interface RunSolution extends ChainGuess {
  readonly states: readonly string[];
  readonly controls: readonly string[];
  readonly parts: readonly number[];
  readonly forcing: Float64Array;
}

/** Why there is no such run: what could not be kept, where, and by how much. */
export interface RunFailure {
  readonly ok: false;
  readonly reason: 'cannot be kept' | 'cancelled';
  /** The equation or limit that is missed most. */
  readonly limit: string;
  /** s into the run, and by how much it is missed there, in its own unit. */
  readonly at: number;
  readonly by: number;
  readonly message: string;
}

const STEP = 0.02;
/** Correction is done when a stage followed closely misses the next node by no more. */
const CLOSE = 1e-6;
/** The barrier and tolerance of each solution on the way; what the stages leave out is read between them. */
const ROUNDS = [
  { barrier: 0.1, tolerance: 1e-2 },
  { barrier: 1e-3, tolerance: 1e-4 },
  { barrier: 1e-5, tolerance: 1e-7 },
  { barrier: 9e-9, tolerance: 1e-7 },
];
/** A run whose stages miss their nodes by more is none. */
const TOO_FAR = 1e-4;
const MOST_FURTHER = 8;
const COLD_STEPS = 150;
const FURTHER_STEPS = 60;

/**
 * Runs the skier down the slope.
 *
 * @param from a run under nearly the same conditions, to begin from
 * @throws RangeError for a condition out of range: names the field, the value and what is accepted
 */
export function solveRun(conditions: RunConditions, options: RunOptions = {}, from?: Run): Run | RunFailure {
  const run = fillConditions(conditions);
  const step = options.step ?? STEP;
  const outputStep = options.outputStep ?? 0.01;
  accept('outputStep', outputStep, { from: 1e-4, to: 10, unit: 's' });
  accept('step', step, { from: 1e-3, to: 0.2, unit: 's' });
  return new WholeRun(run, options, step, outputStep, from?.solution).solve();
}

class WholeRun {
  private readonly shape: RunShape;
  private readonly formulas: RunFormulas;
  private readonly plan: RunPlan;
  private readonly flow: StageFlow;
  private readonly problem: ChainProblem;
  private readonly forcing: Float64Array;
  private iterations = 0;

  constructor(
    private readonly run: FullConditions,
    private readonly options: RunOptions,
    step: number,
    private readonly outputStep: number,
    private readonly from?: RunSolution,
  ) {
    const { programme } = run;
    const uneven = Number.isFinite(run.profile.length);
    this.shape = runShape(programme.kind === 'banked' ? 'turns' : programme.per, uneven, uneven);
    const ground = smoothGround(run.profile);
    this.formulas = runFormulas(run, this.shape, ground);
    const dropIn = options.dropIn ?? false;
    const like = from?.parts;
    this.plan =
      programme.kind === 'banked'
        ? bankedPlan(run, programme, this.shape, ground, step, dropIn, like)
        : edgedPlan(run, programme as EdgeProgramme, this.shape, ground, step, dropIn, like);
    const { plan, shape, formulas } = this;
    this.flow = new StageFlow(formulas, shape.states.length, shape.controls.length, p => plan.edgeAt(p));
    this.problem = runProblem(run, shape, formulas, plan.nodes, p => plan.edgeAt(p), plan.ends);
    this.forcing = this.problem.forcing as Float64Array;
  }

  solve(): Run | RunFailure {
    const solver = new ChainSolver(this.problem);
    const { from } = this;
    const banked = this.shape.over === 'turns';
    let found = from && this.fits(from) ? this.rounds(solver, from, 2, !banked) : null;
    for (const soften of [!banked, banked]) {
      if (found && (found.answer.ok || found.answer.reason === 'cancelled')) break;
      this.forcing.fill(0);
      found = this.rounds(solver, this.plan.guess(), 0, soften);
    }
    const { answer, defect } = found as NonNullable<typeof found>;
    if (answer.ok && defect > TOO_FAR) return this.unfollowed(defect);
    return answer.ok ? this.read(answer, defect) : this.failure(answer);
  }

  /** Solves ever more closely, from the given round on, with what the coarse rule leaves out as known forcing. */
  private rounds(solver: ChainSolver, begin: ChainGuess, first: number, soften: boolean) {
    let answer: ChainAnswer | ChainFailure | null = null;
    let guess = begin;
    let defect = Infinity;
    if (first > 0 && this.from) this.forcing.set(this.from.forcing);
    for (let round = first; round < ROUNDS.length + MOST_FURTHER; round++) {
      const { barrier, tolerance } = ROUNDS[Math.min(round, ROUNDS.length - 1)];
      answer = solver.solve(
        guess,
        {
          barrier,
          tolerance,
          soften,
          mostSteps: answer === null ? COLD_STEPS : FURTHER_STEPS,
          ...(this.options.cancelled ? { cancelled: this.options.cancelled } : {}),
          onStep: ({ barrier: now }) => this.tell(now, round),
        },
        this.problem,
      );
      this.iterations += answer.iterations;
      if (!answer.ok) break;
      guess = answer;
      const kept = this.forcing.slice();
      const before = defect;
      defect = this.follow(answer);
      // Where corrections swing between two answers, half of each is taken.
      if (defect > 0.9 * before)
        for (let i = 0; i < kept.length; i++) this.forcing[i] = 0.5 * (this.forcing[i] + kept[i]);
      if (round >= ROUNDS.length - 1 && defect <= CLOSE) {
        this.forcing.set(kept);
        break;
      }
    }
    return { answer: answer as ChainAnswer | ChainFailure, defect };
  }

  private told = 0;

  /** Most of the work is bringing the barrier down. */
  private tell(barrier: number, round: number): void {
    const share = Math.min(0.95, Math.max(0, (-Math.log10(barrier) - 1) / 8) + 0.02 * round);
    if (share <= this.told) return;
    this.told = share;
    this.options.onProgress?.(share);
  }

  /** Writes what each stage followed closely has beyond the midpoint rule; returns the greatest miss of a node. */
  private follow({ x, u }: ChainAnswer): number {
    const { flow, forcing, problem, plan } = this;
    const { nodes } = plan;
    const n = this.shape.states.length;
    const m = this.shape.controls.length;
    const middle = new Float64Array(n + m);
    const values = new Float64Array(n + 1);
    let worst = 0;
    for (let k = 0; k < nodes.length - 1; k++) {
      const c = k * n;
      flow.at.fill(0);
      flow.at.set(x.subarray(c, c + n));
      flow.hold(u, k * m, problem.stageData[k * STAGE_DATA + 1]);
      const length = nodes[k + 1] - nodes[k];
      const seconds = length * flow.read(nodes[k], flow.at)[n + ROW.seconds];
      const parts = flow.stepsFor(nodes[k], nodes[k + 1], seconds);
      for (let p = 0; p < parts; p++) flow.step(nodes[k] + (p * length) / parts, length / parts);
      for (let i = 0; i < n; i++) middle[i] = 0.5 * (x[c + i] + x[c + n + i]);
      for (let i = 0; i < m; i++) middle[n + i] = u[k * m + i];
      problem.stage.values(middle, problem.stageData, k * STAGE_DATA, values);
      for (let i = 0; i < n; i++) {
        worst = Math.max(worst, Math.abs(flow.at[i] - x[c + n + i]));
        forcing[c + i] = flow.at[i] - x[c + i] - length * values[i];
      }
    }
    return worst;
  }

  private fits(from: RunSolution): boolean {
    const { problem } = this;
    return (
      from.x.length === (problem.stages + 1) * problem.states.length &&
      from.states.join() === problem.states.join() &&
      from.controls.join() === problem.controls.join()
    );
  }

  private read(answer: ChainAnswer, defect: number): Run {
    const { run, shape, plan, flow } = this;
    const { x, u, multipliers } = answer;
    const track = readTrack({ run, shape, plan, x, u, flow }, this.outputStep);
    this.options.onProgress?.(1);
    return {
      ok: true,
      track,
      iterations: this.iterations,
      objective: answer.objective,
      defect,
      solution: {
        x,
        u,
        multipliers,
        states: shape.states,
        controls: shape.controls,
        parts: plan.parts,
        forcing: this.forcing.slice(),
      },
    };
  }

  private unfollowed(by: number): RunFailure {
    const message = `No run keeps its balance: the equations of motion, followed closely, miss the run found by ${by.toPrecision(2)}.`;
    return { ok: false, reason: 'cannot be kept', limit: 'equations of motion', at: 0, by, message };
  }

  private failure({ reason, worst }: ChainFailure): RunFailure {
    const { plan } = this;
    if (reason === 'cancelled') {
      return {
        ok: false,
        reason,
        limit: '',
        at: 0,
        by: 0,
        message: 'The run was stopped before it was found.',
      };
    }
    const at = plan.timeAt(plan.nodes[Math.min(worst.at, plan.nodes.length - 1)]);
    return {
      ok: false,
      reason: 'cannot be kept',
      limit: worst.name,
      at,
      by: worst.by,
      message: `No run keeps its balance: at ${at.toFixed(2)} s ${worst.name} cannot be kept (missed by ${worst.by.toPrecision(2)}; ${reason}).`,
    };
  }
}
