import {
  buildRadiusTable,
  type CarveConditions,
  type CarveFailure,
  type Equilibrium,
  type GrooveSolver,
  grooveSolver,
  type RadiusTable,
} from '../../core/carve/index.ts';
import type { Pair } from '../../core/pair/index.ts';
import { cosineTurn, evenSlope, linkedTurns, runDown, type Track, tableTurn } from '../../core/run/index.ts';
import { carvingSkiOf } from './carving-ski.ts';

/** Told by a job on its way; 0–1. */
export type Progress = (share: number) => void;

/** Said for a pair whose file gives no bending stiffness. */
export const NEEDS_STIFFNESS =
  'bending: nothing found; a stiffness profile is needed to carve (uniform, stations, formula or layup)';

/** The last solver made: successive questions are mostly about the same pair. */
let kept: { key: string; solver: GrooveSolver } | null = null;

function solverOf(pair: Pair): GrooveSolver {
  const key = JSON.stringify(pair);
  if (kept?.key !== key) kept = { key, solver: grooveSolver(skiFor(pair)) };
  return kept.solver;
}

function skiFor(pair: Pair) {
  const ski = carvingSkiOf(pair);
  if (!ski) throw new Error(`${pair.name}: ${NEEDS_STIFFNESS}`);
  return ski;
}

/**
 * Work that takes longer than about 8 ms. A job is a pure function of plain data: what goes in and out is
 * copied between threads, so it names numbers, typed arrays and pair files, never functions. To add one,
 * write it here; the client knows its types from `Jobs`.
 */
export const jobs = {
  /** Equilibria of one pair, each begun from the one before: put neighbouring conditions side by side. */
  groove(
    input: { readonly pair: Pair; readonly conditions: readonly CarveConditions[] },
    progress: Progress,
  ): (Equilibrium | CarveFailure)[] {
    const solver = solverOf(input.pair);
    let from: Equilibrium | undefined;
    return input.conditions.map((conditions, at) => {
      const answer = solver.solve(conditions, { from });
      if (answer.ok) from = answer;
      progress((at + 1) / input.conditions.length);
      return answer;
    });
  },

  /** Turn radius over edge angle and load of one pair on one snow (H_V in N/m³). */
  radiusTable(
    input: { readonly pair: Pair; readonly hardness: number },
    progress: Progress,
  ): RadiusTable | CarveFailure | null {
    return buildRadiusTable(skiFor(input.pair), input.hardness, { onProgress: progress });
  },

  /** Linked turns down an even slope: by the solved groove's table, else by the cosine rule. */
  linkedRun(input: LinkedRunInput): Track {
    const { turn, slopeAngle, peakEdge, period, turns, ...skier } = input;
    return runDown({
      ...skier,
      turn: 'table' in turn ? tableTurn(turn.table) : cosineTurn(turn.sidecutRadius),
      profile: evenSlope(slopeAngle),
      programme: linkedTurns({ peakEdge, period, turns }),
    });
  },
};

export type Jobs = typeof jobs;
export type JobName = keyof Jobs;
export type JobInput<N extends JobName> = Parameters<Jobs[N]>[0];
export type JobOutput<N extends JobName> = Awaited<ReturnType<Jobs[N]>>;

/** SI, radians. */
export interface LinkedRunInput {
  readonly turn: { readonly table: RadiusTable } | { readonly sidecutRadius: number };
  readonly slopeAngle: number;
  readonly peakEdge: number;
  readonly period: number;
  readonly turns: number;
  readonly mass: number;
  readonly friction: number;
  readonly dragArea: number;
  readonly airDensity: number;
  readonly startSpeed: number;
  readonly baseBevel: number;
  readonly contactLength: number;
}
