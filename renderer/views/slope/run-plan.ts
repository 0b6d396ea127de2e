import {
  bankedTurns,
  demoProfiles,
  drawnEdges,
  evenSlope,
  linkedTurns,
  type Programme,
  readEdges,
  readProfile,
  runDown,
  type SlopeProfile,
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

/** 60 pictures a second find a row each in slow motion too. */
const OUTPUT_STEP = 0.01;
/** A run longer than this teaches nothing more and costs memory. */
const LONGEST_S = 120;

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
  | { readonly ok: true; readonly track: Track }
  | { readonly ok: false; readonly problem: string };

/** Follows the plan down the hill. What is wrong with the plan comes back in words. */
export function runPlan(plan: RunPlan): RunAnswer {
  const { turn, ground, programme, ...skier } = plan;
  try {
    const track = runDown(
      { ...skier, turn: turnOf(turn), profile: groundOf(ground), programme: programmeOf(programme) },
      { outputStep: OUTPUT_STEP, maxSeconds: LONGEST_S },
    );
    if (track.t.length < 5) {
      return {
        ok: false,
        problem:
          track.summary.end === 'no balanced lean'
            ? 'No lean balances a banked turn at this speed on this ski: start slower, or take a ski of a larger radius.'
            : 'The run is over before it has begun: give it more turns, more time or more speed.',
      };
    }
    return { ok: true, track };
  } catch (cause) {
    if (cause instanceof RangeError || cause instanceof TableTextError) {
      return { ok: false, problem: cause.message };
    }
    throw cause;
  }
}
