/**
 * Solves a whole run at once: from a first guess or a neighbouring run, then corrected until the equations of
 * motion followed closely through every stage agree with it.
 */

import { accept } from '../fault/index.ts';
import {
  type ChainAnswer,
  type ChainCentre,
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
import { ROW_RATES, type RunFormulas, type RunShape, runFormulas, runShape } from './run-formula.ts';
import { runProblem } from './run-problem.ts';
import { smoothGround } from './smooth-ground.ts';
import { StageCorrection } from './stage-correction.ts';
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
  /** Found in a hurry: its stages are corrected but once, so the rows jump at the nodes by up to `defect`. */
  readonly draft: boolean;
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
}

const STEP = 0.02;
const DRAFT_STEP = 0.04;
/** Correction is done when a stage followed closely misses the next node by no more. */
const CLOSE = 1e-6;
/** A run whose stages miss their nodes by more is none: it is looked for again in shorter steps, so many times. */
const TOO_FAR = 1e-5;
const HALVINGS = 2;
/** What is told of a run whose stages do. */
const UNFOLLOWED = 'equations of motion';
/**
 * The barrier an answer is taken at, of its objective where that is less than 1, and its least: what it costs there
 * shows in no digit that is told (speeds and lengths to 1e-4 of theirs, peak loads to 1e-3). Barriers lie five times
 * apart.
 */
const LAST_BARRIER = 1e-6;
const LEAST_BARRIER = 1e-8;
const COLD_BARRIER = 5 ** 7 * LAST_BARRIER;
/** Where a neighbour's centre is kept, and where one begins from it: well inside the bounds, so it moves freely. */
const KEPT_BARRIER = 5 ** 2 * LAST_BARRIER;
const WARM_BARRIER = 5 ** 3 * LAST_BARRIER;
/** From this centre to the one kept, and at the last, what the stages leave out is read. */
const CORRECTED_FROM = 5 ** 3 * LAST_BARRIER;
/** Barriers are compared with some room for rounding. */
const BETWEEN = 1.1;
/** Corrections at the last barrier, before a run is taken or refused as it is. */
const MOST_LOOKS = 10;
const COLD_STEPS = 300;
const WARM_STEPS = 60;

/**
 * Runs the skier down the slope.
 *
 * @param from a run under nearly the same conditions, to begin from
 * @throws FieldError for a condition out of range
 */
export function solveRun(conditions: RunConditions, options: RunOptions = {}, from?: Run): Run | RunFailure {
  const run = fillConditions(conditions);
  const step = options.step ?? (options.draft ? DRAFT_STEP : STEP);
  const outputStep = options.outputStep ?? 0.01;
  accept('outputStep', outputStep, { from: 1e-4, to: 10, unit: 's' });
  accept('step', step, { from: 1e-3, to: 0.2, unit: 's' });
  let found = new WholeRun(run, options, step, outputStep, from?.solution).solve();
  for (let part = 2; isUnfollowed(found) && part <= 2 ** HALVINGS; part *= 2) {
    found = new WholeRun(run, options, step / part, outputStep).solve();
  }
  return found;
}

const isUnfollowed = (found: Run | RunFailure) => !found.ok && found.limit === UNFOLLOWED;

class WholeRun {
  private readonly shape: RunShape;
  private readonly formulas: RunFormulas;
  private readonly plan: RunPlan;
  private readonly flow: StageFlow;
  private readonly problem: ChainProblem;
  private readonly correction: StageCorrection;
  private readonly draft: boolean;
  private iterations = 0;
  private defect = Infinity;
  private reported = 0;
  private looks = 0;
  private kept: (ChainGuess & { readonly forcing: Float64Array }) | null = null;

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
    const edgeAt = (place: number) => plan.edgeAt(place);
    this.flow = new StageFlow(formulas.row, ROW_RATES, shape, edgeAt);
    this.problem = runProblem(run, shape, formulas, plan.nodes, edgeAt, plan.ends);
    this.correction = new StageCorrection(this.problem, plan.nodes, this.flow, edgeAt);
    this.draft = options.draft ?? false;
  }

  solve(): Run | RunFailure {
    const { none } = this.plan;
    if (none) return { ok: false, reason: 'cannot be kept', ...none, by: 0 };
    const solver = new ChainSolver(this.problem);
    const { from } = this;
    let answer: ChainAnswer | ChainFailure | null = null;
    if (from && this.fits(from)) {
      this.correction.forcing.set(from.forcing);
      answer = this.search(solver, from, WARM_BARRIER, WARM_STEPS, true);
    }
    for (const soften of [true, false]) {
      if (answer && (answer.ok || answer.reason === 'cancelled')) break;
      this.correction.forcing.fill(0);
      answer = this.search(solver, this.plan.guess(), COLD_BARRIER, COLD_STEPS, soften);
    }
    if (!answer?.ok) return this.failure(answer as ChainFailure);
    return this.defect > TOO_FAR && !this.draft ? this.unfollowed() : this.read(answer);
  }

  /** Solves, with what the stages leave out read anew at each centre on the way. */
  private search(
    solver: ChainSolver,
    begin: ChainGuess,
    barrier: number,
    mostSteps: number,
    soften: boolean,
  ) {
    this.kept = null;
    this.looks = 0;
    this.correction.begin();
    const answer = solver.solve(begin, {
      barrier,
      soften,
      mostSteps,
      ...(this.options.cancelled ? { cancelled: this.options.cancelled } : {}),
      atCentre: centre => this.lookAt(centre),
      onStep: ({ barrier: now }) =>
        this.tell(Math.log(COLD_BARRIER / now) / Math.log(COLD_BARRIER / LAST_BARRIER)),
    });
    this.iterations += answer.iterations;
    return answer;
  }

  /** Corrects the stages at a centre, and says what next. */
  private lookAt(centre: ChainCentre): 'lower' | 'again' | 'done' {
    const { barrier, objective } = centre;
    const least = BETWEEN * Math.max(LEAST_BARRIER, LAST_BARRIER * Math.min(1, objective));
    if (barrier > BETWEEN * CORRECTED_FROM || (this.kept && barrier > least)) return 'lower';
    this.defect = this.correction.read(centre.x, centre.u);
    if (!this.kept && barrier <= BETWEEN * KEPT_BARRIER) {
      this.kept = { ...centre.guess(), forcing: this.correction.forcing.slice() };
    }
    if (this.draft) return this.kept ? 'done' : 'lower';
    if (barrier > least) return 'lower';
    return this.defect <= CLOSE || ++this.looks > MOST_LOOKS ? 'done' : 'again';
  }

  /** Most of the work is bringing the barrier down. */
  private tell(share: number): void {
    if (share <= this.reported || share > 1) return;
    this.reported = share;
    this.options.onProgress?.(0.95 * share);
  }

  private fits(from: RunSolution): boolean {
    const { problem } = this;
    return (
      from.x.length === (problem.stages + 1) * problem.states.length &&
      from.states.join() === problem.states.join() &&
      from.controls.join() === problem.controls.join()
    );
  }

  private read(answer: ChainAnswer): Run {
    const { run, shape, plan, flow } = this;
    const { x, u } = answer;
    const track = readTrack({ run, shape, plan, x, u, flow }, this.outputStep);
    this.options.onProgress?.(1);
    return {
      ok: true,
      track,
      iterations: this.iterations,
      objective: answer.objective,
      defect: this.defect,
      draft: this.draft,
      solution: {
        ...(this.kept as NonNullable<typeof this.kept>),
        states: shape.states,
        controls: shape.controls,
        parts: plan.parts,
      },
    };
  }

  private unfollowed(): RunFailure {
    const by = this.defect;
    return { ok: false, reason: 'cannot be kept', limit: UNFOLLOWED, at: 0, by };
  }

  private failure({ reason, worst }: ChainFailure): RunFailure {
    const { plan } = this;
    if (reason === 'cancelled') {
      return { ok: false, reason, limit: '', at: 0, by: 0 };
    }
    const at = plan.timeAt(plan.nodes[Math.min(worst.at, plan.nodes.length - 1)]);
    return { ok: false, reason: 'cannot be kept', limit: worst.name, at, by: worst.by };
  }
}
