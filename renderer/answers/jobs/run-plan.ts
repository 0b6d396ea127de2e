import { type FieldOf, fieldsOf, type SiOf } from '../../../core/conditions/index.ts';
import { FieldError, type FieldFault, plainFault } from '../../../core/fault/index.ts';
import type { Sentence } from '../../../core/language/index.ts';
import {
  type HeldBackBy,
  type LineConditions,
  type LineRun,
  type Rhythm,
  rhythm,
  rhythmFailureSentence,
  rhythmWorkings,
} from '../../../core/line/index.ts';
import {
  bankedTurns,
  demoProfiles,
  drawnEdges,
  evenSlope,
  linkedTurns,
  type Programme,
  type Run,
  type RunFailure,
  type RunOptions,
  readEdges,
  readProfile,
  runFailureSentence,
  type SlopeProfile,
  solveRun,
  type Track,
  type TurnBasis,
  type TurnShape,
  turnOf,
} from '../../../core/run/index.ts';
import type { LegSpan, Skier } from '../../../core/skier/index.ts';
import type { Working } from '../../../core/working/index.ts';
import { rhythmTrack } from './rhythm-track.ts';

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
  | { readonly kind: 'banked'; readonly traverse: number; readonly turns: number }
  | {
      readonly kind: 'rhythm';
      /** m */
      readonly spacing: number;
      readonly offset: number;
      readonly clearance: number;
      /** Turns of it shown. */
      readonly gates: number;
      readonly skier: Skier;
    };

/** The quickest turn of a rhythm, beside the track it makes. */
export interface RhythmAnswer {
  readonly secondsPerGate: number;
  /** Down the fall line over a gate's time, m/s. */
  readonly meanSpeed: number;
  readonly limits: LineRun['limits'];
  /** How the pace and the numbers of its hardest moment hang together. */
  readonly workings: readonly Working[];
  /** What holds the skier back, row by row of the track. */
  readonly heldBackBy: readonly HeldBackBy[];
}

/** One run as plain data, SI. */
export interface RunPlan extends SiOf<PlanField>, LegSpan {
  readonly turn: TurnBasis;
  readonly ground: GroundPlan;
  readonly programme: ProgrammePlan;
  readonly baseBevel: number;
  readonly contactLength: number;
  /** Of the wall of snow the edge leans on, N/m². */
  readonly wallStrength: number;
}

/** Conditions that every run is asked with. */
type PlanField = FieldOf<'glide' | 'model' | 'legs' | 'start'> | 'massKg';
export const PLAN_FIELDS: readonly PlanField[] = [...fieldsOf('glide', 'model', 'legs', 'start'), 'massKg'];

/** How closely, and what is told of the work on the way. */
export type RunWatching = Pick<RunOptions, 'onProgress' | 'cancelled' | 'draft'>;

/** 60 pictures a second find a row each in slow motion too. */
const OUTPUT_STEP = 0.01;

/** @throws FieldError */
export function groundOf(plan: GroundPlan): SlopeProfile {
  switch (plan.kind) {
    case 'even':
      return evenSlope(plan.angle);
    case 'file':
      return readProfile(plan.text);
    default:
      return demoProfiles()[plan.kind === 'roller' ? 1 : 2];
  }
}

/**
 * A programme of edge angles or banked turns.
 *
 * @throws FieldError
 */
export function programmeOf(plan: Exclude<ProgrammePlan, { kind: 'rhythm' }>): Programme {
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

/** What was solved last, for a neighbour to begin from. */
export type Begun = Run | Rhythm;

export type RunAnswer =
  | { readonly ok: true; readonly track: Track; readonly rhythm: RhythmAnswer | null; readonly begun: Begun }
  | { readonly ok: false; readonly problem: Sentence | FieldFault };

/**
 * The plan's run down the hill. What is wrong with the plan, and which limit cannot be kept where, come back in words.
 *
 * @param from what was solved for nearly the same plan, to begin from
 */
export function runPlan(plan: RunPlan, from?: Begun, watch: RunWatching = {}): RunAnswer {
  try {
    return plan.programme.kind === 'rhythm'
      ? rhythmOf(plan, plan.programme, from, watch)
      : runOf(plan, plan.programme, from, watch);
  } catch (cause) {
    if (cause instanceof FieldError) return { ok: false, problem: plainFault(cause) };
    throw cause;
  }
}

function runOf(
  plan: RunPlan,
  programme: Exclude<ProgrammePlan, { kind: 'rhythm' }>,
  from: Begun | undefined,
  watch: RunWatching,
): RunAnswer {
  const { turn, ground, ...skier } = plan;
  const run: Run | RunFailure = solveRun(
    { ...skier, turn: turnOf(turn), profile: groundOf(ground), programme: programmeOf(programme) },
    { outputStep: OUTPUT_STEP, ...watch },
    from && 'track' in from ? from : undefined,
  );
  return run.ok
    ? { ok: true, track: run.track, rhythm: null, begun: run }
    : { ok: false, problem: runFailureSentence(run, programme.kind === 'banked' ? 'banked' : 'edge') };
}

/** Conditions of a rhythm on the plan's even slope. */
function lineConditions(
  { turn, ground, programme: _, ...plan }: RunPlan,
  { skier, clearance }: ProgrammePlan & { kind: 'rhythm' },
): LineConditions {
  return { ...plan, ski: turnOf(turn), skier, slope: groundOf(ground), clearance };
}

function rhythmOf(
  plan: RunPlan,
  programme: ProgrammePlan & { kind: 'rhythm' },
  from: Begun | undefined,
  watch: RunWatching,
): RunAnswer {
  const { spacing, offset, gates } = programme;
  const found = rhythm(
    { conditions: lineConditions(plan, programme), spacing, offset },
    {
      onProgress: watch.onProgress,
      cancelled: watch.cancelled,
      from: from && 'secondsPerGate' in from ? from : undefined,
    },
  );
  if (!found.ok) return { ok: false, problem: rhythmFailureSentence(found) };
  const { track, heldBackBy } = rhythmTrack(found, gates);
  return {
    ok: true,
    track,
    begun: found,
    rhythm: {
      secondsPerGate: found.secondsPerGate,
      meanSpeed: found.meanSpeed,
      limits: found.run.limits,
      workings: rhythmWorkings(found),
      heldBackBy,
    },
  };
}
