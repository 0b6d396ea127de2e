import {
  bankedTurns,
  demoProfiles,
  drawnEdges,
  evenSlope,
  linkedTurns,
  type Programme,
  type Run,
  type RunOptions,
  readEdges,
  readProfile,
  type SlopeProfile,
  solveRun,
  type Track,
  type TurnBasis,
  type TurnShape,
  turnOf,
} from '../../../core/run/index.ts';
import { TableTextError } from '../../../core/table/index.ts';

/** The ground as plain data, so that it can be asked about in a worker. Angles in rad. */
export type GroundPlan =
  | { readonly kind: 'even'; readonly angle: number }
  | { readonly kind: 'roller' | 'steepening' }
  | { readonly kind: 'file'; readonly name: string; readonly text: string };

/** What the skier does with the skis, as plain data. Angles in rad, times in s. */
export type ProgrammePlan =
  | {
      readonly kind: 'linked';
      readonly peakEdge: number;
      readonly period: number;
      readonly turns: number;
      readonly shape: TurnShape;
    }
  | { readonly kind: 'drawn'; readonly at: readonly number[]; readonly edges: readonly number[] }
  | { readonly kind: 'file'; readonly name: string; readonly text: string }
  | { readonly kind: 'banked'; readonly traverse: number; readonly turns: number };

/** One run as plain data, SI. */
export interface RunPlan {
  readonly turn: TurnBasis;
  readonly ground: GroundPlan;
  readonly programme: ProgrammePlan;
  readonly mass: number;
  readonly friction: number;
  readonly dragArea: number;
  readonly airDensity: number;
  readonly startSpeed: number;
  readonly baseBevel: number;
  readonly contactLength: number;
}

/** Told of the work on the way. */
export type RunWatching = Pick<RunOptions, 'onProgress' | 'cancelled'>;

/** 60 pictures a second find a row each in slow motion too. */
const OUTPUT_STEP = 0.01;

/** @throws RangeError or TableTextError that names what was found and what is accepted */
export function groundOf(plan: GroundPlan): SlopeProfile {
  switch (plan.kind) {
    case 'even':
      return evenSlope(plan.angle);
    case 'file':
      return readProfile(plan.text, plan.name);
    default:
      return demoProfiles()[plan.kind === 'roller' ? 1 : 2];
  }
}

/** @throws RangeError or TableTextError that names what was found and what is accepted */
export function programmeOf(plan: ProgrammePlan): Programme {
  switch (plan.kind) {
    case 'linked':
      return linkedTurns(plan);
    case 'drawn':
      return drawnEdges(plan.at, plan.edges);
    case 'file':
      return readEdges(plan.text);
    default:
      return bankedTurns(plan.traverse, plan.turns);
  }
}

export type RunAnswer =
  | { readonly ok: true; readonly track: Track; readonly run?: Run }
  | { readonly ok: false; readonly problem: string };

/**
 * The plan's run down the hill. What is wrong with the plan comes back in words.
 *
 * @param from the run of nearly the same plan, to begin from
 */
export function runPlan(plan: RunPlan, from?: Run, watch: RunWatching = {}): RunAnswer {
  const { turn, ground, programme, ...skier } = plan;
  try {
    const run = solveRun(
      { ...skier, turn: turnOf(turn), profile: groundOf(ground), programme: programmeOf(programme) },
      { outputStep: OUTPUT_STEP, ...watch },
      from,
    );
    return run.ok ? { ok: true, track: run.track, run } : { ok: false, problem: run.message };
  } catch (cause) {
    if (cause instanceof RangeError || cause instanceof TableTextError) {
      return { ok: false, problem: cause.message };
    }
    throw cause;
  }
}
