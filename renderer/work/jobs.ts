import type { RadiusTable } from '../../core/carve/index.ts';
import { cosineTurn, evenSlope, linkedTurns, runDown, type Track, tableTurn } from '../../core/run/index.ts';

/** Told by a job on its way; 0–1. */
export type Progress = (share: number) => void;

/**
 * Work that takes longer than about 8 ms. A job is a pure function of plain data: what goes in and out is
 * copied between threads, so it names numbers, typed arrays and pair files, never functions. To add one,
 * write it here; the client knows its types from `Jobs`.
 */
export const jobs = {
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
